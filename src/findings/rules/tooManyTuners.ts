import { pictureOf, spotOf } from "../../sentences/explain/picture.ts";
import { capital, plainName } from "../../sentences/explain/plainWords.ts";
import { partName } from "../../sentences/phrases.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** More tuners than feeds or user bands. */
export const tooManyTuners: SpokenRule = {
  id: "too-many-tuners",
  title: "More tuners than feeds or user bands",
  explain:
    "A tuner needs a feed that it can set for itself: an output of its own, a whole polarisation, or a user band of its own. " +
    "Tuners beyond that share, and can only record or show what happens to be there.",
  source: "EN 50494 and EN 50607 for user bands; switched feeds: common practice, no source",
  check: ({ record }) =>
    (record.kind.reception?.(record.options).inputs ?? []).flatMap((input) => {
      if (!record.joined[input.port]) return [];
      const common = {
        severity: "warning" as const,
        parts: [record.part.id],
        wires: wireAt(record, input.port),
        source: tooManyTuners.source,
        port: input.port,
      };
      if (input.feed === "stacked" && input.userBands && input.userBands.length < input.tuners)
        return [
          {
            ...common,
            message: plural(input.tuners, {
              one: `${partName(record.part.id)} has one tuner but is set to no user band.`,
              other: (tuners) =>
                plural(input.userBands?.length ?? 0, {
                  zero: `${partName(record.part.id)} has ${tuners} tuners but is set to no user band.`,
                  one: `${partName(record.part.id)} has ${tuners} tuners but is set to 1 user band.`,
                  other: (n) =>
                    `${partName(record.part.id)} has ${tuners} tuners but is set to ${n} user bands.`,
                }),
            }),
            value: input.userBands.length,
            limit: input.tuners,
            unit: "user bands",
            cure: "Set a free user band for each tuner, if the converter has one.",
          },
        ];
      if (input.feed === "switched" && input.tuners > 1)
        return [
          {
            ...common,
            message: `The ${input.tuners} tuners of ${partName(record.part.id)} share one switched feed: they can only tune within one quadrant.`,
            value: 1,
            limit: input.tuners,
            unit: "feeds",
            cure: "Bring a feed to each tuner, or use a channel-stacking converter.",
          },
        ];
      return [];
    }),
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      `${capital(plainName(facts, facts.finding.parts[0]))} cannot watch and record as many programmes at once as it was built for, because its connection carries too few.`,
    trade: ({ finding }) => {
      const ofBands = finding.unit === "user bands";
      const name = partName(finding.parts[0] ?? "");
      const tuners = plural(finding.limit ?? 0, { one: "one tuner", other: (n) => `${n} tuners` });
      const bands = plural(finding.value ?? 0, {
        zero: "no user band",
        one: "one user band",
        other: (n) => `${n} user bands`,
      });
      return (
        `${name} has ${tuners} and ${ofBands ? bands : "one feed that it can switch"}. ` +
        (ofBands
          ? "Each tuner needs a user band of its own: EN 50494 has up to 8 on an output, EN 50607 up to 32. A tuner without one cannot be tuned at all."
          : "All of them stay within the quadrant that the first one selects, a quarter of the transponders; two tuners need two outputs, or a single-cable line with a user band each.")
      );
    },
    measure: ({ finding }) =>
      finding.unit === "user bands"
        ? `${plural(finding.limit ?? 0, {
            one: `In the menu of ${partName(finding.parts[0] ?? "")}, look for its user band: if none is set, that proves it.`,
            other: (n) =>
              `In the menu of ${partName(finding.parts[0] ?? "")}, count the user bands that are set: fewer than ${n}, one for each tuner, prove it.`,
          })} ${plural(finding.value ?? 0, {
            zero: "With a meter: no user band ever carries something for it.",
            one: "With a meter: only one user band ever carries something for it.",
            other: (n) => `With a meter: only ${n} user bands ever carry something for it.`,
          })}`
        : `Record a horizontal programme on ${partName(finding.parts[0] ?? "")} and try to watch a vertical one: it fails, and the voltmeter at its plug stays near 18 V. That proves that one feed is shared.`,
    neighbours: ["user-band-conflict", "switched-output-shared", "wrong-feed"],
    picture: (facts) => pictureOf(facts, spotOf(facts), []),
  },
};
