import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dbmToDbuv, dbToRatio, dbuvToDbm, ratioToDb, sumDbuv } from "../../src/rf/decibel.ts";

describe("levels into 75 Ω", () => {
  // Published in cable TV handbooks: 0 dBmV (1 mV into 75 Ω) = 60 dBµV = −48.75 dBm.
  test("0 dBmV, which is 60 dBµV, is −48.75 dBm", () => {
    expect(dbuvToDbm(60)).toBeCloseTo(-48.75, 2);
  });

  // Ohm's law by hand: P = U²/R, so 1 mW needs √(0.001 · 75) = 273.861 mV = 273 861 µV.
  test("one milliwatt stands at the level of 273 861 µV", () => {
    expect(dbmToDbuv(0)).toBeCloseTo(20 * Math.log10(273_861), 4);
  });

  test("dBm and dBµV convert back and forth without loss", () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: 200, noNaN: true }), (dbm) => {
        expect(dbuvToDbm(dbmToDbuv(dbm))).toBeCloseTo(dbm, 9);
      }),
    );
  });
});

describe("decibels and ratios", () => {
  test.each([
    { name: "the same power", db: 0, ratio: 1 },
    { name: "ten times the power", db: 10, ratio: 10 },
    { name: "a thousandth", db: -30, ratio: 0.001 },
    { name: "half the power", db: -3.0103, ratio: 0.5 }, // 10·log10(1/2), any log table
  ])("$name is $db dB", ({ db, ratio }) => {
    expect(dbToRatio(db)).toBeCloseTo(ratio, 5);
    expect(ratioToDb(ratio)).toBeCloseTo(db, 4);
  });

  test("no power at all is −Infinity dB, and back again nothing", () => {
    expect(ratioToDb(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(dbToRatio(Number.NEGATIVE_INFINITY)).toBe(0);
  });
});

describe("sums of uncorrelated signals", () => {
  // Powers by hand: n equal signals have n times the power.
  test.each([
    { name: "two equal carriers", levels: [60, 60], sum: 63.0103 },
    { name: "ten equal carriers", levels: Array.from({ length: 10 }, () => 60), sum: 70 },
    { name: "one 10 dB below the other", levels: [60, 50], sum: 60.4139 }, // 10·log10(1.1) = 0.4139
    { name: "one carrier alone", levels: [60], sum: 60 },
  ])("$name", ({ levels, sum }) => {
    expect(sumDbuv(levels)).toBeCloseTo(sum, 4);
  });

  test("an empty sum is no signal, not 0 dBµV", () => {
    expect(sumDbuv([])).toBe(Number.NEGATIVE_INFINITY);
  });

  test("a sum never lies below its strongest signal, nor more than 10·log10(n) above", () => {
    const levels = fc.array(fc.double({ min: -50, max: 140, noNaN: true }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(levels, (values) => {
        const strongest = Math.max(...values);
        const sum = sumDbuv(values);
        expect(sum).toBeGreaterThanOrEqual(strongest - 1e-9);
        expect(sum).toBeLessThanOrEqual(strongest + 10 * Math.log10(values.length) + 1e-9);
      }),
    );
  });
});
