import { kindOf } from "../../../parts/catalogue.ts";
import { describedOptions } from "../../../parts/meanings.ts";
import { numeral, numeralAsSet } from "../../../words/numbers.ts";

import { optionWords, valueWords } from "../optionWords.ts";
import type { WordsOf } from "../told.ts";

/** Supply and commands. */
export const SUPPLY_WORDS: WordsOf<
  | "supply-path"
  | "block-away"
  | "supply-on"
  | "power-inserter"
  | "inserter-moved"
  | "higher-supply"
  | "lower-supply"
  | "stronger-supply"
  | "mains-unit"
  | "own-limits"
  | "free-motor"
  | "lesser-motor"
  | "blocked-load"
  | "dc-block"
> = {
  "supply-path": {
    title: ({ facts, place, name, part }) => {
      const kind = part(place)?.kind ?? "";
      if (facts.value === true) return `Replace ${name(place)} with a type that passes DC and 22 kHz`;
      const value = valueWords(kind, facts.option, facts.value);
      return `Set “${optionWords(kind, facts.option)}” of ${name(place)} to: ${value}`;
    },
    reason: () => "The part stops the supply and the commands that come up from the receivers.",
  },
  "block-away": {
    title: ({ place, name }) => `Remove ${name(place)} from the line`,
    reason: () => "The part stops the supply and the commands that come up from the receivers.",
  },
  "supply-on": {
    title: ({ facts, place, name, part }) => {
      const kind = kindOf(part(place)?.kind ?? "");
      const meaning = kind && describedOptions(kind).get(facts.option)?.means;
      if (meaning === "aerial supply") return `Set the aerial supply of ${name(place)} to ${facts.value} V`;
      if (meaning === "converter feed") return `Set ${name(place)} to feed the LNB`;
      return `Switch on the mains of ${name(place)}`;
    },
    reason: () => "This unit can feed what is without supply now.",
  },
  "power-inserter": {
    title: ({ place, name }) => `Put a power inserter behind ${name(place)}`,
    reason: () => "A mains unit in the line feeds it, whatever the receivers do.",
  },
  "inserter-moved": {
    title: ({ facts, place, name }) => `Move ${name(place)} into the line behind ${name(facts.behind)}`,
    reason: ({ facts, name }) => `Then nothing between them stops its current to ${name(facts.behind)}.`,
  },
  "higher-supply": {
    title: ({ facts, place, name, part }) =>
      kindOf(part(place)?.kind ?? "")?.trade.job === "supply"
        ? `Replace ${name(place)} with a unit of ${numeralAsSet(facts.volts)} V`
        : `Set the aerial supply of ${name(place)} to ${numeralAsSet(facts.volts)} V`,
    reason: () => "What it feeds needs more volts than arrive.",
  },
  "lower-supply": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with a unit of ${numeralAsSet(facts.volts)} V`,
    reason: () => "Then a receiver can raise the line to 18 V, and its messages are noticed.",
  },
  "stronger-supply": {
    title: ({ facts, place, name, part }) => {
      const isReceiver = kindOf(part(place)?.kind ?? "")?.trade.job === "receiver";
      return `Replace ${name(place)} with a ${isReceiver ? "receiver" : "unit"} that delivers ${numeralAsSet(facts.needMa)} mA`;
    },
    reason: ({ facts }) => `It is asked for ${numeral(Math.round(facts.askedMa))} mA.`,
  },
  "mains-unit": {
    title: ({ place, name }) => `Replace ${name(place)} with a type that has a mains unit of its own`,
    reason: () => "It then feeds itself and the LNB, whatever the receivers can give.",
  },
  "own-limits": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with a receiver that delivers ${numeralAsSet(facts.limitMa)} mA at each input`,
    reason: () => "Its inputs share one limit now, and each feeds an LNB.",
  },
  "free-motor": {
    title: ({ place, name }) => `Free ${name(place)} of ice, rust or whatever holds it, or replace it`,
    reason: ({ facts }) =>
      `It draws ${numeral(Math.round(facts.drawsMa))} mA. A motor that turns freely draws less, and starts again when it is free.`,
  },
  "lesser-motor": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with a motor that draws at most ${numeralAsSet(facts.mostMa)} mA while turning`,
    reason: () => "Its receiver then has enough for motor and LNB together.",
  },
  "blocked-load": {
    title: ({ place, name }) => `Replace ${name(place)} with a terminator that has a capacitor`,
    reason: () => "Such a terminator ends the line and draws no current.",
  },
  "dc-block": {
    title: ({ place, name }) => `Put a DC block behind ${name(place)}`,
    reason: () => "The signal passes, DC does not.",
  },
};
