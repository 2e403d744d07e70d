import type { Blamed } from "../blame/culprit.ts";
import { blameForQuality, type Spoiler } from "../blame/quality.ts";
import { extreme } from "../extreme.ts";
import { isBeyond } from "../limits.ts";
import { type CarrierFigures, heardAt, placesOf } from "../places.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type LowCnFacts = {
  readonly failing: number;
  readonly of: number;
  /** The carrier furthest below its limit. */
  readonly worst: CarrierFigures;
  /** What most of it is lost to; followed to where it comes in. */
  readonly spoiler: Spoiler;
  readonly culprit?: Blamed;
};

/** C/N at a socket below what the profile asks for, although it may still be received today. */
export const weakQuality: RuleOf<"low-carrier-to-noise"> = {
  id: "low-carrier-to-noise",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const carriers = heardAt(place, service, profile);
        const poor = carriers.filter((c) => isBeyond(c.limits.cnDb - c.cniDb));
        const found = extreme(poor, (c) => c.limits.cnDb - c.cniDb);
        if (!found) return [];
        const { limits, imDb: _, ...worst } = found;
        return [
          {
            severity: "warning" as const,
            at: { part: record.part.id, port: place.port, service },
            parts: [record.part.id] as const,
            wires: wireIdsAt(record, place.port),
            value: worst.cniDb,
            limit: limits.cnDb,
            unit: "dB",
            source: limits.cnSource ?? profile.source,
            facts: {
              failing: poor.length,
              of: carriers.length,
              worst,
              spoiler: { by: worst.cnDb <= worst.ciDb ? ("noise" as const) : ("foreign" as const) },
            },
          },
        ];
      }),
    ),
  blame: keptFor((draft, evaluation) => {
    const { spoiler, culprit } = blameForQuality(evaluation, draft);
    return {
      ...draft,
      parts: culprit ? culpritFirst(culprit.part, draft.parts) : draft.parts,
      facts: { ...draft.facts, spoiler, ...(culprit ? { culprit } : {}) },
    };
  }),
};
