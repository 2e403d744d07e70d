/** The step at which a signal is lost, and why, in words. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { reasonClause } from "../../sentences/missingWords.ts";
import { bandName, partName, round1 } from "../../sentences/phrases.ts";
import type { Choice } from "./choice.ts";
import type { Destination } from "./destination.ts";
import type { CarrierWay } from "./signal.ts";
import type { BareStep } from "./step.ts";

export type LossReason =
  /** No way leads there at all. */
  | "no way"
  /** A part does not hand it on. */
  | "stopped"
  /** A filter takes it away. */
  | "cut"
  | "noisy"
  | "disturbed"
  /** There, but the receiver cannot use or have it. */
  | "not for this receiver"
  /** Outside the limits at the end. */
  | "too weak"
  | "too strong";

export type Loss = {
  /** Place in the steps; their number where it happens behind the last one, at the receiver. */
  readonly step: number;
  readonly part: PartId;
  readonly why: LossReason;
  /** One sentence. */
  readonly words: string;
};

type Walked = {
  readonly receiver: PartRecord;
  readonly choice: Choice;
  readonly destination: Destination;
  readonly steps: readonly BareStep[];
  readonly end: CarrierWay["end"];
  readonly limits: CarrierWay["limits"];
};

/** The first of these that holds: it does not come, is cut, too noisy, of no use to the receiver, out of its limits. */
export function lossOf(evaluation: Evaluation, walked: Walked): Loss | undefined {
  if (!walked.destination.arrives) return notComing(evaluation, walked);
  return (
    cutOnTheWay(walked) ?? spoiled(evaluation, walked) ?? refused(evaluation, walked) ?? outOfLimits(walked)
  );
}

function notComing(evaluation: Evaluation, { receiver, choice, destination, steps }: Walked): Loss {
  const here = partName(receiver.part.id);
  const { seen } = destination;
  const next = seen && evaluation.record(seen.next);
  if (!next)
    return {
      step: 0,
      part: choice.source,
      why: "no way",
      words: `No way leads from ${partName(choice.source)} to ${here}.`,
    };
  const name = partName(next.part.id);
  const polarisation = /\/([VH])$/.exec(choice.carrier.origin)?.[1];
  const which = polarisation ? `: it is ${polarisation === "H" ? "horizontal" : "vertical"}` : "";
  const words = next.looped
    ? `${name} lies on a loop and is not computed.`
    : next.powered
      ? `${name} does not hand it on this way${which}.`
      : `${name} has no supply and hands nothing on.`;
  return { step: steps.length, part: next.part.id, why: "stopped", words };
}

function cutOnTheWay({ steps }: Walked): Loss | undefined {
  const step = steps.findIndex((s) => s.cutHere);
  const at = steps[step];
  if (!at) return undefined;
  const words = `${partName(at.part)} filters it out: ${round1(at.centreMHz)} MHz is outside what it passes.`;
  return { step, part: at.part, why: "cut", words };
}

/** Where C/(N+I) falls below the need for good; at the end also behind the tuner's own noise. */
function spoiled(evaluation: Evaluation, walked: Walked): Loss | undefined {
  const { steps, choice, end, receiver } = walked;
  const step = firstForGood(steps, (s) => s.marginDb < 0);
  const at = steps[step];
  const needed = `${round1(choice.requiredDb)} dB are needed`;
  if (at) {
    const noisy = at.cnDb < choice.requiredDb;
    const figure = `Behind ${partName(at.part)} C/(N+I) is ${round1(at.cniDb)} dB, and ${needed}`;
    const words = noisy
      ? step === 0
        ? `It leaves ${partName(at.part)} with a C/N of ${round1(at.cnDb)} dB already, and ${needed}.`
        : `${figure}: too much noise for the level.`
      : `${figure}: ${disturberOf(evaluation.record(at.part), choice)}.`;
    return { step, part: at.part, why: noisy ? "noisy" : "disturbed", words };
  }
  if (!end || end.marginDb >= 0) return undefined;
  return {
    step: steps.length,
    part: receiver.part.id,
    why: "noisy",
    words: `Behind the tuner of ${partName(receiver.part.id)} C/(N+I) is ${round1(end.cniDb)} dB, and ${needed}: ${round1(end.levelDbuv)} dBµV are too few for its own noise.`,
  };
}

function disturberOf(record: PartRecord | undefined, { carrier }: Choice): string {
  const meeting = record?.meetings.find(
    (m) =>
      m.victim.origin.key === carrier.origin &&
      m.carriers.some((i) => m.victim.grid.index[i] === carrier.index),
  );
  if (meeting) return `there it meets ${bandName(meeting.other)}`;
  const overdriven = record?.drives.some((d) => d.levelDbuv > d.allowedDbuv);
  return overdriven ? "it is overdriven, and its own products disturb" : "another signal disturbs it";
}

/** It comes to the door, but the receiver cannot use or have it. */
function refused(
  evaluation: Evaluation,
  { choice: { result }, receiver, destination, steps }: Walked,
): Loss | undefined {
  if (!result || result.got) return undefined;
  const unset = result.why === "absent" && destination.arrives?.band.stack;
  const why = unset
    ? `${partName(receiver.part.id)} is set to no user band`
    : reasonClause(result.reason, evaluation).one("it");
  return {
    step: steps.length,
    part: result.culprit?.part ?? receiver.part.id,
    why: "not for this receiver",
    words: `It arrives, but ${why}.`,
  };
}

function outOfLimits({ steps, end, limits, receiver }: Walked): Loss | undefined {
  if (!end || !limits) return undefined;
  const { minDbuv, maxDbuv } = limits;
  const low = end.levelDbuv < minDbuv;
  if (!low && end.levelDbuv <= maxDbuv) return undefined;
  // The step from which on the level stays beyond the limit: that is where something must be done at the latest.
  const step = firstForGood(steps, (s) => (low ? s.levelDbuv < minDbuv : s.levelDbuv > maxDbuv));
  const at = steps[step];
  const limit = low ? `at least ${minDbuv}` : `at most ${maxDbuv}`;
  return {
    step: at ? step : steps.length,
    part: at?.part ?? receiver.part.id,
    why: low ? "too weak" : "too strong",
    words: `${round1(end.levelDbuv)} dBµV arrive, ${limit} dBµV are asked for${at ? `; from ${partName(at.part)} on it is ${low ? "below" : "above"} that` : ""}.`,
  };
}

/** The first step from which on something holds up to the end; −1 where it does not hold at the end. */
function firstForGood(steps: readonly BareStep[], holds: (step: BareStep) => boolean): number {
  let first = -1;
  for (let n = steps.length - 1; n >= 0; n--) {
    const step = steps[n];
    if (!step || !holds(step)) break;
    first = n;
  }
  return first;
}
