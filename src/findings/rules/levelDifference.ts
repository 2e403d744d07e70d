import { heardAt, placesOf } from "../places.ts";
import { type Rule, wireAt } from "../rule.ts";
import { round1 } from "../words.ts";

/** Carriers of one service too far apart in level. */
export const levelDifference: Rule = {
  id: "level-difference",
  title: "Carriers differ too much in level",
  explain:
    "A receiver sets its gain by all that comes in. When strong and weak carriers are far apart, it cannot suit both: " +
    "the weak ones drown in the noise that the strong ones force on it.",
  source: "The limits chosen for the design",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const limit = profile.differenceDb[service];
        const carriers = heardAt(place, service, profile);
        if (limit === undefined || carriers.length < 2) return [];
        const ranked = [...carriers].sort((a, b) => a.levelDbuv - b.levelDbuv);
        const weakest = ranked[0];
        const strongest = ranked[ranked.length - 1];
        if (!weakest || !strongest || strongest.levelDbuv - weakest.levelDbuv <= limit) return [];
        const value = strongest.levelDbuv - weakest.levelDbuv;
        return [
          {
            severity: "warning" as const,
            parts: [record.part.id],
            wires: wireAt(record, place.port),
            message: `At ${place.where}, ${strongest.name} is ${round1(value)} dB stronger than ${weakest.name}; ${limit} dB are allowed.`,
            value,
            limit,
            unit: "dB",
            source: profile.source,
            cure: "An equaliser or an amplifier with slope for a difference that grows with frequency; a channel filter for single strong carriers.",
          },
        ];
      }),
    ),
};
