import type { Facts } from "../../sentences/explain/explanation.ts";
import { heardThere, pictureOfPlace, quoted, tuned, whereOf } from "../../sentences/explain/place.ts";
import { plainName, programmes } from "../../sentences/explain/plainWords.ts";
import { round1, share } from "../../sentences/phrases.ts";
import { plural } from "../../words/plural.ts";
import { heardAt, placesOf } from "../places.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** Level at a socket or a receiver outside what it should be. */
export const levelLimits: SpokenRule = {
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
          port: place.port,
          service,
          source: profile.source,
        };
        const found = [];
        const low = carriers.filter((c) => c.levelDbuv < c.limits.minDbuv);
        const lowest = extreme(low, (c) => c.levelDbuv - c.limits.minDbuv);
        if (lowest) {
          const which = share(low.length, carriers.length, service);
          const figures = `${round1(lowest.levelDbuv)} dBµV and should have ${lowest.limits.minDbuv} dBµV at least`;
          found.push({
            ...common,
            message: plural(low.length, {
              one: `At ${place.where}, ${which} is too weak: it has ${figures}.`,
              other: `At ${place.where}, ${which} are too weak; the worst has ${figures}.`,
            }),
            side: "too little" as const,
            value: lowest.levelDbuv,
            limit: lowest.limits.minDbuv,
            cure: "Lose less on the way (shorter or better cable, fewer splits), or amplify before the loss.",
          });
        }
        const high = carriers.filter((c) => c.levelDbuv > c.limits.maxDbuv);
        const highest = extreme(high, (c) => c.limits.maxDbuv - c.levelDbuv);
        if (highest) {
          const which = share(high.length, carriers.length, service);
          const figures = `${round1(highest.levelDbuv)} dBµV and may have ${highest.limits.maxDbuv} dBµV at most`;
          found.push({
            ...common,
            message: plural(high.length, {
              one: `At ${place.where}, ${which} is too strong: it has ${figures}.`,
              other: `At ${place.where}, ${which} are too strong; the worst has ${figures}.`,
            }),
            side: "too much" as const,
            value: highest.levelDbuv,
            limit: highest.limits.maxDbuv,
            cure: `Put ${Math.ceil(highest.levelDbuv - highest.limits.maxDbuv)} dB of attenuation or more before it, or turn a gain down.`,
          });
        }
        return found;
      }),
    ),
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      isHigh(facts)
        ? `The signal at ${plainName(facts, facts.finding.parts[0])} is too strong, which upsets a receiver just as a weak one does.`
        : `The signal at ${plainName(facts, facts.finding.parts[0])} is too weak for ${programmes(facts.finding.at.service)} to be reliable.`,
    trade: (facts) => {
      const { finding } = facts;
      const by = Math.abs((finding.value ?? 0) - (finding.limit ?? 0));
      const all = heardThere(facts).map((c) => c.levelDbuv);
      const [least, most] = [Math.min(...all), Math.max(...all)].map(round1);
      return (
        `At ${whereOf(facts)}, ${tuned(quoted(facts, (c) => c.levelDbuv))} has ${round1(finding.value ?? 0)} dBµV; ${isHigh(facts) ? "at most" : "at least"} ${finding.limit ?? 0} dBµV are asked for, ` +
        `${plural(by, {
          one: (n) => (isHigh(facts) ? `so ${n} dB is too much` : `so ${n} dB is missing`),
          other: (n) => (isHigh(facts) ? `so ${n} dB are too much` : `so ${n} dB are missing`),
        })}. ${plural(all.length, {
          one: "There the service has one carrier",
          other: (n) =>
            least === most
              ? `There the service has ${n} carriers of ${least} dBµV`
              : `There the service has ${n} carriers from ${least} to ${most} dBµV`,
        })}` +
        `${isHigh(facts) ? ", and a tuner that is driven too hard makes products of its own" : "; 3 to 6 dB above the least are good practice"}.`
      );
    },
    measure: (facts) =>
      `Level meter at ${whereOf(facts)} on ${tuned(quoted(facts, (c) => c.levelDbuv))}: about ${round1(facts.finding.value ?? 0)} dBµV confirm it, ${facts.finding.limit ?? 0} dBµV or ${isHigh(facts) ? "less" : "more"} refute it. ` +
      `${isHigh(facts) ? "Proof of overload: with a 10 dB attenuator at the plug reception gets better." : "Then measure before the longest cable and before each splitter: where the step is larger than its loss should be, look there."}`,
    neighbours: ["low-carrier-to-noise", "slope", "level-difference", "overload"],
    picture: (facts) =>
      pictureOfPlace(
        facts,
        {
          kind: isHigh(facts) ? "strong" : "weak",
          label: `${facts.finding.limit ?? 0} dBµV ${isHigh(facts) ? "at most" : "at least"}`,
          withLimit: true,
        },
        (band, i, limits) =>
          isHigh(facts) ? (band.level[i] ?? 0) > limits.maxDbuv : (band.level[i] ?? 0) < limits.minDbuv,
      ),
  },
};

function isHigh({ finding }: Facts): boolean {
  return (finding.value ?? 0) > (finding.limit ?? 0);
}

function extreme<C>(carriers: readonly C[], spare: (c: C) => number): C | undefined {
  return carriers.reduce<C | undefined>(
    (worst, c) => (worst && spare(worst) <= spare(c) ? worst : c),
    undefined,
  );
}
