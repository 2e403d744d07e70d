/**
 * How hard a path is driven and what it adds. By the two-carrier definition of a rated output (EN 60728-3, from memory):
 * products lie `ratioDb` below two carriers at `outputDbuv`, and move three decibels for one.
 */
import { describe, expect, test } from "vitest";
import { saturatedFloor, withProducts } from "../../src/evaluate/overload.ts";
import type { Band } from "../../src/signal/band.ts";
import { undisturbed } from "../../src/signal/grid.ts";
import { type BandSketch, bandOf, gridOf, switchAt } from "../signal/bands.ts";

const TV = { outputDbuv: 104, ratioDb: 60 };
const IF = { outputDbuv: 118, ratioDb: 35 };

function driven(bands: readonly Band[], o: Partial<Parameters<typeof withProducts>[1]> = {}) {
  return withProducts(bands, { rating: TV, choice: "usual", from: "in", port: "out", ...o });
}

/** So many carriers of one level, far apart. */
function carriers(count: number, level: number, more: BandSketch = {}): Band {
  return bandOf({ grid: gridOf(Array.from({ length: count }, (_, i) => 400 + 10 * i)), level, ...more });
}

const inDbuv = (power: number | undefined) => 10 * Math.log10(power ?? 0);

describe("two carriers on a TV path of 104 dBµV at 60 dB", () => {
  // 2 dB of ratio for each decibel of level: 105 → 58 dB, 110 → 48 dB; products 47 and 62 dBµV. Together 3.01 dB more.
  test.each([
    { level: 105, ratio: 58, product: 47 },
    { level: 110, ratio: 48, product: 62 },
  ])("at $level dBµV: products of $product dBµV in each", ({ level, ratio, product }) => {
    const { bands, drive } = driven([carriers(2, level, { noise: 1 })]);
    for (const i of [0, 1]) expect(inDbuv(bands[0]?.interference[i])).toBeCloseTo(product, 6);
    expect(drive).toMatchObject({ from: "in", port: "out", rule: "beats", allowedDbuv: 104 });
    expect(drive?.carriers).toBeCloseTo(2, 9);
    expect(drive?.levelDbuv).toBeCloseTo(level, 9);
    expect(drive?.totalDbuv).toBeCloseTo(level + 3.01, 2);
    expect(drive?.ratioDb).toBeCloseTo(ratio, 6);
  });

  test("at 104 dBµV and below nothing is added, but how hard it is driven is said", () => {
    for (const [level, ratio] of [
      [104, 60],
      [94, 80],
    ] as const) {
      const band = carriers(2, level);
      const { bands, drive } = driven([band]);
      expect(bands[0]).toBe(band);
      expect(drive?.ratioDb).toBeCloseTo(ratio, 6);
    }
  });

  // 47 dBµV are 5.01 · 10^4 (µV)²; a thousandth of the noise is the bound.
  test.each([
    { noise: [1, 1], isAdded: true },
    { noise: [6e7, 6e7], isAdded: false },
    { noise: [6e7, 4e7], isAdded: true },
  ])("products that drown in the noise $noise are left out: added $isAdded", ({ noise, isAdded }) => {
    const band = carriers(2, 105, { noise });
    const found = driven([band]).bands[0];
    expect(found !== band).toBe(isAdded);
    if (isAdded) expect(inDbuv(found?.interference[0])).toBeCloseTo(47, 6);
  });

  test("products add to the interference that was there", () => {
    const band = carriers(2, 105, { noise: 1, interference: [1e4, 0] });
    const [found] = driven([band]).bands;
    expect(found?.interference[0]).toBeCloseTo(1e4 + 10 ** 4.7, 3);
    expect(found?.interference[1]).toBeCloseTo(10 ** 4.7, 3);
    expect([...(found?.level ?? [])]).toEqual([105, 105]);
    expect(found?.noise).toBe(band.noise);
  });
});

describe("derating for many carriers", () => {
  // Beats: 7.5·log10(16 − 1) = 8.821; ratio 60 + 2·(104 − 8.821 − 100) = 50.36 dB at 100 dBµV.
  // Power: 10·log10(16/2) = 9.031; ratio 35 + 2·(118 − 9.031 − 112) = 28.94 dB at 112 dBµV.
  test.each([
    { rating: TV, choice: "usual", level: 100, rule: "beats", allowed: 95.179, ratio: 50.36 },
    { rating: IF, choice: "usual", level: 112, rule: "power", allowed: 108.969, ratio: 28.94 },
    { rating: TV, choice: "power", level: 100, rule: "power", allowed: 94.969, ratio: 49.94 },
    { rating: IF, choice: "beats", level: 112, rule: "beats", allowed: 109.179, ratio: 29.36 },
    // From a rated ratio of 50 dB on a path is a TV amplifier's.
    {
      rating: { outputDbuv: 104, ratioDb: 50 },
      choice: "usual",
      level: 100,
      rule: "beats",
      allowed: 95.179,
      ratio: 40.36,
    },
    {
      rating: { outputDbuv: 104, ratioDb: 49 },
      choice: "usual",
      level: 100,
      rule: "power",
      allowed: 94.969,
      ratio: 38.94,
    },
  ] as const)("16 carriers of $level dBµV, $choice, $rating.ratioDb dB: by $rule", (o) => {
    const { drive } = driven([carriers(16, o.level)], { rating: o.rating, choice: o.choice });
    expect(drive?.rule).toBe(o.rule);
    expect(drive?.carriers).toBeCloseTo(16, 6);
    expect(drive?.allowedDbuv).toBeCloseTo(o.allowed, 2);
    expect(drive?.ratioDb).toBeCloseTo(o.ratio, 1);
    expect(drive?.totalDbuv).toBeCloseTo(o.level + 12.041, 2);
  });

  test("counts all bands that are on the path together, guests too", () => {
    const masts = bandOf({ from: "mast", service: "mobile", grid: gridOf([763, 773]), level: 110 });
    const { drive, bands } = driven([
      carriers(2, 110, { noise: 1 }),
      { ...masts, noise: Float64Array.of(1, 1) },
    ]);
    // Four like carriers: 7.5·log10(3) = 3.578; 60 + 2·(104 − 3.578 − 110) = 40.84 dB.
    expect(drive?.carriers).toBeCloseTo(4, 6);
    expect(drive?.ratioDb).toBeCloseTo(40.84, 2);
    for (const band of bands) expect(inDbuv(band.interference[0])).toBeCloseTo(110 - 40.84, 2);
  });
});

describe("one carrier, or none", () => {
  test("has nothing to beat with", () => {
    const band = carriers(1, 120);
    expect(driven([band])).toEqual({ bands: [band], drive: null });
    expect(driven([carriers(0, 0)]).drive).toBeNull();
    expect(driven([])).toEqual({ bands: [], drive: null });
  });

  // One each of two sources do.
  test("beats with that of another source", () => {
    const { drive } = driven([carriers(1, 105), bandOf({ from: "b", grid: gridOf([600]), level: 105 })]);
    expect(drive?.ratioDb).toBeCloseTo(58, 6);
  });
});

/**
 * The intercept lies half the ratio above the rated level, saturation 8 dB below it (rule of thumb, from memory):
 * 104 + 30 − 8 = 126 dBµV for all together.
 */
describe("beyond saturation", () => {
  test("a single carrier comes out at 126 dBµV, its noise and its disturbers as much weaker", () => {
    const [band] = driven([carriers(1, 136, { noise: 50, interference: 70 })]).bands;
    expect(band?.level[0]).toBeCloseTo(126, 9);
    expect(band?.noise[0]).toBeCloseTo(5, 9);
    expect(band?.interference[0]).toBeCloseTo(7, 9);
  });

  test("an undisturbed band stays undisturbed, and at 126 dBµV nothing is taken away", () => {
    const [band] = driven([carriers(1, 136, { noise: 50 })]).bands;
    expect(band?.interference).toBe(band && undisturbed(band.grid));
    const full = carriers(1, 126);
    expect(driven([full]).bands[0]).toBe(full);
  });

  // Two of 130: together 133.01, 7.01 too much: 122.99 each. Products by the intercept of 134: 3·130 − 2·134 = 122,
  // 8 dB below the carriers, and below they stay: 114.99 dBµV.
  test("two carriers share what can come out", () => {
    const { bands, drive } = driven([carriers(2, 130, { noise: 1 })]);
    expect(bands[0]?.level[0]).toBeCloseTo(122.99, 2);
    expect(inDbuv(bands[0]?.interference[0])).toBeCloseTo(114.99, 2);
    expect(drive).toMatchObject({ ratioDb: expect.closeTo(8, 6), levelDbuv: expect.closeTo(130, 6) });
    expect(drive?.totalDbuv).toBeCloseTo(133.01, 2);
  });

  // Two of 140: the cubic law would give products of 420 − 268 = 152 dBµV, above the carriers.
  test("products are never stronger than the carriers", () => {
    const { bands, drive } = driven([carriers(2, 140, { noise: 1 })]);
    expect(drive?.ratioDb).toBeCloseTo(0, 9);
    expect(inDbuv(bands[0]?.interference[0])).toBeCloseTo(bands[0]?.level[0] ?? 0, 6);
  });

  test("a noise floor is held down by its own power", () => {
    const slices = (level: number) =>
      bandOf({ grid: gridOf([1000, 1100], 100), level, more: { isFloor: true } });
    // Two slices of 133 dBµV are 136.01: 10.01 dB too much.
    const held = saturatedFloor(slices(133), TV);
    for (const level of held.level) expect(level).toBeCloseTo(122.99, 2);
    expect(held.isFloor).toBe(true);
    const weak = slices(100);
    expect(saturatedFloor(weak, TV)).toBe(weak);
    // 118 + 17.5 − 8 = 127.5 dBµV.
    expect(saturatedFloor(slices(133), IF).level[0]).toBeCloseTo(124.49, 2);
  });
});

describe("alternatives of a switch", () => {
  const lnb = switchAt("lnb", "HL");
  const other = switchAt("other", "1");
  const under = (setting: string, level: number, at = lnb) =>
    bandOf({
      from: `${at.id}${setting}${level}`,
      grid: gridOf([1000, 1100]),
      level,
      noise: 1,
      conditions: [{ at, setting }],
    });
  const always = (level: number) => bandOf({ grid: gridOf([474, 600]), level, noise: 1 });
  /** Carrier to products in the first carrier of each band. */
  const ratios = (bands: readonly Band[]) =>
    driven(bands).bands.map((band) => (band.level[0] ?? 0) - inDbuv(band.interference[0]));

  // Two carriers alone: 60 + 2·(104 − L). Four like ones: 3.578 dB of derating.
  test("drive the path one at a time", () => {
    const [low, high] = ratios([under("HL", 108), under("HH", 110)]);
    expect(low).toBeCloseTo(52, 6);
    expect(high).toBeCloseTo(48, 6);
  });

  test("of one setting drive it together", () => {
    const [a, b] = ratios([under("HL", 110), { ...under("HL", 110), origin: always(1).origin }]);
    expect(a).toBeCloseTo(40.84, 2);
    expect(b).toBeCloseTo(40.84, 2);
  });

  test("what is always there meets the strongest of them, and each of them what is always there", () => {
    const [tv, weak, strong] = ratios([always(110), under("HL", 80), under("HH", 110)]);
    expect(tv).toBeCloseTo(40.84, 2);
    expect(strong).toBeCloseTo(40.84, 2);
    // 80 dBµV beside two of 110: products of these two, 62 dBµV, and a thousandth for the weak ones.
    expect(weak).toBeCloseTo(80 - 62, 1);
    // The order in which they came does not matter.
    expect(ratios([under("HH", 110), always(110), under("HL", 80)])[1]).toBeCloseTo(40.84, 2);
  });

  test("of one switch meet the strongest of another", () => {
    const [a] = ratios([under("HL", 110), under("1", 60, other), under("2", 110, other)]);
    expect(a).toBeCloseTo(40.84, 2);
  });

  test("the drive that is told is the hardest", () => {
    for (const bands of [
      [under("HL", 108), under("HH", 110), under("VL", 100)],
      [under("HH", 110), under("HL", 108)],
      [under("HL", 108), under("HH", 110)],
    ])
      expect(driven(bands).drive?.levelDbuv).toBeCloseTo(110, 6);
    // Many may be harder than few that are stronger: 16 of 104 are 8.82 dB above what is allowed, two of 110 six.
    const many = bandOf({
      grid: gridOf(Array.from({ length: 16 }, (_, i) => 400 + 10 * i)),
      level: 104,
      conditions: [{ at: lnb, setting: "VH" }],
    });
    expect(driven([under("HH", 110), many]).drive?.levelDbuv).toBeCloseTo(104, 6);
    expect(driven([many, under("HH", 110)]).drive?.levelDbuv).toBeCloseTo(104, 6);
  });
});
