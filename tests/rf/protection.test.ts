import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dbToRatio, sumDbuv } from "../../src/rf/decibel.ts";
import { carrierToAllDb, collisionGrade, lossOfCnDb, spareNeededDb } from "../../src/rf/protection.ts";

describe("noise and interference add by power", () => {
  // By hand, C/N 15 dB and C/I 15 dB: twice the disturbance, 3.01 dB less.
  test("an interferer as strong as the noise costs 3 dB", () => {
    expect(carrierToAllDb({ cnDb: 15, ciDb: 15 })).toBeCloseTo(15 - 3.0103, 4);
    expect(lossOfCnDb({ cnDb: 15, ciDb: 15 })).toBeCloseTo(3.0103, 4);
  });

  // Powers by hand at C/N 14.9 dB: e.g. C/I 10: 10^−1.49 + 10^−1 = 0.03236 + 0.1 = 0.13236 → 8.78 dB.
  test.each([
    { ciDb: 5, expected: 4.58 },
    { ciDb: 10, expected: 8.78 },
    { ciDb: 15, expected: 11.94 },
    { ciDb: 20, expected: 13.73 },
    { ciDb: 30, expected: 14.77 },
  ])("C/N 14.9 dB with C/I $ciDb dB leaves $expected dB", ({ ciDb, expected }) => {
    expect(carrierToAllDb({ cnDb: 14.9, ciDb })).toBeCloseTo(expected, 2);
  });

  test("the same comes out when the disturbers are summed as levels below a carrier of 60 dBµV", () => {
    const db = fc.double({ min: -20, max: 60, noNaN: true });
    fc.assert(
      fc.property(db, db, (cnDb, ciDb) => {
        const disturbance = sumDbuv([60 - cnDb, 60 - ciDb]);
        expect(carrierToAllDb({ cnDb, ciDb })).toBeCloseTo(60 - disturbance, 9);
        expect(lossOfCnDb({ cnDb, ciDb })).toBeCloseTo(cnDb - (60 - disturbance), 9);
      }),
    );
  });

  test.each([
    { name: "no interferer", cnDb: 20, ciDb: Number.POSITIVE_INFINITY, all: 20, loss: 0 },
    {
      name: "no carrier",
      cnDb: Number.NEGATIVE_INFINITY,
      ciDb: Number.NEGATIVE_INFINITY,
      all: Number.NEGATIVE_INFINITY,
      loss: 0,
    },
    {
      name: "neither noise nor interferer",
      cnDb: Number.POSITIVE_INFINITY,
      ciDb: Number.POSITIVE_INFINITY,
      all: Number.POSITIVE_INFINITY,
      loss: 0,
    },
  ])("absence stays absence: $name", ({ cnDb, ciDb, all, loss }) => {
    expect(carrierToAllDb({ cnDb, ciDb })).toBe(all);
    expect(lossOfCnDb({ cnDb, ciDb })).toBe(loss);
  });
});

describe("spare C/N that an interferer demands", () => {
  // By hand, C/I 3 dB above the requirement: half the allowed disturbance is taken, so 3.02 dB more C/N.
  test.each([
    { excessDb: 1, spareDb: 6.87 },
    { excessDb: 3, spareDb: 3.02 },
    { excessDb: 6, spareDb: 1.26 },
    { excessDb: 10, spareDb: 0.46 },
    { excessDb: 20, spareDb: 0.04 },
  ])("C/I $excessDb dB above the requirement demands $spareDb dB", ({ excessDb, spareDb }) => {
    expect(spareNeededDb({ ciDb: 20 + excessDb, requiredDb: 20 })).toBeCloseTo(spareDb, 2);
  });

  test("with exactly that spare, C/(N+I) just meets the requirement", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 25, noNaN: true }),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        (requiredDb, excessDb) => {
          const ciDb = requiredDb + excessDb;
          const cnDb = requiredDb + spareNeededDb({ ciDb, requiredDb });
          expect(dbToRatio(carrierToAllDb({ cnDb, ciDb }) - requiredDb)).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  test("no spare helps when C/I is no better than the requirement", () => {
    expect(spareNeededDb({ ciDb: 20, requiredDb: 20 })).toBe(Number.POSITIVE_INFINITY);
    expect(spareNeededDb({ ciDb: 5, requiredDb: 20 })).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("grades of a collision follow from the spare they demand", () => {
  test.each([
    { grade: "dead", excessDb: 0, least: Number.POSITIVE_INFINITY, most: Number.POSITIVE_INFINITY },
    { grade: "likely dead", excessDb: 2, least: 3, most: 10 },
    { grade: "costs margin", excessDb: 7, least: 0.45, most: 3.1 },
    { grade: "slight", excessDb: 15, least: 0.04, most: 0.46 },
    { grade: "negligible", excessDb: 25, least: 0, most: 0.05 },
  ])("$grade", ({ grade, excessDb, least, most }) => {
    expect(collisionGrade({ ciDb: 10 + excessDb, requiredDb: 10 })).toBe(grade);
    const spare = spareNeededDb({ ciDb: 10 + excessDb, requiredDb: 10 });
    expect(spare).toBeGreaterThanOrEqual(least);
    expect(spare).toBeLessThanOrEqual(most);
  });
});
