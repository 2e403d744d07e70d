import { heardThere, pictureOfPlace, tuned, whereOf } from "../../sentences/explain/place.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { round1 } from "../../sentences/phrases.ts";
import type { Range } from "../limits.ts";
import { type Heard, heardAt, placesOf } from "../places.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** The whole range whose ends a slope is stated for [MHz]; a network passes 47 to 862 and 950 to 2150 MHz. */
const RANGES: Readonly<Record<Range, { fromMHz: number; toMHz: number }>> = {
  terrestrial: { fromMHz: 47, toMHz: 862 },
  satellite: { fromMHz: 950, toMHz: 2150 },
};

/** Level that falls too much with frequency. */
export const slope: SpokenRule = {
  id: "slope",
  title: "Too much slope",
  explain:
    "Cable loses more at high frequencies. Over a long run the top of the band falls behind the bottom, until no level suits both ends.",
  source: "The limits chosen for the design; a straight line laid through the carriers that are there",
  check: ({ record, profile, kindAt }) =>
    placesOf({ record, kindAt }).flatMap((place) =>
      place.services.flatMap((service) => {
        const range: Range = service === "satellite" ? "satellite" : "terrestrial";
        const limit = profile.slopeDb[range];
        const { fromMHz, toMHz } = RANGES[range];
        const carriers = heardAt(place, service, profile).filter(
          (c) => c.centreMHz >= fromMHz && c.centreMHz <= toMHz,
        );
        const perMHz = gradient(carriers);
        if (limit === undefined || perMHz === undefined) return [];
        const lowest = Math.min(...carriers.map((c) => c.centreMHz));
        const highest = Math.max(...carriers.map((c) => c.centreMHz));
        const value = Math.abs(perMHz) * (highest - lowest);
        if (value <= limit) return [];
        return [
          {
            severity: "warning" as const,
            parts: [record.part.id],
            wires: wireAt(record, place.port),
            message: `At ${place.where}, the level ${perMHz < 0 ? "falls" : "rises"} by ${round1(value)} dB from ${Math.round(lowest)} to ${Math.round(highest)} MHz; ${limit} dB are allowed.`,
            value,
            limit,
            unit: "dB",
            source: profile.source,
            port: place.port,
            service,
            cure: "An equaliser, an amplifier whose gain rises with frequency, or cable of lower loss.",
          },
        ];
      }),
    ),
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      `On the way to ${plainName(facts, facts.finding.parts[0])} the channels at one end of the range fall far behind those at the other end.`,
    trade: (facts) => {
      const { finding } = facts;
      const all = heardThere(facts);
      const [low, high] = [all[0], all.at(-1)];
      return (
        `At ${whereOf(facts)}, a straight line through the carriers changes by ${round1(finding.value ?? 0)} dB over its range; ${finding.limit ?? 0} dB are allowed. The ends: ${tuned(low)} with ${round1(low?.levelDbuv ?? 0)} dBµV, ${tuned(high)} with ` +
        `${round1(high?.levelDbuv ?? 0)} dBµV. Loss of cable grows about with the root of the frequency, so from 950 to 2150 MHz it rises by half: a run of 20 dB at 950 MHz brings 10 dB of slope.`
      );
    },
    measure: (facts) => {
      const all = heardThere(facts);
      return `Level meter at ${whereOf(facts)} on ${tuned(all[0])} and on ${tuned(all.at(-1))}: about ${round1(Math.abs((all[0]?.levelDbuv ?? 0) - (all.at(-1)?.levelDbuv ?? 0)))} dB apart. The same two at the upper end of the cable: if they are nearly alike there, the cable makes the slope.`;
    },
    neighbours: ["level-difference", "level-limits"],
    picture: (facts) =>
      pictureOfPlace(
        facts,
        { kind: "stretch", label: `${round1(facts.finding.value ?? 0)} dB of slope` },
        () => true,
      ),
  },
};

/** Slope of the line of least squares through the carriers [dB/MHz]; undefined for fewer than three. */
function gradient(carriers: readonly Heard[]): number | undefined {
  const n = carriers.length;
  if (n < 3) return undefined;
  const f = carriers.reduce((s, c) => s + c.centreMHz, 0) / n;
  const l = carriers.reduce((s, c) => s + c.levelDbuv, 0) / n;
  let top = 0;
  let bottom = 0;
  for (const c of carriers) {
    top += (c.centreMHz - f) * (c.levelDbuv - l);
    bottom += (c.centreMHz - f) ** 2;
  }
  return bottom > 0 ? top / bottom : undefined;
}
