import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Draft } from "../finding.ts";
import { type IsolationPair, worstIsolation } from "../isolation.ts";
import { isBeyond, keptSource, type Profile } from "../limits.ts";
import type { DesignRule } from "../rule.ts";

export type DwellingIsolationFacts = {
  /** The two outlets, and the flats that they belong to. */
  readonly outlets: readonly [string, string];
  readonly dwellings: readonly [string, string];
  /** Range of the limit; looked at where cable loses least, at its lower end [MHz]. */
  readonly fromMHz: number;
  readonly toMHz: number;
};

/** Too little isolation between two flats. */
export const dwellingIsolation: DesignRule<"dwelling-isolation"> = {
  id: "dwelling-isolation",
  *checkDesign(evaluation, profile) {
    if (!hasDwellings(evaluation)) return [];
    const found: Draft<"dwelling-isolation">[] = [];
    for (const limit of profile.isolation.filter((range) => isUsed(evaluation, range))) {
      const pairs = yield* worstIsolation(evaluation, limit.fromMHz);
      found.push(...belowLimit(pairs, limit, profile));
    }
    return found;
  },
};

function hasDwellings(evaluation: Evaluation): boolean {
  return evaluation.records.some(
    (r) => typeof r.options.dwelling === "string" && r.options.dwelling.trim() !== "",
  );
}

/** Whether anything that somebody receives lies in a range: where nothing is, nobody can be disturbed. */
function isUsed({ records }: Evaluation, { fromMHz, toMHz }: Profile["isolation"][number]): boolean {
  return records.some(
    ({ kind, outputs }) =>
      kind.delivery &&
      Object.values(outputs).some(({ bands }) =>
        bands.some((b) => b.grid.fromMHz < toMHz && b.grid.toMHz > fromMHz && b.level.length > 0),
      ),
  );
}

function belowLimit(
  pairs: readonly IsolationPair[],
  { fromMHz, toMHz, db }: Profile["isolation"][number],
  profile: Profile,
): Draft<"dwelling-isolation">[] {
  const limit = db + profile.keepDb;
  return pairs
    .filter((pair) => isBeyond(limit - pair.isolationDb))
    .map(({ at, outlets, dwellings, isolationDb }) => ({
      severity: "warning",
      at: { part: at, band: `${fromMHz}` },
      parts: [at, ...outlets],
      wires: [],
      value: isolationDb,
      limit,
      unit: "dB",
      source: keptSource(profile, profile.isolationSource),
      facts: { outlets, dwellings, fromMHz, toMHz },
    }));
}
