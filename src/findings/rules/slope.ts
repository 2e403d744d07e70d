import type { Blamed } from "../blame/culprit.ts";
import { blameForLean } from "../blame/lean.ts";
import { extreme } from "../extreme.ts";
import { isBeyond, keptSource, type NetworkRange } from "../limits.ts";
import { type CarrierFigures, heardAt, placesOf } from "../places.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

/** The whole range whose ends a slope is stated for [MHz]; a network passes 47 to 862 and 950 to 2150 MHz. */
const RANGES: Readonly<Record<NetworkRange, { fromMHz: number; toMHz: number }>> = {
  terrestrial: { fromMHz: 47, toMHz: 862 },
  satellite: { fromMHz: 950, toMHz: 2150 },
};

export type SlopeFacts = {
  /** The carriers at the two ends of the range. */
  readonly lowest: CarrierFigures;
  readonly highest: CarrierFigures;
  /** Whether the level falls towards the top. */
  readonly falls: boolean;
  /** What makes most of it. */
  readonly culprit?: Blamed;
};

/** Level that changes too much with frequency. */
export const slope: RuleOf<"slope"> = {
  id: "slope",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const range: NetworkRange = service === "satellite" ? "satellite" : "terrestrial";
        const allowed = profile.slopeDb[range];
        const { fromMHz, toMHz } = RANGES[range];
        const carriers = heardAt(place, service, profile)
          .filter((c) => c.centreMHz >= fromMHz && c.centreMHz <= toMHz)
          .map(({ limits: _, ...figures }) => figures);
        const perMHz = gradient(carriers);
        const lowest = extreme(carriers, (c) => -c.centreMHz);
        const highest = extreme(carriers, (c) => c.centreMHz);
        if (allowed === undefined || perMHz === undefined || !lowest || !highest) return [];
        const limit = Math.max(0, allowed - profile.keepDb);
        const value = Math.abs(perMHz) * (highest.centreMHz - lowest.centreMHz);
        if (!isBeyond(value - limit)) return [];
        return [
          {
            severity: "warning" as const,
            at: { part: record.part.id, port: place.port, service },
            parts: [record.part.id] as const,
            wires: wireIdsAt(record, place.port),
            value,
            limit,
            unit: "dB",
            source: keptSource(profile, profile.source),
            facts: { lowest, highest, falls: perMHz < 0 },
          },
        ];
      }),
    ),
  blame: keptFor((draft, evaluation) => {
    const { lowest, highest, falls } = draft.facts;
    const ends = falls ? { above: lowest, below: highest } : { above: highest, below: lowest };
    const culprit = blameForLean(evaluation, draft.at, ends);
    if (!culprit) return draft;
    return { ...draft, parts: culpritFirst(culprit.part, draft.parts), facts: { ...draft.facts, culprit } };
  }),
};

/** Slope of the line of least squares through the carriers [dB/MHz]; undefined for fewer than three. */
function gradient(carriers: readonly CarrierFigures[]): number | undefined {
  const n = carriers.length;
  if (n < 3) return undefined;
  const f = carriers.reduce((s, c) => s + c.centreMHz, 0) / n;
  const l = carriers.reduce((s, c) => s + c.levelDbuv, 0) / n;
  let top = 0;
  let bottom = 0;
  for (const c of carriers) {
    top += (c.centreMHz - f) * (c.levelDbuv - l);
    bottom += (c.centreMHz - f) ** 2;
  }
  return bottom > 0 ? top / bottom : undefined;
}
