import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { culpritCure } from "../culpritWords.ts";
import { pictureOfPlace, tuned } from "../explain/place.ts";
import { plainName } from "../explain/plainWords.ts";
import { isTooStrong, levelMark, levelMessage } from "../levelWords.ts";
import { portLabelOf } from "../missingWords.ts";
import { beside, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

type Here = Told<"stacking-input">;

export const stackingInput: RuleWords<"stacking-input"> = {
  title: "Level at a unit for user bands out of what it can take",
  explain:
    "A unit for user bands holds its output by gain control. Below its input window the user bands get weak and noisy, above it they drown in products.",
  source: "Input window of the unit: 60 to 90 dBµV, a trade forum on one unit",
  severities: ["warning"],
  message: (told) => levelMessage(told.finding, inputOf(told)),
  cure: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    return (
      culpritCure(facts.culprit) ??
      (isTooStrong(told.finding)
        ? `Put ${numeralAsSet(Math.ceil(value - limit))} dB of attenuation before it.`
        : "Put a satellite IF amplifier before it, or lose less on the way from the LNB.")
    );
  },
  customer: (told) => {
    const name = plainName(told, told.finding.at.part);
    return isTooStrong(told.finding)
      ? `The satellite signal is too strong for ${name}. That spoils the picture just as a weak one does.`
      : `The satellite signal is too weak for ${name}. So all receivers behind it may lose their picture.`;
  },
  trade: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const name = partName(told.finding.at.part);
    if (facts.ratioDb !== undefined)
      return (
        `${tuned(facts.worst)} has ${beside(value, limit)} dBµV at ${inputOf(told)}. ` +
        `The products of all transponders there lie only ${numeral(facts.ratioDb)} dB below them, and no gain control behind takes them out again.`
      );
    return (
      `${tuned(facts.worst)} has ${beside(value, limit)} dBµV at ${inputOf(told)}, ${numeral(limit - value)} dB below the window. ` +
      `The gain of ${name} is at its end there: the user band is so much weaker, and its noise stays.`
    );
  },
  measure: (told) => {
    const { value = 0, limit = 0, facts } = told.finding;
    const most = isTooStrong(told.finding) ? "or less" : "or more";
    return `Level meter at ${inputOf(told)} on ${tuned(facts.worst)}: about ${beside(value, limit)} dBµV confirm it, ${numeral(limit)} dBµV ${most} refute it.`;
  },
  neighbours: ["level-limits", "overload", "low-carrier-to-noise"],
  picture: (told) =>
    pictureOfPlace(told, levelMark(told.finding), (band, i) => {
      const { limit = 0 } = told.finding;
      const level = band.level[i] ?? 0;
      return isTooStrong(told.finding) ? level > limit : level < limit;
    }),
};

/** "the input VL of ⟦stacker⟧" */
function inputOf({ finding, evaluation }: Here): string {
  const { part, port = "" } = finding.at;
  return `the input ${portLabelOf(part, port, evaluation)} of ${partName(part)}`;
}
