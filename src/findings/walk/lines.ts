/** The walk of a signal in sentences: for a screen reader, and beside the diagram. */

import { partName, round1 } from "../../sentences/phrases.ts";
import { SERVICE_NAMES, type Service } from "../../signal/carrier.ts";
import type { CarrierWay, Need } from "./signal.ts";
import type { BareStep } from "./step.ts";

/** A frequency that differs by less than this is the same one, but for rounding [MHz]. */
const SAME_MHZ = 0.001;

export function wordsOfStep(step: BareStep, before: BareStep | undefined): string {
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

/** Heading, switches, steps, and how it ends. `words` of the steps must be filled in. */
export function linesOfWay(
  place: { readonly part: string; readonly label: string; readonly service: Service },
  way: CarrierWay,
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
  if (now === setting) return `It comes while ${name} stands at ${setting}, as it does now.`;
  return `It comes only while ${name} stands at ${setting}; ${now === null ? "nobody feeds it now" : `it stands at ${now} now`}.`;
}

function endWords({ end, limits, requiredDb }: CarrierWay): readonly string[] {
  if (!end) return [];
  const within = limits ? `; ${limits.minDbuv} to ${limits.maxDbuv} dBµV are asked for` : "";
  const spare = end.marginDb >= 0 ? `${ratio(end.marginDb)} to spare` : `${ratio(-end.marginDb)} short`;
  return [
    `At the end ${round1(end.levelDbuv)} dBµV${within}; C/(N+I) ${ratio(end.cniDb)}, ${round1(requiredDb)} dB needed: ${spare}.`,
  ];
}

function ratio(db: number): string {
  return Number.isFinite(db) ? `${round1(db)} dB` : "without any noise";
}

function signed(db: number): string {
  const text = round1(Math.abs(db));
  return text === "0" ? "±0" : `${db > 0 ? "+" : "−"}${text}`;
}
