/** Prices and practice in a real database (fake-indexeddb, an independent implementation), as pages of one browser have them. */
import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { beforeEach, describe, expect, test, vi } from "vitest";
import "fake-indexeddb/auto";

/** The modules as a page that just starts has them. */
async function page() {
  vi.resetModules();
  const [{ usePrices }, { useTraining }] = await Promise.all([
    import("../../../src/store/prices.ts"),
    import("../../../src/store/training.ts"),
  ]);
  // In turns of the page, not by the clock: on a busy machine both get late together.
  let turns = 0;
  const counting = setInterval(() => turns++, 100);
  await Promise.all([usePrices.getState().load(), useTraining.getState().load()]);
  clearInterval(counting);
  return {
    turns,
    prices: () => usePrices.getState(),
    training: () => useTraining.getState(),
  };
}

async function former(name: string, store: string, key: string, value: unknown) {
  const database = await openDB(name, 1, { upgrade: (fresh) => void fresh.createObjectStore(store) });
  await database.put(store, value, key);
  database.close();
}

/** Another page is making the database and never comes to an end; everybody else waits. Returns how to end it. */
function occupied(name: string): () => void {
  let isEnded = false;
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => {
    const store = request.result.createObjectStore("busy");
    const again = () => {
      if (!isEnded) store.get(1).onsuccess = again;
    };
    again();
  };
  return () => {
    isEnded = true;
  };
}

const SOLVED = {
  measured: [{ part: "amp", port: "out", quantity: "level", asked: "" }],
  named: [],
  hints: 1,
  shown: true,
};

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe("Prices and practice", () => {
  test("of a former edition are there for whoever had them", async () => {
    await former("downlead-prices", "prices", "list", {
      prices: { cable: { price: 3, workMinutes: 4 } },
      currency: "crowns",
    });
    await former("downlead-practice", "progress", "all", JSON.stringify({ "lounge-dark": SOLVED }));
    const { prices, training } = await page();
    expect(prices().prices.cable).toEqual({ price: 3, workMinutes: 4 });
    expect(prices().currency).toBe("crowns");
    expect(training().progress).toEqual({ "lounge-dark": SOLVED });
  });

  test("changed in two pages are all kept, and each page shows those of the other", async () => {
    const [one, two] = [await page(), await page()];
    one.prices().setPrice("cable", { price: 3 });
    two.prices().setPrice("splitter", { price: 4 });
    one.training().update("lounge-dark", () => ({ ...SOLVED, measured: [] }));
    two.training().update("one-strand", () => ({ ...SOLVED, measured: [] }));
    await vi.waitFor(() => {
      for (const { prices, training } of [one, two]) {
        expect([prices().prices.cable?.price, prices().prices.splitter?.price]).toEqual([3, 4]);
        expect(Object.keys(training().progress).sort()).toEqual(["lounge-dark", "one-strand"]);
      }
    });
    const third = await page();
    expect([third.prices().prices.cable?.price, third.prices().prices.splitter?.price]).toEqual([3, 4]);
  });

  test("hold in the window, and say so within three seconds, where the storage never answers", async () => {
    const letGo = occupied("downlead-2");
    const { prices, turns } = await page();
    expect(turns).toBeGreaterThan(10);
    // Thirty turns of 100 ms.
    expect(turns).toBeLessThan(30);
    expect(prices().trouble).toMatch(/this window only/);
    prices().setPrice("cable", { price: 3 });
    expect(prices().prices.cable?.price).toBe(3);
    letGo();
  });
});
