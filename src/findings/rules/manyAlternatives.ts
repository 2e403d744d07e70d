import { MOST_ALTERNATIVES, MOST_SWITCHES_IN_A_ROW } from "../../evaluate/alternatives.ts";
import { MOST_SUPPLIES } from "../../evaluate/power.ts";
import type { Draft } from "../finding.ts";
import type { RuleOf } from "../rule.ts";

/** Of what there is more than is calculated. */
export type ManyAlternativesFacts = {
  readonly of: "settings" | "switches in a row" | "supplies" | "supply states";
};

/** More settings of switches, or more supplies on one line, than are calculated. */
export const manyAlternatives: RuleOf<"many-alternatives"> = {
  id: "many-alternatives",
  check: ({ record }) => {
    const { alternatives, behindSwitches, supplies, supplyStates } = record.omitted ?? {};
    const part = record.part.id;
    const found = (
      of: ManyAlternativesFacts["of"],
      value: number,
      limit?: number,
    ): Draft<"many-alternatives"> => ({
      severity: "warning",
      at: { part, band: of },
      parts: [part],
      wires: [],
      value,
      ...(limit === undefined ? {} : { limit }),
      facts: { of },
    });
    return [
      ...(alternatives === undefined
        ? []
        : [found("settings", MOST_ALTERNATIVES + alternatives, MOST_ALTERNATIVES)]),
      ...(behindSwitches === undefined
        ? []
        : [found("switches in a row", behindSwitches + 1, MOST_SWITCHES_IN_A_ROW)]),
      ...(supplies === undefined ? [] : [found("supplies", MOST_SUPPLIES + supplies, MOST_SUPPLIES)]),
      ...(supplyStates === undefined ? [] : [found("supply states", supplyStates)]),
    ];
  },
};
