/**
 * How hard a path is driven and what it adds. By the two-carrier definition of a rated output (EN 60728-3, from memory):
 * products lie `ratioDb` below two carriers at `outputDbuv`, and move three decibels for one.
 */
import { describe, expect, test } from "vitest";
import {
  type CascadeChoice,
  type DeratingChoice,
  saturatedFloor,
  withProducts,
} from "../../src/evaluate/overload.ts";
import type { Rating } from "../../src/parts/contract.ts";
import type { Band } from "../../src/signal/band.ts";
import { undisturbed } from "../../src/signal/grid.ts";
import { type BandSketch, bandOf, gridOf, switchAt } from "../signal/bands.ts";

const TV = { outputDbuv: 104, ratioDb: 60 };
const IF = { outputDbuv: 118, ratioDb: 35 };

type How = { readonly rating?: Rating; readonly choice?: DeratingChoice; readonly cascade?: CascadeChoice };

function driven(bands: readonly Band[], o: How = {}) {
  const { rating = TV, choice = "usual", cascade = "in step" } = o;
  return withProducts(bands, { rating, model: { derating: choice, cascade }, from: "in", port: "out" });
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
    for (const i of [0, 1]) expect(inDbuv(bands[0]?.products?.[i])).toBeCloseTo(product, 6);
    expect(drive).toMatchObject({ from: "in", port: "out", rule: "beats", allowedDbuv: 104 });
    expect(drive?.carriers).toBeCloseTo(2, 9);
    expect(drive?.levelDbuv).toBeCloseTo(level, 9);
    expect(drive?.totalDbuv).toBeCloseTo(level + 3.01, 2);
    expect(drive?.ratioDb).toBeCloseTo(ratio, 6);
  });

  // 60 dB at 104 dBµV; at 99 it is 70 dB, which even ten amplifiers in step bring to no less than 50.
  test("at 99 dBµV and below nothing is added, but how hard it is driven is said", () => {
    for (const [level, ratio] of [
      [99, 70],
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
    if (isAdded) expect(inDbuv(found?.products?.[0])).toBeCloseTo(47, 6);
  });

  test("products stand beside the interference that was there", () => {
    const band = carriers(2, 105, { noise: 1, interference: [1e4, 0] });
    const [found] = driven([band]).bands;
    expect(found?.interference).toBe(band.interference);
    for (const i of [0, 1]) expect(inDbuv(found?.products?.[i])).toBeCloseTo(47, 6);
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
    // 10·log10(16 − 1) = 11.761: 60 + 2·(104 − 11.761 − 100) = 44.48 dB.
    { rating: TV, choice: "channels", level: 100, rule: "channels", allowed: 92.239, ratio: 44.48 },
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
    // Four like carriers: 7.5·log10(3) = 3.578; 60 + 2·(104 − 3.578 − 110) = 40.84 dB. 116.02 dBµV together are
    // compressed by 5·log10(1 + 10^−1.90) = 0.03 dB.
    expect(drive?.carriers).toBeCloseTo(4, 6);
    expect(drive?.ratioDb).toBeCloseTo(40.84, 2);
    for (const band of bands) expect(inDbuv(band.products?.[0])).toBeCloseTo(110 - 40.84 - 0.03, 2);
  });
});

describe("one carrier, or none", () => {
  test("has nothing to beat with", () => {
    const band = carriers(1, 110);
    expect(driven([band])).toEqual({ bands: [band], drive: null });
    expect(driven([carriers(1, 120)]).drive).toBeNull();
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
 * n equal stages: third-order products 20·log10(n) in step, 10·log10(n) by power (published page of CATV formulas;
 * voltage addition of triple beats also in a telecom handbook). Two carriers of 105 dBµV: 58 dB behind one stage.
 */
describe("stages behind each other", () => {
  const chain = (n: number, o: How = {}) => {
    let band = carriers(2, 105, { noise: 1 });
    for (let i = 0; i < n; i++) band = driven([band], o).bands[0] ?? band;
    return (band.level[0] ?? 0) - inDbuv(band.products?.[0]);
  };

  test.each([
    { n: 1, inStep: 58, byPower: 58 },
    { n: 2, inStep: 51.98, byPower: 54.99 },
    { n: 4, inStep: 45.96, byPower: 51.98 },
    { n: 8, inStep: 39.94, byPower: 48.97 },
  ])("$n equal ones: C/I $inStep dB in step, $byPower dB by power", ({ n, inStep, byPower }) => {
    expect(chain(n)).toBeCloseTo(inStep, 2);
    expect(chain(n, { cascade: "by power" })).toBeCloseTo(byPower, 2);
  });

  // Voltages of products 58 and 78 dB below the carriers: 10^−2.9 + 10^−3.9 = 1.3848·10^−3, 57.17 dB.
  test("unequal ones by their voltages", () => {
    const first = driven([carriers(2, 105, { noise: 1 })]).bands;
    const [band] = driven(first, { rating: { outputDbuv: 114, ratioDb: 60 } }).bands;
    expect((band?.level[0] ?? 0) - inDbuv(band?.products?.[0])).toBeCloseTo(57.17, 2);
  });
});

/**
 * The intercept lies half the ratio above the rated level, 1 dB compression 9.64 dB below it (pure cubic curve, any RF
 * textbook), saturation by Rapp's law of p = 2 another 1.16 dB higher: 104 + 30 − 9.64 + 1.16 = 125.53 dBµV.
 */
describe("near and beyond saturation", () => {
  // 123.964 and 113.81 dBµV are 124.36 together.
  test("at the compression point 1 dB is missing", () => {
    const [band] = driven([
      bandOf({ level: 123.964, noise: 50, interference: 70 }),
      bandOf({ from: "b", grid: gridOf([600]), level: 113.81, noise: 1 }),
    ]).bands;
    expect(band?.level[0]).toBeCloseTo(122.964, 2);
    expect(band?.noise[0]).toBeCloseTo(50 / 1.2589, 2);
    expect(band?.interference[0]).toBeCloseTo(70 / 1.2589, 2);
  });

  // Far above it all that is too much is missing: 125.53 and no more.
  test("far beyond, one carrier comes out at saturation", () => {
    expect(driven([carriers(1, 145, { noise: 50 })]).bands[0]?.level[0]).toBeCloseTo(125.53, 1);
  });

  // 12 dB below saturation: 5·log10(1 + 10^−2.4) = 0.0086 dB.
  test("far below it nothing is taken away, and an undisturbed band stays undisturbed", () => {
    const weak = carriers(1, 113);
    expect(driven([weak]).bands[0]).toBe(weak);
    const [band] = driven([carriers(1, 124, { noise: 50 })]).bands;
    expect(band?.interference).toBe(band && undisturbed(band.grid));
  });

  // Two of 120: together 123.01, 2.52 dB below saturation: 5·log10(1 + 10^−0.504) = 0.592 dB less each.
  // Products by the intercept of 134: 3·120 − 2·134 = 92, 28 dB below the carriers, and below they stay.
  test("carriers and products are compressed alike", () => {
    const { bands, drive } = driven([carriers(2, 120, { noise: 1 })]);
    expect(bands[0]?.level[0]).toBeCloseTo(119.41, 2);
    expect(inDbuv(bands[0]?.products?.[0])).toBeCloseTo(91.41, 2);
    expect(drive).toMatchObject({ ratioDb: expect.closeTo(28, 6), levelDbuv: expect.closeTo(120, 6) });
  });

  test("a noise floor is held down by its own power", () => {
    const slices = (level: number) =>
      bandOf({ grid: gridOf([1000, 1100], 100), level, more: { isFloor: true } });
    // Two slices of 140 dBµV are 143.01: 17.48 dB above saturation, so at 125.53 − 3.01 each.
    const held = saturatedFloor(slices(140), TV);
    for (const level of held.level) expect(level).toBeCloseTo(122.52, 2);
    expect(held.isFloor).toBe(true);
    const weak = slices(100);
    expect(saturatedFloor(weak, TV)).toBe(weak);
    // 118 + 17.5 − 9.64 + 1.16 = 127.03 dBµV.
    expect(saturatedFloor(slices(145), IF).level[0]).toBeCloseTo(124.02, 2);
  });
});

/** A rule of ours: 20 dB above what it is allowed a path only limits. */
describe("20 dB beyond what is allowed", () => {
  // By the cubic law 20 dB are left at 124 dBµV, which a robust mode would live on.
  test("products outweigh the carriers", () => {
    const at = (level: number) => driven([carriers(2, level, { noise: 1 })]).drive?.ratioDb ?? 0;
    expect(at(123.9)).toBeCloseTo(20.2, 6);
    expect(at(124.1)).toBeLessThan(-2.4);
    expect(at(140)).toBeLessThan(-2.4);
  });

  test("one carrier alone is distorted as well", () => {
    const { bands, drive } = driven([carriers(1, 136, { noise: 50 })]);
    const [band] = bands;
    expect((band?.level[0] ?? 0) - inDbuv(band?.products?.[0])).toBeLessThan(-2.4);
    expect(drive).toMatchObject({ carriers: 1, allowedDbuv: 104 });
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
    driven(bands).bands.map((band) => (band.level[0] ?? 0) - inDbuv(band.products?.[0]));

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
