/** How many receivers work, in words. */
import { plural } from "../words/plural.ts";

/** As a clause; `of` is at least 1. */
export function workingWords(working: number, of: number): string {
  if (of === 1) return working === 1 ? "the receiver works" : "the receiver does not work";
  if (working === of) return of === 2 ? "both receivers work" : `all ${of} receivers work`;
  return plural(working, {
    zero: of === 2 ? "neither receiver works" : `none of ${of} receivers works`,
    one: (n) => `${n} of ${of} receivers works`,
    other: (n) => `${n} of ${of} receivers work`,
  });
}
