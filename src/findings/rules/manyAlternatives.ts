import { MOST_ALTERNATIVES, MOST_SWITCHES_IN_A_ROW } from "../../evaluate/alternatives.ts";
import { MOST_SUPPLIES } from "../../evaluate/power.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { partName } from "../../sentences/phrases.ts";
import { numeral } from "../../words/plural.ts";
import type { SpokenRule } from "../rule.ts";

/** More settings of switches, or more supplies on one line, than are worked out. */
export const manyAlternatives: SpokenRule = {
  id: "many-alternatives",
  title: "More possibilities than are calculated",
  explain:
    "Switches behind switches multiply what can be on a cable. What is set now is always calculated; of the other settings " +
    `at most ${MOST_ALTERNATIVES} for one cable, behind at most ${MOST_SWITCHES_IN_A_ROW} switches in a row, and of the supplies on one line the ${MOST_SUPPLIES} strongest.`,
  source: "Limits of this program",
  check: ({ record }) => {
    const { alternatives, behindSwitches, supplies } = record.omitted ?? {};
    const here = partName(record.part.id);
    const found = (message: string, value: number, limit: number) => ({
      severity: "warning" as const,
      parts: [record.part.id],
      wires: [],
      message,
      value,
      limit,
      source: manyAlternatives.source,
      cure: "Use one switch with more positions instead of several in a row, or fewer supplies on one line.",
    });
    const all = [];
    if (alternatives !== undefined) {
      const total = MOST_ALTERNATIVES + alternatives;
      all.push(
        found(
          `Switches offer ${total} settings behind ${here} beside the present one; only ${MOST_ALTERNATIVES} of them are calculated.`,
          total,
          MOST_ALTERNATIVES,
        ),
      );
    }
    if (behindSwitches !== undefined)
      all.push(
        found(
          `More than ${behindSwitches} switches in a row lead to ${here}; of its settings only the present one is calculated.`,
          behindSwitches + 1,
          MOST_SWITCHES_IN_A_ROW,
        ),
      );
    if (supplies !== undefined) {
      const total = MOST_SUPPLIES + supplies;
      all.push(
        found(
          `${total} supplies meet on one line at ${here}; only the ${MOST_SUPPLIES} strongest are calculated.`,
          total,
          MOST_SUPPLIES,
        ),
      );
    }
    return all;
  },
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      `So much can be switched at ${plainName(facts, facts.finding.parts[0])} that not every setting is checked here; what is set now is.`,
    trade: ({ finding }) =>
      `At ${partName(finding.parts[0] ?? "")} ${numeral(finding.value ?? 0)} come together, of which ${numeral(finding.limit ?? 0)} are worked through. What is set now is exact; a receiver ` +
      "that asks for what was left out is shown without it, although it might get it.",
    measure: ({ finding }) =>
      `Set the receiver behind ${partName(finding.parts[0] ?? "")} to each setting that is used, one after the other, and read level and C/N: what is set is always calculated.`,
    neighbours: ["switched-output-shared", "same-signal-twice"],
    picture: () => null,
  },
};
