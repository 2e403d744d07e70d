import { type Rule, wireAt } from "../rule.ts";
import { bandName, partName } from "../words.ts";

/** One signal that arrives twice. */
export const echo: Rule = {
  id: "same-signal-twice",
  title: "The same signal by two ways",
  explain:
    "When one signal is split and joined again, the two copies arrive at different times. They cancel at some " +
    "frequencies and add at others; how badly depends on the lengths of cable, which the tool does not work out.",
  source: "common practice, no source",
  check: ({ record }) => {
    const twice = record.meetings.filter((m) => m.echo);
    const first = twice[0];
    if (!first) return [];
    return [
      {
        severity: "warning",
        parts: [record.part.id, first.victim.origin.part],
        wires: first.port.startsWith("#") ? [] : wireAt(record, first.port),
        message: `${bandName(first.victim)} comes into ${partName(record.part.id)} by two ways and meets itself.`,
        source: echo.source,
        cure: "Take one of the two ways away, or stop it with a filter.",
      },
    ];
  },
};
