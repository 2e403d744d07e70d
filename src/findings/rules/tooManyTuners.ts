import { type Rule, wireAt } from "../rule.ts";
import { partName } from "../words.ts";

/** More tuners than feeds or user bands. */
export const tooManyTuners: Rule = {
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
      };
      if (input.feed === "stacked" && input.userBands && input.userBands.length < input.tuners)
        return [
          {
            ...common,
            message: `${partName(record.part.id)} has ${input.tuners} tuners but is set to ${input.userBands.length} user ${input.userBands.length === 1 ? "band" : "bands"}.`,
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
};
