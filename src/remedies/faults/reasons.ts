/** Why a fault is suspected, in sentences. */
import type { Design } from "../../design/design.ts";
import { partById, quoted } from "../../design/lookup.ts";
import { list } from "../../sentences/phrases.ts";
import { SERVICE_NAMES, type Service } from "../../signal/carrier.ts";
import { type Observation, type Symptom, symptomKey } from "./symptoms.ts";

/** More names than this are counted, not listed. */
const MOST_NAMES = 4;

/** What speaks for and against: explained, left unexplained, and what should have failed but works. */
export function reasonsFor(
  design: Design,
  observations: readonly Observation[],
  symptoms: readonly Symptom[],
): readonly string[] {
  const predicted = new Map(symptoms.map((s) => [symptomKey(s), s.state]));
  const explained: Observation[] = [];
  const unexplained: Observation[] = [];
  const contradicted: Observation[] = [];
  const spared: Observation[] = [];
  for (const observation of observations) {
    const state = predicted.get(symptomKey(observation));
    if (state === undefined) continue;
    if (observation.works === true) (state === "works" ? spared : contradicted).push(observation);
    else (state === "works" ? unexplained : explained).push(observation);
  }
  const places = (those: readonly Observation[]) => placesOf(design, those);
  return [
    ...(explained.length > 0 ? [`It explains what is missing at ${places(explained)}.`] : []),
    ...(spared.length > 0 ? [`It leaves alone what works at ${places(spared)}.`] : []),
    ...(unexplained.length > 0
      ? [`Against it: it would not keep anything from ${places(unexplained)}.`]
      : []),
    ...(contradicted.length > 0
      ? [`Against it: it should be noticed at ${places(contradicted)} too, where all is well.`]
      : []),
  ];
}

/** "“TV 1” (Terrestrial TV) and “Receiver” (Satellite)", or how many. */
function placesOf(design: Design, observations: readonly Observation[]): string {
  const services = new Map<string, Service[]>();
  for (const { part, service } of observations) services.set(part, [...(services.get(part) ?? []), service]);
  if (services.size > MOST_NAMES) return `${services.size} places`;
  return list(
    [...services].map(
      ([part, those]) => `${quoted(partById(design, part))} (${list(those.map((s) => SERVICE_NAMES[s]))})`,
    ),
  );
}
