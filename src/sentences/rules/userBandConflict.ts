import type { TunerAt } from "../../findings/rules/userBandConflict.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainName, plainNames } from "../explain/plainWords.ts";
import { besideLimit } from "../figures.ts";
import { list, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

const STANDARDS = "EN 50494 allows up to 8 user bands on an output, EN 50607 up to 32.";

export const userBandConflict: RuleWords<"user-band-conflict"> = {
  title: "User bands in conflict",
  explain:
    "On a single-cable line every tuner has a user band of its own, with the number and centre that the LNB gives it. " +
    "Two tuners on one band retune each other. A receiver left in universal mode holds the line at 18 V or sends steady tone, and nobody else’s messages get through.",
  source: "EN 50494 and EN 50607, as quoted",
  severities: ["error"],
  message: (told) => {
    const { at, facts } = told.finding;
    const name = partName(at.part);
    const converter = partName(facts.converter);
    switch (facts.kind) {
      case "twice":
        return plural(receiversOf(facts.tuners).length, {
          one: `User band ${facts.userBand} of ${converter} is set at ${tunersWords(facts.tuners)}: they retune each other.`,
          other: `User band ${facts.userBand} of ${converter} is used by ${tunersWords(facts.tuners)}: they retune each other.`,
        });
      case "wrong mode":
        if (isConverters(told))
          return `${converter} sends user bands, but ${name} is no SCR/dSCR receiver and cannot ask for them.`;
        return facts.isAlone
          ? `${name} is not in single-cable mode, but is on the single-cable line of ${converter}.`
          : `${name} is not in single-cable mode and blocks the line of ${converter}: the other receivers cannot send their messages.`;
      case "standing volts":
        return `${name} keeps ${numeral(facts.volts)} V on the line of ${converter}: no receiver can raise it, so no message is noticed.`;
      case "no such user band":
        return `${tunerOf(told)} is set to user band ${facts.userBand}, which ${converter} does not have: ${hasWords(facts.has)}.`;
      case "other centre": {
        const [here, there] = besideLimit(facts.hereMHz, facts.thereMHz);
        return `${tunerOf(told)} has user band ${facts.userBand} at ${here} MHz; ${converter} sends it at ${there} MHz.`;
      }
    }
  },
  cure: (told) => {
    const { at, facts } = told.finding;
    const name = partName(at.part);
    switch (facts.kind) {
      case "twice":
        return "Give each tuner a user band of its own.";
      case "wrong mode":
        if (isConverters(told))
          return `Use a universal LNB in the place of ${partName(facts.converter)}, or SCR/dSCR receivers.`;
        return facts.setting
          ? `Set ${name} to single-cable mode, with a free user band.`
          : `Replace ${name} with an SCR/dSCR receiver, or give it another line.`;
      case "standing volts":
        return facts.canBeSet
          ? `Set ${name} to 14 V at most, or let the receivers feed the line.`
          : `Replace ${name} with an SCR/dSCR receiver, or give it another line.`;
      case "no such user band":
        return `Set ${tunerOf(told, "of")} to a free user band of ${partName(facts.converter)}.`;
      case "other centre":
        return `Set the centre of user band ${facts.userBand} in ${name} to ${numeral(facts.thereMHz)} MHz.`;
    }
  },
  customer: (told) => {
    const { at, facts } = told.finding;
    if (facts.kind === "standing volts")
      return `${capital(plainName(told, at.part))} powers the shared cable in a way that drowns what the receivers ask for.`;
    if (facts.kind === "wrong mode")
      return `${capital(plainName(told, at.part))} is not set up for the cable it shares and blocks it for the others.`;
    if (facts.kind !== "twice")
      return `${capital(plainName(told, at.part))} looks for its programmes at a place where nobody sends them.`;
    const receivers = receiversOf(facts.tuners);
    return plural(receivers.length, {
      one: `Two parts of ${plainNames(told, receivers)} are set to the same place on the shared cable and keep taking it from each other.`,
      other: `${capital(plainNames(told, receivers))} are set to the same place on the shared cable and keep taking it from each other.`,
    });
  },
  trade: (told) => {
    const { at, facts, value = 2, limit = 1 } = told.finding;
    const name = partName(at.part);
    const converter = partName(facts.converter);
    switch (facts.kind) {
      case "wrong mode":
        return (
          "On a single-cable line everybody rests at 13 V and rises to 18 V only for the few milliseconds of a message. " +
          `${name} is in universal mode: it holds 13 or 18 V and sends steady tone of 22 kHz. So messages never stand out, and ${converter} gets no valid command.`
        );
      case "standing volts":
        return (
          "On a single-cable line everybody rests at 13 V and rises to 18 V only for the few milliseconds of a message. " +
          `${name} holds the line of ${converter} at ${numeral(facts.volts)} V all the time, so no message begins with a rise, and none is read.`
        );
      case "twice":
        return (
          `User band ${facts.userBand}${facts.centreMHz === undefined ? "" : `, centred on ${numeral(facts.centreMHz)} MHz,`} is set at ${value} tuners; each user band may have ${limit}. ` +
          `Each message moves another transponder onto it, so whoever spoke last has it and ${plural(value - 1, { one: "the other loses lock", other: "the others lose lock" })}. ${STANDARDS}`
        );
      case "no such user band":
        return `${tunerOf(told)} sends its messages for user band ${facts.userBand}. ${capital(converter)} has no such band on this output (${hasWords(facts.has)}), so it never answers, and the tuner finds nothing. ${STANDARDS}`;
      case "other centre": {
        const [here, there] = besideLimit(facts.hereMHz, facts.thereMHz);
        return `${tunerOf(told)} asks for user band ${facts.userBand} and tunes to ${here} MHz. ${capital(converter)} puts that band on ${there} MHz, as its label says, so the tuner looks beside it. ${STANDARDS}`;
      }
    }
  },
  measure: (told) => {
    const { at, facts } = told.finding;
    const name = partName(at.part);
    if (facts.kind === "wrong mode")
      return `Voltmeter on the line at ${partName(facts.converter)}: in rest 13 V belong there. With ${name} plugged in it stays near 18 V or shows steady tone; unplug it, and the others work again.`;
    if (facts.kind === "standing volts")
      return `Voltmeter on the line at ${partName(facts.converter)}: in rest 13 to 14 V belong there. With ${name} switched on it stays near ${numeral(facts.volts)} V.`;
    if (facts.kind !== "twice")
      return `Look into the menu of ${name}, and hold its user bands against the label of ${partName(facts.converter)}: number and centre must be the same in both.`;
    const receivers = receiversOf(facts.tuners);
    return `${plural(receivers.length, {
      one: `Look into the menu of ${partName(receivers[0] ?? "")}: the same user band number twice proves it.`,
      other: `Look into the menus of ${list(receivers.map(partName))}: the same user band number proves it.`,
    })} With a meter: that user band’s centre shows a carrier that changes whenever the other tuner changes channel.`;
  },
  neighbours: ["too-many-tuners", "switched-output-shared", "receiver-misses"],
  picture: (told) => {
    const { facts } = told.finding;
    const spot = spotOf(told);
    if (!spot) return null;
    const marks = markCarriers(
      spectrumAt(told, spot),
      (band, i) =>
        band.stack !== undefined && (!("userBand" in facts) || band.stack.numbers[i] === facts.userBand),
      "userBand" in facts
        ? { kind: "clash", label: `user band ${facts.userBand}` }
        : { kind: "lost", label: "blocked" },
    );
    return pictureOf(told, spot, marks);
  },
};

/** Whether the converter is the one to take in hand. */
function isConverters({ finding: { facts, parts } }: Told<"user-band-conflict">): boolean {
  return parts[0] === facts.converter;
}

function receiversOf(tuners: readonly TunerAt[]): readonly string[] {
  return [...new Set(tuners.map((t) => t.part))];
}

/** "tuner 1 of ⟦a⟧ and tuner 2 of ⟦b⟧", "2 tuners of ⟦a⟧". */
function tunersWords(tuners: readonly TunerAt[]): string {
  const receivers = receiversOf(tuners);
  const [first = ""] = receivers;
  if (receivers.length === 1) return `${tuners.length} tuners of ${partName(first)}`;
  if (receivers.length > 2) return list(receivers.map(partName));
  return list(tuners.map((t) => `tuner ${t.tuner} of ${partName(t.part)}`));
}

function tunerOf({ finding: { at } }: Told<"user-band-conflict">, place: "start" | "of" = "start"): string {
  return `${place === "start" ? "Tuner" : "tuner"} ${at.tuner ?? 1} of ${partName(at.part)}`;
}

/** "it has 1 to 4", "it has 1, 3 and 7", "it has none". */
function hasWords(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return "it has none";
  if (sorted.length > 2 && last - first === sorted.length - 1) return `it has ${first} to ${last}`;
  return `it has ${list(sorted.map(String))}`;
}
