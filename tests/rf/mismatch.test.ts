/**
 * Ripple and stubs. Expected: the formulas of transmission line theory, with the figures that are worked out by hand
 * beside them; c = 299.792458 m·MHz.
 */
import { describe, expect, test } from "vitest";
import {
  mismatchRipple,
  reflectionOf,
  returnLossOf,
  rippleOf,
  ripplePeriodMHz,
} from "../../src/rf/mismatch.ts";
import { carrierStubLossDb, notchesMHz, stubLossDb, stubNotchDb, stubRangeOf } from "../../src/rf/stub.ts";

describe("ripple between two mismatched ends", () => {
  // r1·r2 = 0.01: 20·log10 1.01 and 0.99. 14 + 14 dB: 0.0398; 10 + 10: 0.1; 6 + 6 with 3 dB of line: 0.2512·0.5012 = 0.1259.
  test.each([
    { near: 20, far: 20, line: 0, upDb: 0.086, downDb: 0.087 },
    { near: 14, far: 14, line: 0, upDb: 0.339, downDb: 0.353 },
    { near: 10, far: 10, line: 0, upDb: 0.828, downDb: 0.915 },
    { near: 6, far: 6, line: 3, upDb: 1.03, downDb: 1.17 },
  ])("of $near and $far dB with $line dB between them", ({ near, far, line, upDb, downDb }) => {
    const ripple = mismatchRipple({ nearReturnLossDb: near, farReturnLossDb: far, lineLossDb: line });
    expect(Math.abs(ripple.upDb - upDb)).toBeLessThan(0.006);
    expect(Math.abs(ripple.downDb - downDb)).toBeLessThan(0.006);
  });

  test("comes again every 12.44 MHz on 10 m of foam cable, VF 0.83", () => {
    expect(ripplePeriodMHz({ lengthM: 10, velocityFactor: 0.83 })).toBeCloseTo(12.44, 2);
  });

  test("doubles the voltage or cancels it where all comes back", () => {
    expect(rippleOf(1).upDb).toBeCloseTo(6.0206, 4);
    expect(rippleOf(1).downDb).toBe(40);
    expect(rippleOf(0)).toEqual({ upDb: 0, downDb: 0 });
  });

  // 75 Ω on 150 Ω: (150 − 75)/(150 + 75) = 1/3, 9.542 dB.
  test("return loss and share of the voltage are the same thing", () => {
    expect(returnLossOf(1 / 3)).toBeCloseTo(9.5424, 4);
    expect(reflectionOf(9.5424)).toBeCloseTo(1 / 3, 5);
    expect(reflectionOf(0)).toBe(1);
  });
});

describe("a stub", () => {
  const range = { fromMHz: 0, toMHz: 1100 };

  // c·0.83/(4·1 m) = 62.21 MHz and its odd multiples; 0.3 m: 207.4, 622.1, 1036.8.
  test("that ends open stops odd multiples of a quarter wave", () => {
    const metre = notchesMHz({ electricalM: 1 / 0.83, end: "open" }, { fromMHz: 0, toMHz: 320 });
    expect(metre.map((f) => Math.round(f * 10) / 10)).toEqual([62.2, 186.6, 311]);
    const short = notchesMHz({ electricalM: 0.3 / 0.83, end: "open" }, range);
    expect(short.map(Math.round)).toEqual([207, 622, 1037]);
  });

  // c·0.83/(2·1 m) = 124.4 MHz and its multiples.
  test("that is shorted stops whole half waves, the lowest frequencies first", () => {
    const metre = notchesMHz({ electricalM: 1 / 0.83, end: "shorted" }, { fromMHz: 0, toMHz: 260 });
    expect(metre.map((f) => Math.round(f * 10) / 10)).toEqual([0, 124.4, 248.8]);
    expect(notchesMHz({ electricalM: 1 / 0.83, end: "shorted" }, { fromMHz: 100, toMHz: 200 })).toHaveLength(
      1,
    );
  });

  // aL = 0.1 dB = 0.01151 Np: 1 + 1/(2·0.01151) = 44.4, 33.0 dB.
  test.each([
    { lossDb: 0.1, depthDb: 33.0 },
    { lossDb: 0.5, depthDb: 19.7 },
    { lossDb: 1, depthDb: 14.6 },
    { lossDb: 3, depthDb: 8.0 },
  ])("that loses $lossDb dB makes a notch of $depthDb dB", ({ lossDb, depthDb }) => {
    expect(Math.abs(stubNotchDb(lossDb) - depthDb)).toBeLessThan(0.06);
    // A quarter wave of an open stub: 1 m in vacuum is a quarter of 4 m, 74.948 MHz. Half a wave of a shorted one.
    const quarter = { electricalM: 1, end: "open" } as const;
    expect(Math.abs(stubLossDb(quarter, { frequencyMHz: 74.948, lossDb }) - depthDb)).toBeLessThan(0.06);
    const half = { electricalM: 1, end: "shorted" } as const;
    expect(Math.abs(stubLossDb(half, { frequencyMHz: 149.896, lossDb }) - depthDb)).toBeLessThan(0.06);
  });

  // Midway an open stub is half a wave long and looks open: nothing is lost but what its own loss takes.
  test("takes nothing midway between two notches where it loses nothing itself", () => {
    expect(stubLossDb({ electricalM: 1, end: "open" }, { frequencyMHz: 149.896, lossDb: 0 })).toBeCloseTo(
      0,
      5,
    );
  });

  // A stub of 40 dB gives nothing back: like a matched third line on a joint, 20·log10(1.5) = 3.52 dB.
  test("so long that nothing comes back takes what a third matched line takes", () => {
    expect(stubLossDb({ electricalM: 50, end: "open" }, { frequencyMHz: 500, lossDb: 40 })).toBeCloseTo(
      3.522,
      2,
    );
  });

  // Known to 5 %. A quarter wave turns by 0.157 rad of what comes back, 0.794 of it: |1 + Γ|² from 0.0423 to 0.0423 + 0.794·0.157² = 0.0619,
  // |3 + Γ|² = 4.92: 12.99 dB instead of the 14.6 of its notch. A line of 40 half waves turns all the way round: from the notch to the
  // crest, 20·log10(1 + tanh(0.1151)/2) = 0.48 dB.
  test.each([
    { electricalM: 1, centreMHz: 74.948, upDb: 1.6, downDb: 0 },
    { electricalM: 40.5, centreMHz: 149.896, upDb: 14.6 - 0.48, downDb: 0 },
    { electricalM: 40, centreMHz: 149.896, upDb: 0, downDb: 14.6 - 0.48 },
  ])(
    "of $electricalM m may take so much more or less, as its length is",
    ({ electricalM, centreMHz, upDb, downDb }) => {
      const range = stubRangeOf({ electricalM, end: "open" }, { centreMHz, widthMHz: 0, lossDb: 1 });
      expect(Math.abs(range.upDb - upDb)).toBeLessThan(0.06);
      expect(Math.abs(range.downDb - downDb)).toBeLessThan(0.06);
    },
  );

  // Right on a joint, with nothing between: no notch is deeper than 40 dB, a short there included.
  test("never takes more than 40 dB", () => {
    expect(stubLossDb({ electricalM: 1, end: "open" }, { frequencyMHz: 74.948114, lossDb: 0 })).toBe(40);
  });

  // Mean power over the carrier lies between that in the notch and that at its edge.
  test("hurts a wide carrier less than the depth of its notch", () => {
    const stub = { electricalM: 12, end: "open" } as const;
    const [notch = 0] = notchesMHz(stub, { fromMHz: 480, toMHz: 500 });
    const wide = carrierStubLossDb(stub, { centreMHz: notch, widthMHz: 7.6, lossDb: 1 });
    expect(wide).toBeLessThan(stubNotchDb(1));
    expect(wide).toBeGreaterThan(stubLossDb(stub, { frequencyMHz: notch + 3.8, lossDb: 1 }));
    expect(carrierStubLossDb(stub, { centreMHz: notch, widthMHz: 0.001, lossDb: 1 })).toBeCloseTo(14.6, 1);
  });
});
