import { pictureOfPlace, quoted, tuned, whereOf } from "../../sentences/explain/place.ts";
import { plainName, programmes } from "../../sentences/explain/plainWords.ts";
import { round1, share } from "../../sentences/phrases.ts";
import { cniDb } from "../../signal/readout.ts";
import { plural } from "../../words/plural.ts";
import { heardAt, placesOf } from "../places.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** C/N at a socket below what the profile asks for, although it may still be received today. */
export const weakQuality: SpokenRule = {
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
        const which = share(poor.length, carriers.length, service);
        const figures = `${round1(worst.cnDb)} dB and should have ${limit} dB`;
        return [
          {
            severity: "warning" as const,
            parts: [record.part.id],
            wires: wireAt(record, place.port),
            message: plural(poor.length, {
              one: `At ${place.where}, ${which} has too little C/N: it has ${figures}.`,
              other: `At ${place.where}, ${which} have too little C/N; the worst has ${figures}.`,
            }),
            value: worst.cnDb,
            limit,
            unit: "dB",
            source: profile.source,
            port: place.port,
            service,
            cure: "Better aerial or larger dish, a low-noise amplifier at the aerial, or less loss before the first amplifier.",
          },
        ];
      }),
    ),
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      `The signal at ${plainName(facts, facts.finding.parts[0])} carries too much noise, so ${programmes(facts.finding.at.service)} may break up when the weather is bad.`,
    trade: (facts) => {
      const { finding } = facts;
      const worst = quoted(facts, (c) => c.cnDb);
      return (
        `At ${whereOf(facts)}, ${tuned(worst)} has a C/N of ${round1(finding.value ?? 0)} dB with interference counted in, ${round1((finding.limit ?? 0) - (finding.value ?? 0))} dB under the ${finding.limit ?? 0} dB asked for, at a level of ` +
        `${round1(worst?.levelDbuv ?? 0)} dBµV. Noise is set by the first stage and the loss before it (Friis: F = F1 + (F2 − 1)/G1 + …); gain behind it raises signal and noise alike.`
      );
    },
    measure: (facts) =>
      `Meter at ${whereOf(facts)} on ${tuned(quoted(facts, (c) => c.cnDb))}: MER near ${round1(facts.finding.value ?? 0)} dB at a level that is otherwise sufficient confirms it. Then at the aerial or behind the converter: if it is no better there, the ` +
      "source is too weak; if it is, the way in between adds the noise.",
    neighbours: ["level-limits", "shared-frequencies", "overload", "receiver-misses"],
    picture: (facts) =>
      pictureOfPlace(
        facts,
        { kind: "noisy", label: `C/N under ${facts.finding.limit ?? 0} dB` },
        (band, i, limits) => limits.cnDb !== undefined && cniDb(band, i) < limits.cnDb,
      ),
  },
};
