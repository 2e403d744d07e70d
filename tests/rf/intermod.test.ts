import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  compressionDb,
  DERATING_RULES,
  deratingDb,
  equalCarriers,
  highestOutputDbuv,
  productsOfDbuv,
  saturatedDbuv,
  sumInStep,
  thirdOrderProductDbuv,
  thirdOrderRatioDb,
} from "../../src/rf/intermod.ts";

describe("derating for the number of carriers", () => {
  // Published table of a trade appendix: 2: 0, 3: −2, 4: −3, 5: −4, 6: −5, 7: −5.5, 8: −6, 10: −7 dB.
  test.each([
    { carriers: 2, db: 0 },
    { carriers: 3, db: 2 },
    { carriers: 4, db: 3 },
    { carriers: 5, db: 4 },
    { carriers: 6, db: 5 },
    { carriers: 7, db: 5.5 },
    { carriers: 8, db: 6 },
    { carriers: 10, db: 7 },
  ])(
    "third-order beats of $carriers channels cost $db dB, within 0.7 dB of the table",
    ({ carriers, db }) => {
      expect(Math.abs(deratingDb({ rule: "beats", carriers }) - db)).toBeLessThan(0.7);
    },
  );

  // Published rule for satellite IF in a trade equipment guide: 3 dB for each doubling beyond two.
  test.each([
    { carriers: 2, db: 0 },
    { carriers: 4, db: 3 },
    { carriers: 8, db: 6 },
    { carriers: 16, db: 9 },
    { carriers: 32, db: 12 },
    { carriers: 64, db: 15 },
  ])("$carriers transponders cost $db dB", ({ carriers, db }) => {
    expect(Math.abs(deratingDb({ rule: "power", carriers }) - db)).toBeLessThan(0.06);
  });

  // 10·log10(n − 1) (common practice, no source): 3 → 3.01, 11 → 10, 28 → 14.31 dB.
  test.each([
    { carriers: 2, db: 0 },
    { carriers: 3, db: 3.01 },
    { carriers: 11, db: 10 },
    { carriers: 28, db: 14.31 },
  ])("$carriers channels in the worst phase cost $db dB", ({ carriers, db }) => {
    expect(deratingDb({ rule: "channels", carriers })).toBeCloseTo(db, 2);
  });

  test.each(DERATING_RULES)("one carrier, or none, costs nothing under the rule of %s", (rule) => {
    expect(deratingDb({ rule, carriers: 1 })).toBe(0);
    expect(deratingDb({ rule, carriers: 0 })).toBe(0);
  });
});

describe("compression", () => {
  const tv = { ratedDbuv: 104, ratioDb: 60 };

  // The two-tone intercept lies half the ratio above the rated level (any RF textbook): 134 and 135.5 dBµV; 1 dB
  // compression of a pure cubic curve 9.64 dB below it.
  test.each([
    { name: "a TV amplifier of 104 dBµV at 60 dB", ...tv, totalDbuv: 134 - 9.636 },
    { name: "an IF amplifier of 118 dBµV at 35 dB", ratedDbuv: 118, ratioDb: 35, totalDbuv: 135.5 - 9.636 },
  ])("$name loses 1 dB 9.64 dB below its intercept", ({ name: _, ...load }) => {
    expect(compressionDb(load)).toBeCloseTo(1, 3);
  });

  // Rapp's law with p = 2: at saturation itself 5·log10(2) = 1.505 dB; 10 dB below it 5·log10(1.01) = 0.0216 dB.
  test.each([
    { aboveDb: 0, db: 1.505 },
    { aboveDb: -10, db: 0.0216 },
    { aboveDb: 10, db: 10.0216 },
    { aboveDb: 4000, db: 4000 },
    { aboveDb: -4000, db: 0 },
  ])("$aboveDb dB above saturation $db dB are missing", ({ aboveDb, db }) => {
    expect(compressionDb({ ...tv, totalDbuv: saturatedDbuv(tv) + aboveDb })).toBeCloseTo(db, 3);
  });

  test("more at the input never gives less at the output", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (a, d) => {
          const out = (totalDbuv: number) => totalDbuv - compressionDb({ ...tv, totalDbuv });
          expect(out(a + d)).toBeGreaterThanOrEqual(out(a) - 1e-9);
          expect(out(a + d)).toBeLessThanOrEqual(saturatedDbuv(tv) + 1e-9);
        },
      ),
    );
  });
});

describe("products of a cascade", () => {
  // Published page of CATV formulas: 20·log10(n) for n equal stages.
  test.each([
    { n: 2, db: 6.02 },
    { n: 6, db: 15.56 },
    { n: 10, db: 20 },
  ])("of $n equal stages rise by $db dB", ({ n, db }) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum = sumInStep(sum, 1);
    expect(10 * Math.log10(sum)).toBeCloseTo(db, 2);
  });

  // Worked example of an exam text: XM = 48 + 2·(Smax − S) − 20·log10(n) − 10·log10(N − 1) = 62.12 dB, with Smax 118 and
  // S 96 dBµV, n = 6 amplifiers, N = 28 channels. Its channel term is 14.31 dB; for two channels it is none: 76.44 dB.
  test("agree with a worked example of six amplifiers", () => {
    const one = thirdOrderRatioDb({
      ratedDbuv: 118,
      ratioDb: 48,
      rule: "channels",
      carriers: 2,
      levelDbuv: 96,
    });
    let sum = 0;
    for (let i = 0; i < 6; i++) sum = sumInStep(sum, 10 ** (-one / 10));
    expect(-10 * Math.log10(sum)).toBeCloseTo(62.12 + 14.31, 1);
  });
});

describe("third-order products", () => {
  const tv = { ratedDbuv: 104, ratioDb: 60, rule: "beats", carriers: 2 } as const;

  // The definition of rated output (EN 60728-3, from memory): two carriers at 104 dBµV, products 60 dB down.
  test("lie the stated ratio down at the rated output", () => {
    expect(thirdOrderProductDbuv({ ...tv, levelDbuv: 104 })).toBeCloseTo(44, 9);
  });

  // Cube law of a third-order curve, any RF textbook: product = 3·level − 2·intercept,
  // and the output intercept lies half the ratio above the carriers: 104 + 60/2 = 134 dBµV.
  test("move three decibels for one, as the intercept point says", () => {
    fc.assert(
      fc.property(fc.double({ min: 60, max: 120, noNaN: true }), (levelDbuv) => {
        expect(thirdOrderProductDbuv({ ...tv, levelDbuv })).toBeCloseTo(3 * levelDbuv - 2 * 134, 6);
      }),
    );
  });

  test("keep the rated ratio with many carriers when each is turned down to the highest output", () => {
    const block = { ...tv, carriers: 8 };
    const levelDbuv = highestOutputDbuv(block);
    expect(levelDbuv).toBeLessThan(104 - 5);
    expect(thirdOrderRatioDb({ ...block, levelDbuv })).toBeCloseTo(60, 9);
  });

  test("do not exist with a single carrier", () => {
    expect(thirdOrderProductDbuv({ ...tv, carriers: 1, levelDbuv: 110 })).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe("carriers of unequal levels", () => {
  const sums = (levels: readonly number[]) => {
    const powers = levels.map((l) => 10 ** (l / 10));
    return {
      power: powers.reduce((s, p) => s + p, 0),
      squares: powers.reduce((s, p) => s + p * p, 0),
    };
  };
  const rating = { ratedDbuv: 100, ratioDb: 60 };

  test.each(DERATING_RULES)("equal ones give what the derating rule %s gives", (rule) => {
    for (const carriers of [2, 6, 20]) {
      const levelDbuv = 90;
      expect(productsOfDbuv({ ...rating, rule, ...sums(Array(carriers).fill(levelDbuv)) })).toBeCloseTo(
        thirdOrderProductDbuv({ ...rating, rule, carriers, levelDbuv }),
        9,
      );
      expect(equalCarriers(sums(Array(carriers).fill(levelDbuv)))).toEqual({
        carriers: expect.closeTo(carriers, 9),
        levelDbuv: expect.closeTo(levelDbuv, 9),
      });
    }
  });

  // Powers in units of 10^9 (µV)² for 90 dBµV: 1, 1 and 0.1 (80 dBµV). Σp = 2.1, Σp² = 2.01: n = 4.41/2.01 = 2.194 at
  // 90 + 10·log10(2.01/2.1) = 89.810 dBµV.
  // Beats: Σp² − (Σp²/Σp)² = 2.01 − 0.91612 = 1.09388, 15·log10 of it + 15·18 = 270.585; − 60 − 200 = 10.585 dBµV.
  // Power: 10·log10(2.1·2.01) + 270 − 6.021 = 270.234; − 260 = 10.234 dBµV.
  test("two of 90 dBµV and one of 80 dBµV are 2.194 carriers of 89.81 dBµV", () => {
    const found = equalCarriers(sums([90, 90, 80]));
    expect(found.carriers).toBeCloseTo(2.194, 3);
    expect(found.levelDbuv).toBeCloseTo(89.81, 3);
    expect(productsOfDbuv({ ...rating, rule: "beats", ...sums([90, 90, 80]) })).toBeCloseTo(10.585, 2);
    expect(productsOfDbuv({ ...rating, rule: "power", ...sums([90, 90, 80]) })).toBeCloseTo(10.234, 2);
  });

  test("one more carrier, however weak or strong, never lowers the products", () => {
    const level = fc.double({ min: 40, max: 120, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom("beats" as const, "power" as const),
        fc.array(level, { minLength: 2, maxLength: 12 }),
        level,
        (rule, levels, more) => {
          const before = productsOfDbuv({ ...rating, rule, ...sums(levels) });
          const after = productsOfDbuv({ ...rating, rule, ...sums([...levels, more]) });
          expect(after).toBeGreaterThanOrEqual(before - 1e-6);
        },
      ),
    );
  });
});
