import { heardAt, placesOf } from "../places.ts";
import { type Rule, wireAt } from "../rule.ts";
import { round1, share } from "../words.ts";

/** Level at a socket or a receiver outside what it should be. */
export const levelLimits: Rule = {
  id: "level-limits",
  title: "Level at a socket or receiver out of its limits",
  explain:
    "Below the least level a receiver works on a good day only; above the most it is overloaded, and more signal makes things worse.",
  source: "The limits chosen for the design",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const carriers = heardAt(place, service, profile);
        const common = {
          severity: "warning" as const,
          parts: [record.part.id],
          wires: wireAt(record, place.port),
          unit: "dBµV",
          source: profile.source,
        };
        const found = [];
        const low = carriers.filter((c) => c.levelDbuv < c.limits.minDbuv);
        const lowest = extreme(low, (c) => c.levelDbuv - c.limits.minDbuv);
        if (lowest)
          found.push({
            ...common,
            message: `At ${place.where}, ${share(low.length, carriers.length, service)} are too weak; the worst has ${round1(lowest.levelDbuv)} dBµV and should have ${lowest.limits.minDbuv} dBµV at least.`,
            value: lowest.levelDbuv,
            limit: lowest.limits.minDbuv,
            cure: "Lose less on the way (shorter or better cable, fewer splits), or amplify before the loss.",
          });
        const high = carriers.filter((c) => c.levelDbuv > c.limits.maxDbuv);
        const highest = extreme(high, (c) => c.limits.maxDbuv - c.levelDbuv);
        if (highest)
          found.push({
            ...common,
            message: `At ${place.where}, ${share(high.length, carriers.length, service)} are too strong; the worst has ${round1(highest.levelDbuv)} dBµV and may have ${highest.limits.maxDbuv} dBµV at most.`,
            value: highest.levelDbuv,
            limit: highest.limits.maxDbuv,
            cure: `Put ${Math.ceil(highest.levelDbuv - highest.limits.maxDbuv)} dB of attenuation or more before it, or turn a gain down.`,
          });
        return found;
      }),
    ),
};

function extreme<C>(carriers: readonly C[], spare: (c: C) => number): C | undefined {
  return carriers.reduce<C | undefined>(
    (worst, c) => (worst && spare(worst) <= spare(c) ? worst : c),
    undefined,
  );
}
