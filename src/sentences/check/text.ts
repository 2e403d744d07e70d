/** A design, evaluated and reported on, as plain text: the form of `check` for people. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { waysOf } from "../../findings/causes/ways.ts";
import type { Cause, Finding, Report, Verdict } from "../../findings/finding.ts";
import { countsOf, followsLine } from "../cause.ts";
import { capital } from "../explain/plainWords.ts";
import { cureOf, messageOf } from "../finding.ts";
import { plainLabelOf } from "../phrases.ts";
import { stateName, verdictSentence } from "../verdict.ts";

/** Causes, worst first, each with what follows from it; then place by place its sockets and receivers. */
export function textOf(evaluation: Evaluation, report: Report): string {
  const lines = [
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
    `${severity}: ${said(root, evaluation)}`,
    ...(cure === undefined ? [] : [`  Cure: ${cure}`]),
    ...followsLine(cause).map((line) => `  ${line}`),
    ...findings.slice(1).map((f) => `    ${f.severity}: ${said(f, evaluation)}`),
  ];
}

function said(finding: Finding, evaluation: Evaluation): string {
  return `${messageOf(finding, evaluation)} [${finding.rule}]`;
}

/** Each outlet with the receivers behind it, then the receivers that hang on none. */
function placeLines(evaluation: Evaluation, verdicts: readonly Verdict[]): readonly string[] {
  const ways = waysOf(evaluation);
  const outlets = verdicts.filter((v) => v.role === "outlet");
  const isOutlet = new Set(outlets.map((v) => v.part));
  const behind = new Map<PartId | undefined, Verdict[]>();
  for (const verdict of verdicts) {
    if (verdict.role !== "receiver") continue;
    const outlet = ways.signalTo(verdict.part).find((passed) => isOutlet.has(passed.part))?.part;
    behind.set(outlet, [...(behind.get(outlet) ?? []), verdict]);
  }
  const line = (v: Verdict) =>
    `${v.state === "fails" ? "FAILS" : stateName(v)}: ${plainLabelOf(evaluation, v.part)}: ${verdictSentence(v, evaluation)}`;
  return [
    ...outlets.flatMap((outlet) => [
      `Outlet ${plainLabelOf(evaluation, outlet.part)}: ${capital(stateName(outlet))}. ${verdictSentence(outlet, evaluation)}`,
      ...(behind.get(outlet.part) ?? []).map((v) => `  ${line(v)}`),
    ]),
    ...(behind.get(undefined) ?? []).map(line),
  ];
}
