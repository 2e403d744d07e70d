import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { leanWords } from "../culpritWords.ts";
import { pictureOfPlace, tuned, whereOf } from "../explain/place.ts";
import { plainName } from "../explain/plainWords.ts";
import { beside, partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const slope: RuleWords<"slope"> = {
  title: "Too much slope",
  explain:
    "Cable loses more at high frequencies. Over a long run the top of the band gets weaker than the bottom, until no level suits both ends.",
  source: "The limits chosen for the design; a straight line laid through the carriers that are there",
  severities: ["warning"],
  message: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const { lowest, highest, falls, culprit } = facts;
    const seen = `At ${whereOf(told)}, the level ${falls ? "falls" : "rises"} by ${beside(value, limit)} dB from ${numeral(lowest.centreMHz, 0)} to ${numeral(highest.centreMHz, 0)} MHz; ${numeralAsSet(limit)} dB are allowed.`;
    return culprit ? `${seen} ${leanWords(culprit)}` : seen;
  },
  cure: ({ finding: { facts } }) =>
    facts.culprit && facts.culprit.does !== "long cable"
      ? `Set the slope of ${partName(facts.culprit.part)} again, or put an equaliser behind it.`
      : "Put an equaliser into the line, use an amplifier whose gain rises with frequency, or cable of lower loss.",
  customer: (told) =>
    `On the way to ${plainName(told, told.finding.at.part)} the channels at one end of the range fall far behind those at the other end.`,
  trade: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const { lowest, highest, culprit } = facts;
    return (
      `At ${whereOf(told)}, a straight line through the carriers changes by ${beside(value, limit)} dB over its range; ${numeralAsSet(limit)} dB are allowed. The ends: ${tuned(lowest)} with ${numeral(lowest.levelDbuv)} dBµV, ${tuned(highest)} with ` +
      `${numeral(highest.levelDbuv)} dBµV. ${culprit ? `${leanWords(culprit)} ` : ""}Loss of cable grows about with the root of the frequency. From 950 to 2150 MHz it rises by half: a run of 20 dB at 950 MHz brings 10 dB of slope.`
    );
  },
  measure: (told) => {
    const { lowest, highest } = told.finding.facts;
    return (
      `Level meter at ${whereOf(told)} on ${tuned(lowest)} and on ${tuned(highest)}: about ${numeral(Math.abs(lowest.levelDbuv - highest.levelDbuv))} dB apart. ` +
      "The same two at the upper end of the cable: if they are nearly alike there, the cable makes the slope."
    );
  },
  neighbours: ["level-difference", "level-limits"],
  picture: (told) =>
    pictureOfPlace(
      told,
      { kind: "stretch", label: `${numeral(told.finding.value ?? 0)} dB of slope` },
      () => true,
    ),
};
