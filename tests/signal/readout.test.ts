/** What a meter would show, from levels and powers worked by hand. */
import { describe, expect, test } from "vitest";
import {
  carrierToDb,
  ciDb,
  cnDb,
  cniDb,
  disturbanceUv2,
  imDb,
  isLive,
  levelRange,
  liveCount,
  marginDb,
} from "../../src/signal/readout.ts";
import { bandOf, gridOf } from "./bands.ts";

describe("ratios of a carrier", () => {
  // 8 MHz at 290 K: 3.81 dBµV (public constant tables), 2.404 (µV)²; so 60 dBµV lie 56.19 dB above.
  test("to thermal noise: 60 dBµV in 8 MHz have C/N 56.19 dB", () => {
    expect(cnDb(bandOf({ noise: 2.404 }), 0)).toBeCloseTo(56.19, 2);
  });

  // 40 dBµV are 10^4 (µV)².
  test("to an interferer of 40 dBµV: 20 dB", () => {
    const band = bandOf({ interference: 1e4, noise: 1 });
    expect(ciDb(band, 0)).toBeCloseTo(20, 9);
    expect(cnDb(band, 0)).toBeCloseTo(60, 9);
  });

  // 10^4 + 10^4: 3.01 dB worse than either; 10^4 + 10^3: 10·log10(1.1) = 0.41 dB worse than the larger.
  test.each([
    { noise: 1e4, interference: 1e4, cni: 16.99, spare: -1.71 },
    { noise: 1e3, interference: 1e4, cni: 19.586, spare: 0.886 },
    { noise: 1e4, interference: 0, cni: 20, spare: 1.3 },
  ])("noise $noise and interference $interference: C/(N+I) $cni dB, $spare dB above 18.7", (o) => {
    const band = bandOf({ noise: o.noise, interference: o.interference });
    expect(cniDb(band, 0)).toBeCloseTo(o.cni, 2);
    expect(marginDb(band, 0)).toBeCloseTo(o.spare, 2);
  });

  // Products of 30 dBµV (10^3) beside an interferer of 9 · 10^3 are 10^4 together.
  test("to products of amplifiers alone, and to all that disturbs", () => {
    const band = bandOf({ interference: 9e3, noise: 1e4, more: { products: Float64Array.of(1e3) } });
    expect(imDb(band, 0)).toBeCloseTo(30, 9);
    expect(disturbanceUv2(band, 0)).toBeCloseTo(1e4, 9);
    expect(ciDb(band, 0)).toBeCloseTo(20, 9);
    expect(cniDb(band, 0)).toBeCloseTo(16.99, 2);
  });

  test("are infinite where there is nothing to compare with", () => {
    const clean = bandOf();
    expect([cnDb(clean, 0), ciDb(clean, 0), cniDb(clean, 0)]).toEqual([Infinity, Infinity, Infinity]);
    expect(imDb(clean, 0)).toBe(Infinity);
    expect(carrierToDb(-5, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(carrierToDb(-5, 1)).toBe(-5);
  });

  test("belong to the carrier that is asked for", () => {
    const band = bandOf({
      grid: gridOf([474, 482]),
      level: [60, 50],
      noise: [1, 10],
      interference: [10, 1000],
    });
    expect([cnDb(band, 0), cnDb(band, 1)]).toEqual([60, 40]);
    expect([ciDb(band, 0), ciDb(band, 1)]).toEqual([50, 20]);
  });
});

describe("what is left of a band", () => {
  const grid = gridOf([474, 482, 490, 498]);
  const cutBand = (marks: readonly number[]) =>
    bandOf({ grid, level: [40, 70, 55, 62], more: { cut: Uint16Array.from(marks) } });

  test.each([
    { marks: [0, 0, 0, 0], live: 4, range: { minDbuv: 40, maxDbuv: 70 } },
    { marks: [1, 2, 0, 0], live: 2, range: { minDbuv: 55, maxDbuv: 62 } },
    { marks: [1, 1, 1, 0], live: 1, range: { minDbuv: 62, maxDbuv: 62 } },
    { marks: [3, 1, 1, 2], live: 0, range: null },
  ])("cut marks $marks leave $live live", ({ marks, live, range }) => {
    const band = cutBand(marks);
    expect(liveCount(band)).toBe(live);
    expect(marks.map((_, i) => isLive(band, i))).toEqual(marks.map((mark) => mark === 0));
    expect(levelRange(band)).toEqual(range);
  });

  test("is nothing beyond its carriers", () => {
    expect(isLive(cutBand([0, 0, 0, 0]), 4)).toBe(false);
    expect(levelRange(bandOf({ grid: gridOf([]) }))).toBeNull();
  });
});
