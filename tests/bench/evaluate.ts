/**
 * How fast the evaluator is, as ratios measured in one run, so that the speed of the machine cancels out:
 * a full evaluation against the bare arithmetic that it cannot do without, and a small change against a full one.
 * Exits with 1 where a ratio is over its limit.
 */
import type { Design } from "../../src/design/design.ts";
import { setOption } from "../../src/design/edits/options.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import { largeDesign } from "./largeDesign.ts";
import { lowerQuartile, milliseconds, printRatios, type Ratio } from "./ratios.ts";

const PARTS = 1000;
const WARM_UP = 15;
const ROUNDS = 60;

const design = largeDesign(PARTS);
const first = evaluate(design);
const carriers = carriersAtOutputs(first);
const bare = bareAdditions(carriers);
const leaf = lastCable(design);

const times = { full: [] as number[], opened: [] as number[], bare: [] as number[], change: [] as number[] };
let evaluated = first;
let length = 20;
for (let round = 0; round < WARM_UP + ROUNDS; round++) {
  // As when a design is opened: not one object of it has been seen before, so nothing is remembered of it.
  const fresh = structuredClone(design);
  const opened = milliseconds(() => evaluate(fresh));
  const full = milliseconds(() => evaluate(design));
  const additions = milliseconds(bare);
  length = length === 20 ? 21 : 20;
  const edit = setOption(evaluated.design, leaf, "lengthM", length);
  if (!edit.ok) throw new Error(edit.reason);
  const change = milliseconds(() => {
    evaluated = evaluate(edit.design, evaluated);
  });
  if (round < WARM_UP) continue;
  times.opened.push(opened);
  times.full.push(full);
  times.bare.push(additions);
  times.change.push(change);
}
if (evaluated.recomputed === 0)
  throw new Error("The change near a leaf had no effect: nothing was measured.");

const [opened, full, additions, change] = [
  lowerQuartile(times.opened),
  lowerQuartile(times.full),
  lowerQuartile(times.bare),
  lowerQuartile(times.change),
];
const ratios: readonly Ratio[] = [
  { name: "opened anew / bare additions", value: opened / additions, atMost: 5 },
  { name: "evaluated again in full / bare additions", value: full / additions, atMost: 5 },
  { name: "change of one cable near a leaf / in full", value: change / full, atMost: 1 / 50 },
];
process.stdout.write(
  `Evaluation of ${design.parts.length} parts, ${design.wires.length} wires, ${carriers} carriers at outputs; ` +
    `lower quartiles of ${ROUNDS} rounds [ms]:\n` +
    `  opened anew ${opened.toFixed(2)}, in full ${full.toFixed(2)}, bare additions ${additions.toFixed(2)}, ` +
    `change ${change.toFixed(3)} (${evaluated.recomputed} parts worked out anew); ` +
    `in full / change ${(full / change).toFixed(0)}\n`,
);
process.exitCode = printRatios(ratios) ? 0 : 1;

/** Carriers of all bands at all outputs: for each of them the evaluator owes at least one level. */
function carriersAtOutputs(evaluation: Evaluation): number {
  let count = 0;
  for (const record of evaluation.records)
    for (const spectrum of Object.values(record.outputs))
      for (const band of spectrum.bands) count += band.level.length;
  return count;
}

/** Power sums of two levels in decibels over flat arrays, one for every carrier. */
function bareAdditions(count: number): () => void {
  const a = Float64Array.from({ length: count }, (_, i) => 40 + (i % 400) / 10);
  const b = Float64Array.from({ length: count }, (_, i) => 70 - (i % 300) / 10);
  const sum = new Float64Array(count);
  return () => {
    for (let i = 0; i < count; i++) {
      sum[i] = 10 * Math.log10(10 ** ((a[i] ?? 0) / 10) + 10 ** ((b[i] ?? 0) / 10));
    }
  };
}

/** The cable nearest to the last receivers: of what hangs on it, there is little. */
function lastCable(of: Design): string {
  const cable = of.parts.findLast((p) => p.kind === "cable");
  if (!cable) throw new Error("The large design has no cable.");
  return cable.id;
}
