/** A band on its way through one part: levels, noise and cuts worked by hand. */
import { describe, expect, test } from "vitest";
import { uncut, undisturbed } from "../../src/signal/grid.ts";
import { flat, passBand, series } from "../../src/signal/response.ts";
import {
  amplifyBand,
  conditionsKey,
  convertBand,
  exclusive,
  noiseFloor,
  passFloor,
  sourceBand,
  underCondition,
} from "../../src/signal/treat.ts";
import { bandOf, carrierAt, gridOf, switchAt } from "./bands.ts";

/** kTB in 8 MHz at 290 K: 3.81 dBµV (public constant tables), 2.402 (µV)² with k = 1.380649·10^−23 and 75 Ω. */
const KTB = 2.402;

describe("a source", () => {
  const origin = { key: "uhf", service: "tv", part: "uhf" } as const;

  test("puts each carrier on the wire with its own level, and noise by its temperature", () => {
    const grid = gridOf([490, 474]);
    const asked: [string, number][] = [];
    const band = sourceBand({
      origin,
      grid,
      levelDbuv: (carrier, planIndex) => {
        asked.push([carrier.name, planIndex]);
        return carrier.airMHz / 10;
      },
      noiseKelvin: 580,
    });
    expect([...band.level]).toEqual([47.4, 49]);
    expect(asked).toEqual([
      ["474", 1],
      ["490", 0],
    ]);
    // Twice the reference temperature, twice the power.
    for (const noise of band.noise) expect(noise).toBeCloseTo(2 * KTB, 2);
    expect(band).toMatchObject({ origin, cuts: [], shifts: [], conditions: [], selected: true });
    expect(band.interference).toBe(undisturbed(grid));
    expect(band.cut).toBe(uncut(grid));
  });
});

describe("conversion", () => {
  const sky = bandOf({
    from: "dish/H",
    service: "satellite",
    grid: gridOf([10_729, 11_778, 12_692], 29.5),
    level: [70, 71, 72],
    noise: [1, 2, 3],
    interference: [4, 5, 6],
    more: {
      products: Float64Array.of(7, 8, 9),
      cut: Uint16Array.from([0, 1, 0]),
      cuts: [{ part: "x", reason: "filter" }],
      shifts: [5],
    },
  });

  // 11 778 − 10 600 = 1178 and 12 692 − 10 600 = 2092 MHz.
  test("takes along what belongs to the carriers that it takes", () => {
    const high = convertBand(sky, { fromMHz: 11_700, toMHz: 12_750, loMHz: 10_600, half: "high" });
    if (!high) throw new Error("nothing converted");
    expect([...high.grid.centre]).toEqual([1178, 2092]);
    expect([...high.level]).toEqual([71, 72]);
    expect([...high.noise]).toEqual([2, 3]);
    expect([...high.interference]).toEqual([5, 6]);
    expect([...(high.products ?? [])]).toEqual([8, 9]);
    expect([...high.cut]).toEqual([1, 0]);
    expect(high.shifts).toEqual([5, 10_600]);
    expect(high.half).toBe("high");
    expect(high.origin).toBe(sky.origin);
  });

  test("keeps undisturbed and uncut what was so", () => {
    const clean = bandOf({ grid: sky.grid });
    const low = convertBand(clean, { fromMHz: 10_700, toMHz: 11_700, loMHz: 9750 });
    expect(low?.interference).toBe(low && undisturbed(low.grid));
    expect(low?.cut).toBe(low && uncut(low.grid));
    expect(low).not.toHaveProperty("half");
  });

  test("without an oscillator selects, and is no conversion", () => {
    const some = convertBand(sky, { fromMHz: 11_700, toMHz: 12_750, loMHz: 0 });
    expect([...(some?.grid.centre ?? [])]).toEqual([11_778, 12_692]);
    expect(some?.shifts).toEqual([5]);
    const all = convertBand(sky, { fromMHz: 0, toMHz: 20_000, loMHz: 0, half: "low" });
    expect(all).toEqual({ ...sky, half: "low" });
    expect(all?.level).toBe(sky.level);
  });

  test("of nothing in range is nothing", () => {
    expect(convertBand(sky, { fromMHz: 1, toMHz: 2, loMHz: 0 })).toBeNull();
  });
});

describe("a passive part at 290 K", () => {
  const through = (kelvin: number, lossDb: number) => {
    const source = sourceBand({
      origin: { key: "a", service: "tv", part: "a" },
      grid: gridOf([474]),
      levelDbuv: () => 60,
      noiseKelvin: kelvin,
    });
    return amplifyBand(source, flat(-lossDb), { part: "pad" });
  };

  // Radiometry: what comes out is the source's noise attenuated, and the pad's own glow for the rest:
  // T' = T/L + 290·(1 − 1/L). For L = 10: 290 → 290, 2900 → 290 + 261 = 551, 29 → 2.9 + 261 = 263.9,
  // 0 → 261 K; for L = 2 (3.0103 dB): 2900 → 1450 + 145 = 1595 K.
  test.each([
    { kelvin: 290, lossDb: 10, out: 290 },
    { kelvin: 2900, lossDb: 10, out: 551 },
    { kelvin: 29, lossDb: 10, out: 263.9 },
    { kelvin: 0, lossDb: 10, out: 261 },
    { kelvin: 2900, lossDb: 3.0103, out: 1595 },
    { kelvin: 2900, lossDb: 0, out: 2900 },
  ])("of $lossDb dB makes $kelvin K into $out K", ({ kelvin, lossDb, out }) => {
    const band = through(kelvin, lossDb);
    expect((band.noise[0] ?? 0) / (KTB / 290) / out).toBeCloseTo(1, 3);
    expect(band.level[0]).toBeCloseTo(60 - lossDb, 9);
  });

  // No figure of noise is stated for what lifts by itself: the noise comes up with the carrier.
  test("that lifts lifts noise and carrier alike", () => {
    expect(through(2900, -10).noise[0]).toBeCloseTo(100 * KTB, 1);
  });
});

describe("an active part", () => {
  // N' = g·(N + kTB·(F − 1)): with 3.0103 dB F = 2: 10·(1 + 1) = 20 kTB; with 6.0206 dB F = 4: 10·(1 + 3) = 40 kTB;
  // with 0 dB nothing is added. A loss of 10 dB that is active: (1 + 3)/10 = 0.4 kTB.
  test.each([
    { gainDb: 10, noiseFigureDb: 3.0103, ktbs: 20 },
    { gainDb: 10, noiseFigureDb: 6.0206, ktbs: 40 },
    { gainDb: 20, noiseFigureDb: 0, ktbs: 100 },
    { gainDb: -10, noiseFigureDb: 6.0206, ktbs: 0.4 },
  ])("of $gainDb dB and F $noiseFigureDb dB makes kTB into $ktbs kTB", ({ ktbs, gainDb, noiseFigureDb }) => {
    const band = amplifyBand(bandOf({ noise: KTB }), flat(gainDb), { part: "amp", noiseFigureDb });
    expect((band.noise[0] ?? 0) / KTB / ktbs).toBeCloseTo(1, 3);
    expect(band.level[0]).toBe(60 + gainDb);
  });
});

describe("what passes a part", () => {
  const grid = gridOf([500, 600, 900]);
  const pass = passBand({ fromMHz: 470, toMHz: 700, gain: flat(10), rejectionDb: 30 });

  // +10 dB is ten times the power; 900 MHz is stopped by 30 dB: −20 dB in all, a hundredth.
  test.each([undefined, 5])("interference goes the carriers' way (noise figure %s)", (noiseFigureDb) => {
    const band = bandOf({ grid, level: [60, 50, 40], interference: [1, 2, 300] });
    const out = amplifyBand(band, pass, {
      part: "amp",
      ...(noiseFigureDb === undefined ? {} : { noiseFigureDb }),
    });
    for (const [i, db] of [70, 60, 20].entries()) expect(out.level[i]).toBeCloseTo(db, 9);
    for (const [i, power] of [10, 20, 3].entries()) expect(out.interference[i]).toBeCloseTo(power, 9);
  });

  test("products of amplifiers go the carriers' way too, beside the interference", () => {
    const band = bandOf({ grid, level: [60, 50, 40], more: { products: Float64Array.of(1, 2, 300) } });
    const out = amplifyBand(band, pass, { part: "amp" });
    for (const [i, power] of [10, 20, 3].entries()) expect(out.products?.[i]).toBeCloseTo(power, 9);
    expect(out.interference).toBe(undisturbed(grid));
    expect([...(band.products ?? [])]).toEqual([1, 2, 300]);
    expect(amplifyBand(bandOf({ grid }), pass, { part: "amp" }).products).toBeUndefined();
  });

  test("undisturbed stays undisturbed, uncut stays uncut, and the band that came is left alone", () => {
    const band = bandOf({ grid, level: [60, 50, 40] });
    const out = amplifyBand(band, flat(-3), { part: "pad" });
    expect(out.interference).toBe(undisturbed(grid));
    expect(out.cut).toBe(band.cut);
    expect(out.cuts).toBe(band.cuts);
    expect([...band.level]).toEqual([60, 50, 40]);
  });

  test("a filter marks what it cuts with its part; the first reason stays", () => {
    const once = amplifyBand(bandOf({ grid }), pass, { part: "first" });
    expect([...once.cut]).toEqual([0, 0, 1]);
    expect(once.cuts).toEqual([{ part: "first", reason: "filter" }]);
    const narrow = passBand({ fromMHz: 470, toMHz: 550, gain: flat(0), rejectionDb: 30 });
    const twice = amplifyBand(once, narrow, { part: "second" });
    expect([...twice.cut]).toEqual([0, 2, 1]);
    expect(twice.cuts.map((c) => c.part)).toEqual(["first", "second"]);
  });

  test("a filter that takes away nothing more leaves no reason", () => {
    const once = amplifyBand(bandOf({ grid }), pass, { part: "first" });
    const again = amplifyBand(once, series(pass, flat(0)), { part: "second" });
    expect(again.cut).toBe(once.cut);
    expect(again.cuts).toBe(once.cuts);
  });
});

describe("conditions of switches", () => {
  const lnb = switchAt("lnb", "HL");
  const two = switchAt("two", "2");

  test("a band is selected while all its switches stand as it needs them", () => {
    const now = underCondition(bandOf(), { at: lnb, setting: "HL" });
    expect(now.selected).toBe(true);
    expect(underCondition(now, { at: two, setting: "2" }).selected).toBe(true);
    const not = underCondition(now, { at: two, setting: "1" });
    expect(not.selected).toBe(false);
    expect(underCondition(not, { at: switchAt("three", "x"), setting: "x" }).selected).toBe(false);
    expect(not.conditions.map((c) => c.setting)).toEqual(["HL", "1"]);
  });

  test("bands with the same settings come and go together, whatever else they differ in", () => {
    const under = (from: string, ...settings: string[]) =>
      conditionsKey(
        bandOf({ from, conditions: settings.map((s) => ({ at: s.length > 1 ? lnb : two, setting: s })) }),
      );
    expect(under("a")).toBe("");
    expect(under("a", "HL", "1")).toBe(under("b", "HL", "1"));
    const different = [
      under("a"),
      under("a", "HL"),
      under("a", "VL"),
      under("a", "HL", "1"),
      under("a", "1"),
    ];
    expect(new Set(different).size).toBe(5);
    // The name of the switch counts: "1" of another is another setting.
    expect(conditionsKey(bandOf({ conditions: [{ at: switchAt("other", "1"), setting: "1" }] }))).not.toBe(
      under("a", "1"),
    );
  });

  test("two bands exclude each other where they ask one switch for two settings", () => {
    const with_ = (...conditions: { at: typeof lnb; setting: string }[]) => bandOf({ conditions });
    const low = with_({ at: lnb, setting: "HL" });
    const high = with_({ at: lnb, setting: "HH" });
    expect(exclusive(low, high)).toBe(true);
    expect(exclusive(low, with_({ at: lnb, setting: "HL" }))).toBe(false);
    expect(exclusive(low, with_({ at: two, setting: "HH" }))).toBe(false);
    expect(exclusive(low, bandOf())).toBe(false);
    // The second condition of each is asked too, in whatever order.
    const a = with_({ at: two, setting: "1" }, { at: lnb, setting: "HL" });
    expect(exclusive(a, with_({ at: lnb, setting: "VL" }, { at: two, setting: "1" }))).toBe(true);
    expect(exclusive(a, with_({ at: lnb, setting: "HL" }, { at: two, setting: "1" }))).toBe(false);
  });
});

/**
 * By hand: kTB in 1 MHz at 290 K is −5.22 dBµV (−173.975 dBm/Hz + 60 dB + 108.75). F = 2 (3.0103 dB) adds 1, 35 K of
 * sky add 0.1207: 10·log10(1.1207) = 0.495 dB. So −4.73 dBµV in each MHz.
 */
describe("the noise floor of a converter", () => {
  const floorOf = (fromMHz: number, toMHz: number) =>
    noiseFloor({ part: "lnb", fromMHz, toMHz, noiseFigureDb: 3.0103 });

  test.each([
    { name: "universal IF, 12 slices", from: 950, to: 2150, slices: 12, width: 100 },
    { name: "a narrow range, one slice", from: 950, to: 990, slices: 1, width: 40 },
    { name: "160 MHz, the nearest whole number of slices", from: 1000, to: 1160, slices: 2, width: 80 },
  ])("$name of $width MHz", ({ from, to, slices, width }) => {
    const floor = floorOf(from, to);
    expect(floor.level).toHaveLength(slices);
    expect([floor.grid.fromMHz, floor.grid.toMHz]).toEqual([from, to]);
    expect(floor.grid.centre[0]).toBeCloseTo(from + width / 2, 9);
    expect(floor.grid.centre.at(-1)).toBeCloseTo(to - width / 2, 9);
    for (const level of floor.level) expect(level).toBeCloseTo(-4.73 + 10 * Math.log10(width), 2);
    expect(floor.grid.plan[0]).toMatchObject({ widthMHz: width, noiseMHz: width });
  });

  test("is no signal: it belongs to the converter, and nothing disturbs or cuts it", () => {
    const floor = floorOf(950, 2150);
    expect(floor).toMatchObject({ isFloor: true, cuts: [], shifts: [], conditions: [], selected: true });
    expect(floor.origin).toMatchObject({ service: "satellite", part: "lnb" });
    expect(floor.origin.key).not.toBe(
      noiseFloor({ part: "b", fromMHz: 1, toMHz: 2, noiseFigureDb: 1 }).origin.key,
    );
    expect(floor.interference).toBe(undisturbed(floor.grid));
    expect([...floor.noise]).toEqual(Array(12).fill(0));
    expect(floorOf(950, 2150).grid).toBe(floor.grid);
    expect(floorOf(960, 2150).grid).not.toBe(floor.grid);
  });

  test("gains and loses with what it passes, and brings no noise of the part along", () => {
    const floor = floorOf(1000, 1200);
    const behind = passFloor(floor, flat(55));
    expect([...behind.level]).toEqual(Array.from(floor.level, (level) => level + 55));
    expect([...behind.noise]).toEqual([0, 0]);
    expect(behind.grid).toBe(floor.grid);
    expect(behind.isFloor).toBe(true);
  });
});

test("carriers of a source may have any width: noise follows the noise bandwidth", () => {
  // 27.5 MS/s: kTB 9.17 dBµV (public constant tables).
  const grid = gridOf([1000], 27.5);
  const band = sourceBand({
    origin: { key: "d", service: "satellite", part: "d" },
    grid,
    levelDbuv: () => 60,
    noiseKelvin: 290,
  });
  expect(10 * Math.log10(band.noise[0] ?? 0)).toBeCloseTo(9.17, 2);
  expect(grid.plan).toEqual([carrierAt(1000, 27.5)]);
});
