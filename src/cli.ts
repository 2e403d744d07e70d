/** Evaluates design files without a browser: `npm run --silent check -- FILE… [--json] [--cures]`. */

import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import type { Design } from "./design/design.ts";
import { readDesign } from "./design/file.ts";
import { evaluateInSteps } from "./evaluate/evaluate.ts";
import type { Evaluation } from "./evaluate/evaluation.ts";
import {
  BUDGET,
  type BudgetOutcome,
  type EvaluationProgress,
  type Steps,
  withinBudget,
} from "./evaluate/steps.ts";
import type { Report } from "./findings/finding.ts";
import { reportInSteps } from "./findings/report.ts";
import { PLACEHOLDER_PRICES } from "./paperwork/prices.ts";
import { type Proposal, search } from "./remedies/search.ts";
import { type CureRecord, cureRecord, curesText } from "./sentences/check/cures.ts";
import { checkRecordOf } from "./sentences/check/record.ts";
import { textOf } from "./sentences/check/text.ts";

const USAGE = `Usage: npm run --silent check -- FILE… [--json] [--cures]
  --json   one object a line, one line a file
  --cures  adds proved cures, best first
Ends with 0 where no file has an error and every receiver works, with 1 where one has or one fails. Ends with 2 where
a file cannot be read as a design or is too large. The others are evaluated all the same, and 2 outweighs 1.`;

const OPTIONS = ["--json", "--cures"];

export type CliResult = { readonly exitCode: 0 | 1 | 2; readonly stdout: string; readonly stderr: string };

/** Runs the command on its arguments; nothing is printed here, so that tests can read the result. */
export function run(args: readonly string[], limits: Partial<typeof LIMITS_OF_WORK> = {}): CliResult {
  const files = args.filter((a) => !a.startsWith("--"));
  const unknown = args.find((a) => a.startsWith("--") && !OPTIONS.includes(a));
  if (unknown || files.length === 0)
    return { exitCode: 2, stdout: "", stderr: `${unknown ? `Unknown option ${unknown}. ` : ""}${USAGE}\n` };
  const form: Form = {
    json: args.includes("--json"),
    cures: args.includes("--cures"),
    many: files.length > 1,
  };
  const results = files.map((file) => checked(file, form, { ...LIMITS_OF_WORK, ...limits }));
  return {
    exitCode: results.map((r) => r.exitCode).reduce(graver, 0),
    stdout: results.map((r) => r.stdout).join(form.json ? "" : "\n"),
    stderr: results.map((r) => r.stderr).join(""),
  };
}

function graver(a: CliResult["exitCode"], b: CliResult["exitCode"]): CliResult["exitCode"] {
  return b > a ? b : a;
}

type Form = { readonly json: boolean; readonly cures: boolean; readonly many: boolean };

/** One file: what is printed of it, and how the command would end if it were the only one. */
function checked(file: string, form: Form, limits: typeof LIMITS_OF_WORK): CliResult {
  const failed = (problem: string): CliResult => ({
    exitCode: 2,
    stdout: "",
    stderr: `${file}: ${problem}\n`,
  });
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    return failed(`cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  const read = readDesign(text);
  if (!read.ok) return failed(read.problem);
  const worked = workedOut(read.design, limits);
  if (!worked.ok) return failed(worked.problem);
  const { evaluation, report } = worked;
  const cures = form.cures ? curesOf(read.design, limits.seconds) : undefined;
  return {
    exitCode: exitCodeOf(report),
    stdout: printed(file, form, { evaluation, report, cures }),
    stderr: "",
  };
}

/** Whoever reads the code alone and whoever reads the verdicts alone come to the same. */
function exitCodeOf({ causes, verdicts }: Report): 0 | 1 {
  const isWrong = causes.some(({ severity }) => severity === "error");
  return isWrong || verdicts.some((v) => v.role === "receiver" && v.state === "fails") ? 1 : 0;
}

type Checked = {
  readonly evaluation: Evaluation;
  readonly report: Report;
  readonly cures: readonly CureRecord[] | undefined;
};

function printed(file: string, { json, many }: Form, { evaluation, report, cures }: Checked): string {
  if (json)
    return `${JSON.stringify({ file, ...checkRecordOf(evaluation, report), ...(cures ? { cures } : {}) })}\n`;
  return `${many ? `${file}\n` : ""}${textOf(evaluation, report)}${cures ? curesText(cures, report) : ""}`;
}

/** What a file may cost: by counts, so that memory holds, and by the clock, so that a script goes on. */
const LIMITS_OF_WORK = { budget: BUDGET, seconds: 60 };

type WorkedOut =
  | { readonly ok: true; readonly evaluation: Evaluation; readonly report: Report }
  | { readonly ok: false; readonly problem: string };

function workedOut(design: Design, { budget, seconds }: typeof LIMITS_OF_WORK): WorkedOut {
  const deadline = performance.now() + seconds * 1000;
  const evaluation = untilDeadline(withinBudget(evaluateInSteps(design), budget), deadline);
  if (!evaluation.ok) return { ok: false, problem: tooLarge("evaluate", evaluation, seconds) };
  const result = untilDeadline(withinBudget(reportInSteps(evaluation.value), budget), deadline);
  if (!result.ok) return { ok: false, problem: tooLarge("report on", result, seconds) };
  return { ok: true, evaluation: evaluation.value, report: result.value };
}

type Ended<T> =
  | BudgetOutcome<T>
  | { readonly ok: false; readonly reached: EvaluationProgress; readonly isLate: true };

function untilDeadline<T>(steps: Steps<BudgetOutcome<T>>, deadline: number): Ended<T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (performance.now() > deadline) return { ok: false, reached: step.value, isLate: true };
  }
}

function tooLarge(
  what: string,
  { reached, ...ended }: Exclude<Ended<never>, { ok: true }>,
  seconds: number,
): string {
  const why =
    "isLate" in ended
      ? `it takes longer than ${seconds} seconds`
      : "signals meet in too many ways, by splitters that feed combiners or the like";
  return `too large to ${what}: ${why}; stopped after ${reached.done} parts of ${reached.total}.`;
}

/** What the search proves within its trials and the time; what was proved before the time is up is kept. */
function curesOf(design: Design, seconds: number): readonly CureRecord[] {
  const deadline = performance.now() + seconds * 1000;
  let proposals: readonly Proposal[] = [];
  for (const progress of search(design, { prices: PLACEHOLDER_PRICES })) {
    ({ proposals } = progress);
    if (performance.now() > deadline) break;
  }
  return proposals.map((proposal) => cureRecord(proposal, design));
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { exitCode, stdout, stderr } = run(process.argv.slice(2));
  process.stdout.write(stdout);
  process.stderr.write(stderr);
  process.exitCode = exitCode;
}
