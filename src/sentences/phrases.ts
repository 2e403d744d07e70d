/** Words of findings: counts, numbers, and names of parts that are filled in at the very end. */

import type { PartId } from "../design/design.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import { type BandFacts, bandFactsOf } from "../findings/bandFacts.ts";
import type { Band } from "../signal/band.ts";
import { type Service, serviceName } from "../signal/carrier.ts";
import { waveOf } from "../signal/leak.ts";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { besideLimit } from "./figures.ts";

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

/** What the carriers of a place are counted as: those of a stacked feed as user bands. */
export function countedCarriers(
  { userBand }: { readonly userBand?: number },
  service: Service = "tv",
): Counted {
  return userBand === undefined ? service : "user band";
}

const CARRIER_NAMES: Readonly<Record<Counted, { readonly one: string; readonly other: string }>> = {
  tv: { one: "TV channel", other: "TV channels" },
  dab: { one: "DAB block", other: "DAB blocks" },
  fm: { one: "FM station", other: "FM stations" },
  satellite: { one: "satellite transponder", other: "satellite transponders" },
  distant: { one: "distant carrier", other: "distant carriers" },
  mobile: { one: "mobile carrier", other: "mobile carriers" },
  cordless: { one: "cordless carrier", other: "cordless carriers" },
  "user band": { one: "user band", other: "user bands" },
};

/** "DAB blocks": what is counted, where its number stands elsewhere. */
export function namesOf(what: Counted): string {
  return CARRIER_NAMES[what].other;
}

/** "1 DAB block", "33 satellite transponders". */
export function carriers(n: number, of: Counted): string {
  const { one, other } = CARRIER_NAMES[of];
  return plural(n, { one: (count) => `${count} ${one}`, other: (count) => `${count} ${other}` });
}

/**
 * "all 6 DAB blocks", "both DAB blocks", "the only DAB block", "no DAB block" of one, "20 of 80 satellite transponders",
 * "none of 6 TV channels". A verb after it agrees with `n`.
 */
export function share(n: number, of: number, what: Counted): string {
  const { one, other } = CARRIER_NAMES[what];
  if (of === 1) return n === 1 ? `the only ${one}` : `no ${one}`;
  if (n === of) return of === 2 ? `both ${other}` : `all ${numeral(of)} ${other}`;
  return `${n === 0 ? "none" : numeral(n)} of ${numeral(of)} ${other}`;
}

/** A clause about carriers, in the singular and in the plural, that takes its subject: a number, "it", "they". */
export type Clause = {
  readonly one: (subject: string) => string;
  readonly other: (subject: string) => string;
};

/** "17 are stopped by …", "1 is stopped by …"; of a single carrier "the only one is stopped by …". */
export function missingWords(n: number, wanted: number, clause: Clause): string {
  return n === 1 && wanted === 1 ? clause.one("the only one") : plural(n, clause);
}

/** "Terrestrial TV from “UHF aerial”", "Satellite H high from “Dish 1”". */
export function bandName(band: Band): string {
  return nameOfBand(bandFactsOf(band));
}

/** The same, of a signal as a finding names it. */
export function nameOfBand(facts: BandFacts): string {
  const { part, transmitter, polarisation, half, sort } = facts;
  if (sort === "noise") return `the noise of ${partName(part)}`;
  if (sort === "user bands") return `the single-cable feed of ${partName(part)}`;
  if (transmitter !== undefined) return `${signalOf(facts)} from ${partName(part)}`;
  const wave = waveOf(facts);
  const tag = polarisation === undefined ? "" : half ? ` ${wave} ${half}` : ` ${wave}`;
  return `${serviceName(facts)}${tag} from ${partName(part)}`;
}

/** "Terrestrial TV of “Hill”", "A distant transmitter (“Far Hill”)". */
export function signalOf(of: Pick<BandFacts, "service" | "television" | "transmitter">): string {
  const name = serviceName(of);
  if (of.transmitter === undefined) return name;
  return of.service === "distant" ? `${name} (“${of.transmitter}”)` : `${name} of “${of.transmitter}”`;
}

/** What the carriers of a band are counted as. */
export function countedAs(band: Band): Counted {
  return band.stack ? "user band" : band.origin.service;
}

/** A figure beside its limit, with so many decimals that the two still differ: "44.98" beside 45. */
export function beside(x: number, limit: number): string {
  return besideLimit(x, limit)[0];
}

/** More than so many are not listed: the first three of them, and how many more there are. */
const MOST_LISTED = 4;

/** "a", "a and b", "a, b and c"; "a, b, c and 14 more". */
export function list(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? "";
  if (words.length > MOST_LISTED)
    return `${words.slice(0, 3).join(", ")} and ${numeral(words.length - 3)} more`;
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** The label of a part, or its id where it has none. */
export function plainLabelOf(evaluation: Evaluation, id: PartId): string {
  return evaluation.record(id)?.part.label || id;
}

/** A text of findings with the labels that the parts have in an evaluation. */
export function labelled(text: string, evaluation: Evaluation): string {
  return withLabels(text, (id) => plainLabelOf(evaluation, id));
}
