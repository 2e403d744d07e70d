import type { Part } from "../../../design/design.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { CAUTIONS } from "../../../parts/cautions.ts";
import { describedOptions, onSiteOf, optionMeaning } from "../../../parts/meanings.ts";
import { numeral, numeralAsSet } from "../../../words/numbers.ts";
import { plural } from "../../../words/plural.ts";
import { list } from "../../phrases.ts";
import { optionWords, valueWords } from "../optionWords.ts";
import type { StepTold, WordsOf } from "../told.ts";

/** What is said wherever somebody has to climb with a dish. */
const HEIGHT = CAUTIONS.height.sentences.join(" ");

/** Settings and defects of parts. */
export const SETTING_WORDS: WordsOf<
  | "mend"
  | "aim-dish"
  | "dish-raised"
  | "feed-placed"
  | "dish-moved"
  | "turn-lnb"
  | "right-feed"
  | "aim-aerial"
  | "turn-aerial"
  | "turn-elements"
  | "narrow-aerial"
  | "second-aerial"
  | "free-channel"
  | "gain"
  | "amplifier-slope"
  | "input-pad"
  | "own-user-bands"
  | "other-user-bands"
  | "more-user-bands"
> = {
  mend: {
    title: mendTitle,
    reason: ({ facts, place, part }) => {
      const kind = part(place)?.kind ?? "";
      return `The present value: ${valueWords(kind, facts.option, facts.from)}.`;
    },
  },
  "aim-dish": {
    title: ({ place, name }) => `Realign ${name(place)} with a meter`,
    reason: ({ facts }) => `Its aim costs ${numeral(Number(facts.from))} dB.`,
  },
  "dish-raised": {
    title: ({ facts, place, name }) =>
      `Raise ${name(place)} by ${numeralAsSet(facts.metres)} m and realign it`,
    reason: () => `The obstacle then stands below the way to the satellite. ${HEIGHT}`,
  },
  "dish-moved": {
    title: ({ place, name }) => `Move ${name(place)} to a place with a free view`,
    reason: ({ facts }) =>
      `There nothing may stand higher than ${numeral(facts.elevationDeg, 0)}° at azimuth ${numeral(facts.azimuthDeg, 0)}°; its cable may have to be longer. ${HEIGHT}`,
  },
  "feed-placed": {
    title: ({ facts, place, name }) =>
      facts.isMonoblock
        ? `Fit a monoblock on ${name(place)} whose LNBs are ${numeral(facts.spacingMm, 0)} mm apart`
        : `Move the LNB of feed ${facts.feed} of ${name(place)} to ${numeral(facts.spacingMm, 0)} mm from the first`,
    reason: ({ facts }) =>
      facts.isMonoblock
        ? `Makers state the angle and the dish; where none fits, two LNBs and a position switch do. ${HEIGHT}`
        : `There its satellite’s beam meets. ${HEIGHT}`,
  },
  "turn-lnb": {
    title: ({ place, name }) => `Turn ${name(place)} in its clamp until a meter shows the best C/N`,
    reason: ({ facts }) => `It is off by ${numeral(Number(facts.from), 0)}°.`,
  },
  "right-feed": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with an LNB for ${facts.feed} polarisation`,
    reason: ({ facts }) =>
      facts.feed === "circular"
        ? "The satellite sends circular waves: a linear LNB cannot tell right from left."
        : "The satellite sends linear waves: a circular LNB cannot tell vertical from horizontal.",
  },
  "aim-aerial": {
    title: ({ place, name }) => `Realign ${name(place)} with a meter`,
    reason: ({ facts }) => `A usual place delivers about ${facts.to} dBµV; it gives ${facts.from} dBµV.`,
  },
  "turn-aerial": {
    title: ({ facts, place, name }) => `Turn ${name(place)} to ${numeralAsSet(Number(facts.to))}° from north`,
    reason: ({ facts }) =>
      `There what is wanted stands furthest above the rest; now it points to ${numeralAsSet(Number(facts.from))}°.`,
  },
  "turn-elements": {
    title: ({ facts, place, name }) =>
      `Turn the elements of ${name(place)} to ${facts.to === "V" ? "vertical" : "horizontal"}`,
    reason: () => "The other polarisation comes in 16 dB weaker.",
  },
  "free-channel": {
    title: ({ facts, place, name }) => `Set ${name(place)} to channel ${facts.to}`,
    reason: ({ facts }) => `That channel and its neighbours are free; channel ${facts.from} is not.`,
  },
  "second-aerial": {
    title: ({ facts, place, name }) =>
      `Put a second aerial beside ${name(place)}, turned to ${numeralAsSet(facts.bearingDeg)}° from north, with channel filters and a combiner`,
    reason: ({ facts }) =>
      `It is for ${list(facts.channels.map((n) => `C${n}`))}. Each filter passes the channels of its own aerial, so that none comes in twice. ${HEIGHT}`,
  },
  "narrow-aerial": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with an aerial of ${numeralAsSet(facts.beamWidthDeg)}° beam width`,
    reason: () => "A long aerial hears less of what stands beside and behind its direction.",
  },
  gain: {
    title: ({ facts, place, name, part }) =>
      `${facts.isLevel ? `Set the ${levelOf(part(place), facts.option)} of ${name(place)} to ${numeralAsSet(facts.toDb)} dBµV` : `Set the gain of ${name(place)} to ${numeralAsSet(facts.toDb)} dB`}, ${numeralAsSet(Math.abs(facts.byDb))} dB ${facts.byDb < 0 ? "lower" : "higher"}`,
    reason: ({ facts }) => {
      if (facts.byDb < 0) return "Everything behind it comes down to what it should be.";
      return facts.isLevel ? "Its level control can give more." : "It has gain to spare.";
    },
  },
  "amplifier-slope": {
    title: ({ facts, place, name }) => `Set the slope of ${name(place)} to ${numeralAsSet(facts.db)} dB`,
    reason: () => "It amplifies the low end less and so makes up for the cable behind it.",
  },
  "input-pad": {
    title: ({ facts, place, name }) => `Set the input attenuator of ${name(place)} to ${facts.to} dB`,
    reason: () => "It costs as much C/N as it takes level.",
  },
  "own-user-bands": {
    title: ({ facts, name }) =>
      plural(facts.receivers.length, {
        one: `Set ${name(facts.receivers[0] ?? "")} to free user bands of ${name(facts.converter)}`,
        other: `Set every tuner on the line of ${name(facts.converter)} to a user band of its own`,
      }),
    reason: () => "Each tuner then asks for its own transponder, and none retunes another.",
  },
  "other-user-bands": {
    title: ({ facts, place, name }) =>
      plural(facts.count, {
        one: `Give ${name(place)} a user band that ${name(facts.first)} leaves free, and set the receivers to suit`,
        other: (n) =>
          `Give ${name(place)} ${n} user bands that ${name(facts.first)} leaves free, and set the receivers to suit`,
      }),
    reason: () => "On one line each user band may come from one LNB or multiswitch only.",
  },
  "more-user-bands": {
    title: ({ place, name, part }) =>
      isSet(part(place))
        ? `Set ${name(place)} to 32 user bands (EN 50607), and its receivers to suit`
        : `Replace ${name(place)} with one that has 32 user bands (EN 50607)`,
    reason: ({ facts }) =>
      plural(facts.tuners, {
        one: "One tuner is connected to its line, and it has no user band for it.",
        other: (n) => `${n} tuners are connected to its line, and it has fewer user bands.`,
      }),
  },
};

/** Whether the user bands of a converter are set on site. */
function isSet(converter: Part | undefined): boolean {
  const kind = kindOf(converter?.kind ?? "");
  const key = kind && optionMeaning(kind, "user band set");
  return kind !== undefined && key !== undefined && onSiteOf(kind, key) !== undefined;
}

/** A switch is switched on; anything else is set to its sound value. */
function mendTitle({ facts, place, name, part }: StepTold<"mend">): string {
  const kind = kindOf(part(place)?.kind ?? "");
  const meaning = kind && describedOptions(kind).get(facts.option)?.means;
  if (meaning === "mains") return `Switch on the mains of ${name(place)}`;
  if (meaning === "receiver state")
    return facts.to === "standby" ? `Put ${name(place)} in standby` : `Switch on ${name(place)}`;
  if (meaning === "horizontal volts") return `Repair or replace the supply of ${name(place)}`;
  if (meaning === "asked burst") return `Set ${name(place)} to send tone burst ${facts.to}`;
  if (meaning === "asked uncommitted input")
    return `Set ${name(place)} to ask for uncommitted input ${facts.to}`;
  if (meaning === "asked position")
    return facts.from === "none"
      ? `Set ${name(place)} to send a position command for each satellite`
      : `Set ${name(place)} to position ${facts.to}`;
  const option = optionWords(kind?.kind ?? "", facts.option);
  return `Set “${option}” of ${name(place)} to: ${valueWords(kind?.kind ?? "", facts.option, facts.to)}`;
}

/** What a part holds at a level: its user bands, or its output. */
function levelOf(part: Part | undefined, option: string): string {
  const kind = kindOf(part?.kind ?? "");
  return kind && option === optionMeaning(kind, "output level") ? "output level" : "user bands";
}
