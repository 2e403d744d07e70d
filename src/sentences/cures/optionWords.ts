/** Options and their values as the form of a part names them. */

import { kindOf } from "../../parts/catalogue.ts";
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

function rowWords(rows: readonly unknown[]): string {
  const firsts = rows.map((row) => {
    const [first] = typeof row === "object" && row !== null ? Object.values(row) : [row];
    return String(first);
  });
  return firsts.join(", ") || "none";
}
