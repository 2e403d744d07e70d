/** Evaluates a design file without a browser: `npm run --silent check -- FILE [--json]`. */
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import type { Design } from "./design/design.ts";
import { readDesign } from "./design/file.ts";
import { evaluate } from "./evaluate/evaluate.ts";
import type { Evaluation } from "./evaluate/evaluation.ts";
import type { Report } from "./findings/finding.ts";
import { report } from "./findings/report.ts";
import { SERVICE_NAMES } from "./signal/carrier.ts";
import { levelRange } from "./signal/readout.ts";

const USAGE = "Usage: npm run --silent check -- FILE [--json]";

export type CliResult = { readonly exitCode: 0 | 1 | 2; readonly stdout: string; readonly stderr: string };

/** Runs the command on its arguments; nothing is printed here, so that tests can read the result. */
export function run(args: readonly string[]): CliResult {
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
  const evaluation = evaluate(read.design);
  const result = report(evaluation);
  const stdout = args.includes("--json")
    ? `${JSON.stringify(asJson(read.design, evaluation, result), null, 2)}\n`
    : asText(evaluation, result);
  return { exitCode: result.findings.some((f) => f.severity === "error") ? 1 : 0, stdout, stderr: "" };
}

function failed(problem: string): CliResult {
  return { exitCode: 2, stdout: "", stderr: `${problem}\n` };
}

/** Findings, worst first, then one line per receiver. */
function asText(evaluation: Evaluation, result: Report): string {
  const findings = result.findings.map((f) => `${f.severity}: ${f.message} [${f.rule}]`);
  const receivers = result.verdicts
    .filter((v) => v.role === "receiver")
    .map((v) => `${v.works ? "works" : "FAILS"}: ${labelOf(evaluation, v.part)}: ${v.sentence}`);
  const nothing = findings.length === 0 ? ["No findings."] : [];
  return `${[...findings, ...nothing, ...receivers].join("\n")}\n`;
}

function labelOf(evaluation: Evaluation, id: string): string {
  return evaluation.record(id)?.part.label || id;
}

function asJson(design: Design, evaluation: Evaluation, result: Report) {
  return {
    findings: result.findings.map(({ rule, severity, parts, wires, message, value, limit, unit }) => ({
      rule,
      severity,
      parts,
      wires,
      message,
      ...(value === undefined ? {} : { value }),
      ...(limit === undefined ? {} : { limit }),
      ...(unit === undefined ? {} : { unit }),
    })),
    receivers: result.verdicts
      .filter((v) => v.role === "receiver")
      .map((v) => ({
        id: v.part,
        label: labelOf(evaluation, v.part),
        works: v.works,
        services: v.services.map(({ reasons: _, ...service }) => service),
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
