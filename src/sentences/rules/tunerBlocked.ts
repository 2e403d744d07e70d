import type { Blamed } from "../../findings/blame/culprit.ts";
import type { CarrierThere } from "../../findings/blockedCarriers.ts";
import { isWanted } from "../../findings/collisions.ts";
import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { becauseOf, culpritCure, culpritWords, leanWords } from "../culpritWords.ts";
import { whereOf } from "../explain/place.ts";
import { capital, plainName, programmes } from "../explain/plainWords.ts";
import { pictureOfInputs } from "../explain/receiverPicture.ts";
import { beside, carriers, partName, share } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

type Here = Told<"tuner-blocked">;

export const tunerBlocked: RuleWords<"tuner-blocked"> = {
  title: "A tuner is blocked by too strong signals",
  explain:
    "A tuner takes so much power and no more: above that it receives nothing at all. " +
    "A much stronger signal beside the wanted one blocks it as well, although neither is on the other’s frequencies.",
  source:
    "Ratios to neighbours as in ITU-R BT.1368, BT.2033, BT.2215 and BS.412, from memory; most power as set at the receiver",
  severities: ["error"],
  message: (told) => {
    const { culprit, kind } = told.finding.facts;
    if (!culprit) return seen(told);
    return kind === "total"
      ? `${culpritWords(culprit)} ${seen(told)}`
      : `${seen(told)} ${besideWords(culprit)}`;
  },
  cure: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const { by, culprit } = facts;
    if (by.service === "mobile") return `Put a filter against phone masts before ${guarded(told)}.`;
    if (facts.kind === "beside")
      return `Put a trap for ${nameOf(by)} behind ${partName(by.part)}, before any amplifier.`;
    const over = Math.max(1, Math.ceil(value - limit));
    return (
      culpritCure(culprit) ??
      `Put ${numeralAsSet(over)} dB of attenuation or more before ${partName(told.finding.at.part)}.`
    );
  },
  customer: (told) => {
    const name = plainName(told, told.finding.at.part);
    const { service } = told.finding.at;
    return told.finding.facts.kind === "total"
      ? `${capital(name)} gets far too much signal${becauseOf(told)}, and shows nothing although all is there.`
      : `Beside ${programmes(service, told.evaluation)} a much stronger signal comes in, and ${name} cannot tell them apart.`;
  },
  trade: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const over = `${numeral(value - limit)} dB too much`;
    if (facts.kind === "total")
      return (
        `${facts.culprit ? `${culpritWords(facts.culprit)} ` : ""}All signals that the tuner lets in come to ${beside(value, limit)} dBµV at ${whereOf(told)}. ` +
        `It takes ${numeralAsSet(limit)} dBµV at most: ${over}. The strongest is ${nameOf(facts.by)} with ${numeral(facts.by.levelDbuv)} dBµV. ` +
        "Above that limit a receiver fails, whatever the wanted level."
      );
    return (
      `At ${whereOf(told)}, ${nameOf(facts.by)} has ${numeral(facts.by.levelDbuv)} dBµV, and ${nameOf(facts.wanted)} has ${numeral(facts.wanted.levelDbuv)} dBµV. ` +
      `The neighbour is ${beside(value, limit)} dB stronger, and ${numeralAsSet(limit)} dB are the most that a tuner stands there: ${over}. ` +
      `${facts.culprit ? `${besideWords(facts.culprit)} ` : ""}Attenuation does not help, since it takes from both alike.`
    );
  },
  measure: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const place = whereOf(told);
    return facts.kind === "total"
      ? `Level meter at ${place}, all channels added up: about ${beside(value, limit)} dBµV confirm it. Proof: a 20 dB attenuator at the plug brings reception back.`
      : `Level meter at ${place} on ${nameOf(facts.by)} and on ${nameOf(facts.wanted)}: about ${beside(value, limit)} dB apart confirm it. ` +
          "A meter with a narrow filter still shows a good MER where the receiver fails.";
  },
  neighbours: ["level-limits", "level-difference", "overload", "shared-frequencies"],
  picture: (told) =>
    pictureOfInputs(told, { kind: "strong", label: "blocked" }, (lost) => lost.why === "blocked"),
};

/** What sets the two apart, said behind them. */
function besideWords(culprit: Blamed): string {
  return culprit.does === "lets in" || culprit.does === "overdriven"
    ? culpritWords(culprit)
    : leanWords(culprit);
}

/** Where, how much, and what is lost by it. */
function seen(told: Here): string {
  const { facts, at, value = 0, limit = 0 } = told.finding;
  const { failing, of } = facts;
  const which = share(failing, of, at.service ?? "tv");
  const place = whereOf(told);
  if (facts.kind === "total") {
    const power = `At ${place}, all signals together have ${beside(value, limit)} dBµV, and the tuner takes ${numeralAsSet(limit)} dBµV`;
    return plural(failing, {
      one: `${power}: ${which} is blocked.`,
      other: `${power}: ${which} are blocked.`,
    });
  }
  const above = `${nameOf(facts.by)} is ${beside(value, limit)} dB above ${nameOf(facts.wanted)}`;
  return plural(failing, {
    one: `At ${place}, ${above}, and ${numeralAsSet(limit)} dB block it.`,
    other: `At ${place}, ${above}, and ${numeralAsSet(limit)} dB block it. So ${carriers(failing, at.service ?? "tv")} are lost.`,
  });
}

/** The part that a filter belongs before: the one that is driven too hard, or the receiver. */
function guarded({ finding: { facts, at } }: Here): string {
  return partName(facts.culprit?.does === "overdriven" ? facts.culprit.part : at.part);
}

/** "C34", "88.3 MHz", "the phone mast at 796 MHz", "user band 2". */
function nameOf({ service, name, centreMHz, userBand }: CarrierThere): string {
  if (userBand !== undefined) return `user band ${userBand}`;
  if (service === "fm") return `${name} MHz`;
  return isWanted(service) ? name : `the mobile signal at ${numeral(centreMHz)} MHz`;
}
