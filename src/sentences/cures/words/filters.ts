import { kindOf } from "../../../parts/catalogue.ts";
import type { WordsOf } from "../told.ts";

function kindName(kind: string): string {
  const name = kindOf(kind)?.name ?? kind;
  return name.charAt(0).toLowerCase() + name.slice(1);
}

/** Filters, plates, and parts that cut a band off. */
export const FILTER_WORDS: WordsOf<
  "phone-filter" | "screen-cable" | "filter-away" | "wider-type" | "other-plate"
> = {
  "phone-filter": {
    title: ({ place, name }) => `Put a mobile phone filter before ${name(place)}`,
    reason: () => "It keeps the masts out before they drive the amplifier.",
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
};
