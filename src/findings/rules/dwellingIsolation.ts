import type { PartId, PortRef } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { hasSwappedLegs } from "../blame/swappedLegs.ts";
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
      found.push(...belowLimit([...worst.values()], limit, { profile, evaluation }));
    }
    return found;
  },
};

function belowLimit(
  pairs: readonly IsolationPair[],
  { fromMHz, toMHz, db }: Profile["isolation"][number],
  { profile, evaluation }: { readonly profile: Profile; readonly evaluation: Evaluation },
): Draft<"dwelling-isolation">[] {
  const limit = db + profile.keepDb;
  return pairs
    .filter((pair) => isBeyond(limit - pair.isolationDb))
    .map(({ at, outlets, dwellings, isolationDb, frequencyMHz }) => ({
      severity: "warning",
      at: { part: at, band: `${fromMHz}` },
      parts: culpritFirst(swappedOnTheWay(evaluation, at, outlets) ?? at, [at, ...outlets]),
      wires: [],
      value: isolationDb,
      limit,
      unit: "dB",
      source: keptSource(profile, profile.isolationSource),
      facts: { outlets, dwellings, fromMHz, toMHz, frequencyMHz },
    }));
}

/** A tap between an outlet and the part where the ways meet whose legs are mixed up: the outlet then hangs on the line itself. */
function swappedOnTheWay(
  evaluation: Evaluation,
  at: PartId,
  outlets: readonly [string, string],
): PartId | undefined {
  for (const outlet of outlets) {
    let record: PartRecord | undefined = evaluation.record(outlet);
    // No way is longer than there are parts.
    for (let guard = evaluation.records.length; record && record.part.id !== at && guard > 0; guard--) {
      if (hasSwappedLegs(evaluation, record)) return record.part.id;
      const { ports, joined }: PartRecord = record;
      const input = ports.find((p) => p.side === "in" && joined[p.id]);
      const before: PortRef | undefined = input && joined[input.id];
      record = before && evaluation.record(before[0]);
    }
  }
  return undefined;
}
