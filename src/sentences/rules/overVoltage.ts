import { numeral } from "../../words/numbers.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { besideLimit } from "../figures.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const overVoltage: RuleWords<"over-voltage"> = {
  title: "Too many volts at an LNB",
  explain: `LNBs are made for ${numeral(11.5)} to 14 V for vertical and 16 to 19 V for horizontal. A unit of 24 V for amplifiers on the same line may destroy one.`,
  source: "EN 61319-1, from memory",
  severities: ["error", "warning"],
  message: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const [volts, most] = besideLimit(value, limit);
    return `${partName(at.part)} gets ${volts} V from ${partName(facts.supply)} and is made for ${most} V at most.`;
  },
  cure: ({ finding: { facts, limit = 0 } }) =>
    facts.isFixed
      ? `Replace ${partName(facts.supply)} with a unit of less than ${numeral(limit)} V.`
      : `Set ${partName(facts.supply)} to ${numeral(limit)} V or less.`,
  customer: (told) =>
    `${capital(plainName(told, told.finding.facts.supply))} gives a higher voltage than ${plainName(told, told.finding.at.part)} is made for, which may damage it.`,
  trade: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const [volts, most] = besideLimit(value, limit);
    return (
      `${volts} V arrive at ${partName(at.part)} with the present load, from ${partName(facts.supply)}; the window for horizontal ends at ` +
      `${most} V. A few tenths more only heat its regulator; two volts more may end it (from memory).`
    );
  },
  measure: ({ finding: { at, facts, value = 0 } }) =>
    `Voltmeter from inner conductor to screen on the cable at ${partName(at.part)}: about ${numeral(value)} V prove it. Then at ${partName(facts.supply)} without load.`,
  neighbours: ["no-supply", "supply-overloaded"],
  picture: () => null,
};
