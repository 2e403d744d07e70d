import type { PartId } from "../../../design/design.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { type Forms, plural } from "../../../words/plural.ts";
import { bandLnbWords } from "../../planes.ts";
import type { WordsOf } from "../told.ts";

const SUITS = "LNB and receivers then match.";
const SUITED: Forms = { zero: "", one: ", and a receiver to suit", other: ", and receivers to suit" };
const SINGLE_CABLE: Forms = {
  zero: "",
  one: ", and an SCR/dSCR receiver",
  other: ", and SCR/dSCR receivers",
};

function suited(receivers: readonly PartId[], forms: Forms = SUITED): string {
  return plural(receivers.length, forms);
}

/** Converters, receivers, and how they are brought together. */
export const CONVERTER_WORDS: WordsOf<
  | "universal-converter"
  | "band-converter"
  | "stacked-converter"
  | "wideband-converter"
  | "quattro-converter"
  | "other-receiver"
  | "cable-tuner"
  | "own-outputs"
  | "own-position-lines"
  | "multiswitch"
  | "stack-under-roof"
  | "stack-for-switch"
  | "separate-cables"
  | "aerial-cable"
  | "second-cable"
> = {
  "universal-converter": {
    title: ({ facts, place, name }) =>
      plural(facts.outputs, {
        one: (n) => `Replace ${name(place)} with a universal LNB with ${n} output${suited(facts.receivers)}`,
        other: (n) =>
          `Replace ${name(place)} with a universal LNB with ${n} outputs${suited(facts.receivers)}`,
      }),
    reason: () => `${SUITS} Its IF stays above 950 MHz, where the usual outlets and diplexers pass it.`,
  },
  "band-converter": {
    title: ({ facts, place, name }) =>
      facts.range
        ? `Replace ${name(place)} with a type for ${numeralAsSet(facts.range.fromMHz)} to ${numeralAsSet(facts.range.toMHz)} MHz`
        : plural(facts.outputs, {
            one: (n) => `Replace ${name(place)} with ${bandLnbWords(facts.band)} with ${n} output`,
            other: (n) => `Replace ${name(place)} with ${bandLnbWords(facts.band)} with ${n} outputs`,
          }),
    reason: ({ facts }) =>
      facts.range
        ? "Its input filter then lets the missing transponders in."
        : `The satellite sends in ${facts.band} band, and an LNB takes its own band only.`,
  },
  "stacked-converter": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with an SCR/dSCR LNB${suited(facts.receivers, SINGLE_CABLE)}`,
    reason: () => "On one cable each tuner gets any transponder, over a user band of its own.",
  },
  "wideband-converter": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with a wideband LNB${suited(facts.receivers)}`,
    reason: () => SUITS,
  },
  "quattro-converter": {
    title: ({ place, name }) => `Replace ${name(place)} with a quattro LNB`,
    reason: () => "The multiswitch needs all four quadrants at once, each on its own input.",
  },
  "other-receiver": {
    title: ({ facts, name }) =>
      plural(facts.receivers.length, {
        one: `Replace ${name(facts.receivers[0] ?? "")} with ${receiverName(facts.kind)}`,
        other: (n) => `Replace ${n} receivers with receivers that suit the LNB`,
      }),
    reason: ({ facts }) =>
      plural(facts.receivers.length, {
        one: "The receiver expects another kind of feed than the one it gets.",
        other: "The receivers expect another kind of feed than the one they get.",
      }),
  },
  "cable-tuner": {
    title: ({ place, name }) =>
      `Put a cable receiver (DVB-C) before ${name(place)}, or replace it with a set that has one`,
    reason: () => "The network sends DVB-C, and this set has a tuner for terrestrial TV only.",
  },
  "own-outputs": {
    title: ({ facts, place, name }) =>
      facts.cables > 0
        ? `Give each receiver an output of ${name(place)} and a cable of its own`
        : `Give each receiver an output of its own at ${name(place)}`,
    reason: () => "A switched output serves one receiver; behind a splitter two of them contend for it.",
  },
  "own-position-lines": {
    title: () => "Give each receiver a position switch of its own, with a cable to it from each LNB",
    reason: () => "A position switch obeys one receiver; behind a splitter two of them contend for it.",
  },
  multiswitch: {
    title: ({ facts, name }) => `Replace ${name(facts.splitter)} with a multiswitch, and fit a quattro LNB`,
    reason: () => "A multiswitch gives each receiver the quadrant it asks for, whatever the others ask.",
  },
  "stack-under-roof": {
    title: ({ place, name }) =>
      `Put an SCR/dSCR multiswitch behind ${name(place)}, and use SCR/dSCR receivers`,
    reason: () =>
      "User bands lie above 950 MHz, so TV, radio and every transponder share the one cable to each room.",
  },
  "stack-for-switch": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with an SCR/dSCR multiswitch${suited(facts.receivers, SINGLE_CABLE)}`,
    reason: () => "One cable then serves all tuners of a flat, each over a user band of its own.",
  },
  "separate-cables": {
    title: ({ place, name }) =>
      `Run two cables of their own from ${name(place)} to each wideband receiver, through plain outlets`,
    reason: () => "The wideband feed lies over the TV band: the two cannot share a cable.",
  },
  "aerial-cable": {
    title: ({ facts, place, name }) =>
      plural(facts.receivers.length, {
        one: `Disconnect ${name(place)} from ${name(facts.joiner)}, and run a cable of its own to ${name(facts.receivers[0] ?? "")}`,
        other: (n) =>
          `Disconnect ${name(place)} from ${name(facts.joiner)}, and run cables of their own to ${n} receivers`,
      }),
    reason: () => "The wideband feed lies over the TV band: the two cannot share a cable.",
  },
  "second-cable": {
    title: ({ facts, place, name }) => `Run a second cable from ${name(place)} to ${name(facts.receiver)}`,
    reason: ({ facts, part }) =>
      kindOf(part(facts.receiver)?.kind ?? "")?.trade.takes === "wideband"
        ? "A wideband receiver needs both polarisations, each on its own cable."
        : "Each input asks for itself, and needs an output of its own.",
  },
};

/** "universal twin receiver", by what it takes and on how many inputs. */
function receiverName(key: string): string {
  const kind = kindOf(key);
  const inputs = kind?.reception?.(kind.options.parse({})).inputs.length ?? 1;
  if (kind?.trade.takes === "wideband") return "a wideband receiver";
  if (kind?.trade.takes === "stacked") return "an SCR/dSCR receiver";
  return inputs > 1 ? "a universal twin receiver" : "a universal receiver";
}
