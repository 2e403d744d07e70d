import { matchSorter } from "match-sorter";
import { CATALOGUE } from "../../../parts/catalogue.ts";
import type { PartKind } from "../../../parts/contract.ts";

/** Kinds that fit what was typed, best first: by name before keywords before summary; all for nothing typed. */
export function foundKinds(query: string): readonly PartKind[] {
  const words = query.trim();
  if (words === "") return CATALOGUE;
  return matchSorter(CATALOGUE, words, {
    keys: ["name", { key: "keywords", maxRanking: matchSorter.rankings.CONTAINS }, "summary"],
    threshold: matchSorter.rankings.CONTAINS,
  });
}
