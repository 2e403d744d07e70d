/** Evaluates design files without a browser: `npm run --silent check -- FILE… [--json] [--cures] [--conditions]`. */

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
import { judgedUnderConditions, type UnderConditions } from "./findings/underConditions.ts";
import { PLACEHOLDER_PRICES } from "./paperwork/prices.ts";
import type { Proposal } from "./remedies/proposal.ts";
import { search } from "./remedies/search.ts";
import { conditionsRecord, conditionsText } from "./sentences/check/conditions.ts";
import { type CureRecord, cureRecord, curesText } from "./sentences/check/cures.ts";
import { checkRecordOf } from "./sentences/check/record.ts";
import { textOf } from "./sentences/check/text.ts";

const USAGE = `Usage: npm run --silent check -- FILE… [--json] [--cures] [--conditions]
  --json        one object a line, one line a file
  --cures       adds proved cures, best first
  --conditions  adds what becomes of it in rain, in a lift, with masts on and off, with all receivers on and one alone;
                a receiver that fails under any of these then counts as one that fails
Ends with 0 where no file has an error and every receiver works, with 1 where one has or one fails. Ends with 2 where
a file cannot be read as a design or is too large. The others are evaluated all the same, and 2 outweighs 1.`;

const OPTIONS = ["--json", "--cures", "--conditions"];

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
    conditions: args.includes("--conditions"),
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

type Form = {
  readonly json: boolean;
  readonly cures: boolean;
  readonly conditions: boolean;
  readonly many: boolean;
};

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
  const under = form.conditions ? conditionsOf(evaluation, limits.seconds) : undefined;
  if (under && !under.ok) return failed(under.problem);
  const value = under?.value;
  return {
    exitCode: graver(exitCodeOf(report), value && failsUnder(value) ? 1 : 0),
    stdout: printed(file, form, { evaluation, report, cures, under: value }),
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
  readonly under: UnderConditions | undefined;
};

function printed(file: string, { json, many }: Form, { evaluation, report, cures, under }: Checked): string {
  if (json) {
    const more = {
      ...(cures ? { cures } : {}),
      ...(under ? { conditions: conditionsRecord(under) } : {}),
    };
    return `${JSON.stringify({ file, ...checkRecordOf(evaluation, report), ...more })}\n`;
  }
  const head = many ? `${file}\n` : "";
  const cureLines = cures ? curesText(cures, report) : "";
  return `${head}${textOf(evaluation, report)}${under ? conditionsText(under) : ""}${cureLines}`;
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

type Judged =
  | { readonly ok: true; readonly value: UnderConditions }
  | { readonly ok: false; readonly problem: string };

function conditionsOf(evaluation: Evaluation, seconds: number): Judged {
  const deadline = performance.now() + seconds * 1000;
  const judging = judgedUnderConditions(evaluation.design, evaluation);
  for (;;) {
    const step = judging.next();
    if (step.done) return { ok: true, value: step.value };
    if (performance.now() > deadline) {
      const { done, of } = step.value;
      const problem = `too large to judge under all conditions: it takes longer than ${seconds} seconds; stopped after ${done} of ${of}.`;
      return { ok: false, problem };
    }
  }
}

function failsUnder({ places }: UnderConditions): boolean {
  return places.some(
    ({ role, standings }) =>
      role === "receiver" && [...standings.values()].some(({ verdict }) => verdict.state === "fails"),
  );
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
