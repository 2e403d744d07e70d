/** Gains worked by hand from what the responses declare. */
import { describe, expect, test } from "vitest";
import { gainDbAt, gainTable } from "../../src/signal/gain.ts";
import { makeGrid } from "../../src/signal/grid.ts";
import { curve, flat, passBand, type Response, series } from "../../src/signal/response.ts";
import { carrierAt, gridOf } from "./bands.ts";

/** The gain of one carrier and whether it is cut. */
function gainOf(response: Response, centreMHz: number, widthMHz: number) {
  const { db, ratio, cut } = gainTable(response, gridOf([centreMHz], widthMHz));
  return { db: db[0], ratio: ratio[0], isCut: cut?.[0] === 1 };
}

describe("gain at one frequency", () => {
  test("flat: the same everywhere", () => {
    expect([gainDbAt(flat(-4), 5), gainDbAt(flat(-4), 2150)]).toEqual([-4, -4]);
  });

  // (k1·√f·(1 + 0.002·(t − 20)) + k2·f)·length/100: at 100 MHz (2·10·1.05 + 0.01·100)·0.5 = 11, at 400 MHz
  // (2·20·1.05 + 4)·0.5 = 23 dB lost.
  test("cable: the law of coaxial cable, as a loss", () => {
    const cable = { type: "cable", k1: 2, k2: 0.01, lengthM: 50, temperatureC: 45 } as const;
    expect(gainDbAt(cable, 100)).toBeCloseTo(-11, 9);
    expect(gainDbAt(cable, 400)).toBeCloseTo(-23, 9);
  });

  // Straight lines: from 100 to 300 MHz −2 dB per 100 MHz, then +4 dB to 500 MHz.
  test.each([
    { f: 50, db: -1 },
    { f: 100, db: -1 },
    { f: 200, db: -3 },
    { f: 250, db: -4 },
    { f: 300, db: -5 },
    { f: 350, db: -4 },
    { f: 500, db: -1 },
    { f: 900, db: -1 },
  ])("curve: $db dB at $f MHz", ({ f, db }) => {
    expect(gainDbAt(curve([100, -1], [300, -5], [500, -1]), f)).toBeCloseTo(db, 9);
  });

  test("curve: held beyond its ends, at different values", () => {
    const slope = curve([47, 3], [862, 9]);
    expect([gainDbAt(slope, 5), gainDbAt(slope, 2150)]).toEqual([3, 9]);
  });

  test("curve: a step at one frequency, a single point, and none", () => {
    const step = curve([100, -1], [200, -1], [200, -9], [300, -9]);
    expect([gainDbAt(step, 150), gainDbAt(step, 200), gainDbAt(step, 201)]).toEqual([-1, -1, -9]);
    expect(gainDbAt(curve([100, -7]), 900)).toBe(-7);
    expect(gainDbAt(curve(), 900)).toBe(0);
  });

  test("series: decibels add", () => {
    expect(gainDbAt(series(flat(20), curve([100, -1], [300, -5]), flat(-3)), 200)).toBeCloseTo(14, 9);
  });
});

/**
 * As the response says: up to 20 dB just beside an edge, the whole rejection from a tenth of the edge frequency away,
 * and straight between, in decibels.
 */
describe("a filter's stop band", () => {
  const tv: Response = { type: "windows", windows: [{ fromMHz: 470, toMHz: 700 }], rejectionDb: 40 };

  test.each([
    { name: "inside", f: 600, db: 0 },
    { name: "on the lower edge", f: 470, db: 0 },
    { name: "on the upper edge", f: 700, db: 0 },
    // 35/700 = 1/20 away is half of the way: 20 + 20/2.
    { name: "a twentieth above the upper edge", f: 735, db: -30 },
    { name: "a tenth above the upper edge", f: 770, db: -40 },
    { name: "far above", f: 2000, db: -40 },
    // 11.75/470 = 1/40 away is a quarter of the way: 20 + 20/4.
    { name: "a fortieth below the lower edge", f: 458.25, db: -25 },
    { name: "far below", f: 100, db: -40 },
  ])("$name: $db dB at $f MHz", ({ f, db }) => {
    expect(gainDbAt(tv, f)).toBeCloseTo(db, 9);
  });

  test("begins with the whole rejection where that is less than 20 dB", () => {
    const weak: Response = { ...tv, rejectionDb: 12 };
    expect(gainDbAt(weak, 700.001)).toBeCloseTo(-12, 6);
    expect(gainDbAt(weak, 2000)).toBeCloseTo(-12, 9);
  });

  // Between 240 and 470 MHz: at 458.25 MHz a fortieth below 470 counts, not that 240 is far; at 252 MHz a twentieth above 240.
  test.each([false, true])("counts from the nearest window (windows in falling order: %s)", (isReversed) => {
    const windows = [
      { fromMHz: 174, toMHz: 240 },
      { fromMHz: 470, toMHz: 700 },
    ];
    const both: Response = { ...tv, windows: isReversed ? windows.toReversed() : windows };
    expect(gainDbAt(both, 458.25)).toBeCloseTo(-25, 9);
    expect(gainDbAt(both, 252)).toBeCloseTo(-30, 9);
    expect([gainDbAt(both, 200), gainDbAt(both, 600)]).toEqual([0, 0]);
  });

  test("of no window stops everything with the whole rejection", () => {
    expect(gainDbAt({ ...tv, windows: [] }, 600)).toBeCloseTo(-40, 9);
  });
});

/** Carriers 10 MHz wide against an edge at 700 MHz; what is stopped, is stopped by 20 dB, for it lies beside the edge. */
describe("a carrier on the edge of a filter", () => {
  const pass = passBand({ fromMHz: 470, toMHz: 700, gain: flat(-1), rejectionDb: 40 });

  // Shares by areas, 10·log10(share + (1 − share)·10^−2), less 1 dB: 0.9 → 0.901, −0.453; 0.8 → 0.802, −0.958;
  // 0.5 → 0.505, −2.967.
  test.each([
    { name: "wholly inside", f: 695, db: -1, isCut: false },
    { name: "nine tenths inside", f: 696, db: -1.453, isCut: false },
    { name: "less than nine tenths inside", f: 697, db: -1.958, isCut: true },
    { name: "half inside", f: 700, db: -3.967, isCut: true },
  ])("$name: $db dB, cut: $isCut", ({ f, db, isCut }) => {
    const gain = gainOf(pass, f, 10);
    expect(gain.db).toBeCloseTo(db, 3);
    expect(gain.isCut).toBe(isCut);
  });

  // Centred 7 MHz above: 20 + 20·(7/700)/0.1 = 22 dB, and nothing of it inside.
  test("wholly outside it is stopped as its centre is", () => {
    expect(gainOf(pass, 707, 10).db).toBeCloseTo(-23, 9);
    expect(gainOf(pass, 707, 10).isCut).toBe(true);
  });

  test("inside two windows it passes with the sum of its shares", () => {
    const comb: Response = {
      type: "windows",
      windows: [
        { fromMHz: 90, toMHz: 99 },
        { fromMHz: 101, toMHz: 110 },
      ],
      rejectionDb: 30,
    };
    // 95 to 99 and 101 to 105 of 95 to 105 MHz: 0.8; for the rest the edge that is nearer for its frequency, 1/101 away:
    // 20 + 10·(1/101)/0.1 = 20.990 dB; 10·log10(0.8 + 0.2·10^−2.099) = −0.961 dB.
    expect(gainOf(comb, 100, 10).db).toBeCloseTo(-0.961, 2);
    expect(gainOf(comb, 100, 10).isCut).toBe(true);
  });
});

describe("a notch", () => {
  const notch: Response = { type: "notch", windows: [{ fromMHz: 791, toMHz: 821 }], rejectionDb: 40 };

  // Half of it: 10·log10(0.5 + 0.5·10^−4) = −3.010 dB; a tenth: 10·log10(0.9 + 0.1·10^−4) = −0.4575 dB.
  test.each([
    { name: "inside", f: 806, db: -40, isCut: true },
    { name: "half inside", f: 791, db: -3.01, isCut: true },
    { name: "a tenth inside", f: 787, db: -0.4575, isCut: false },
    { name: "beside", f: 786, db: 0, isCut: false },
  ])("$name: $db dB, cut: $isCut", ({ f, db, isCut }) => {
    const gain = gainOf(notch, f, 10);
    expect(gain.db).toBeCloseTo(db, 3);
    expect(gain.isCut).toBe(isCut);
  });

  test("at one frequency stops inside and passes outside", () => {
    expect([gainDbAt(notch, 806), gainDbAt(notch, 600)]).toEqual([-40, 0]);
  });
});

describe("a table of gains", () => {
  const grid = gridOf([500, 600, 900]);
  const pass = passBand({ fromMHz: 470, toMHz: 700, gain: flat(10), rejectionDb: 30 });

  // +10 dB is ten times the power; 900 MHz lies 200/700 above the edge, beyond a tenth: 10 − 30 = −20 dB, a hundredth.
  test("says for each carrier decibels, ratio of powers, and whether it is cut", () => {
    const { db, ratio, cut } = gainTable(pass, grid);
    for (const [i, expected] of [10, 10, -20].entries()) expect(db[i]).toBeCloseTo(expected, 9);
    for (const [i, expected] of [10, 10, 0.01].entries()) expect(ratio[i]).toBeCloseTo(expected, 9);
    expect([...(cut ?? [])]).toEqual([0, 0, 1]);
  });

  test("has no list of cuts where nothing is cut", () => {
    expect(gainTable(flat(-60), grid).cut).toBeNull();
  });

  test("cuts in a row where one of the filters does, though another lets it pass", () => {
    const both = series(pass, { type: "notch", windows: [{ fromMHz: 590, toMHz: 610 }], rejectionDb: 20 });
    expect([...(gainTable(both, grid).cut ?? [])]).toEqual([0, 1, 1]);
    expect([...(gainTable(series(both, flat(0)), grid).cut ?? [])]).toEqual([0, 1, 1]);
  });

  test("is one object for responses that say the same, on one grid", () => {
    expect(gainTable(passBand({ fromMHz: 470, toMHz: 700, gain: flat(10), rejectionDb: 30 }), grid)).toBe(
      gainTable(pass, grid),
    );
    expect(gainTable(flat(10), grid)).not.toBe(gainTable(pass, grid));
    expect(gainTable(pass, gridOf([500, 600]))).not.toBe(gainTable(pass, grid));
    const first = gainTable(flat(-0.25), grid);
    gainTable(flat(-0.75), grid);
    expect(gainTable(flat(-0.25), grid)).toBe(first);
  });

  // Edge at 700 MHz: 2 MHz around 698 MHz lie inside; of 8 MHz around 699 MHz 5 do, 10·log10(0.625 + 0.375·10^−2) = −2.015 dB.
  test("counts with each carrier's own noise bandwidth", () => {
    const mixed = makeGrid([carrierAt(698, 2), carrierAt(699, 8)]);
    const { db, cut } = gainTable(
      { type: "windows", windows: [{ fromMHz: 470, toMHz: 700 }], rejectionDb: 30 },
      mixed,
    );
    expect(db[0]).toBe(0);
    expect(db[1]).toBeCloseTo(-2.015, 3);
    expect([...(cut ?? [])]).toEqual([0, 1]);
  });

  test("is remembered, but not for ever", () => {
    const first = gainTable(flat(-0.5), grid);
    for (let n = 1; n < 2100; n++) expect(gainTable(flat(n), grid).db[0]).toBe(n);
    expect(gainTable(flat(-0.5), grid)).not.toBe(first);
    expect(gainTable(flat(-0.5), grid)).toEqual(first);
  });
});
