/** What the words of the rules on missing carriers have in common. */

import type { LossRule } from "../../findings/receiverLossRules.ts";
import { televisionIn } from "../../findings/television.ts";
import { capital, plainName, roughly } from "../explain/plainWords.ts";
import { lossCure, lossWords, type Sufferer, suffererWords } from "../lossWords.ts";
import { partName, share } from "../phrases.ts";
import { planesWords } from "../planes.ts";
import type { Told } from "../ruleWords.ts";

function suffererOf({ finding: { at } }: Told<LossRule>): Sufferer {
  return { part: at.part, ...(at.tuner === undefined ? {} : { tuner: at.tuner }) };
}

/** "The input HH of ⟦ms⟧ is open: ⟦rx⟧ gets 60 of 80 satellite transponders, high horizontal is missing." */
export function lossMessage(told: Told<LossRule>): string {
  const { finding, evaluation } = told;
  const { facts } = finding;
  const { missing, got, wanted, service } = facts;
  const cause = lossWords(facts, suffererOf(told), evaluation);
  if (wanted === 0) return `${cause}.`;
  const who = suffererWords(suffererOf(told));
  const planes = got > 0 ? planesWords(missing.planes, evaluation) : "";
  const without = planes && !cause.includes(planes) ? `, without ${planes}` : "";
  return `${cause}: ${who} gets ${share(got, wanted, service)}${without}.`;
}

export function lossCureOf(told: Told<LossRule>): string | undefined {
  return lossCure(told.finding.facts, suffererOf(told), told.evaluation);
}

/** For the customer: how much is left. */
export function lossForCustomer(told: Told<LossRule>, why: string): string {
  const { at, facts } = told.finding;
  const name = capital(plainName(told, at.part));
  const left = roughly(facts.got, facts.wanted, { service: facts.service, ...televisionIn(told.evaluation) });
  return at.tuner === undefined
    ? `${name} gets ${left}${why}.`
    : `${name} cannot show one programme and record another as it should, since one of its connections gets ${left}.`;
}

/** Counts, and where to look. */
export function lossForTrade(told: Told<LossRule>, more: string): string {
  return `${lossMessage(told)} ${more}`;
}

/** Where to measure: the culprit, then the receiver. */
export function lossMeasure({ finding: { at, facts } }: Told<LossRule>): string {
  const { culprit } = facts;
  const where =
    culprit.part === at.part
      ? "Then from there upwards, part by part"
      : `Then before and behind ${partName(culprit.part)}`;
  return (
    `Meter at the input of ${partName(at.part)}: ${facts.service === "fm" ? "level and C/N of a missing station; nothing but hiss confirms the loss" : "level and MER of a missing carrier; no lock confirms the loss"}. ` +
    `${where}: the part behind which it is gone is the one that takes it.`
  );
}
