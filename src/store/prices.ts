/** The user's own prices and times, kept in this browser; placeholders until they are put in. */
import { createStore, get as read, type UseStore, set as write } from "idb-keyval";
import { create, type StoreApi, type UseBoundStore } from "zustand";
import { PLACEHOLDER_PRICES, readPrices, setPrice } from "../paperwork/prices.ts";
import type { Price, PriceList } from "../remedies/cost.ts";
import { readPriceFile } from "./priceFile.ts";

export const MOST_CURRENCY_LENGTH = 12;

export type PriceShelf = {
  readonly read: () => Promise<unknown>;
  readonly write: (value: unknown) => Promise<void>;
};

export type PricesState = {
  readonly prices: PriceList;
  /** Whatever the user reckons in, as free text; "" for none. */
  readonly currency: string;
  /** Why the list is not kept, for the user to know. */
  readonly trouble: string | null;
  /** Reads what was kept; the first call counts. */
  readonly load: () => Promise<void>;
  /** These yield null, or a sentence that says why not. */
  readonly setPrice: (kind: string, change: Partial<Price>) => string | null;
  readonly setCurrency: (currency: string) => string | null;
  readonly takeFile: (text: string) => string | null;
  /** Puts a whole list in place: placeholders again, or what stood before them. */
  readonly replace: (list: Pick<PricesState, "prices" | "currency">) => void;
};

const NOT_KEPT = "This browser does not let the page store anything: your prices hold in this window only.";

export function createPrices(shelf: PriceShelf): UseBoundStore<StoreApi<PricesState>> {
  let loading: Promise<void> | null = null;
  return create<PricesState>()((set, get) => {
    function keep(list: Partial<Pick<PricesState, "prices" | "currency">>): void {
      set(list);
      const { prices, currency } = get();
      shelf.write({ prices, currency }).then(
        () => set({ trouble: null }),
        () => set({ trouble: NOT_KEPT }),
      );
    }

    return {
      prices: PLACEHOLDER_PRICES,
      currency: "",
      trouble: null,

      load: () => {
        loading ??= shelf.read().then(
          (kept) => {
            const entries = new Map(typeof kept === "object" && kept !== null ? Object.entries(kept) : []);
            const currency: unknown = entries.get("currency");
            // Typed while the storage was still being opened: that is newer.
            if (get().prices !== PLACEHOLDER_PRICES) return;
            set({
              prices: readPrices(entries.get("prices")),
              currency: typeof currency === "string" ? currency.slice(0, MOST_CURRENCY_LENGTH) : "",
            });
          },
          () => set({ trouble: NOT_KEPT }),
        );
        return loading;
      },

      setPrice: (kind, change) => {
        const edit = setPrice(get().prices, kind, change);
        if (!edit.ok) return edit.reason;
        keep({ prices: edit.prices });
        return null;
      },

      setCurrency: (currency) => {
        if (currency.length > MOST_CURRENCY_LENGTH) return `At most ${MOST_CURRENCY_LENGTH} characters.`;
        keep({ currency });
        return null;
      },

      takeFile: (text) => {
        const reading = readPriceFile(text);
        if (!reading.ok) return reading.problem;
        keep({ prices: reading.prices, currency: reading.currency.slice(0, MOST_CURRENCY_LENGTH) });
        return null;
      },

      replace: keep,
    };
  });
}

/** The shelf of this browser (IndexedDB). Every call may reject: storage can be denied or full. */
function browserShelf(): PriceShelf {
  let opened: UseStore | undefined;
  // Opened at the first use only: where storage is denied, the attempt itself throws.
  const use = () => {
    opened ??= createStore("downlead-prices", "prices");
    return opened;
  };
  return {
    read: async () => await read("list", use()),
    write: async (value) => await write("list", value, use()),
  };
}

export const usePrices = createPrices(browserShelf());
