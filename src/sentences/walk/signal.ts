/** The walk of a signal in sentences: for a screen reader, and beside the diagram. */

import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type CarrierWay, type Need, type SignalQuestion, walkSignal } from "../../findings/walk/signal.ts";
import type { WayStep } from "../../findings/walk/step.ts";
import { SERVICE_NAMES, type Service } from "../../signal/carrier.ts";
import { besideLimit } from "../figures.ts";
import { partName, round1, withLabels } from "../phrases.ts";

/** A step with what is said of it. */
export type ToldWayStep = WayStep & { readonly words: string };

/** How one carrier comes, or fails to come, with what is said of it. */
export type ToldWay = Omit<CarrierWay, "steps"> & {
  readonly steps: readonly ToldWayStep[];
  /** The way in sentences, for whoever cannot see a diagram. */
  readonly lines: readonly string[];
};

export type ToldSignal = { readonly ways: readonly ToldWay[]; readonly lines: readonly string[] };

/** Walks carriers of a service to a socket or receiver, and tells every step. */
export function tellSignal(evaluation: Evaluation, question: SignalQuestion): ToldSignal {
  const record = evaluation.record(question.part);
  if (!record) return { ways: [], lines: ["That part is no longer in the design."] };
  const label = (text: string) => withLabels(text, (id) => evaluation.record(id)?.part.label || id);
  const ways = walkSignal(evaluation, question).map((way): ToldWay => {
    const { steps, loss } = way;
    const told = {
      ...way,
      steps: steps.map((step, n) => ({ ...step, words: label(wordsOfStep(step, steps[n - 1])) })),
      ...(loss ? { loss: { ...loss, words: label(loss.words) } } : {}),
    };
    const port = record.ports.find((p) => p.id === way.port)?.label ?? "";
    const place = { part: question.part, label: port, service: question.service };
    return { ...told, lines: linesOfWay(place, told).map(label) };
  });
  return {
    ways,
    lines: ways.length > 0 ? ways.flatMap((way) => way.lines) : ["No source sends such carriers."],
  };
}

/** A frequency that differs by less than this is the same one, but for rounding [MHz]. */
const SAME_MHZ = 0.001;

function wordsOfStep(step: WayStep, before: WayStep | undefined): string {
  const quality = `C/(N+I) ${ratio(step.cniDb)}`;
  const behind = `${round1(step.levelDbuv)} dBµV at ${round1(step.centreMHz)} MHz, ${quality}`;
  if (!before || step.gainDb === null) return `${partName(step.part)}: starts with ${behind}.`;
  const moved = Math.abs(step.centreMHz - before.centreMHz) > SAME_MHZ;
  const did = [
    ...(step.userBand !== undefined && before.userBand === undefined
      ? [`puts it on user band ${step.userBand} and holds the level`]
      : [`${signed(step.gainDb)} dB`]),
    ...(moved ? [`${round1(before.centreMHz)} to ${round1(step.centreMHz)} MHz`] : []),
    ...(step.cutHere ? ["filters it out"] : []),
  ];
  return `${partName(step.part)}: ${did.join(", ")}; behind it ${behind}.`;
}

/** Heading, switches, steps, and how it ends. */
function linesOfWay(
  place: { readonly part: string; readonly label: string; readonly service: Service },
  way: Omit<ToldWay, "lines">,
): readonly string[] {
  const socket = place.label === "" ? "" : `, ${place.label}`;
  return [
    `${way.name}, ${SERVICE_NAMES[place.service]}, to ${partName(place.part)}${socket}: ${way.got ? "arrives" : "is lost"}.`,
    ...way.needs.map(needWords),
    ...way.steps.map((step, n) => `${n + 1}. ${step.words}`),
    ...endWords(way),
    ...(way.loss ? [way.loss.words] : []),
  ];
}

function needWords({ part, setting, now }: Need): string {
  const name = partName(part);
  if (now === setting) return `It comes while ${name} is at ${setting}, as it is now.`;
  return `It comes only while ${name} is at ${setting}; ${now === null ? "nobody feeds it now" : `it is at ${now} now`}.`;
}

function endWords({
  end,
  limits,
  requiredDb,
}: Pick<CarrierWay, "end" | "limits" | "requiredDb">): readonly string[] {
  if (!end) return [];
  const within = limits ? `, where ${limits.minDbuv} to ${limits.maxDbuv} dBµV are asked for` : "";
  const [cni, needed] = besideLimit(end.cniDb, requiredDb);
  const quality = Number.isFinite(end.cniDb) ? `${cni} dB` : ratio(end.cniDb);
  const spare = end.marginDb >= 0 ? `${ratio(end.marginDb)} to spare` : `${ratio(-end.marginDb)} short`;
  return [
    `At the end ${round1(end.levelDbuv)} dBµV${within}. C/(N+I) is ${quality} and ${needed} dB are needed: ${spare}.`,
  ];
}

function ratio(db: number): string {
  return Number.isFinite(db) ? `${round1(db)} dB` : "without any noise";
}

function signed(db: number): string {
  const text = round1(Math.abs(db));
  return text === "0" ? "±0" : `${db > 0 ? "+" : "−"}${text}`;
}
