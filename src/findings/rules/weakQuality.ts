import type { Blamed } from "../blame/culprit.ts";
import { blameForQuality, type Spoiler } from "../blame/quality.ts";
import { extreme } from "../extreme.ts";
import { isBeyond, keptSource, type QualityFigure, qualityOf } from "../limits.ts";
import { type CarrierFigures, type Heard, heardAt, placesOf } from "../places.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type LowCnFacts = {
  readonly failing: number;
  readonly of: number;
  /** What is too low. */
  readonly figure: QualityFigure["figure"];
  /** The carrier furthest below its limit. */
  readonly worst: CarrierFigures;
  /** What most of it is lost to; followed to where it comes in. */
  readonly spoiler: Spoiler;
  readonly culprit?: Blamed;
};

function lackingDb(c: Heard): number {
  const { limitDb, valueDb } = qualityOf(c, c.limits);
  return limitDb - valueDb;
}

/** C/N at a socket below what the profile asks for, although it may still be received today. */
export const weakQuality: RuleOf<"low-carrier-to-noise"> = {
  id: "low-carrier-to-noise",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const carriers = heardAt(place, service, profile);
        const poor = carriers.filter((c) => isBeyond(lackingDb(c)));
        const found = extreme(poor, lackingDb);
        if (!found) return [];
        const { limits, imDb: _, ...worst } = found;
        const { figure, valueDb, limitDb } = qualityOf(worst, limits);
        return [
          {
            severity: "warning" as const,
            at: { part: record.part.id, port: place.port, service },
            parts: [record.part.id] as const,
            wires: wireIdsAt(record, place.port),
            value: valueDb,
            limit: limitDb,
            unit: "dB",
            source: keptSource(profile, (figure !== "MER" && limits.cnSource) || profile.source),
            facts: {
              failing: poor.length,
              of: carriers.length,
              figure,
              worst,
              spoiler: {
                by: figure === "C/N" || worst.cnDb <= worst.ciDb ? ("noise" as const) : ("foreign" as const),
              },
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
