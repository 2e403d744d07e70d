import { plainName } from "../explain/plainWords.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const loop: RuleWords<"loop"> = {
  title: "A loop in the chain",
  explain:
    "A signal led back to where it came from makes an amplifier oscillate. Parts on a loop are not calculated; everything else is.",
  source: "common practice, no source",
  severities: ["error"],
  message: ({ finding }) =>
    `${partName(finding.at.part)} lies on a loop: its output leads back to its own input.`,
  cure: () => "Remove one wire of the loop.",
  customer: (told) =>
    `A cable leads the signal round in a circle through ${plainName(told, told.finding.at.part)}, so nothing there can work.`,
  trade: ({ finding }) =>
    `${partName(finding.at.part)} lies on a closed way from its own output to its own input. Where the gain round the ` +
    "loop reaches 0 dB it oscillates; below that it rings and puts ripple on every channel. Parts on the loop are not " +
    "calculated, and what lies behind them gets nothing here; all others are.",
  measure: ({ finding }) =>
    `Follow the cables from the output of ${partName(finding.at.part)} by hand. With a spectrum meter behind it, look for lines that are on ` +
    "no channel and wander. Pull one plug of the loop: if they vanish at once, the loop is proved.",
  neighbours: ["same-signal-twice", "overload"],
  picture: () => null,
};
