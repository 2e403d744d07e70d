/** What places are called where several stand together. */
import type { PartId } from "../../../design/design.ts";
import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { tellingNames } from "../../../words/tellingNames.ts";

export type PlaceName = {
  /** In full, to be read aloud. */
  readonly label: string;
  /** What tells it apart, with the word before a number: "Flat 3". */
  readonly name: string;
  /** What tells it apart, and nothing else: "3". */
  readonly short: string;
};

/** Names of neighbours, in the same order. */
export function placeNames(
  places: readonly FedPlace[],
  labelOf: (part: PartId) => string,
): readonly PlaceName[] {
  const labels = places.map(({ dwelling, key }) => dwelling ?? (labelOf(key) || key));
  const shorts = tellingNames(labels);
  // A bare number is a name in a small cell alone.
  const areNumbers = shorts.length > 0 && shorts.every((short) => /^\d/.test(short));
  return labels.map((label, n) => {
    const short = shorts[n] ?? label;
    const name = areNumbers ? `${wordBefore(short, label)} ${short}`.trim() : short;
    return { label, name: capital(name), short: capital(short) };
  });
}

function wordBefore(short: string, label: string): string {
  const words = label.trim().split(/\s+/);
  return words[words.indexOf(short.split(" ")[0] ?? "") - 1] ?? "";
}
