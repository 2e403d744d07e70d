import { numeral, numeralAsSet } from "../../../words/numbers.ts";
import { plural } from "../../../words/plural.ts";
import { list } from "../../phrases.ts";
import type { WordsOf } from "../told.ts";

/** Levels: pads, taps, splitters, amplifiers, dishes. */
export const LEVEL_STEP_WORDS: WordsOf<
  | "pad"
  | "pad-value"
  | "pad-away"
  | "source-pad"
  | "graded-taps"
  | "passive-splitter"
  | "tv-amplifier"
  | "equaliser"
  | "tap-value"
  | "smaller-splitter"
  | "dead-cable-off"
  | "splitter-for-joint"
  | "ferrite-splitter"
  | "better-decoupling"
  | "line-amplifier"
  | "trunk-amplifiers"
  | "trunk-amplifier"
  | "trunk-pads"
  | "lesser-lnb"
  | "unit-up"
  | "amplifier-away"
  | "house-amplifier"
  | "masthead"
  | "larger-dish"
> = {
  pad: {
    title: ({ facts, place, name }) =>
      `Put an attenuator of ${numeralAsSet(facts.db)} dB before ${name(place)}`,
    reason: ({ facts }) =>
      `There are ${numeral(Math.ceil(facts.overDb))} dB too much. An attenuator takes the same off everything.`,
  },
  "pad-value": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with an attenuator of ${facts.to} dB`,
    reason: ({ facts }) => `It takes ${facts.from} dB now.`,
  },
  "pad-away": {
    title: ({ place, name }) => `Remove ${name(place)} from the line`,
    reason: () => "The part takes level where there is none to spare.",
  },
  "source-pad": {
    title: ({ facts, place, name }) =>
      `Put an attenuator of ${numeralAsSet(facts.db)} dB behind ${name(place)}`,
    reason: () => "The source delivers more than anything behind it can use.",
  },
  "graded-taps": {
    title: ({ facts, name }) => {
      const losses = [...new Set(facts.taps.map(({ db }) => db))];
      const values = facts.taps.map(({ part, db }) => `${name(part)} ${numeralAsSet(db)} dB`);
      const knobs = [
        ...(facts.gainDb === undefined
          ? []
          : [`the gain of ${name(facts.amplifier ?? "")} to ${numeralAsSet(facts.gainDb)} dB`]),
        ...(facts.slopeDb === undefined ? [] : [`its slope to ${numeralAsSet(facts.slopeDb)} dB`]),
      ];
      const graded =
        losses.length === 1
          ? `Set the tap loss of ${list(facts.taps.map(({ part }) => name(part)))} to ${numeralAsSet(losses[0] ?? 0)} dB`
          : `Set the taps in steps: ${list(values)}`;
      return knobs.length > 0 ? `${graded}; set ${list(knobs)}` : graded;
    },
    reason: () => "The tap losses are chosen so that all sockets get about the same.",
  },
  "passive-splitter": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with a ${facts.ways}-way splitter`,
    reason: () => "There is enough level without an amplifier.",
  },
  "tv-amplifier": {
    title: ({ place, name }) => `Replace ${name(place)} with a masthead amplifier for TV`,
    reason: () => "The present amplifier is made for satellite and stops TV.",
  },
  equaliser: {
    title: ({ facts, place, name }) =>
      `Put an equaliser of ${numeralAsSet(facts.db)} dB before ${name(place)}`,
    reason: () => "An equaliser takes off at the low end what the cable has left too much.",
  },
  "tap-value": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with one of ${numeralAsSet(facts.db)} dB tap loss`,
    reason: ({ facts }) =>
      facts.db > facts.before
        ? `At ${numeralAsSet(facts.before)} dB too much comes down to its sockets.`
        : `At ${numeralAsSet(facts.before)} dB too little comes down to its sockets.`,
  },
  "smaller-splitter": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with a ${facts.ways}-way splitter`,
    reason: ({ facts: { legs, used } }) =>
      plural(used, {
        zero: `It has ${legs} legs and none is used; every leg costs level.`,
        one: `It has ${legs} legs and one is used; every leg costs level.`,
        other: (n) => `It has ${legs} legs and ${n} are used; every leg costs level.`,
      }),
  },
  "dead-cable-off": {
    title: ({ facts, place, name }) =>
      `Take ${list(facts.cables.map(name))} off and connect the line without ${name(place)}`,
    reason: () => "What comes back from a dead end cancels whole channels on the line that is in use.",
  },
  "splitter-for-joint": {
    title: ({ place, name }) => `Replace ${name(place)} with a splitter`,
    reason: () => "A splitter keeps its legs apart: what one of them sends back hardly reaches the other.",
  },
  "ferrite-splitter": {
    title: ({ facts, place, name }) =>
      facts.isolationDb === undefined
        ? `Replace ${name(place)} with a ferrite splitter`
        : `Replace ${name(place)} with a ferrite splitter that has ${numeralAsSet(facts.isolationDb)} dB between its outputs`,
    reason: () => "A resistive splitter loses twice the decibels and isolates its legs badly.",
  },
  "better-decoupling": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with a type that has ${numeralAsSet(facts.isolationDb)} dB between its outputs`,
    reason: () => "The two flats meet there.",
  },
  "line-amplifier": {
    title: ({ facts, place, name }) =>
      `Put an in-line IF amplifier of ${numeralAsSet(facts.db)} dB before ${name(place)}`,
    reason: () => "Amplified before the long cable, the signal keeps its distance from the noise.",
  },
  "trunk-amplifiers": {
    title: ({ facts, place, name }) =>
      plural(facts.count, {
        one: `Put an in-line IF amplifier of ${numeralAsSet(facts.db)} dB before the long cable to ${name(place)}`,
        other: (n) =>
          `Put in-line IF amplifiers of ${numeralAsSet(facts.db)} dB before the ${n} long cables to ${name(place)}`,
      }),
    reason: () =>
      "Amplified at the LNB’s end, the signal keeps its distance from the noise. The unit feeds them through the cables.",
  },
  "trunk-amplifier": {
    title: ({ facts, place, name }) =>
      `Put a trunk amplifier of ${numeralAsSet(facts.db)} dB behind ${name(place)}`,
    reason: () => "One unit lifts all trunks before their long cables. It needs mains there.",
  },
  "trunk-pads": {
    title: ({ facts, place, name }) =>
      plural(facts.count, {
        one: `Put an attenuator of ${numeralAsSet(facts.db)} dB before an input of ${name(place)}`,
        other: (n) =>
          `Put attenuators of ${numeralAsSet(facts.db)} dB before ${n} satellite inputs of ${name(place)}`,
      }),
    reason: () => "The LNB gives more than the unit can take. They must pass DC.",
  },
  "lesser-lnb": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with an LNB of ${numeralAsSet(facts.db)} dB gain`,
    reason: () => "Its cables are short: the usual gain is enough, and less drives what follows less.",
  },
  "unit-up": {
    title: ({ place, name }) => `Move ${name(place)} to the LNB’s end of its cables`,
    reason: ({ facts }) =>
      plural(facts.lines, {
        one: "One of the old cables then carries its user bands, which can take the loss. The unit needs mains there.",
        other: (n) =>
          `${n} of the old cables then carry its user bands, which can take the loss. The unit needs mains there.`,
      }),
  },
  "amplifier-away": {
    title: ({ place, name }) => `Remove ${name(place)} from the line`,
    reason: () => "There is enough level without it, and its distortion goes with it.",
  },
  "house-amplifier": {
    title: ({ facts, place, name }) =>
      `Put a distribution amplifier of ${numeralAsSet(facts.db)} dB ${facts.side} ${name(place)}`,
    reason: () => "Amplified before the line divides, the signal is strong enough for every branch.",
  },
  masthead: {
    title: ({ facts, place, name }) =>
      `Put a masthead amplifier of ${numeralAsSet(facts.db)} dB under ${name(place)}`,
    reason: () =>
      "Amplified before the first loss, the signal keeps nearly all the C/N that the aerial gives.",
  },
  "larger-dish": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with a ${numeral(facts.metres, 2)} m dish`,
    reason: () => "Twice the diameter gives 6 dB more signal against the same noise.",
  },
};
