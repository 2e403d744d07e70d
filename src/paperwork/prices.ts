/** The price list: the user's own prices and times, and placeholders until they are put in. */

import { z } from "zod";
import { faultWords } from "../design/faultWords.ts";
import { CATALOGUE, kindOf } from "../parts/catalogue.ts";
import type { Price, PriceList } from "../remedies/prices.ts";

export const PLACEHOLDER_NOTE =
  "Placeholders, invented so that changes can be ranked: put your own prices and times in.";

export const PLACEHOLDER_PRICES: PriceList = Object.fromEntries(
  CATALOGUE.map(({ kind, trade }) => [kind, { price: trade.price, workMinutes: trade.workMinutes }]),
);

const MOST = { price: 1_000_000, workMinutes: 10_000 } as const;

const PRICE = z.object({
  price: z.number().min(0).max(MOST.price),
  workMinutes: z.number().min(0).max(MOST.workMinutes),
});

export type PriceEdit =
  | { readonly ok: true; readonly prices: PriceList }
  | { readonly ok: false; readonly reason: string };

/** Sets price or time of one kind; what is not a sensible number is refused with a reason. */
export function setPrice(prices: PriceList, kind: string, change: Partial<Price>): PriceEdit {
  if (!kindOf(kind)) return { ok: false, reason: `There is no kind of part “${kind}”.` };
  const wanted = { ...(prices[kind] ?? PLACEHOLDER_PRICES[kind]), ...change };
  const checked = PRICE.safeParse(wanted);
  if (!checked.success) {
    const key = checked.error.issues[0]?.path[0] === "workMinutes" ? "workMinutes" : "price";
    return { ok: false, reason: outOfRange(key, wanted[key]) };
  }
  return { ok: true, prices: { ...prices, [kind]: checked.data } };
}

function outOfRange(key: keyof typeof MOST, found: unknown): string {
  const allowed = { type: "number", min: 0, max: MOST[key], isWhole: false } as const;
  const field = key === "price" ? "Price" : "Time";
  return faultWords({ type: "value", place: {}, field, found, allowed });
}

/** A price list from whatever was stored: entries that make no sense give way to placeholders. */
export function readPrices(value: unknown): PriceList {
  const entries = typeof value === "object" && value !== null ? new Map(Object.entries(value)) : new Map();
  return Object.fromEntries(
    Object.entries(PLACEHOLDER_PRICES).map(([kind, placeholder]) => {
      const checked = PRICE.safeParse(entries.get(kind));
      return [kind, checked.success ? checked.data : placeholder];
    }),
  );
}
