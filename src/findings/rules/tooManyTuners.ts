import type { Draft } from "../finding.ts";
import { type RuleOf, wireIdsAt } from "../rule.ts";

/** What there are too few of: value and limit of the finding say how many there are and are needed. */
export type TooManyTunersFacts = { readonly of: "user bands" | "feeds" };

/** More tuners than feeds or user bands. */
export const tooManyTuners: RuleOf<"too-many-tuners"> = {
  id: "too-many-tuners",
  check: ({ record }) =>
    (record.kind.reception?.(record.options).inputs ?? []).flatMap((input): Draft<"too-many-tuners">[] => {
      if (!record.joined[input.port]) return [];
      const part = record.part.id;
      const common = {
        at: { part, port: input.port },
        parts: [part] as const,
        wires: wireIdsAt(record, input.port),
        limit: input.tuners,
      };
      // A tuner without a user band gets nothing at all; one that shares a feed gets what another asks for.
      if (input.feed === "stacked" && input.userBands && input.userBands.length < input.tuners)
        return [
          {
            ...common,
            severity: "error",
            value: input.userBands.length,
            unit: "user bands",
            facts: { of: "user bands" },
          },
        ];
      const isSingleCable = record.inputs[input.port]?.bands.some((band) => band.stack !== undefined);
      if (input.feed === "switched" && input.tuners > 1 && !isSingleCable)
        return [
          {
            ...common,
            severity: "warning",
            value: 1,
            unit: "feeds",
            facts: { of: "feeds" },
          },
        ];
      return [];
    }),
};
