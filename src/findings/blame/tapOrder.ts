/** Taps or riser plates of one line that stand in the wrong order: those of least loss belong at the far end. */
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import type { Blamed } from "./culprit.ts";
import { isAmplifier, type Stage } from "./stages.ts";

/** Taps that differ by less stand in no order [dB]: less than one step of those that are sold. */
const STEP_DB = 1.5;

/**
 * The first tap of the line that a place hangs on, where most of its taps stand the wrong way round and in the right
 * order at least so much of the level would be put right [dB]. One culprit for all places: nobody changes one tap alone.
 */
export function wrongOrder(
  evaluation: Evaluation,
  stages: readonly Stage[],
  { side, leastDb }: { readonly side: "too little" | "too much"; readonly leastDb: number },
): Blamed | undefined {
  const own = stages.findLastIndex(
    ({ record, step }) => tapLossOf(record) !== undefined && !isTrunk(record, step.to),
  );
  const here = stages[own];
  if (!here) return undefined;
  const before = tapsBefore(stages.slice(0, own));
  const line = [...before, here.record, ...tapsBehind(evaluation, here.record)];
  const losses = line.map((record) => tapLossOf(record) ?? 0);
  if (!isTurnedRound(losses)) return undefined;
  const [first] = line;
  const [now = 0, sorted = 0] = [losses[before.length], losses.toSorted((a, b) => b - a)[before.length]];
  const excessDb = side === "too much" ? sorted - now : now - sorted;
  const trunk = first?.ports.find((p) => isTrunk(first, p.id));
  if (!first || !trunk || excessDb < Math.max(leastDb, STEP_DB)) return undefined;
  return { part: first.part.id, port: trunk.id, does: "wrong order", excessDb, amount: -now };
}

/** Loss from the line to the branch of a tap or riser plate [dB]; undefined for any other part. */
function tapLossOf({ kind, part }: PartRecord): number | undefined {
  const key = optionMeaning(kind, "tap loss");
  const value = key === undefined ? undefined : part.options[key];
  return typeof value === "number" ? value : undefined;
}

function isTrunk({ ports }: PartRecord, port: string): boolean {
  return ports.some((p) => p.id === port && p.side === "out" && p.role === "trunk");
}

/** Taps that the line has passed since it was last divided or amplified, the first of them first. */
function tapsBefore(stages: readonly Stage[]): readonly PartRecord[] {
  const from = stages.findLastIndex(
    (stage) => isAmplifier(stage) || (!isTrunk(stage.record, stage.step.to) && !isInLine(stage.record)),
  );
  return stages.slice(from + 1).flatMap(({ record }) => (tapLossOf(record) === undefined ? [] : [record]));
}

/** Taps that follow on the line until it ends, is divided or amplified. */
function tapsBehind(evaluation: Evaluation, start: PartRecord): readonly PartRecord[] {
  const found: PartRecord[] = [];
  let record: PartRecord | undefined = start;
  // No line is longer than there are parts.
  for (let guard = evaluation.records.length; record && guard > 0; guard--) {
    const here: PartRecord = record;
    const onwards = here.ports.find((p) => p.side === "out" && (isInLine(here) || isTrunk(here, p.id)));
    const end = onwards && here.joined[onwards.id];
    const next = end && evaluation.record(end[0]);
    if (!next || next.kind.family === "lift") break;
    if (tapLossOf(next) !== undefined && next !== start) found.push(next);
    record = next;
  }
  return found;
}

/** One way in and one way out. */
function isInLine({ ports }: PartRecord): boolean {
  return ports.filter((p) => p.side === "out").length === 1;
}

/**
 * Whether of all pairs of taps by far most stand the wrong way round. Of two taps, or where one alone stands out, that one is the
 * wrong one.
 */
function isTurnedRound(losses: readonly number[]): boolean {
  if (losses.length < 3) return false;
  let [wrong, right] = [0, 0];
  losses.forEach((first, i) => {
    for (const later of losses.slice(i + 1)) {
      if (later - first > STEP_DB) wrong++;
      if (first - later > STEP_DB) right++;
    }
  });
  return wrong > 2 * right;
}
