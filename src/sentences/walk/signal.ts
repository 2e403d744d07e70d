/** The walk of a signal in sentences: for a screen reader, and beside the diagram. */

import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Loss } from "../../findings/walk/loss.ts";
import { type CarrierWay, type Need, type SignalQuestion, walkSignal } from "../../findings/walk/signal.ts";
import type { WayStep } from "../../findings/walk/step.ts";
import { serviceName } from "../../signal/carrier.ts";
import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { reasonClause } from "../missingWords.ts";
import { beside, labelled, nameOfBand, partName } from "../phrases.ts";
import { polarisationName } from "../planes.ts";

/** A way with what is said of it. */
export type ToldWay = Omit<CarrierWay, "steps" | "loss"> & {
  readonly steps: readonly (WayStep & { readonly words: string })[];
  readonly loss?: Loss & { readonly words: string };
  /** The whole of it: heading, switches, steps, and how it ends. */
  readonly lines: readonly string[];
};

export type ToldSignal = { readonly ways: readonly ToldWay[]; readonly lines: readonly string[] };

/** Walks carriers to a socket or receiver, and tells every step. */
export function tellSignal(evaluation: Evaluation, question: SignalQuestion): ToldSignal {
  const place = evaluation.record(question.part);
  if (!place) return { ways: [], lines: ["That part is no longer in the design."] };
  const ways = walkSignal(evaluation, question).map((way) => told(evaluation, question, way));
  return {
    ways,
    lines: ways.length > 0 ? ways.flatMap((way) => way.lines) : ["No source sends such carriers."],
  };
}

function told(evaluation: Evaluation, { part, service }: SignalQuestion, way: CarrierWay): ToldWay {
  const label = (text: string) => labelled(text, evaluation);
  const steps = way.steps.map((step, n) => ({ ...step, words: label(stepWords(step, way.steps[n - 1])) }));
  const loss = way.loss && { ...way.loss, words: label(lossWords(way.loss, part, evaluation)) };
  const port = evaluation.record(part)?.ports.find((p) => p.id === way.port)?.label ?? "";
  const socket = port === "" ? "" : `, ${port}`;
  const heading = `${way.name}, ${serviceName({ ...way, service })}, to ${partName(part)}${socket}: ${way.got ? "arrives" : "is lost"}.`;
  const lines = [
    label(heading),
    ...way.needs.map((need) => label(needWords(need))),
    ...steps.map((step, n) => `${n + 1}. ${step.words}`),
    ...endWords(way),
    ...(loss ? [loss.words] : []),
  ];
  const { loss: _, ...rest } = way;
  return { ...rest, steps, ...(loss ? { loss } : {}), lines };
}

/** A frequency that differs by less than this is the same one, but for rounding [MHz]. */
const SAME_MHZ = 0.001;

function stepWords(step: WayStep, before: WayStep | undefined): string {
  const quality = `C/(N+I) ${ratio(step.cniDb)}`;
  const behind = `${numeral(step.levelDbuv)} dBµV at ${numeral(step.centreMHz)} MHz, ${quality}`;
  if (!before || step.gainDb === null) return `${partName(step.part)}: starts with ${behind}.`;
  const moved = Math.abs(step.centreMHz - before.centreMHz) > SAME_MHZ;
  const did = [
    ...(step.userBand !== undefined && before.userBand === undefined
      ? [`puts it on user band ${step.userBand} and holds the level`]
      : [`${signed(step.gainDb)} dB`]),
    ...(moved ? [`${numeral(before.centreMHz)} to ${numeral(step.centreMHz)} MHz`] : []),
    ...(step.cutHere ? ["filters it out"] : []),
  ];
  return `${partName(step.part)}: ${did.join(", ")}; behind it ${behind}.`;
}

function needWords({ part, setting, now }: Need): string {
  const name = partName(part);
  if (now === setting) return `It comes while ${name} is set to ${setting}, as it is now.`;
  return `It comes only while ${name} is set to ${setting}; ${now === null ? "nobody feeds it now" : `it is set to ${now} now`}.`;
}

function endWords({ end, limits, requiredDb }: CarrierWay): readonly string[] {
  if (!end) return [];
  const within = limits
    ? `; ${numeralAsSet(limits.minDbuv)} to ${numeralAsSet(limits.maxDbuv)} dBµV are asked for`
    : "";
  const spare = end.marginDb >= 0 ? `${ratio(end.marginDb)} to spare` : `${ratio(-end.marginDb)} short`;
  return [
    `At the end ${numeral(end.levelDbuv)} dBµV${within}; C/(N+I) ${ratio(end.cniDb)}, ${numeral(requiredDb)} dB needed: ${spare}.`,
  ];
}

function ratio(db: number): string {
  return Number.isFinite(db) ? `${numeral(db)} dB` : "without any noise";
}

function signed(db: number): string {
  const text = numeral(Math.abs(db));
  return text === "0" ? "±0" : `${db > 0 ? "+" : "−"}${text}`;
}

/** Why it is lost, in one sentence. */
function lossWords(loss: Loss, receiver: string, evaluation: Evaluation): string {
  const name = partName(loss.part);
  switch (loss.why) {
    case "no way":
      return `No way leads from ${name} to ${partName(receiver)}.`;
    case "stopped": {
      if (loss.by === "loop") return `${name} lies on a loop and is not calculated.`;
      if (loss.by === "no supply") return `${name} has no supply and passes nothing on.`;
      const { polarisation, circular } = loss;
      const which = polarisation
        ? `: it is ${polarisationName({ polarisation, ...(circular ? { circular } : {}) })}`
        : "";
      return `${name} does not pass it on this way${which}.`;
    }
    case "cut":
      return `Removed: ${name} filters it out, since ${numeral(loss.centreMHz)} MHz is outside its range.`;
    case "noisy": {
      const figures = `${beside(loss.ratioDb, loss.requiredDb)} dB`;
      const needed = `${numeral(loss.requiredDb)} dB are needed`;
      if (loss.seen === "source") return `It leaves ${name} with a C/N of ${figures} already, and ${needed}.`;
      if (loss.seen === "part")
        return `Behind ${name} C/(N+I) is ${figures}, and ${needed}: too much noise for the level.`;
      return `Behind the tuner of ${name} C/(N+I) is ${figures}, and ${needed}: ${numeral(loss.levelDbuv)} dBµV are too few for its own noise.`;
    }
    case "disturbed": {
      const by =
        loss.by === "products"
          ? "it is overdriven, and its own products disturb"
          : loss.by === "unknown"
            ? "another signal disturbs it"
            : `there it meets ${nameOfBand(loss.by.signal)}`;
      return `Behind ${name} C/(N+I) is ${beside(loss.ratioDb, loss.requiredDb)} dB, and ${numeral(loss.requiredDb)} dB are needed: ${by}.`;
    }
    case "not for this receiver": {
      const why = loss.reason
        ? reasonClause(loss.reason, evaluation).one("it")
        : `${partName(receiver)} is set to no user band`;
      return `It arrives, but ${why}.`;
    }
    case "too weak":
    case "too strong": {
      const low = loss.why === "too weak";
      const from =
        loss.from === undefined
          ? ""
          : `; from ${partName(loss.from)} on it is ${low ? "below" : "above"} that`;
      return `${beside(loss.levelDbuv, loss.limitDbuv)} dBµV arrive, ${low ? "at least" : "at most"} ${numeralAsSet(loss.limitDbuv)} dBµV are asked for${from}.`;
    }
  }
}
