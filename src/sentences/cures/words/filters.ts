import { kindOf } from "../../../parts/catalogue.ts";
import { numeral } from "../../../words/plural.ts";
import type { WordsOf } from "../told.ts";

function kindName(kind: string): string {
  const name = kindOf(kind)?.name ?? kind;
  return name.charAt(0).toLowerCase() + name.slice(1);
}

/** Filters, plates, and parts that cut a band off. */
export const FILTER_WORDS: WordsOf<
  | "phone-filter"
  | "notch"
  | "screen-cable"
  | "filter-away"
  | "wider-type"
  | "other-plate"
  | "diplexer-for-combiner"
> = {
  "phone-filter": {
    title: ({ place, name }) => `Put a mobile phone filter before ${name(place)}`,
    reason: () => "It keeps the masts out before they drive the amplifier.",
  },
  notch: {
    title: ({ facts, place, name }) =>
      `Put a filter before ${name(place)} that stops ${numeral(facts.fromMHz)} to ${numeral(facts.toMHz)} MHz`,
    reason: () => "It takes the one intruder away and leaves the rest.",
  },
  "screen-cable": {
    title: ({ place, name }) => `Replace the lead that picks up ${name(place)} with a well-screened one`,
    reason: () => "What does not get into the cable needs no filter.",
  },
  "filter-away": {
    title: ({ place, name }) => `Remove ${name(place)} from the line`,
    reason: () => "It stops what is wanted behind it.",
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
    reason: () => "It has just the sockets that are needed, and takes nothing away from them.",
  },
  "diplexer-for-combiner": {
    title: ({ facts, place, name }) => `Replace ${name(place)}; it should be: ${kindName(facts.kind)}`,
    reason: () =>
      "Each input then takes its own band only, with less loss and without the noise of the others.",
  },
};
