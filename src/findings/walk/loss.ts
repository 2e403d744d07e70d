/** The step at which a signal is lost, and why. */

import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { Polarisation } from "../../signal/carrier.ts";
import { type BandFacts, bandFactsOf } from "../bandFacts.ts";
import { uselessBy } from "../handedOn.ts";
import { isBeyond } from "../limits.ts";
import type { MissingReason } from "../missing.ts";
import type { Choice } from "./choice.ts";
import type { Destination } from "./destination.ts";
import type { CarrierWay } from "./signal.ts";
import type { WayStep } from "./step.ts";

export type Loss = {
  /** Place in the steps; their number where it happens behind the last one, at the receiver. */
  readonly step: number;
  readonly part: PartId;
} & LossReason;

export type LossReason =
  /** No way leads there at all. */
  | { readonly why: "no way" }
  /** A part does not hand it on: it lies on a loop, has no supply, or has no way for it. */
  | {
      readonly why: "stopped";
      readonly by: "loop" | "no supply" | "no way";
      readonly polarisation?: Polarisation;
      readonly circular?: true;
    }
  /** A filter takes it away. */
  | { readonly why: "cut"; readonly centreMHz: number }
  /** `seen`: too noisy when it leaves its source, behind a part, or only behind the receiver's tuner. */
  | {
      readonly why: "noisy";
      readonly seen: "source" | "part" | "tuner";
      readonly ratioDb: number;
      readonly requiredDb: number;
      readonly levelDbuv: number;
    }
  | {
      readonly why: "disturbed";
      readonly ratioDb: number;
      readonly requiredDb: number;
      readonly by: { readonly signal: BandFacts } | "products" | "unknown";
    }
  /** There, but the receiver cannot use or have it; `reason` absent: it is set to no user band. */
  | { readonly why: "not for this receiver"; readonly reason?: MissingReason }
  /** Outside the limits at the end. */
  | {
      readonly why: "too weak" | "too strong";
      readonly levelDbuv: number;
      readonly limitDbuv: number;
      /** From this part on; absent where it is so only at the end. */
      readonly from?: PartId;
    };

type Walked = {
  readonly receiver: PartRecord;
  readonly choice: Choice;
  readonly destination: Destination;
  readonly steps: readonly WayStep[];
  readonly end: CarrierWay["end"];
  readonly limits: CarrierWay["limits"];
};

/** The first of these that holds: it does not come, is cut, too noisy, of no use to the receiver, out of its limits. */
export function lossOf(evaluation: Evaluation, walked: Walked): Loss | undefined {
  if (!walked.destination.arrives) return notComing(evaluation, walked);
  return cutOnTheWay(walked) ?? spoiled(evaluation, walked) ?? refused(walked) ?? outOfLimits(walked);
}

function notComing(evaluation: Evaluation, { choice, destination, steps }: Walked): Loss {
  const { seen } = destination;
  const next = seen && evaluation.record(seen.next);
  if (!next) return { step: 0, part: choice.source, why: "no way" };
  const by = next.looped ? "loop" : next.powered ? "no way" : "no supply";
  const { polarisation, circular } = choice;
  return {
    step: steps.length,
    part: next.part.id,
    why: "stopped",
    by,
    ...(polarisation ? { polarisation } : {}),
    ...(circular ? { circular } : {}),
  };
}

function cutOnTheWay({ steps }: Walked): Loss | undefined {
  const step = steps.findIndex((s) => s.cutHere);
  const at = steps[step];
  return at && { step, part: at.part, why: "cut", centreMHz: at.centreMHz };
}

/** Where C/(N+I) falls below the need for good; at the end also behind the tuner's own noise. */
function spoiled(evaluation: Evaluation, walked: Walked): Loss | undefined {
  const { steps, choice, end, receiver } = walked;
  const { requiredDb } = choice;
  const step = firstForGood(steps, (s) => s.marginDb < 0);
  const at = steps[step];
  if (at) {
    const { part, levelDbuv } = at;
    if (at.cnDb >= requiredDb) {
      const by = disturberOf(evaluation.record(part), choice);
      return { step, part, why: "disturbed", ratioDb: at.cniDb, requiredDb, by };
    }
    return step === 0
      ? { step, part, why: "noisy", seen: "source", ratioDb: at.cnDb, requiredDb, levelDbuv }
      : { step, part, why: "noisy", seen: "part", ratioDb: at.cniDb, requiredDb, levelDbuv };
  }
  if (!end || end.marginDb >= 0) return undefined;
  return {
    step: steps.length,
    part: receiver.part.id,
    why: "noisy",
    seen: "tuner",
    ratioDb: end.cniDb,
    requiredDb,
    levelDbuv: end.levelDbuv,
  };
}

function disturberOf(
  record: PartRecord | undefined,
  { carrier }: Choice,
): Extract<LossReason, { why: "disturbed" }>["by"] {
  const meeting = record?.meetings.find(
    (m) =>
      m.victim.origin.key === carrier.origin &&
      m.carriers.some((i) => m.victim.grid.index[i] === carrier.index),
  );
  if (meeting) return { signal: bandFactsOf(meeting.other) };
  return record?.drives.some((d) => d.levelDbuv > d.allowedDbuv) ? "products" : "unknown";
}

/** It comes to the door, but the receiver cannot use or have it; at an outlet no usual tuner could. */
function refused({ choice, receiver, destination, steps }: Walked): Loss | undefined {
  const { result } = choice;
  if (!result) {
    const reason = uselessAtSocket(receiver, destination);
    return reason && { step: steps.length, part: receiver.part.id, why: "not for this receiver", reason };
  }
  if (result.got) return undefined;
  const isUnset = result.why === "absent" && destination.arrives?.band.stack;
  return {
    step: steps.length,
    part: result.culprit?.part ?? receiver.part.id,
    why: "not for this receiver",
    ...(isUnset ? {} : { reason: result.reason }),
  };
}

/** What keeps a usual tuner at a socket from what arrives there; undefined where nothing does. */
export function uselessAtSocket(outlet: PartRecord, { arrives }: Destination): MissingReason | undefined {
  if (!arrives) return undefined;
  const { band, i, at } = arrives;
  return uselessBy(outlet, { port: at.port, band, i });
}

function outOfLimits({ steps, end, limits, receiver }: Walked): Loss | undefined {
  if (!end || !limits) return undefined;
  const { levelDbuv } = end;
  const { minDbuv, maxDbuv } = limits;
  const low = isBeyond(minDbuv - levelDbuv);
  if (!low && !isBeyond(levelDbuv - maxDbuv)) return undefined;
  // The step from which on the level stays beyond the limit: that is where something must be done at the latest.
  const step = firstForGood(steps, (s) => (low ? s.levelDbuv < minDbuv : s.levelDbuv > maxDbuv));
  const at = steps[step];
  return {
    step: at ? step : steps.length,
    part: at?.part ?? receiver.part.id,
    why: low ? "too weak" : "too strong",
    levelDbuv,
    limitDbuv: low ? minDbuv : maxDbuv,
    ...(at ? { from: at.part } : {}),
  };
}

/** The first step from which on something holds up to the end; −1 where it does not hold at the end. */
function firstForGood(steps: readonly WayStep[], holds: (step: WayStep) => boolean): number {
  let first = -1;
  for (let n = steps.length - 1; n >= 0; n--) {
    const step = steps[n];
    if (!step || !holds(step)) break;
    first = n;
  }
  return first;
}
