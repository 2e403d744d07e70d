import { MOST_ALTERNATIVES, MOST_SWITCHES_IN_A_ROW } from "../../evaluate/alternatives.ts";
import { MOST_SUPPLIES } from "../../evaluate/power.ts";
import { MOST_STATES } from "../../evaluate/supply/solutions.ts";
import { numeral } from "../../words/numbers.ts";

import { plainName } from "../explain/plainWords.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const manyAlternatives: RuleWords<"many-alternatives"> = {
  title: "More possibilities than are calculated",
  explain:
    "Switches behind switches multiply what can be on a cable. What is set now is always calculated. Of the other settings " +
    `of one cable at most ${MOST_ALTERNATIVES} are, behind at most ${MOST_SWITCHES_IN_A_ROW} switches in a row. Of the supplies on one line the ${MOST_SUPPLIES} strongest count. ` +
    `On one supply network at most ${MOST_STATES} cases of request and switch position are, fewer on a very large one. For the rest all receivers are taken to ask alike.`,
  source: "Limits of this program",
  severities: ["warning"],
  message: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const here = partName(at.part);
    switch (facts.of) {
      case "settings":
        return `Switches offer ${value} settings behind ${here} beside the present one; only ${limit} of them are calculated.`;
      case "switches in a row":
        return `More than ${value - 1} switches in a row lead to ${here}; of its settings only the present one is calculated.`;
      case "supplies":
        return `${value} supplies meet on one line at ${here}; only the ${limit} strongest are calculated.`;
      case "supply states":
        return `The supply network of ${here} has very many requests and switch positions: for ${value} of them, all receivers are taken to ask alike.`;
    }
  },
  customer: (told) =>
    `So much can be switched at ${plainName(told, told.finding.at.part)} that not every setting is checked here; what is set now is.`,
  trade: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    if (facts.of === "supply states")
      return (
        `Volts and milliamperes of what is set now are exact. ${numeral(value)} other cases of request and switch position are ` +
        "taken with the switches as they are and with one voltage from all receivers, which is the heaviest load or close to it."
      );
    return (
      `At ${partName(at.part)} ${numeral(value)} come together, of which ${numeral(limit)} are calculated. What is set now is exact; a receiver ` +
      "that asks for what was left out is shown without it, although it might get it."
    );
  },
  measure: ({ finding: { at } }) =>
    `Set the receiver behind ${partName(at.part)} to each setting that is used, one after the other, and read level and C/N. What is set is always calculated.`,
  neighbours: ["switched-output-shared", "same-signal-twice"],
  picture: () => null,
};
