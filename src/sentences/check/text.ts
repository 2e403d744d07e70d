/** A design, evaluated and reported on, as plain text: the form of `check` for people. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Cause, Report } from "../../findings/finding.ts";
import { countsOf, followsLine } from "../cause.ts";
import { cureOf, messageOf } from "../finding.ts";
import { workingSentence } from "../verdict.ts";
import { placeLines } from "./places.ts";

/** How many receivers work; causes, worst first, each with what follows from it; then place by place what arrives. */
export function textOf(evaluation: Evaluation, report: Report): string {
  const lines = [
    workingSentence(report.verdicts),
    `${countsOf(report)}.`,
    ...report.causes.flatMap((cause) => causeLines(cause, evaluation)),
    ...placeLines(evaluation, report.verdicts),
  ];
  return `${lines.join("\n")}\n`;
}

function causeLines(cause: Cause, evaluation: Evaluation): readonly string[] {
  const { root, severity, findings } = cause;
  const cure = cureOf(root, evaluation);
  return [
    `${severity}: ${messageOf(root, evaluation)}`,
    ...(cure === undefined ? [] : [`  Cure: ${cure}`]),
    ...followsLine(cause).map((line) => `  ${line}`),
    ...findings.slice(1).map((f) => `    ${f.severity}: ${messageOf(f, evaluation)}`),
  ];
}
