/** The user's own prices and times, kept in this browser; placeholders until they are put in. */
import { create, type StoreApi, type UseBoundStore } from "zustand";
import { isSameValue } from "../design/options.ts";
import { PLACEHOLDER_PRICES, readPrices, setPrice } from "../paperwork/prices.ts";
import type { Price, PriceList } from "../remedies/prices.ts";
import { browserSharedValue, createSharedValue, type SharedValuePlace } from "./documents/sharedValue.ts";
import { readPriceFile } from "./priceFile.ts";

export const MOST_CURRENCY_LENGTH = 12;

type List = {
  readonly prices: PriceList;
  /** Whatever the user reckons in, as free text; "" for none. */
  readonly currency: string;
};

export type PricesState = List & {
  /** Why the list is not kept, for the user to know. */
  readonly trouble: string | null;
  /** Reads what was kept, and follows other windows from then on; the first call counts. */
  readonly load: () => Promise<void>;
  /** These yield null, or a sentence that says why not. */
  readonly setPrice: (kind: string, change: Partial<Price>) => string | null;
  readonly setCurrency: (currency: string) => string | null;
  readonly takeFile: (text: string) => string | null;
  /** Puts a whole list in place: placeholders again, or what stood before them. */
  readonly replace: (list: List) => void;
  /** Takes over what is still a placeholder here; yields how many kinds of part that are. */
  readonly takeIn: (list: List) => number;
};

const NOT_KEPT = "This browser’s storage cannot be used now: your prices are kept in this window only.";

export function createPrices(place: SharedValuePlace): UseBoundStore<StoreApi<PricesState>> {
  return create<PricesState>()((set, get) => {
    const kept = createSharedValue<List>({
      place,
      read: listOf,
      write: storedForm,
      show: ({ prices, currency }) => set({ prices, currency }),
      tell: (isKept) => set({ trouble: isKept ? null : NOT_KEPT }),
    });
    return {
      prices: PLACEHOLDER_PRICES,
      currency: "",
      trouble: null,
      load: kept.load,

      setPrice: (kind, change) => {
        const edit = setPrice(get().prices, kind, change);
        if (!edit.ok) return edit.reason;
        kept.change((list) => {
          // Price and time are kept one by one: another window may have changed the other of the two.
          const here = setPrice(list.prices, kind, change);
          return here.ok ? { ...list, prices: here.prices } : list;
        });
        return null;
      },

      setCurrency: (currency) => {
        if (currency.length > MOST_CURRENCY_LENGTH) return `At most ${MOST_CURRENCY_LENGTH} characters.`;
        kept.change((list) => ({ ...list, currency }));
        return null;
      },

      takeFile: (text) => {
        const reading = readPriceFile(text);
        if (!reading.ok) return reading.problem;
        const currency = reading.currency.slice(0, MOST_CURRENCY_LENGTH);
        kept.change(() => ({ prices: reading.prices, currency }));
        return null;
      },

      takeIn: (list) => {
        const count = pricesToAdd(get(), list).length;
        if (count > 0 || (get().currency === "" && list.currency !== ""))
          kept.change((here) => withOpenKinds(here, list));
        return count;
      },

      replace: ({ prices, currency }) => kept.change(() => ({ prices, currency })),
    };
  });
}

/** Kinds of part without a price of the user's own here, but with one in the other list. */
export function pricesToAdd(here: List, other: List): readonly string[] {
  const isPlaceholder = (kind: string, price: Price | undefined) =>
    isSameValue(price, PLACEHOLDER_PRICES[kind]);
  return Object.keys(PLACEHOLDER_PRICES).filter(
    (kind) => isPlaceholder(kind, here.prices[kind]) && !isPlaceholder(kind, other.prices[kind]),
  );
}

function withOpenKinds(here: List, other: List): List {
  const prices = pricesToAdd(here, other).flatMap((kind) => {
    const price = other.prices[kind];
    return price ? [[kind, price] as const] : [];
  });
  return {
    prices: { ...here.prices, ...Object.fromEntries(prices) },
    currency: here.currency === "" ? other.currency : here.currency,
  };
}

function listOf(stored: unknown): List {
  const entries = entriesOf(stored);
  const currency = entries.get("currency");
  return {
    prices: readPrices(entries.get("prices")),
    currency: typeof currency === "string" ? currency.slice(0, MOST_CURRENCY_LENGTH) : "",
  };
}

/** Kinds of part that this version does not have keep the prices that a newer one has stored. */
function storedForm({ prices, currency }: List, before: unknown): unknown {
  const others = Object.fromEntries(entriesOf(entriesOf(before).get("prices")));
  return { prices: { ...others, ...prices }, currency };
}

function entriesOf(value: unknown): ReadonlyMap<string, unknown> {
  return new Map(typeof value === "object" && value !== null ? Object.entries(value) : []);
}

export const usePrices = createPrices(browserSharedValue("prices"));
