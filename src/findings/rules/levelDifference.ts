import type { Blamed } from "../blame/culprit.ts";
import { blameForLean } from "../blame/lean.ts";
import { isBeyond, keptSource } from "../limits.ts";
import { type CarrierFigures, heardAt, placesOf } from "../places.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type LevelDifferenceFacts = {
  readonly strongest: CarrierFigures;
  readonly weakest: CarrierFigures;
  /** What makes most of the difference. */
  readonly culprit?: Blamed;
};

function isOver(stronger: CarrierFigures, { centreMHz }: CarrierFigures): boolean {
  return stronger.centreMHz === centreMHz;
}

/** Carriers of one service too far apart in level. */
export const levelDifference: RuleOf<"level-difference"> = {
  id: "level-difference",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const allowed = profile.differenceDb[service];
        const ranked = heardAt(place, service, profile)
          .map(({ limits: _, ...figures }) => figures)
          .sort((a, b) => a.levelDbuv - b.levelDbuv)
          // Two on one frequency are not to be brought to one level. Satellite planes never lie on one line at once.
          .filter((c, i, all) => service === "satellite" || !all.slice(i + 1).some((o) => isOver(o, c)));
        const weakest = ranked[0];
        const strongest = ranked.at(-1);
        if (allowed === undefined || !weakest || !strongest) return [];
        const limit = Math.max(0, allowed - profile.keepDb);
        const value = strongest.levelDbuv - weakest.levelDbuv;
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
            source: keptSource(profile, profile.differenceSource),
            facts: { strongest, weakest },
          },
        ];
      }),
    ),
  blame: keptFor((draft, evaluation) => {
    const { strongest, weakest } = draft.facts;
    const culprit = blameForLean(evaluation, draft.at, { above: strongest, below: weakest });
    if (!culprit) return draft;
    return { ...draft, parts: culpritFirst(culprit.part, draft.parts), facts: { ...draft.facts, culprit } };
  }),
};
