import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { BandFacts } from "../../findings/bandFacts.ts";
import type { SharedFrequenciesFacts } from "../../findings/rules/sharedFrequencies.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type CollisionGrade, spareNeededDb } from "../../rf/protection.ts";
import type { Service } from "../../signal/carrier.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainNames, uncapital } from "../explain/plainWords.ts";
import { beside, type Clause, carriers, nameOfBand, partName, signalOf } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";
import { screenCure, screenWords } from "../screenWords.ts";
import { turnedCure } from "../turnedCure.ts";
import { outputShown } from "./outputShown.ts";

export const sharedFrequencies: RuleWords<"shared-frequencies"> = {
  title: "Two signals share frequencies on one wire",
  explain:
    "A wire carries each frequency once. Where two signals overlap, each is noise to the other. " +
    "A carrier survives only if it is stronger than the other by the C/N that its modulation needs, with something to spare.",
  source: "Noise-like interference adds to noise (C/(N+I)); grades by the spare C/N that it costs",
  severities: ["error", "warning", "note"],
  message: ({ finding: { at, facts }, evaluation }) => {
    const names = capital(`${nameOfBand(facts.victim)} and ${nameOfBand(facts.other)}`);
    const range = `${numeral(facts.fromMHz, 0)} to ${numeral(facts.toMHz, 0)} MHz`;
    if (facts.intruder !== undefined && facts.other.service === "distant")
      return `${partName(facts.intruder)} also receives ${inSentence(facts.other)}, on ${range} where ${nameOfBand(facts.victim)} is. ${tollsWords(facts)}`;
    const own = ownChannel(evaluation, facts);
    if (own !== undefined) {
      const met = [facts.victim, facts.other].find((b) => b.part !== own) ?? facts.victim;
      return `${partName(own)} sends on ${facts.worst.name}, where ${nameOfBand(met)} is. ${tollsWords(facts)}`;
    }
    const shared = `${names} share ${range} behind ${partName(at.part)}. ${tollsWords(facts)}`;
    if (facts.intruder === undefined) return shared;
    const screen = screenWords(evaluation, facts.intruder);
    return `A signal from outside comes in at ${partName(facts.intruder)}${screen ? `, ${screen}` : ""}. ${shared}`;
  },
  cure: ({ finding: { at, facts }, evaluation }) => {
    if (facts.intruder !== undefined && facts.other.service === "distant")
      return turnedCure(evaluation, facts.intruder);
    if (facts.intruder !== undefined) {
      const lead =
        screenCure(evaluation, facts.intruder) ??
        `Replace the lead or connector at ${partName(facts.intruder)} with a well-screened one`;
      // Where it comes in on the wire itself there is no place before it.
      return facts.intruder === at.part
        ? `${lead}.`
        : `${lead}, or put a filter before ${partName(at.part)}.`;
    }
    const own = ownChannel(evaluation, facts);
    if (own !== undefined) return `Set ${partName(own)} to a free channel.`;
    const noisy = [facts.victim, facts.other].find((b) => b.sort === "noise" && b.service === "tv");
    if (noisy) return `Turn ${partName(noisy.part)} down, or put a filter for its channel right behind it.`;
    // No filter parts what is wanted from what is wanted on the same frequency.
    if (isOnAir(facts.victim) && isOnAir(facts.other))
      return `Take ${partName(spareOf(evaluation, facts))} off this line, or stop the shared channels of one of them before ${partName(at.part)}.`;
    const isSatellite = facts.victim.service === "satellite" || facts.other.service === "satellite";
    return isSatellite
      ? "Give one of them a cable of its own, or use single-cable reception."
      : `Give one of them a cable of its own, or replace ${partName(at.part)} with a filter that keeps them apart.`;
  },
  customer: (told) => {
    const { facts, severity } = told.finding;
    if (facts.other.service === "distant")
      return `A distant transmitter on the same channels reaches the aerial too${severity === "note" ? ". That will hardly be noticed." : ", and some programmes break up."}`;
    const origins = plainNames(told, [facts.victim.part, facts.other.part]);
    const means = {
      error: " and drown each other there.",
      warning: ". That leaves less in reserve for bad weather.",
      note: ". That will hardly be noticed.",
    } as const;
    return `Two signals from ${origins} use the same place on one cable${means[severity]}`;
  },
  trade: ({ finding: { at, facts, value = 0, limit = 0 } }) => {
    const spare = spareNeededDb({ ciDb: value, requiredDb: limit });
    const cost = Number.isFinite(spare)
      ? `it must bring ${numeral(spare)} dB more than that in C/N to survive`
      : "it fails even without any noise";
    return (
      `Behind ${partName(at.part)} ${nameOfBand(facts.victim)} and ${nameOfBand(facts.other)} overlap. ` +
      `The carrier hit worst is ${facts.worst.name} at ${numeral(facts.worst.centreMHz)} MHz. It has a C/I of ${beside(value, limit)} dB and needs ${numeral(limit)} dB: ${cost}. Interference of this kind counts as noise: ` +
      "C/(N+I) = −10·log10(10^(−C/N/10) + 10^(−C/I/10)), and the spare C/N needed is −10·log10(1 − 10^(−(C/I − required)/10))."
    );
  },
  measure: ({ finding: { at, facts, value = 0 } }) =>
    `Spectrum meter behind ${partName(at.part)}, on ${facts.worst.name} at ${numeral(facts.worst.centreMHz)} MHz: MER about ${numeral(Math.max(0, value))} dB or no lock. ` +
    `Unplug ${nameOfBand(facts.other)}: the MER must rise, and that proves it. What is left on the screen in this stretch is the other one.`,
  neighbours: ["band-cut", "receiver-misses", "same-signal-twice", "low-carrier-to-noise"],
  picture: (told) => {
    const { at, facts } = told.finding;
    const port = outputShown(told.record, at.port);
    const spot = port === undefined ? null : spotOf(told, port);
    if (!spot) return null;
    const ends = [facts.victim, facts.other];
    const isOurs = (part: string, service: string) =>
      ends.some((e) => e.part === part && e.service === service);
    const marks = markCarriers(
      spectrumAt(told, spot),
      (band, i) => {
        const centre = band.grid.centre[i] ?? 0;
        return isOurs(band.origin.part, band.origin.service) && isWithin(centre, facts.fromMHz, facts.toMHz);
      },
      { kind: "clash", label: "both here" },
    );
    return pictureOf(told, spot, marks);
  },
};

/** The modulator of the two, whose channel can be chosen; not its noise, which is in all of them. */
function ownChannel(evaluation: Evaluation, { victim, other }: SharedFrequenciesFacts): string | undefined {
  if (victim.sort === "noise" || other.sort === "noise") return undefined;
  return [other, victim].find(({ part }) => {
    const kind = evaluation.record(part)?.kind;
    return kind && optionMeaning(kind, "own channel") !== undefined;
  })?.part;
}

/** An aerial beside a network; of two aerials the one that is received worse. */
function spareOf(evaluation: Evaluation, { victim, other }: SharedFrequenciesFacts): string {
  const isAerial = ({ part }: BandFacts) => evaluation.record(part)?.kind.trade.job === "aerial";
  return !isAerial(victim) && isAerial(other) ? other.part : victim.part;
}

const ON_AIR: readonly Service[] = ["tv", "dab", "fm"];

/** Carriers on their own frequencies, which stay there: no part moves them apart. */
function isOnAir({ service, sort }: BandFacts): boolean {
  return sort === undefined && ON_AIR.includes(service);
}

function isWithin(x: number, from: number, to: number): boolean {
  return x >= from && x <= to;
}

/** "a distant transmitter (Far Hill)". */
function inSentence(facts: BandFacts): string {
  return uncapital(signalOf(facts));
}

/** "5 TV channels are lost.", "79 satellite transponders are lost. 1 more is as good as lost." */
function tollsWords({ tolls, victim, other }: SharedFrequenciesFacts): string {
  return tolls
    .map(({ grade, service, count }, n) => {
      const { one, other: many } = WORDS[grade];
      const isStacked = [victim, other].some((b) => b.service === service && b.sort === "user bands");
      const isSame = n > 0 && tolls[n - 1]?.service === service;
      const who = isSame ? `${numeral(count)} more` : carriers(count, isStacked ? "user band" : service);
      return `${plural(count, { one: one(who), other: many(who) })}.`;
    })
    .join(" ");
}

const WORDS: Readonly<Record<CollisionGrade, Clause>> = {
  dead: { one: (who) => `${who} is lost`, other: (who) => `${who} are lost` },
  "likely dead": { one: (who) => `${who} is as good as lost`, other: (who) => `${who} are as good as lost` },
  "costs margin": {
    one: (who) => `${who} loses part of its margin`,
    other: (who) => `${who} lose part of their margin`,
  },
  slight: { one: (who) => `${who} is slightly disturbed`, other: (who) => `${who} are slightly disturbed` },
  negligible: { one: (who) => `${who} is hardly touched`, other: (who) => `${who} are hardly touched` },
};
