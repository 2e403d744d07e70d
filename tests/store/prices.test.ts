/** Own prices: what is taken, what is kept, and what happens without a storage. Our own behaviour; no outside source. */
import { describe, expect, test } from "vitest";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { readPriceFile, writePriceFile } from "../../src/store/priceFile.ts";
import { createPrices } from "../../src/store/prices.ts";
import { deniedPlace, memoryStorage, settled } from "./documents/memoryPlace.ts";

describe("the price list", () => {
  test("is kept and read again with the currency", async () => {
    const storage = memoryStorage();
    const first = createPrices(storage.window()).getState();
    expect(first.setPrice("cable", { price: 0.8 })).toBeNull();
    expect(first.setCurrency("crowns")).toBeNull();
    await settled();
    const again = createPrices(storage.window());
    await again.getState().load();
    expect(again.getState().prices.cable?.price).toBe(0.8);
    expect(again.getState().prices.cable?.workMinutes).toBe(PLACEHOLDER_PRICES.cable?.workMinutes);
    expect(again.getState().currency).toBe("crowns");
  });

  test.each([
    { name: "a negative price", kind: "cable", change: { price: -1 } },
    { name: "not a number", kind: "cable", change: { price: Number.NaN } },
    { name: "a time without end", kind: "cable", change: { workMinutes: Number.POSITIVE_INFINITY } },
    { name: "a kind that does not exist", kind: "__proto__", change: { price: 1 } },
  ])("refuses $name with a reason and keeps what was good", ({ kind, change }) => {
    const prices = createPrices(memoryStorage().window());
    const before = prices.getState().prices;
    expect(prices.getState().setPrice(kind, change)).toMatch(/\w/);
    expect(prices.getState().prices).toBe(before);
  });

  test("falls back to placeholders where the storage holds nonsense", async () => {
    const prices = createPrices(
      memoryStorage({ prices: { cable: { price: "cheap" } }, currency: 7 }).window(),
    );
    await prices.getState().load();
    expect(prices.getState().prices).toEqual(PLACEHOLDER_PRICES);
    expect(prices.getState().currency).toBe("");
  });

  test("goes on without a storage and says that it is not kept", async () => {
    const prices = createPrices(deniedPlace);
    await prices.getState().load();
    expect(prices.getState().trouble).toMatch(/this window only/);
    expect(prices.getState().setPrice("cable", { price: 2 })).toBeNull();
    expect(prices.getState().prices.cable?.price).toBe(2);
  });

  test("is not overwritten by what is read after the first price was typed", async () => {
    const prices = createPrices(memoryStorage({ prices: { cable: { price: 9, workMinutes: 9 } } }).window());
    const loading = prices.getState().load();
    prices.getState().setPrice("cable", { price: 3 });
    await loading;
    expect(prices.getState().prices.cable?.price).toBe(3);
  });
});

describe("two windows on one price list", () => {
  test("keep both prices, also price and time of one kind of part", async () => {
    const storage = memoryStorage();
    const [one, two] = [createPrices(storage.window()), createPrices(storage.window())];
    await Promise.all([one.getState().load(), two.getState().load()]);
    one.getState().setPrice("cable", { price: 0.8 });
    two.getState().setPrice("cable", { workMinutes: 33 });
    two.getState().setPrice("splitter", { price: 7 });
    await settled();
    for (const { prices } of [one.getState(), two.getState()]) {
      expect(prices.cable).toEqual({ price: 0.8, workMinutes: 33 });
      expect(prices.splitter?.price).toBe(7);
    }
  });

  test("leave prices of kinds of part that only a newer version has as they are", async () => {
    const storage = memoryStorage({ prices: { "later-kind": { price: 5, workMinutes: 5 } } });
    createPrices(storage.window()).getState().setPrice("cable", { price: 0.8 });
    await settled();
    expect(storage.kept).toMatchObject({ prices: { "later-kind": { price: 5 }, cable: { price: 0.8 } } });
  });
});

describe("a price file", () => {
  test("comes back as it was written", () => {
    const prices = { ...PLACEHOLDER_PRICES, cable: { price: 1.25, workMinutes: 45 } };
    expect(readPriceFile(writePriceFile({ prices, currency: "x" }))).toEqual({
      ok: true,
      prices,
      currency: "x",
    });
  });

  test.each([
    { name: "no JSON", text: "cable 3", why: /its text is damaged/ },
    { name: "some other file", text: '{"format":"downlead"}', why: /no price list/ },
    { name: "a list of a later version", text: '{"format":"downlead-prices","version":2}', why: /newer/ },
    { name: "a file without end", text: " ".repeat(300_000), why: /too large/ },
  ])("is refused when it is $name", ({ text, why }) => {
    const reading = readPriceFile(text);
    expect(reading.ok ? "read" : reading.problem).toMatch(why);
  });
});
