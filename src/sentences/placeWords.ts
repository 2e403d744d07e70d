/** Words for places and ways, where there is room for two or three only. */
import { plural } from "../words/plural.ts";

/** On the part of a way where the receiver loses what it misses. */
export const LOST_HERE = "lost here";
/** On a signal from the side that makes it lose it. */
export const CAUSE_HERE = "cause here";

/** What places are called: by flat where all of them have one. */
export type PlaceNoun = "flat" | "outlet" | "receiver";

/** "19 of 20 flats work". */
export function placesWork({ working, of, noun }: { working: number; of: number; noun: PlaceNoun }): string {
  if (of === 1) return ONE[noun][working === 1 ? "works" : "fails"];
  const name = MANY[noun];
  if (working === of) return of === 2 ? `Both ${name} work` : `All ${of} ${name} work`;
  return plural(working, {
    zero: of === 2 ? `Neither of 2 ${name} works` : `None of ${of} ${name} works`,
    one: (n) => `${n} of ${of} ${name} works`,
    other: (n) => `${n} of ${of} ${name} work`,
  });
}

const ONE: Readonly<Record<PlaceNoun, { readonly works: string; readonly fails: string }>> = {
  flat: { works: "The flat works", fails: "The flat fails" },
  outlet: { works: "The outlet works", fails: "The outlet fails" },
  receiver: { works: "The receiver works", fails: "The receiver fails" },
};

const MANY: Readonly<Record<PlaceNoun, string>> = {
  flat: "flats",
  outlet: "outlets",
  receiver: "receivers",
};
