import type { PartId } from "../../design/design.ts";
import { carriedFrequencies } from "../carriedFrequencies.ts";
import type { Draft } from "../finding.ts";
import { flatOf, type IsolationPair, worstIsolation } from "../isolation.ts";
import { isBeyond, keptSource, type Profile } from "../limits.ts";
import { culpritFirst, type DesignRule } from "../rule.ts";

export type DwellingIsolationFacts = {
  /** The two outlets, and the flats that they belong to. */
  readonly outlets: readonly [string, string];
  readonly dwellings: readonly [string, string];
  /** Range of the limit [MHz]. */
  readonly fromMHz: number;
  readonly toMHz: number;
  /** Where it is least of all that the outlets get in that range [MHz]. */
  readonly frequencyMHz: number;
};

/** Too little isolation between two flats. */
export const dwellingIsolation: DesignRule<"dwelling-isolation"> = {
  id: "dwelling-isolation",
  *checkDesign(evaluation, profile) {
    if (!evaluation.records.some((record) => flatOf(record) !== "")) return [];
    const found: Draft<"dwelling-isolation">[] = [];
    for (const limit of profile.isolation) {
      // By the part where two ways meet: where it is worst in this range.
      const worst = new Map<PartId, IsolationPair>();
      for (const frequencyMHz of carriedFrequencies(evaluation, limit))
        for (const pair of yield* worstIsolation(evaluation, frequencyMHz)) {
          const former = worst.get(pair.at);
          if (!former || pair.isolationDb < former.isolationDb) worst.set(pair.at, pair);
        }
      found.push(...belowLimit([...worst.values()], limit, profile));
    }
    return found;
  },
};

function belowLimit(
  pairs: readonly IsolationPair[],
  { fromMHz, toMHz, db }: Profile["isolation"][number],
  profile: Profile,
): Draft<"dwelling-isolation">[] {
  const limit = db + profile.keepDb;
  return pairs
    .filter((pair) => isBeyond(limit - pair.isolationDb))
    .map(({ at, outlets, dwellings, isolationDb, frequencyMHz }) => ({
      severity: "warning",
      at: { part: at, band: `${fromMHz}` },
      parts: culpritFirst(at, outlets),
      wires: [],
      value: isolationDb,
      limit,
      unit: "dB",
      source: keptSource(profile, profile.isolationSource),
      facts: { outlets, dwellings, fromMHz, toMHz, frequencyMHz },
    }));
}
