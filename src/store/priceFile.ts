/** Price lists as files, to carry from one browser to another. */
import { readPrices } from "../paperwork/prices.ts";
import type { PriceList } from "../remedies/prices.ts";

const FORMAT = "downlead-prices";
/** Longer than any list of all kinds could be [characters]. */
const MOST_LENGTH = 200_000;

export type PriceFile =
  | { readonly ok: true; readonly prices: PriceList; readonly currency: string }
  | { readonly ok: false; readonly problem: string };

export function writePriceFile(list: { readonly prices: PriceList; readonly currency: string }): string {
  return `${JSON.stringify({ format: FORMAT, version: 1, currency: list.currency, prices: list.prices }, null, 2)}\n`;
}

/** Reads a price list; kinds without a sensible price in it keep their placeholders. */
export function readPriceFile(text: string): PriceFile {
  if (text.length > MOST_LENGTH) return { ok: false, problem: "This file is too large for a price list." };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return {
      ok: false,
      problem: "This file is no price list: its text is damaged, or another program has written it.",
    };
  }
  const entries = new Map(typeof value === "object" && value !== null ? Object.entries(value) : []);
  if (entries.get("format") !== FORMAT)
    return { ok: false, problem: "This file is no price list: another program may have written it." };
  if (entries.get("version") !== 1)
    return { ok: false, problem: "This price list comes from a newer version of the program." };
  const currency: unknown = entries.get("currency");
  return {
    ok: true,
    prices: readPrices(entries.get("prices")),
    currency: typeof currency === "string" ? currency : "",
  };
}
