import { matchSorter } from "match-sorter";
import { GLOSSARY, type GlossaryEntry } from "../../../sentences/glossary.ts";

/** Entries that fit what was typed, those whose term fits first; all, by the alphabet, for nothing typed. */
export function foundTerms(query: string): readonly GlossaryEntry[] {
  const words = query.trim();
  if (words === "") return GLOSSARY;
  return matchSorter<GlossaryEntry>(GLOSSARY, words, {
    keys: [(entry) => [...entry.terms], "meaning"],
    threshold: matchSorter.rankings.CONTAINS,
  });
}
