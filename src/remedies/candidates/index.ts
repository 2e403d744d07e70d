/** Candidates for what was found, the likeliest first. */
import type { RuleId } from "../../findings/facts.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Candidate, Idea } from "../candidate.ts";
import type { Site } from "../site.ts";
import { FIRST, IDEAS } from "./ideas.ts";

const ideasOf: Readonly<Partial<Record<RuleId, readonly Idea[]>>> = IDEAS;

/**
 * Candidates for some findings, each once. Those that most findings ask for come first, then those at a part that is
 * named as the culprit, then the likeliest: the cure of a common cause is wanted by all that follows from it.
 */
export function candidatesFor(site: Site, findings: readonly Finding[]): readonly Candidate[] {
  const found = new Map<string, { readonly one: Candidate; votes: number; readonly rank: number }>();
  findings.forEach((finding) => {
    const asked = new Set<string>();
    [...FIRST, ...(ideasOf[finding.rule] ?? [])].forEach((idea, rank) => {
      for (const one of idea(site, finding)) {
        if (asked.has(one.id)) continue;
        asked.add(one.id);
        const known = found.get(one.id);
        if (known) known.votes++;
        else found.set(one.id, { one, votes: 1, rank });
      }
    });
  });
  const culprits = new Set(findings.map((f) => f.parts[0]));
  const isNamed = ({ one }: { readonly one: Candidate }) => Number(culprits.has(one.step.place));
  return [...found.values()]
    .sort((a, b) => b.votes - a.votes || isNamed(b) - isNamed(a) || a.rank - b.rank)
    .map(({ one }) => one);
}
