/** How well a part keeps two of its outputs apart. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Path, SignalTreatment } from "../parts/contract.ts";
import { gainDbAt } from "../signal/gain.ts";
import { remembered } from "../signal/remember.ts";

/** Two outputs of one part. */
export type OutputPair = readonly [port: string, port: string];

/**
 * Loss from one output of a part to another [dB]; undefined where nothing worth speaking of gets across.
 * What the part declares, but between the line that goes on and a branch never less than the loss of that branch: a
 * coupler without any directivity still divides as it does forwards. Without a declared figure two passive ways from
 * one input are as good as the losses of both: a filter, or wires that are simply joined. What parts behind an
 * amplifier inside is not known.
 */
export function decouplingDb(
  record: PartRecord,
  [a, b]: OutputPair,
  frequencyMHz: number,
): number | undefined {
  const declared = record.treatment.isolationDb;
  const trunks = [a, b].filter((port) => roleOf(record, port) === "trunk");
  if (declared !== undefined && trunks.length === 0) return declared;
  const common = passivePaths(record).filter((path) => path.to === a && !path.from.startsWith("#"));
  let least: number | undefined;
  for (const one of common)
    for (const other of passivePaths(record)) {
      if (other.to !== b || other.from !== one.from) continue;
      const losses = [one, other].map((path) => -gainDbAt(path.response, frequencyMHz));
      const [lossA = 0, lossB = 0] = losses;
      const branch = trunks.length === 2 ? 0 : trunks[0] === a ? lossB : lossA;
      const db = declared === undefined ? lossA + lossB : Math.max(declared, branch);
      if (least === undefined || db < least) least = db;
    }
  return least;
}

/** Ways that let signals back: without noise of their own, a rating or an oscillator. None on a loop. */
export function passivePaths(record: PartRecord): readonly Path[] {
  if (record.looped) return [];
  const { treatment } = record;
  return remembered(passive, treatment, () => (treatment.paths ?? []).filter(isPassive));
}

const passive = new WeakMap<SignalTreatment, readonly Path[]>();

/** Lets signals back as it lets them through. */
export function isPassive(path: Path): boolean {
  return path.noiseFigureDb === undefined && path.rating === undefined && !path.loMHz;
}

function roleOf(record: PartRecord, port: string): string | undefined {
  return record.ports.find((p) => p.id === port)?.role;
}
