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
};
