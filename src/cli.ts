/** Evaluates a design file without a browser: `npm run --silent check -- FILE [--json]`. */

import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import type { Design } from "./design/design.ts";
import { readDesign } from "./design/file.ts";
import { evaluateInSteps } from "./evaluate/evaluate.ts";
import type { Evaluation } from "./evaluate/evaluation.ts";
import { BUDGET, type Outcome, type Progress, type Steps, withinBudget } from "./evaluate/steps.ts";
import type { Report } from "./findings/finding.ts";
import { reportInSteps } from "./findings/report.ts";
import { messageOf } from "./sentences/finding.ts";
import { tunerSentence, verdictSentence } from "./sentences/verdict.ts";
import { SERVICE_NAMES } from "./signal/carrier.ts";
import { levelRange } from "./signal/readout.ts";

const USAGE = "Usage: npm run --silent check -- FILE [--json]";

export type CliResult = { readonly exitCode: 0 | 1 | 2; readonly stdout: string; readonly stderr: string };

/** Runs the command on its arguments; nothing is printed here, so that tests can read the result. */
export function run(args: readonly string[], limits: Partial<typeof LIMITS_OF_WORK> = {}): CliResult {
  const files = args.filter((a) => !a.startsWith("--"));
  const unknown = args.find((a) => a.startsWith("--") && a !== "--json");
  const file = files[0];
  if (unknown || !file || files.length > 1)
    return failed(unknown ? `Unknown option ${unknown}. ${USAGE}` : USAGE);
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    return failed(`${file}: cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  const read = readDesign(text);
  if (!read.ok) return failed(`${file}: ${read.problem}`);
  const worked = workedOut(read.design, { ...LIMITS_OF_WORK, ...limits });
  if (!worked.ok) return failed(`${file}: ${worked.problem}`);
  const { evaluation, result } = worked;
  const stdout = args.includes("--json")
    ? `${JSON.stringify(asJson(read.design, evaluation, result), null, 2)}\n`
    : asText(evaluation, result);
  return { exitCode: isFaulty(result) ? 1 : 0, stdout, stderr: "" };
}

/** Whether something is to be done: an error, or a receiver that does not get what it wants. */
function isFaulty({ findings, verdicts }: Report): boolean {
  return (
    findings.some((f) => f.severity === "error") ||
    verdicts.some((v) => v.role === "receiver" && v.state === "fails")
  );
}

/** What a file may cost: by counts, so that memory holds, and by the clock, so that a script goes on. */
const LIMITS_OF_WORK = { budget: BUDGET, seconds: 60 };

type WorkedOut =
  | { readonly ok: true; readonly evaluation: Evaluation; readonly result: Report }
  | { readonly ok: false; readonly problem: string };

function workedOut(design: Design, { budget, seconds }: typeof LIMITS_OF_WORK): WorkedOut {
  const deadline = performance.now() + seconds * 1000;
  const evaluation = untilDeadline(withinBudget(evaluateInSteps(design), budget), deadline);
  if (!evaluation.ok) return { ok: false, problem: tooLarge("evaluate", evaluation, seconds) };
  const result = untilDeadline(withinBudget(reportInSteps(evaluation.value), budget), deadline);
  if (!result.ok) return { ok: false, problem: tooLarge("report on", result, seconds) };
  return { ok: true, evaluation: evaluation.value, result: result.value };
}

type Ended<T> = Outcome<T> | { readonly ok: false; readonly reached: Progress; readonly isLate: true };

function untilDeadline<T>(steps: Steps<Outcome<T>>, deadline: number): Ended<T> {
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

function failed(problem: string): CliResult {
  return { exitCode: 2, stdout: "", stderr: `${problem}\n` };
}

/** Findings, worst first, then one line per receiver. */
function asText(evaluation: Evaluation, result: Report): string {
  const findings = result.findings.map((f) => `${f.severity}: ${messageOf(f, evaluation)} [${f.rule}]`);
  const receivers = result.verdicts
    .filter((v) => v.role === "receiver")
    .map(
      (v) =>
        `${v.state === "fails" ? "FAILS" : v.state}: ${labelOf(evaluation, v.part)}: ${verdictSentence(v, evaluation)}`,
    );
  const nothing = findings.length === 0 ? ["No findings."] : [];
  return `${[...findings, ...nothing, ...receivers].join("\n")}\n`;
}

function labelOf(evaluation: Evaluation, id: string): string {
  return evaluation.record(id)?.part.label || id;
}

function asJson(design: Design, evaluation: Evaluation, result: Report) {
  return {
    findings: result.findings.map((f) => {
      const { rule, severity, parts, wires, value, limit, unit } = f;
      return {
        rule,
        severity,
        parts,
        wires,
        message: messageOf(f, evaluation),
        ...(value === undefined ? {} : { value }),
        ...(limit === undefined ? {} : { limit }),
        ...(unit === undefined ? {} : { unit }),
      };
    }),
    receivers: result.verdicts
      .filter((v) => v.role === "receiver")
      .map((v) => ({
        id: v.part,
        label: labelOf(evaluation, v.part),
        works: v.state !== "fails",
        state: v.state,
        ...(v.marginDb === undefined ? {} : { marginDb: v.marginDb }),
        tuners: v.tuners.map((tuner) => ({
          wanted: tuner.wanted,
          got: tuner.got,
          why: tunerSentence(tuner, evaluation) ?? "",
        })),
        services: v.services.map(({ service, wanted, got, levelMin, levelMax, cnMin }) => ({
          name: SERVICE_NAMES[service],
          carriersWanted: wanted,
          carriersGot: got,
          levelMin,
          levelMax,
          cnMin,
        })),
      })),
    wires: design.wires.map((wire) => ({
      from: wire.from,
      to: wire.to,
      bands: evaluation.spectrum(wire).bands.flatMap((band) => {
        const range = levelRange(band);
        if (!range) return [];
        return [
          {
            service: SERVICE_NAMES[band.origin.service],
            origin: band.origin.key,
            fromMHz: band.grid.fromMHz,
            toMHz: band.grid.toMHz,
            levelMin: range.minDbuv,
            levelMax: range.maxDbuv,
          },
        ];
      }),
    })),
  };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { exitCode, stdout, stderr } = run(process.argv.slice(2));
  process.stdout.write(stdout);
  process.stderr.write(stderr);
  process.exitCode = exitCode;
}
