import { kindOf } from "../../../parts/catalogue.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { uncapital } from "../../explain/plainWords.ts";
import { list } from "../../phrases.ts";
import type { WordsOf } from "../told.ts";

function kindName(kind: string): string {
  return uncapital(kindOf(kind)?.name ?? kind);
}

/** "diplexer", "triplexer": the direction follows from its place. */
function combinerName(kind: string): string {
  return kindName(kind).split(",")[0] ?? kind;
}

/** Filters, outlets, and parts that cut a band off. */
export const FILTER_WORDS: WordsOf<
  | "phone-filter"
  | "filter-before"
  | "trap"
  | "band-combiner"
  | "other-channels"
  | "screen-cable"
  | "better-screen"
  | "filter-away"
  | "wider-type"
  | "other-plate"
> = {
  "phone-filter": {
    title: ({ place, name }) => `Put a 4G/5G filter before ${name(place)}`,
    reason: ({ place, part }) =>
      kindOf(part(place)?.kind ?? "")?.reception
        ? "The filter keeps the masts out before they block the tuner."
        : "The filter keeps the masts out before they drive the amplifier.",
  },
  "filter-before": {
    title: ({ facts, place, name }) => `Move ${name(place)} to the input of ${name(facts.amplifier)}`,
    reason: () => "Behind an amplifier a filter comes too late: the masts have driven it already.",
  },
  trap: {
    title: ({ facts, place, name }) =>
      `Put a trap for ${facts.carrier} of ${numeralAsSet(facts.db)} dB behind ${name(place)}`,
    reason: ({ facts }) =>
      `The trap takes only ${numeralAsSet(facts.fromMHz)} to ${numeralAsSet(facts.toMHz)} MHz down. The other channels stay as they are.`,
  },
  "band-combiner": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with a ${combinerName(facts.kind)}`,
    reason: () =>
      "Each input then has a filter of its own, which loses 1 or 2 dB and keeps the signals apart.",
  },
  "other-channels": {
    title: ({ facts, place, name }) =>
      `Replace ${name(place)} with a channel filter for ${list(facts.channels.map((n) => `C${n}`))}`,
    reason: () => "The present one is tuned to channels that nobody sends here.",
  },
  "screen-cable": {
    title: ({ place, name }) => `Replace the lead that picks up ${name(place)} with a well-screened one`,
    reason: () => "What does not get into the cable needs no filter.",
  },
  "better-screen": {
    title: ({ facts, place, name }) => `Replace ${name(place)} with one of screening class ${facts.to}`,
    reason: () => "A better screen keeps the field outside out.",
  },
  "filter-away": {
    title: ({ place, name }) => `Remove ${name(place)} from the line`,
    reason: () => "The part stops what is wanted behind it.",
  },
  "wider-type": {
    title: ({ facts, place, name, part }) => {
      const kind = kindOf(part(place)?.kind ?? "");
      const type = kind?.trade.widerTypes?.[facts.type]?.name ?? "a wider type";
      return `Replace ${name(place)} with ${type}`;
    },
    reason: () => "What is cut off now then gets through.",
  },
  "other-plate": {
    title: ({ facts, place, name }) => `Replace ${name(place)}; it should be: ${kindName(facts.kind)}`,
    reason: () => "This outlet has just the sockets that are needed, and takes nothing away from them.",
  },
};
