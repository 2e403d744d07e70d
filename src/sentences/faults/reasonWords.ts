/** Why a fault is suspected, and what speaks against it, in sentences. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Plane } from "../../findings/missing.ts";
import { planeKey } from "../../findings/wanted.ts";
import type { Reasons } from "../../remedies/faults/diagnose.ts";
import { planeTests } from "../../remedies/faults/planeTests.ts";
import type { SymptomPlace } from "../../remedies/faults/symptoms.ts";
import { labelled, list, plainLabelOf } from "../phrases.ts";
import { planesWords } from "../planes.ts";
import { serviceNameIn } from "../serviceWords.ts";

/** More names than this are counted, not listed. */
const MOST_NAMES = 4;

export function reasonSentences(
  { explained, spared, unexplained, contradicted }: Reasons,
  evaluation: Evaluation,
): readonly string[] {
  const places = (those: readonly SymptomPlace[]) => placesWords(those, evaluation);
  return [
    ...(explained.length > 0 ? [`It explains what is missing at ${places(explained)}.`] : []),
    ...(spared.length > 0 ? [`It does not affect ${places(spared)}.`] : []),
    ...(unexplained.length > 0 ? [`Against it: it would take nothing from ${places(unexplained)}.`] : []),
    ...(contradicted.length > 0
      ? [`Against it: something would be missing at ${places(contradicted)} too, where all works.`]
      : []),
  ];
}

/** "“TV 1” (Terrestrial TV) and “Receiver” (Satellite)", or how many. */
function placesWords(those: readonly SymptomPlace[], evaluation: Evaluation): string {
  const seen = new Map<string, string[]>();
  for (const place of those) {
    const words = seen.get(place.part) ?? [];
    words.push(symptomName(place, evaluation));
    seen.set(place.part, words);
  }
  if (seen.size > MOST_NAMES) return `${seen.size} places`;
  const label = (id: string) => plainLabelOf(evaluation, id);
  return list([...seen].map(([part, words]) => `“${label(part)}” (${list(words)})`));
}

/** "Satellite", "high horizontal of “Dish 2”", "tuner 2". */
export function symptomName(place: SymptomPlace, evaluation: Evaluation): string {
  if (place.tuner !== undefined) return `tuner ${place.tuner}`;
  const plane = place.plane && planeTests(evaluation).find((t) => planeKey(t.plane) === place.plane);
  return plane ? planeName(plane.plane, evaluation) : serviceNameIn(evaluation, place.service);
}

/** "high horizontal", "high horizontal of “Dish 2”" where there are several dishes. */
export function planeName(plane: Plane, evaluation: Evaluation): string {
  return labelled(planesWords([plane], evaluation), evaluation);
}
