import { heardThere, pictureOfPlace, tuned, whereOf } from "../../sentences/explain/place.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { round1 } from "../../sentences/phrases.ts";
import { heardAt, placesOf } from "../places.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** Carriers of one service too far apart in level. */
export const levelDifference: SpokenRule = {
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
            port: place.port,
            service,
            cure: "An equaliser or an amplifier with slope for a difference that grows with frequency; a channel filter for single strong carriers.",
          },
        ];
      }),
    ),
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      `Some channels reach ${plainName(facts, facts.finding.parts[0])} much stronger than others, and the weak ones suffer from it.`,
    trade: (facts) => {
      const { finding } = facts;
      const ranked = [...heardThere(facts)].sort((a, b) => a.levelDbuv - b.levelDbuv);
      const weak = ranked[0];
      const strong = ranked.at(-1);
      return (
        `At ${whereOf(facts)}, ${tuned(strong)} has ${round1(strong?.levelDbuv ?? 0)} dBµV and ${tuned(weak)} ${round1(weak?.levelDbuv ?? 0)} dBµV: ${round1(finding.value ?? 0)} dB apart, ${finding.limit ?? 0} dB are allowed. ` +
        "Tuner and amplifier set their gain by all that comes in, so the weak carrier gets the noise that suits the strong one."
      );
    },
    measure: (facts) =>
      `Level meter at ${whereOf(facts)}: note every carrier of the service. A difference near ${round1(facts.finding.value ?? 0)} dB confirms it. Measure the same carriers at the aerial or converter: the difference that is there already needs a channel filter, ` +
      "what grows on the way needs an equaliser.",
    neighbours: ["slope", "level-limits", "overload"],
    picture: (facts) => {
      const ranked = [...heardThere(facts)].sort((a, b) => a.levelDbuv - b.levelDbuv);
      const ends = [ranked[0], ranked.at(-1)].map((c) => c?.centreMHz);
      return pictureOfPlace(
        facts,
        { kind: "strong", label: `${round1(facts.finding.value ?? 0)} dB apart` },
        (band, i) => ends.includes(band.grid.centre[i] ?? 0),
      );
    },
  },
};
