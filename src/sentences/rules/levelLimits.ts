import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { becauseOf, culpritCure, culpritWords } from "../culpritWords.ts";
import { heardThere, pictureOfPlace, tuned, whereOf } from "../explain/place.ts";
import { plainName, programmes } from "../explain/plainWords.ts";
import { isTooStrong, levelMark, levelMessage } from "../levelWords.ts";
import { beside, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

type Here = Told<"level-limits">;

export const levelLimits: RuleWords<"level-limits"> = {
  title: "Level at a socket or receiver out of its limits",
  explain:
    "Below the least level a receiver works on a good day only; above the most it is overloaded, and more signal makes things worse.",
  source: "The limits chosen for the design",
  severities: ["warning"],
  message: (told) => levelMessage(told.finding, whereOf(told)),
  cure: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const over = Math.ceil(value - limit - 0.05);
    const { culprit } = facts;
    if (culprit?.does === "high gain" && culprit.amount > over)
      return `Turn ${partName(culprit.part)} down by ${numeralAsSet(over)} dB.`;
    const cure = culpritCure(culprit);
    if (cure !== undefined) return cure;
    return isTooStrong(told.finding)
      ? `Put ${numeralAsSet(Math.ceil(value - limit))} dB of attenuation or more before it, or turn a gain down.`
      : "Lose less on the way (shorter or better cable, fewer splits), or amplify before the loss.";
  },
  customer: (told) => {
    const { at } = told.finding;
    const name = plainName(told, at.part);
    return isTooStrong(told.finding)
      ? `The signal at ${name} is too strong${becauseOf(told)}. That upsets a receiver just as a weak one does.`
      : `The signal at ${name} is too weak${becauseOf(told)}. So ${programmes(at.service, told.evaluation)} ${at.service === "fm" ? "hiss" : "may break up"}.`;
  },
  trade: (told) => {
    const { value = 0, limit = 0, facts } = told.finding;
    const high = isTooStrong(told.finding);
    const all = heardThere(told).map((c) => c.levelDbuv);
    const [least, most] = [Math.min(...all), Math.max(...all)].map((x) => numeral(x));
    const missing = plural(Math.abs(value - limit), {
      one: (n) => (high ? `${n} dB is too much` : `${n} dB is missing`),
      other: (n) => (high ? `${n} dB are too much` : `${n} dB are missing`),
    });
    const range = plural(all.length, {
      one: "There the service has one carrier",
      other: (n) =>
        least === most
          ? `There the service has ${n} carriers of ${least} dBµV`
          : `There the service has ${n} carriers from ${least} to ${most} dBµV`,
    });
    const end = high
      ? ", and a tuner that is driven too hard makes products of its own"
      : "; 3 to 6 dB above the least are good practice";
    return (
      `${facts.culprit ? `${culpritWords(facts.culprit)} ` : ""}At ${whereOf(told)}, ${tuned(facts.worst)} has ${beside(value, limit)} dBµV. ` +
      `${high ? "At most" : "At least"} ${numeralAsSet(limit)} dBµV are asked for, so ${missing}. ${range}${end}.`
    );
  },
  measure: (told) => {
    const { value = 0, limit = 0, facts } = told.finding;
    const high = isTooStrong(told.finding);
    const confirm = `Level meter at ${whereOf(told)} on ${tuned(facts.worst)}: about ${beside(value, limit)} dBµV confirm it, ${numeralAsSet(limit)} dBµV or ${high ? "less" : "more"} refute it. `;
    return (
      confirm +
      (high
        ? "Proof of overload: with a 10 dB attenuator at the plug reception gets better."
        : facts.culprit
          ? beforeAndBehind(facts.culprit)
          : "Then measure before the longest cable and before each splitter: where the step is larger than its loss should be, look there.")
    );
  },
  neighbours: ["low-carrier-to-noise", "slope", "level-difference", "overload"],
  picture: (told) =>
    pictureOfPlace(told, levelMark(told.finding), (band, i, limits) =>
      isTooStrong(told.finding)
        ? (band.level[i] ?? 0) > limits.maxDbuv
        : (band.level[i] ?? 0) < limits.minDbuv,
    ),
};

function beforeAndBehind(culprit: NonNullable<Here["finding"]["facts"]["culprit"]>): string {
  const name = partName(culprit.part);
  const amount = numeral(Math.abs(culprit.amount));
  if (culprit.does === "weak source" || culprit.does === "off aim")
    return `Then measure right behind ${name}: if it is weak there already, the way behind it is not to blame.`;
  return culprit.amount < 0
    ? `Then measure before and behind ${name}: a step of ${amount} dB proves that it is the cause.`
    : `Then measure before and behind ${name}: it should amplify by more than ${amount} dB.`;
}
