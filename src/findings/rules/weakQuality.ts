import { heardAt, placesOf } from "../places.ts";
import { type Rule, wireAt } from "../rule.ts";
import { round1, share } from "../words.ts";

/** C/N at a socket below what the profile asks for, although it may still be received today. */
export const weakQuality: Rule = {
  id: "low-carrier-to-noise",
  title: "C/N at a socket below what it should be",
  explain:
    "A carrier needs a C/N by its modulation to be received at all, and some decibels more to stay received in rain, " +
    "with ageing cables and neighbours' interference. Amplifying a noisy signal amplifies the noise with it.",
  source: "The limits chosen for the design",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const carriers = heardAt(place, service, profile);
        const poor = carriers.filter((c) => c.limits.cnDb !== undefined && c.cnDb < c.limits.cnDb);
        const worst = [...poor].sort((a, b) => a.cnDb - b.cnDb)[0];
        if (!worst) return [];
        const limit = worst.limits.cnDb ?? 0;
        return [
          {
            severity: "warning" as const,
            parts: [record.part.id],
            wires: wireAt(record, place.port),
            message: `At ${place.where}, ${share(poor.length, carriers.length, service)} have too little C/N; the worst has ${round1(worst.cnDb)} dB and should have ${limit} dB.`,
            value: worst.cnDb,
            limit,
            unit: "dB",
            source: profile.source,
            cure: "Better aerial or larger dish, a low-noise amplifier at the aerial, or less loss before the first amplifier.",
          },
        ];
      }),
    ),
};
