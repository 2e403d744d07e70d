import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { culpritCure, leanWords } from "../culpritWords.ts";
import { pictureOfPlace, tuned, whereOf } from "../explain/place.ts";
import { plainName } from "../explain/plainWords.ts";
import { beside } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";

export const levelDifference: RuleWords<"level-difference"> = {
  title: "Carriers differ too much in level",
  explain:
    "A receiver sets its gain by all that comes in. When strong and weak carriers are far apart, it cannot suit both. " +
    "The weak ones drown in the noise that the strong ones force on it.",
  source: "The limits chosen for the design",
  severities: ["warning"],
  message: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const seen = `At ${whereOf(told)}, ${facts.strongest.name} is ${beside(value, limit)} dB stronger than ${facts.weakest.name}; ${numeralAsSet(limit)} dB are allowed.`;
    return facts.culprit ? `${seen} ${leanWords(facts.culprit)}` : seen;
  },
  cure: ({ finding: { facts } }) => {
    if (facts.culprit?.does === "long cable")
      return "Put an equaliser into the line, or set a slope at the amplifier before it.";
    return facts.culprit?.does === "leans" ? "Put an equaliser into the line." : culpritCure(facts.culprit);
  },
  customer: (told) =>
    `Some channels reach ${plainName(told, told.finding.at.part)} much stronger than others, and the weak ones suffer from it.`,
  trade: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const { strongest, weakest, culprit } = facts;
    return (
      `At ${whereOf(told)}, ${tuned(strongest)} has ${numeral(strongest.levelDbuv)} dBµV and ${tuned(weakest)} ${numeral(weakest.levelDbuv)} dBµV. They are ${beside(value, limit)} dB apart; ${numeralAsSet(limit)} dB are allowed. ` +
      `${culprit ? `${leanWords(culprit)} ` : ""}Tuner and amplifier set their gain by all that comes in, so the weak carrier gets the noise that suits the strong one.`
    );
  },
  measure: (told) =>
    `Level meter at ${whereOf(told)}: note every carrier of the service. A difference near ${numeral(told.finding.value ?? 0)} dB confirms it. Measure the same carriers at the aerial or LNB. The difference that is there already needs a channel filter. ` +
    "What grows on the way needs an equaliser.",
  neighbours: ["slope", "level-limits", "overload"],
  picture: (told) => {
    const { strongest, weakest } = told.finding.facts;
    const ends = [strongest.centreMHz, weakest.centreMHz];
    return pictureOfPlace(
      told,
      { kind: "strong", label: `${numeral(told.finding.value ?? 0)} dB apart` },
      (band, i) => ends.includes(band.grid.centre[i] ?? 0),
    );
  },
};
