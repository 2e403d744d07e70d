/** Words of findings: counts, numbers, and names of parts that are filled in at the very end. */
import type { Band } from "../signal/band.ts";
import { SERVICE_NAMES, type Service } from "../signal/carrier.ts";
import { bandTag } from "../signal/readout.ts";

/**
 * Stands for the label of a part. Findings are kept while a part's record is unchanged, but another
 * part's label may change meanwhile: so labels are filled in when a report is put together.
 */
export function partName(id: string): string {
  return `⟦${id}⟧`;
}

/** Fills the labels in. */
export function withLabels(text: string, label: (id: string) => string): string {
  return text.replace(/⟦([^⟧]*)⟧/g, (_, id: string) => `“${label(id)}”`);
}

/** What is counted: the carriers of a service, or the user bands of a stacked feed. */
export type Counted = Service | "user band";

const CARRIER_WORDS: Readonly<Record<Counted, readonly [one: string, many: string]>> = {
  tv: ["TV multiplex", "TV multiplexes"],
  dab: ["DAB block", "DAB blocks"],
  fm: ["FM station", "FM stations"],
  satellite: ["satellite transponder", "satellite transponders"],
  mobile: ["mobile carrier", "mobile carriers"],
  cordless: ["cordless carrier", "cordless carriers"],
  "user band": ["user band", "user bands"],
};

/** "1 DAB block", "33 satellite transponders". */
export function carriers(n: number, of: Counted): string {
  return `${n} ${CARRIER_WORDS[of][n === 1 ? 0 : 1]}`;
}

/** "all 6 DAB blocks", "the one DAB block", "20 of 80 satellite transponders", "none of 6 TV multiplexes". */
export function share(n: number, of: number, what: Counted): string {
  const [one, many] = CARRIER_WORDS[what];
  if (of === 1) return n === 1 ? `the one ${one}` : `not the one ${one}`;
  if (n === of) return `all ${of} ${many}`;
  return `${n === 0 ? "none" : n} of ${of} ${many}`;
}

/** "Terrestrial TV from “UHF aerial”", "Satellite H high from “Dish 1”". */
export function bandName(band: Band): string {
  if (band.isFloor) return `the noise of ${partName(band.origin.part)}`;
  if (band.stack) return `the stacked feed of ${partName(band.origin.part)}`;
  const tag = bandTag(band);
  return `${SERVICE_NAMES[band.origin.service]}${tag ? ` ${tag}` : ""} from ${partName(band.origin.part)}`;
}

/** What the carriers of a band are counted as. */
export function countedAs(band: Band): Counted {
  return band.stack ? "user band" : band.origin.service;
}

/** "17 are stopped by …", "1 is stopped by …": a count before a predicate in the plural. */
export function count(n: number, predicate: string): string {
  if (n !== 1) return `${n} ${predicate}`;
  return `1 ${predicate
    .replace(/^are /, "is ")
    .replace(/\bdo not\b/, "does not")
    .replace(/^need /, "needs ")}`;
}

/** A number with at most one decimal: "47", "2.5". */
export function round1(x: number): string {
  return String(Math.round(x * 10) / 10);
}

/** "a", "a and b", "a, b and c". */
export function list(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? "";
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}
