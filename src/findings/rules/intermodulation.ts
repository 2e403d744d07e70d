import { blameForProducts, type ProductBlame } from "../blame/quality.ts";
import { stagesTo } from "../blame/stages.ts";
import { extreme } from "../extreme.ts";
import { isBeyond, keptSource } from "../limits.ts";
import { heardAt, placesOf } from "../places.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type IntermodulationFacts = Partial<ProductBlame> & {
  readonly failing: number;
  readonly of: number;
  /** The carrier furthest below its limit. */
  readonly worst: {
    readonly origin: string;
    readonly index: number;
    readonly userBand?: number;
    readonly name: string;
    readonly centreMHz: number;
  };
};

/** Third-order products at a socket closer to the carriers than the profile allows. */
export const intermodulation: RuleOf<"intermodulation"> = {
  id: "intermodulation",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const carriers = heardAt(place, service, profile).flatMap((c) =>
          c.limits.imDb === undefined ? [] : [{ ...c, missingDb: c.limits.imDb - c.imDb }],
        );
        const poor = carriers.filter((c) => isBeyond(c.missingDb));
        const found = extreme(poor, (c) => c.missingDb);
        if (!found) return [];
        const { origin, index, userBand, name, centreMHz, imDb, missingDb } = found;
        return [
          {
            severity: "warning" as const,
            at: { part: record.part.id, port: place.port, service },
            parts: [record.part.id] as const,
            wires: wireIdsAt(record, place.port),
            value: imDb,
            limit: imDb + missingDb,
            unit: "dB",
            source: keptSource(profile, profile.source),
            facts: {
              failing: poor.length,
              of: carriers.length,
              worst: { origin, index, name, centreMHz, ...(userBand === undefined ? {} : { userBand }) },
            },
          },
        ];
      }),
    ),
  blame: keptFor((draft, evaluation) => {
    const { at, facts, parts } = draft;
    if (at.port === undefined) return draft;
    const blame = blameForProducts(
      evaluation,
      stagesTo(evaluation, { part: at.part, port: at.port }, facts.worst),
    );
    if (!blame) return draft;
    return { ...draft, parts: culpritFirst(blame.culprit.part, parts), facts: { ...facts, ...blame } };
  }),
};
