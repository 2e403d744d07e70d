/** What comes back at an output from all that is connected to it. */
import type { PortRef } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { type Ripple, reflectionOf } from "../rf/mismatch.ts";
import { gainDbAt } from "../signal/gain.ts";
import { remembered } from "../signal/remember.ts";
import { passivePaths } from "./decoupling.ts";
import { passiveNetworks } from "./passiveNetwork.ts";
import { partReturnLossDb } from "./returnLoss.ts";

export type Reflection = {
  /** Share of the voltage that comes back [0..1]. */
  readonly share: number;
  /** Length of line to where most of it comes from, as it looks to a wave [m]. */
  readonly electricalM: number;
};

/** Nothing is connected: all comes back, at once. */
const OPEN: Reflection = { share: 1, electricalM: 0 };
const NONE: Reflection = { share: 0, electricalM: 0 };

/**
 * Frequencies at which it is worked out, each for all below its bound [MHz]: cable loses slowly more upwards, and a
 * reflection is a matter of decibels.
 */
const BANDS = [
  { belowMHz: 150, atMHz: 100 },
  { belowMHz: 350, atMHz: 210 },
  { belowMHz: 900, atMHz: 600 },
] as const;
const TOP_MHZ = 1500;

/** The frequency that stands for one in reflections [MHz]. */
export function reflectionMHz(frequencyMHz: number): number {
  return BANDS.find(({ belowMHz }) => frequencyMHz < belowMHz)?.atMHz ?? TOP_MHZ;
}

/** What is known of reflections at one frequency while the passive side of a design stays: by part and port. */
type Known = {
  readonly reflections: Map<string, Reflection>;
  /** Late waves by part, input and output; kept here by whoever works them out. */
  readonly waves: Map<string, readonly Wave[]>;
};

/** A wave that arrives late: by how much it may move the level, and the line that it runs to and fro. */
export type Wave = Ripple & { readonly electricalM: number };

const networkOf = passiveNetworks<Known>(partReturnLossDb);

export function knownReflections(evaluation: Evaluation, atMHz: number): Known {
  return remembered(networkOf(evaluation).answers, atMHz, () => ({
    reflections: new Map(),
    waves: new Map(),
  }));
}

/**
 * What comes back at an output, at a frequency of `reflectionMHz`. Waves from several places meet in any phase, so they
 * add as powers. Behind an amplifier nothing comes back but from its own input.
 * Parts are looked at through the evaluation: give the whole one, not one that is watched.
 */
export function reflectionAt(evaluation: Evaluation, [part, port]: PortRef, atMHz: number): Reflection {
  const far = evaluation.record(part)?.joined[port];
  return far ? reflectionInto(evaluation, far, atMHz) : OPEN;
}

/** A list of what is still to be looked at instead of recursion: a chain may be thousands of parts long. */
function reflectionInto(evaluation: Evaluation, from: PortRef, atMHz: number): Reflection {
  const known = knownReflections(evaluation, atMHz).reflections;
  const open: PortRef[] = [from];
  for (let ref = open.at(-1); ref; ref = open.at(-1)) {
    const key = keyOf(ref);
    const former = known.get(key);
    if (former && former !== NOT_YET) {
      open.pop();
      continue;
    }
    const record = evaluation.record(ref[0]);
    const ends = record ? endsBehind(record, ref[1]) : [];
    const waiting = former ? [] : ends.filter((end) => !known.has(keyOf(end)));
    if (waiting.length > 0) {
      // Set before it is worked out: a loop then ends here instead of going on for ever.
      known.set(key, NOT_YET);
      open.push(...waiting);
      continue;
    }
    known.set(
      key,
      record ? reflectionBy(record, ref[1], atMHz, (end) => known.get(keyOf(end)) ?? NONE) : NONE,
    );
    open.pop();
  }
  return known.get(keyOf(from)) ?? NONE;
}

const NOT_YET: Reflection = { share: 0, electricalM: 0 };

function keyOf([part, port]: PortRef): string {
  return `${part}.${port}`;
}

function endsBehind(record: PartRecord, port: string): readonly PortRef[] {
  return passivePaths(record).flatMap(({ from, to }) => {
    const end = from === port ? record.joined[to] : undefined;
    return end ? [end] : [];
  });
}

function reflectionBy(
  record: PartRecord,
  port: string,
  atMHz: number,
  behind: (end: PortRef) => Reflection,
): Reflection {
  const own = reflectionOf(partReturnLossDb(record));
  let power = own ** 2;
  let most = own;
  let electricalM = 0;
  for (const { from, to, response } of passivePaths(record)) {
    if (from !== port) continue;
    const end = record.joined[to];
    const far = end ? behind(end) : OPEN;
    const share = far.share * reflectionOf(-2 * gainDbAt(response, atMHz));
    power += share ** 2;
    if (share <= most) continue;
    most = share;
    electricalM = far.electricalM + (record.treatment.electricalM ?? 0);
  }
  return { share: Math.min(1, Math.sqrt(power)), electricalM };
}
