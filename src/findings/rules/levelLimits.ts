import type { Blamed } from "../blame/culprit.ts";
import { blameForLevel } from "../blame/level.ts";
import { extreme } from "../extreme.ts";
import { isBeyond, keptSource } from "../limits.ts";
import { type CarrierFigures, heardAt, placesOf } from "../places.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type LevelLimitsFacts = {
  /** How many of how many carriers of the service are out of the limit. */
  readonly failing: number;
  readonly of: number;
  /** The one furthest out. */
  readonly worst: CarrierFigures;
  /** What makes it so; absent where no part stands out. */
  readonly culprit?: Blamed;
};

/** Level at a socket or a receiver outside what it should be. */
export const levelLimits: RuleOf<"level-limits"> = {
  id: "level-limits",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const carriers = heardAt(place, service, profile);
        return (["too little", "too much"] as const).flatMap((side) => {
          const excess = (c: (typeof carriers)[number]) =>
            side === "too little" ? c.limits.minDbuv - c.levelDbuv : c.levelDbuv - c.limits.maxDbuv;
          const failing = carriers.filter((c) => isBeyond(excess(c)));
          const found = extreme(failing, excess);
          if (!found) return [];
          const { limits, ...worst } = found;
          return [
            {
              severity: "warning" as const,
              at: { part: record.part.id, port: place.port, service, side },
              parts: [record.part.id] as const,
              wires: wireIdsAt(record, place.port),
              value: worst.levelDbuv,
              limit: side === "too little" ? limits.minDbuv : limits.maxDbuv,
              unit: "dBµV",
              source: keptSource(profile, profile.source),
              facts: { failing: failing.length, of: carriers.length, worst },
            },
          ];
        });
      }),
    ),
  blame: keptFor((draft, evaluation) => {
    const culprit = blameForLevel(evaluation, draft);
    if (!culprit) return draft;
    return {
      ...draft,
      parts: culpritFirst(culprit.part, draft.parts),
      facts: { ...draft.facts, culprit },
    };
  }),
};
