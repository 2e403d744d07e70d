import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { plainName } from "../explain/plainWords.ts";
import { list, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

export const deadStub: RuleWords<"dead-stub"> = {
  title: "A dead end of cable takes channels away",
  explain:
    "A cable that is simply connected to a line and ends open or shorted sends everything back: its return loss is zero. Where the reflection meets the signal upside " +
    "down, both cancel. Those notches come again and again over the band. A splitter keeps the legs apart.",
  source:
    "transmission line theory: open end, odd multiples of c·VF/(4·length); shorted end, multiples of c·VF/(2·length)",
  severities: ["warning"],
  message: (told) => {
    const { at, facts } = told.finding;
    const end = `The dead cable of ${numeral(facts.lengthM)} m on ${partName(at.part)}`;
    if (facts.isPossible)
      return `${end} may take up to ${numeral(told.finding.value)} dB from ${hitWords(told)}: a few centimetres more or less move its notches.`;
    return `${end} takes up to ${numeral(told.finding.value)} dB from ${hitWords(told)}, with a notch at ${numeral(facts.notchMHz)} MHz.`;
  },
  cure: ({ finding: { at } }) =>
    `Take the dead cable off, or replace ${partName(at.part)} with a splitter and put 75 Ω on the unused leg.`,
  customer: (told) =>
    told.finding.facts.isPossible
      ? `An unused cable on ${plainName(told, told.finding.at.part)} may take channels away from the one in use.`
      : `An unused cable on ${plainName(told, told.finding.at.part)} takes some of the channels away from the one in use.`,
  trade: ({ finding: { at, facts, value, limit = 0 } }) =>
    `On ${partName(at.part)} three lines are simply connected. ${numeral(facts.lengthM)} m of cable that end ${facts.end === "open" ? "open" : "shorted"} make a notch every ${numeral(facts.periodMHz)} MHz, one of them at ${numeral(facts.notchMHz)} MHz. ` +
    `With both legs in use a joint loses ${numeral(3.5)} dB. The dead one ${facts.isPossible ? "may take" : "takes"} up to ${numeral(value)} dB more; from ${numeralAsSet(limit)} dB on that is told. The shorter the dead cable, the deeper and wider its notches. The levels shown have it in them; the range around them is what 5 % more or less of its length would change.`,
  measure: ({ finding: { at, facts } }) =>
    `Spectrum meter on the leg of ${partName(at.part)} that is in use: look for a dip at ${numeral(facts.notchMHz)} MHz. Take the dead cable off: if the dip goes, it was the cable.`,
  neighbours: ["open-end", "level-limits", "same-signal-twice"],
  picture: (told) => {
    const { at, facts } = told.finding;
    const quarter = facts.periodMHz / 4;
    return pictureOf(told, spotOf(told, at.port), [
      {
        kind: "stretch",
        fromMHz: Math.max(0, facts.notchMHz - quarter),
        toMHz: facts.notchMHz + quarter,
        label: "notch",
      },
    ]);
  },
};

/** "C30", "C30 and 2 more": names of the carriers, the worst first. */
function hitWords({ finding: { facts } }: Told<"dead-stub">): string {
  const names = facts.hit.map((each) => each.name);
  const [first = ""] = names;
  if (names.length <= 3) return list(names);
  return plural(names.length - 1, { one: `${first} and one more`, other: (n) => `${first} and ${n} more` });
}
