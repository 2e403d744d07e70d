/** What becomes of a receiver or an outlet between two designs, in a sentence. */

import type { ServiceVerdict } from "../findings/finding.ts";
import type { PlaceChange } from "../remedies/compare.ts";
import { serviceName } from "../signal/carrier.ts";
import { numeral } from "../words/numbers.ts";

/** "Satellite: 80 of 80 before, 40 of 80 after." */
export function placeChangeSentence({ change, services }: PlaceChange): string {
  if (change === "removed") return "Is removed.";
  if (change === "added") return "Is new.";
  const moved = services.filter((s) => s.change !== "same");
  if (moved.length === 0) return "Stays as it is.";
  const words = moved.map(
    (s) =>
      `${serviceName(s.after ?? s.before ?? s)}: ${gotWords(s.before)} before, ${gotWords(s.after)} after`,
  );
  return `${words.join("; ")}.`;
}

function gotWords(verdict: ServiceVerdict | undefined): string {
  if (!verdict) return "nothing";
  const { got, wanted } = verdict;
  if (wanted === 1) return got === 1 ? "the only carrier" : "nothing";
  return `${numeral(got)} of ${numeral(wanted)}`;
}
