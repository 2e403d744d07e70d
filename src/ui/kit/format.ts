/** Numbers as the panes print them, all through `numeral`. */
import { numeral } from "../../words/numbers.ts";
import { type Forms, plural } from "../../words/plural.ts";

/** A number with a fixed count of decimals; −0 reads 0, nothing reads "–". */
export function decimal(value: number | undefined, digits = 1): string {
  return numeral(value, digits, digits);
}

/** A number that always shows its sign: "+24.0", "−4.1"; 0 has none. */
export function signed(value: number | undefined, digits = 1): string {
  const text = decimal(value, digits);
  return value !== undefined && value > 0 && text !== decimal(0, digits) ? `+${text}` : text;
}

/** A frequency [MHz] with as many decimals as it needs, at most three: 474, 225.648, 11 778. */
export function megahertz(mhz: number | undefined): string {
  return numeral(mhz, 3);
}

/** What labels and headings count. */
const THINGS = {
  carrier: { one: (n) => `${n} carrier`, other: (n) => `${n} carriers` },
  case: { one: (n) => `${n} case`, other: (n) => `${n} cases` },
  change: { one: (n) => `${n} change`, other: (n) => `${n} changes` },
  day: { one: (n) => `${n} day`, other: (n) => `${n} days` },
  design: { one: (n) => `${n} design`, other: (n) => `${n} designs` },
  error: { zero: "no error", one: (n) => `${n} error`, other: (n) => `${n} errors` },
  fault: { one: (n) => `${n} fault`, other: (n) => `${n} faults` },
  cause: { one: (n) => `${n} cause`, other: (n) => `${n} causes` },
  finding: { one: (n) => `${n} finding`, other: (n) => `${n} findings` },
  hour: { one: (n) => `${n} hour`, other: (n) => `${n} hours` },
  "kind of part": { one: (n) => `${n} kind of part`, other: (n) => `${n} kinds of part` },
  measurement: { one: (n) => `${n} measurement`, other: (n) => `${n} measurements` },
  minute: { one: (n) => `${n} minute`, other: (n) => `${n} minutes` },
  "new cable": { zero: "no new cable", one: (n) => `${n} new cable`, other: (n) => `${n} new cables` },
  note: { one: (n) => `${n} note`, other: (n) => `${n} notes` },
  part: { one: (n) => `${n} part`, other: (n) => `${n} parts` },
  point: { one: (n) => `${n} point`, other: (n) => `${n} points` },
  revision: { one: (n) => `${n} revision`, other: (n) => `${n} revisions` },
  row: { one: (n) => `${n} row`, other: (n) => `${n} rows` },
  setting: { one: (n) => `${n} setting`, other: (n) => `${n} settings` },
  term: { zero: "no term", one: (n) => `${n} term`, other: (n) => `${n} terms` },
  trial: { one: (n) => `${n} trial`, other: (n) => `${n} trials` },
  "user band": { one: (n) => `${n} user band`, other: (n) => `${n} user bands` },
  warning: { one: (n) => `${n} warning`, other: (n) => `${n} warnings` },
  wire: { one: (n) => `${n} wire`, other: (n) => `${n} wires` },
} as const satisfies Readonly<Record<string, Forms>>;

export type Thing = keyof typeof THINGS;

/** "1 part", "3 parts". */
export function counted(count: number, thing: Thing): string {
  return plural(count, THINGS[thing]);
}
