/** Options and their values as the form of a part names them. */

import { kindOf } from "../../parts/catalogue.ts";
import { type FieldMeta, fieldMeta } from "../../parts/fields.ts";
import { describedOptions } from "../../parts/meanings.ts";
import { numeral } from "../../words/numbers.ts";

/** "Tap loss" */
export function optionWords(kindKey: string, option: string): string {
  const kind = kindOf(kindKey);
  return (kind && describedOptions(kind).get(option)?.label) ?? option;
}

/** "12 dB", "yes", "1.0 mm copper"; a list by the first number of each row: user bands 1, 2. */
export function valueWords(kindKey: string, option: string, value: unknown): string {
  const kind = kindOf(kindKey);
  const meta = kind && describedOptions(kind).get(option);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return `${numeral(value, 4)}${meta?.unit ? ` ${meta.unit}` : ""}`;
  if (Array.isArray(value)) return rowWords(value);
  return meta?.choices?.find((c) => c.value === value)?.label ?? String(value);
}

/**
 * What differs between two values: "12 dB" and "6 dB". Lists whose rows have the same first numbers are told by the rows that
 * differ, in full: "2 · 1680 MHz" and "2 · 1420 MHz".
 */
export function changeWords(
  kindKey: string,
  option: string,
  { from, to }: { readonly from: unknown; readonly to: unknown },
): readonly [string, string] {
  const short = [valueWords(kindKey, option, from), valueWords(kindKey, option, to)] as const;
  if (short[0] !== short[1] || !Array.isArray(from) || !Array.isArray(to)) return short;
  const kind = kindOf(kindKey);
  const row = (kind && describedOptions(kind).get(option))?.row;
  const differing = (rows: readonly unknown[], others: readonly unknown[]) =>
    rows.filter((each, i) => JSON.stringify(each) !== JSON.stringify(others[i]));
  const words = (rows: readonly unknown[]) => rows.map((each) => wholeRow(each, row)).join(", ");
  return [words(differing(from, to)), words(differing(to, from))];
}

function wholeRow(row: unknown, schema: FieldMeta["row"]): string {
  if (typeof row !== "object" || row === null) return String(row);
  const fields = new Map(Object.entries(schema?.shape ?? {}));
  return Object.entries(row)
    .map(([key, value]) => {
      const field = fields.get(key);
      const unit = field && fieldMeta(field)?.unit;
      return `${typeof value === "number" ? numeral(value, 4) : String(value)}${unit ? ` ${unit}` : ""}`;
    })
    .join(" · ");
}

function rowWords(rows: readonly unknown[]): string {
  const firsts = rows.map((row) => {
    const [first] = typeof row === "object" && row !== null ? Object.values(row) : [row];
    return String(first);
  });
  return firsts.join(", ") || "none";
}
