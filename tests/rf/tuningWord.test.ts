import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tuningDscr, tuningScr } from "../../src/rf/tuningWord.ts";

/**
 * Transponders of a European plan by universal oscillators. By hand from the formulas of EN 50494 and EN 50607, as
 * implemented in public receiver code:
 *   (1178 + 1210)/4 − 350 = 597 − 350 = 247;            4·597 − 1178 = 1210
 *   (964.25 + 1420)/4 = 596.06, 596 − 350 = 246;        4·596 − 964.25 = 1419.75
 *   (979 + 1210)/4 = 547.25, 547 − 350 = 197;           4·547 − 979 = 1209
 *   (2092 + 2096)/4 − 350 = 1047 − 350 = 697;           4·1047 − 2092 = 2096
 * and IF − 100, rounded, for EN 50607.
 */
const VECTORS = [
  { rfMHz: 11_778, loMHz: 10_600, userBandMHz: 1210, scr: 247, tunesToMHz: 1210, dscr: 1078 },
  { rfMHz: 10_714.25, loMHz: 9_750, userBandMHz: 1420, scr: 246, tunesToMHz: 1419.75, dscr: 864 },
  { rfMHz: 10_729, loMHz: 9_750, userBandMHz: 1210, scr: 197, tunesToMHz: 1209, dscr: 879 },
  { rfMHz: 12_692, loMHz: 10_600, userBandMHz: 2096, scr: 697, tunesToMHz: 2096, dscr: 1992 },
];

describe("tuning words", () => {
  test.each(VECTORS)("EN 50494: $rfMHz MHz on $userBandMHz MHz is word $scr", (row) => {
    const tuning = tuningScr({ ifMHz: row.rfMHz - row.loMHz, userBandMHz: row.userBandMHz });
    expect(tuning).toEqual({ word: row.scr, tunesToMHz: row.tunesToMHz });
  });

  test.each(VECTORS)("EN 50607: $rfMHz MHz is word $dscr", (row) => {
    const tuning = tuningDscr({ ifMHz: row.rfMHz - row.loMHz, userBandMHz: row.userBandMHz });
    expect(tuning).toEqual({ word: row.dscr, tunesToMHz: row.userBandMHz });
  });

  const anyIf = fc.integer({ min: 950, max: 2147 });
  const anyUserBand = fc.integer({ min: 950, max: 2150 });

  // Public receiver code reckons in whole numbers: ((IF + user band + 2) / 4) − 350, the division cut off.
  test("EN 50494: every whole IF and user band gives the word that integer arithmetic gives", () => {
    fc.assert(
      fc.property(anyIf, anyUserBand, (ifMHz, userBandMHz) => {
        const expected = Math.trunc((ifMHz + userBandMHz + 2) / 4) - 350;
        expect(tuningScr({ ifMHz, userBandMHz })?.word).toBe(expected);
      }),
    );
  });

  test("EN 50494: the receiver never has to look further than 2 MHz from the centre of its user band", () => {
    fc.assert(
      fc.property(fc.double({ min: 950, max: 2150, noNaN: true }), anyUserBand, (ifMHz, userBandMHz) => {
        const tuning = tuningScr({ ifMHz, userBandMHz });
        expect(Math.abs((tuning?.tunesToMHz ?? 0) - userBandMHz)).toBeLessThanOrEqual(2 + 1e-9);
      }),
    );
  });

  // Word lengths from the scope of EN 50607: 10 and 11 bits; word 0 means off in both. By hand: (404 + 1000)/4 − 350 = 1,
  // (3342 + 2150)/4 − 350 = 1023; 101 − 100 = 1, 2147 − 100 = 2047.
  test.each([
    { name: "EN 50607, the last of 11 bits", say: tuningDscr, ifMHz: 2147, userBandMHz: 1210, word: 2047 },
    { name: "EN 50607, the first", say: tuningDscr, ifMHz: 101, userBandMHz: 1210, word: 1 },
    { name: "EN 50494, the first", say: tuningScr, ifMHz: 404, userBandMHz: 1000, word: 1 },
    { name: "EN 50494, the last of 10 bits", say: tuningScr, ifMHz: 3342, userBandMHz: 2150, word: 1023 },
  ])("$name is word $word", ({ say, ifMHz, userBandMHz, word }) => {
    expect(say({ ifMHz, userBandMHz })?.word).toBe(word);
  });

  test.each([
    { name: "EN 50607, beyond 11 bits", say: tuningDscr, ifMHz: 2148, userBandMHz: 1210 },
    { name: "EN 50607, the word that means off", say: tuningDscr, ifMHz: 100, userBandMHz: 1210 },
    { name: "EN 50494, the word that means off", say: tuningScr, ifMHz: 400, userBandMHz: 1000 },
    { name: "EN 50494, beyond 10 bits", say: tuningScr, ifMHz: 3346, userBandMHz: 2150 },
  ])("$name cannot be asked for", ({ say, ifMHz, userBandMHz }) => {
    expect(say({ ifMHz, userBandMHz })).toBeNull();
  });
});
