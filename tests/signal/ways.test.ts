/** Copies of one signal on one wire: sums of powers worked by hand. */
import { describe, expect, test } from "vitest";
import type { Band } from "../../src/signal/band.ts";
import { combine } from "../../src/signal/combine.ts";
import type { Condition, SwitchState } from "../../src/signal/control.ts";
import { makeGrid, uncut, undisturbed } from "../../src/signal/grid.ts";
import { joinWays } from "../../src/signal/ways.ts";

/** kTB in 7.61 MHz at 290 K: 3.59 dBµV (public constant tables), 10^0.359 = 2.286 (µV)². */
const THERMAL_UV2 = 2.286;

/** As wide as their noise bandwidth, so that the whole of one falls into the other. */
const GRID = makeGrid(
  [474, 482].map((airMHz) => ({ name: "C", airMHz, widthMHz: 7.61, noiseMHz: 7.61, mode: "dvbt-64qam-2/3" })),
);

function band(o: { from?: string; level?: number[]; noise?: number; conditions?: Condition[] } = {}): Band {
  const { from = "aerial", level = [60, 60], noise = THERMAL_UV2, conditions = [] } = o;
  return {
    origin: { key: from, service: "tv", part: from },
    grid: GRID,
    level: Float64Array.from(level),
    noise: Float64Array.from(level, () => noise),
    interference: undisturbed(GRID),
    cut: uncut(GRID),
    cuts: [],
    shifts: [],
    conditions,
    selected: true,
  };
}

function setting(of: string, to: string): Condition {
  const at: SwitchState = {
    id: of,
    part: of,
    port: "out",
    offers: [],
    setting: "1",
    thresholdVolts: 15,
    contested: false,
  };
  return { at, setting: to };
}

describe("copies of one signal become one band", () => {
  // 10·log10(10^(a/10) + 10^(b/10)), by hand: equal 3.01, 10 dB apart 0.41, 20 dB apart 0.04 dB above the stronger.
  test.each([
    { a: 60, b: 60, sum: 63.01 },
    { a: 60, b: 50, sum: 60.41 },
    { a: 40, b: 60, sum: 60.04 },
  ])("$a and $b dBµV are $sum dBµV", ({ a, b, sum }) => {
    const [joined, ...more] = joinWays([[band({ level: [a, a] })], [band({ level: [b, 30] })]]);
    expect(more).toEqual([]);
    expect(joined?.groups).toEqual([0, 1]);
    expect(joined?.band.level[0]).toBeCloseTo(sum, 2);
  });

  test("carrier by carrier: the second lies 30 dB below and adds nothing to speak of", () => {
    const [joined] = joinWays([[band()], [band({ level: [60, 30] })]]);
    expect(joined?.band.level[0]).toBeCloseTo(63.01, 2);
    expect(joined?.band.level[1]).toBeCloseTo(60.004, 3);
  });

  // Noise of a matched line is there once; what lies above it adds: 2.286 + 2 · (100 − 2.286) = 197.71 (µV)².
  test.each([
    { name: "both at thermal noise", noise: THERMAL_UV2, sum: 2.286 },
    { name: "both far above it", noise: 100, sum: 197.71 },
  ])("noise: $name", ({ noise, sum }) => {
    const [joined] = joinWays([[band({ noise })], [band({ noise })]]);
    expect(joined?.band.noise[0]).toBeCloseTo(sum, 1);
  });

  test("levels far below any meter stay numbers", () => {
    const [joined] = joinWays([[band({ level: [-5000, -5000] })], [band({ level: [-5000, -5000] })]]);
    expect(joined?.band.level[0]).toBeCloseTo(-4996.99, 2);
  });

  test("a carrier that one of the ways lets through is live; cut by all, it keeps the reason of the strongest", () => {
    const filtered = (level: number, part: string, cut: number[]): Band => ({
      ...band({ level: [level, level] }),
      cut: Uint16Array.from(cut),
      cuts: [{ part, reason: "filter" }],
    });
    const [joined] = joinWays([[filtered(60, "a", [1, 1])], [filtered(50, "b", [0, 1])]]);
    expect([...(joined?.band.cut ?? [])]).toEqual([0, 1]);
    expect(joined?.band.cuts).toEqual([{ part: "a", reason: "filter" }]);
  });

  // Below the noise of a matched line, as behind a cold source, the larger of both stands: 1 and 2 (µV)² under 2.286.
  test("noise below thermal noise is never less than that of either", () => {
    const [joined] = joinWays([[band({ noise: 1 })], [band({ noise: 2 })]]);
    expect(joined?.band.noise[0]).toBeCloseTo(2, 9);
    const [other] = joinWays([[band({ noise: 2 })], [band({ noise: 1 })]]);
    expect(other?.band.noise[0]).toBeCloseTo(2, 9);
  });

  describe("cuts", () => {
    const cutBand = (level: number, part: string, cut: number[]): Band => ({
      ...band({ level: [level, level] }),
      cut: Uint16Array.from(cut),
      cuts: [{ part, reason: "filter" }],
    });
    const joinedOf = (...copies: Band[]) => joinWays(copies.map((copy) => [copy]))[0]?.band;

    test.each([
      { name: "the strongest comes first", levels: [60, 50], by: "a" },
      { name: "the strongest comes second", levels: [50, 60], by: "b" },
      { name: "both are alike: the first", levels: [60, 60], by: "a" },
    ])("the reason of the strongest stays, where $name", ({ levels: [a = 0, b = 0], by }) => {
      const found = joinedOf(cutBand(a, "a", [1, 1]), cutBand(b, "b", [1, 1]));
      expect(found?.cuts).toEqual([{ part: by, reason: "filter" }]);
      expect([...(found?.cut ?? [])]).toEqual([1, 1]);
    });

    test("that every way makes stay the strongest's own", () => {
      const strongest = cutBand(60, "a", [0, 1]);
      expect(joinedOf(strongest, cutBand(50, "b", [0, 1]))?.cut).toBe(strongest.cut);
      const free = band({ level: [70, 70] });
      expect(joinedOf(free, cutBand(50, "b", [1, 1]))?.cut).toBe(free.cut);
    });

    test("are gone where another way lets all of them through", () => {
      const found = joinedOf(cutBand(60, "a", [1, 0]), band({ level: [50, 50] }));
      expect(found?.cut).toBe(uncut(GRID));
      expect(found?.cuts).toEqual([]);
    });

    test("are kept for the carriers that nobody lets through", () => {
      const found = joinedOf(cutBand(60, "a", [1, 1]), cutBand(50, "b", [1, 0]), cutBand(40, "c", [2, 1]));
      expect([...(found?.cut ?? [])]).toEqual([1, 0]);
      expect(found?.cuts).toEqual([{ part: "a", reason: "filter" }]);
    });
  });

  test("interference adds by power, undisturbed copies left aside", () => {
    const with_ = (a: number, b: number): Band => ({ ...band(), interference: Float64Array.of(a, b) });
    const [joined] = joinWays([[with_(100, 5)], [band()], [with_(20, 0)]]);
    expect([...(joined?.band.interference ?? [])]).toEqual([120, 5]);
    expect(joinWays([[band()], [band()]])[0]?.band.interference).toBe(undisturbed(GRID));
  });

  test("two copies in one group are one signal of that group", () => {
    const [joined, ...more] = joinWays([[], [band(), band()], [band()]]);
    expect(more).toEqual([]);
    expect(joined?.groups).toEqual([1, 2]);
    expect(joined?.copies).toHaveLength(3);
    // Three times the power: 4.77 dB.
    expect(joined?.band.level[0]).toBeCloseTo(64.77, 2);
  });

  test("other carriers, another half, or a floor are another signal", () => {
    const grid = makeGrid([{ name: "C", airMHz: 600, widthMHz: 8, noiseMHz: 8, mode: "" }]);
    const bands: Band[] = [
      band(),
      { ...band(), grid },
      { ...band(), half: "low" },
      { ...band(), half: "high" },
      { ...band(), isFloor: true },
    ];
    expect(joinWays(bands.map((one) => [one])).map((a) => a.band)).toEqual(bands);
  });

  test("floors that come by two ways add, and bear no noise of their own", () => {
    const floor: Band = { ...band({ level: [30, 30], noise: 0 }), isFloor: true };
    const [joined] = joinWays([[floor], [floor]]);
    expect(joined?.band.level[0]).toBeCloseTo(33.01, 2);
    expect(joined?.band.noise).toBe(undisturbed(GRID));
  });

  test("what came another way through the switches, or from elsewhere, stays apart", () => {
    const kept = joinWays([
      [band(), band({ conditions: [setting("s", "1")] })],
      [band({ from: "other" }), band({ conditions: [setting("s", "2")] }), { ...band(), shifts: [9750] }],
    ]);
    expect(kept).toHaveLength(5);
  });

  test("a single way is left as it is", () => {
    const only = band();
    expect(joinWays([[only], []])[0]?.band).toBe(only);
  });
});

describe("what the copies do to others", () => {
  // Behind the amplifiers of two ways 10^4 and 2 · 10^4 (µV)²: no fixed phase between them, so their powers add.
  test("products of independent ways add by power; a way without any brings none", () => {
    const driven = (power: number): Band => ({ ...band(), products: Float64Array.of(power, power) });
    const [two] = joinWays([[driven(1e4)], [driven(2e4)]]);
    expect([...(two?.band.products ?? [])]).toEqual([3e4, 3e4]);
    const [one] = joinWays([[band({ level: [70, 70] })], [driven(1e4)]]);
    expect([...(one?.band.products ?? [])]).toEqual([1e4, 1e4]);
    expect(joinWays([[band()], [band()]])[0]?.band.products).toBeUndefined();
  });

  // Both signals come by both ways: on each way they have met (I = 10^4 each), so together 2 · 10^4, and no more.
  test("two signals that come by the same two ways disturb each other once on each", () => {
    const met = (from: string): Band => ({
      ...band({ from }),
      interference: Float64Array.of(1e4, 1e4),
    });
    const { bands } = combine([
      [met("a"), met("b")],
      [met("a"), met("b")],
    ]);
    expect(bands).toHaveLength(2);
    for (const one of bands) expect([...one.interference]).toEqual([2e4, 2e4]);
  });

  // A third one of 40 dBµV, 10^4 (µV)², meets what comes by two ways: it counts once; and suffers 2 · 10^6 from them.
  test("a third signal disturbs their sum once, and is disturbed by both", () => {
    const { bands, clashes } = combine([[band()], [band()], [band({ from: "third", level: [40, 40] })]]);
    const [twice, third] = bands;
    expect(twice?.interference[0]).toBeCloseTo(1e4, 6);
    expect(third?.interference[0]).toBeCloseTo(2e6, 3);
    expect(clashes.filter((c) => c.echo)).toHaveLength(1);
  });

  test("many like disturbers are all counted, but only the strongest are named", () => {
    const others = Array.from({ length: 20 }, (_, n) => band({ from: `o${n}`, level: [40 + n / 100, 40] }));
    const { bands, clashes } = combine([[band()], others]);
    // 20 · 10^4 (µV)² in the second carrier.
    expect(bands[0]?.interference[1]).toBeCloseTo(2e5, 6);
    const named = clashes.filter((c) => c.victim.origin.key === "aerial").map((c) => c.other.origin.key);
    expect(named).toEqual(["o19", "o18", "o17", "o16"]);
  });

  test("a copy too weak to matter is no echo", () => {
    expect(combine([[band()], [band({ level: [0, 0] })]]).clashes).toEqual([]);
  });
});
