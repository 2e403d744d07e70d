/** How far mismatch on a carrier's way may move its level: by how much, and how often over frequency. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { TraceStep } from "../evaluate/trace.ts";
import { LIGHT_M_MHZ, type Ripple, reflectionOf, rippleOf } from "../rf/mismatch.ts";
import { stubRangeOf } from "../rf/stub.ts";
import type { Spectrum } from "../signal/band.ts";
import { gainDbAt } from "../signal/gain.ts";
import { remembered } from "../signal/remember.ts";
import { decouplingDb, passivePaths } from "./decoupling.ts";
import {
  knownReflections,
  type LateWave,
  type Reflection,
  reflectionAt,
  reflectionMHz,
} from "./reflection.ts";
import { partReturnLossDb } from "./returnLoss.ts";

export type WayRipple = Ripple & {
  /** From crest to crest of the largest part of it [MHz]; absent where no line lies between its ends. */
  readonly periodMHz?: number;
};

/** What is looked at of a step of a trace. */
export type Hop = Pick<TraceStep, "part" | "from" | "to" | "centreMHz" | "userBand">;

/**
 * Ripple of the level behind each of the steps, one after the other. Every pair of ends makes its own in its own phase,
 * so all that comes together adds as squares. At the last output a meter of 75 Ω is thought of, or the receiver that is there.
 * Behind a stage that holds its output level nothing is left of what came before.
 * Parts are looked at through the evaluation: give the whole one, not one that is watched.
 */
export function rippleAlong(whole: Evaluation, hops: readonly Hop[]): readonly WayRipple[] {
  let up = 0;
  let down = 0;
  let most = 0;
  let electricalM = 0;
  return hops.map((hop, n) => {
    const record = whole.record(hop.part);
    if (record && holdsLevel(record, hop)) {
      up = 0;
      down = 0;
      most = 0;
      electricalM = 0;
    }
    const waves = record ? wavesAt(whole, record, hop, n === hops.length - 1) : [];
    for (const wave of [...waves, ...(record ? deadEndWaves(record, hop) : [])]) {
      up += wave.upDb ** 2;
      down += wave.downDb ** 2;
      if (wave.downDb <= most) continue;
      most = wave.downDb;
      electricalM = wave.electricalM;
    }
    return {
      upDb: Math.sqrt(up),
      downDb: Math.sqrt(down),
      ...(electricalM > 0 ? { periodMHz: LIGHT_M_MHZ / (2 * electricalM) } : {}),
    };
  });
}

/** One standard deviation of a level that swings so far up and down in an unknown phase [dB]. */
export function deviationOf({ upDb, downDb }: Ripple): number {
  // A sine of the amplitude A deviates by A/√2.
  return Math.sqrt((upDb ** 2 + downDb ** 2) / 4);
}

function holdsLevel({ treatment }: PartRecord, { to, userBand }: Hop): boolean {
  return userBand !== undefined && treatment.stacks?.some((stack) => stack.to === to) === true;
}

/** What dead cable on a joint may make of the level beside what is calculated: its length is not known exactly. */
function deadEndWaves({ deadEnds, outputs }: PartRecord, { to, centreMHz }: Hop): readonly LateWave[] {
  return Object.entries(deadEnds).flatMap(([leg, { stub, loss }]) => {
    if (leg === to) return [];
    const lossDb = -gainDbAt(loss, centreMHz);
    const widthMHz = widthAt(outputs[to], centreMHz);
    return [{ ...stubRangeOf(stub, { centreMHz, widthMHz, lossDb }), electricalM: stub.electricalM }];
  });
}

function widthAt(spectrum: Spectrum | undefined, centreMHz: number): number {
  for (const { grid } of spectrum?.bands ?? []) {
    const i = grid.centre.indexOf(centreMHz);
    if (i >= 0) return grid.plan[grid.index[i] ?? 0]?.noiseMHz ?? 0;
  }
  return 0;
}

/** Below this a wave is not followed: 0.02 dB. */
const LEAST_SHARE = 0.002;

function wavesAt(whole: Evaluation, record: PartRecord, hop: Hop, isLast: boolean): readonly LateWave[] {
  const atMHz = reflectionMHz(hop.centreMHz);
  const key = `${hop.part} ${hop.from} ${hop.to} ${isLast}`;
  return remembered(knownReflections(whole, atMHz).waves, key, () =>
    newWaves(whole, record, { ...hop, centreMHz: atMHz }, isLast),
  );
}

function newWaves(
  whole: Evaluation,
  record: PartRecord,
  { from, to, centreMHz: atMHz }: Hop,
  isLast: boolean,
): readonly LateWave[] {
  const own = reflectionOf(partReturnLossDb(record));
  const waves: LateWave[] = [];
  /** Of what comes back the part itself sends some on again, in phase or against it. */
  const add = (share: number, { share: back, electricalM }: Reflection, again: number) => {
    if (share * back < LEAST_SHARE) return;
    const most = Math.min(1, (share * back) / (1 - Math.min(0.99, again * back)));
    const { upDb } = rippleOf((share * back) / (1 + again * back));
    waves.push({ upDb, downDb: rippleOf(most).downDb, electricalM });
  };
  if (record.ports.find((p) => p.id === to)?.medium !== "coax") return waves;
  // An output that is judged by itself: a meter there does not send back what the open socket would.
  if (!isLast || record.joined[to]) add(own, reflectionAt(whole, [record.part.id, to], atMHz), 0);
  if (from === null) return waves;
  const ways = passivePaths(record).filter((path) => path.from === from);
  const through = ways.find((path) => path.to === to);
  if (!through) return waves;
  const throughDb = gainDbAt(through.response, atMHz);
  for (const side of ways) {
    // What a dead leg sends back is in the level itself.
    if (side.to === to || record.deadEnds[side.to]) continue;
    const acrossDb = decouplingDb(record, [side.to, to], atMHz);
    if (acrossDb === undefined) continue;
    const share = 10 ** ((gainDbAt(side.response, atMHz) - throughDb - acrossDb) / 20);
    if (share >= LEAST_SHARE) add(share, reflectionAt(whole, [record.part.id, side.to], atMHz), own);
  }
  return waves;
}
