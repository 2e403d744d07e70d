import { plainName } from "../explain/plainWords.ts";
import type { Rule } from "../rule.ts";
import { partName } from "../words.ts";

/** A signal that is led back into itself. */
export const loop: Rule = {
  id: "loop",
  title: "A loop in the chain",
  explain:
    "A signal led back to where it came from makes an amplifier oscillate. Parts on a loop are not computed; everything else is.",
  source: "common practice, no source",
  check: ({ record }) =>
    record.looped
      ? [
          {
            severity: "error",
            parts: [record.part.id],
            wires: [],
            message: `${partName(record.part.id)} lies on a loop: its output leads back to its own input.`,
            source: loop.source,
            cure: "Take one wire of the loop away.",
          },
        ]
      : [],
  explanation: {
    severities: ["error"],
    customer: (facts) =>
      `A cable leads the signal round in a circle through ${plainName(facts, facts.finding.parts[0])}, so nothing there can work.`,
    trade: ({ finding }) =>
      `${partName(finding.parts[0] ?? "")} lies on a closed way from its own output to its own input. Where the gain round the ` +
      "loop reaches 0 dB it oscillates; below that it rings and puts ripple on every channel. Parts on the loop are not " +
      "computed, and what lies behind them gets nothing here; all others are.",
    measure: ({ finding }) =>
      `Follow the cables from the output of ${partName(finding.parts[0] ?? "")} by hand. With a spectrum meter behind it, look for lines that stand on ` +
      "no channel and wander: pull one plug of the loop, and if they vanish at once, the loop is proved.",
    neighbours: ["same-signal-twice", "overload"],
    picture: () => null,
  },
};
