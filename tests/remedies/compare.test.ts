/** CP: two designs side by side, and what breaks if one part is swapped. */
import { describe, expect, test } from "vitest";
import { addVariant } from "../../src/design/edits/variants.ts";
import { exampleOf } from "../../src/design/examples.ts";
import { variantDesign } from "../../src/design/variants.ts";
import { PLACEHOLDER_PRICES, readPrices, setPrice } from "../../src/paperwork/prices.ts";
import { compare, whatBreaks } from "../../src/remedies/compare.ts";
import { draw, withOptions } from "../draw.ts";

function example(key: string) {
  const found = exampleOf(key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
}

describe("What breaks if the universal LNB of a house becomes a wideband one", () => {
  const house = example("house-universal");
  const swap = whatBreaks(house, "lnb", "lnb-wideband", PLACEHOLDER_PRICES);
  if (!swap.ok) throw new Error(swap.reason);
  const place = (id: string) => swap.places.find((p) => p.part === id);

  // A universal receiver finds nothing on a wideband feed; common practice, no source.
  test("CP1: both satellite receivers lose everything", () => {
    for (const id of ["sat1", "sat2"]) {
      expect(place(id)).toMatchObject({ worked: true, works: false, change: "lost" });
      expect(place(id)?.services[0]?.after?.got).toBe(0);
    }
  });

  // The wideband IF starts at 300 MHz and lies over UHF TV; common practice, no source.
  test("CP2: TV behind the shared cables suffers, TV on cables of its own does not", () => {
    expect(place("tv1")?.change).toBe("lost");
    expect(place("tv2")?.change).toBe("lost");
    expect(place("tv3")).toMatchObject({ change: "same", works: true });
    expect(place("radio1")?.change).toBe("same");
  });

  test("CP3: the collision is among what it causes, and the design itself is as it was", () => {
    expect(swap.caused.map((f) => f.rule)).toContain("shared-frequencies");
    expect(swap.cured).toEqual([]);
    expect(house.parts.find((p) => p.id === "lnb")?.kind).toBe("lnb-universal");
  });

  test("CP4: the new converter is what it costs", () => {
    expect(swap.work[0]).toMatchObject({ kind: "replace", after: { kind: "lnb-wideband" }, place: "roof" });
    const prices = setPrice(PLACEHOLDER_PRICES, "lnb-wideband", { price: 77, workMinutes: 33 });
    if (!prices.ok) throw new Error(prices.reason);
    const again = whatBreaks(house, "lnb", "lnb-wideband", prices.prices);
    expect(again.ok && again.cost).toEqual({ partsPrice: 77, workMinutes: 33, newCables: 0 });
  });

  test("CP5: back again is the mirror image", () => {
    const back = compare(swap.design, house, PLACEHOLDER_PRICES);
    expect(back.cured).toHaveLength(swap.caused.length);
    expect(back.places.find((p) => p.part === "sat1")).toMatchObject({ change: "gained", works: true });
  });
});

describe("Two designs compared", () => {
  test("CP6: a design and itself differ in nothing", () => {
    const house = example("house-universal");
    const same = compare(house, house, PLACEHOLDER_PRICES);
    expect(same).toMatchObject({
      work: [],
      cured: [],
      caused: [],
      cost: { partsPrice: 0, workMinutes: 0, newCables: 0 },
    });
    expect(same.places.every((p) => p.change === "same")).toBe(true);
  });

  test("CP7: moving and renaming parts is no difference", () => {
    const house = example("house-universal");
    const moved = {
      ...house,
      parts: house.parts.map((p) => ({ ...p, label: `${p.label}!`, at: [0, 0] as const })),
    };
    expect(compare(house, moved, PLACEHOLDER_PRICES).work).toEqual([]);
  });

  test("CP8: variants of one document are compared like any two designs", () => {
    const two = addVariant(example("house-wideband-fails"), "Plan A", example("house-separate-cables"));
    if (!two.ok) throw new Error(two.reason);
    const [built, plan] = [variantDesign(two.design, "As built"), variantDesign(two.design, "Plan A")];
    if (!built || !plan) throw new Error("a variant is missing");
    const { places, cured, cost } = compare(built, plan, PLACEHOLDER_PRICES);
    expect(places.find((p) => p.part === "sat1")).toMatchObject({ worked: false, works: true });
    expect(cured.some((f) => f.rule === "band-cut")).toBe(true);
    // Two cables of their own for each of two rooms.
    expect(cost.newCables).toBe(4);
  });

  test("CP9: levels stand side by side", () => {
    const plain = draw(
      { uhf: ["aerial-uhf"], c: ["cable", { lengthM: 10 }], tv: ["receiver-tv"] },
      "uhf.out > c.in, c.out > tv.in",
    );
    const { places } = compare(plain, withOptions(plain, "c", { lengthM: 60 }), PLACEHOLDER_PRICES);
    const [service] = places.find((p) => p.part === "tv")?.services ?? [];
    // 50 m more of 1.0 mm copper cost 6.8 to 8.3 dB at 470 to 694 MHz (13.47 and 16.57 dB/100 m, physics).
    const lost = (service?.before?.levelMin ?? 0) - (service?.after?.levelMin ?? 0);
    expect(lost).toBeGreaterThan(6.7);
    expect(lost).toBeLessThan(8.4);
  });
});

describe("Cost of a difference", () => {
  const line = draw(
    { uhf: ["aerial-uhf"], amp: ["amp-distribution"], c: ["cable", { lengthM: 10 }], tv: ["receiver-tv"] },
    "uhf.out > amp.in, amp.out > c.in, c.out > tv.in",
  );
  const prices = {
    cable: { price: 2, workMinutes: 60 },
    "amp-distribution": { price: 90, workMinutes: 30 },
  };

  test.each([
    {
      name: "a gain turned: minutes, no part",
      part: "amp",
      options: { gainDb: 20 },
      cost: { partsPrice: 0, workMinutes: 5, newCables: 0 },
    },
    {
      name: "another amplifier",
      part: "amp",
      options: { outputs: 4 },
      cost: { partsPrice: 90, workMinutes: 30, newCables: 0 },
    },
    // Ten metres at 2 a metre.
    {
      name: "another cable, by the metre",
      part: "c",
      options: { grade: "copper-1.65" },
      cost: { partsPrice: 20, workMinutes: 60, newCables: 1 },
    },
  ])("CP10: $name", ({ part, options, cost }) => {
    expect(compare(line, withOptions(line, part, options), prices).cost).toEqual(cost);
  });

  test("CP11: a price that is none is refused with a reason; what was stored wrongly gives way to a placeholder", () => {
    expect(setPrice(PLACEHOLDER_PRICES, "cable", { price: -1 })).toMatchObject({
      ok: false,
      reason: "Price is −1; allowed is 0 to 1\u202f000\u202f000.",
    });
    expect(setPrice(PLACEHOLDER_PRICES, "magic", { price: 1 })).toMatchObject({ ok: false });
    const read = readPrices({
      cable: { price: "much" },
      splitter: { price: 3, workMinutes: 4 },
      __proto__: null,
    });
    expect(read.cable).toEqual(PLACEHOLDER_PRICES.cable);
    expect(read.splitter).toEqual({ price: 3, workMinutes: 4 });
    expect(readPrices(null)).toEqual(PLACEHOLDER_PRICES);
  });
});
