/** Notation: SI Brochure, 9th edition, 5.4.4 (groups of three digits by a thin space, four digits may stay together). */
import { describe, expect, test } from "vitest";
import { levelRangeWords } from "../../../src/sentences/figures.ts";
import { counted, decimal, megahertz } from "../../../src/ui/kit/format.ts";

describe("numbers in the panes", () => {
  test.each([
    { name: "UHF channel 21", mhz: 474, text: "474" },
    { name: "DAB block 12B, to the kilohertz", mhz: 225.648, text: "225.648" },
    { name: "a transponder in the sky", mhz: 11_778, text: "11\u202f778" },
    { name: "the top of the satellite IF, four digits kept together", mhz: 2150, text: "2150" },
    { name: "nothing", mhz: undefined, text: "–" },
  ])("a frequency reads $text: $name", ({ mhz, text }) => {
    expect(megahertz(mhz)).toBe(text);
  });

  test("a negative number has a true minus sign, and a rounded zero none", () => {
    expect(decimal(-3.25, 1)).toMatch(/^−3\.[23]$/);
    expect(decimal(-0.01, 1)).toBe("0.0");
  });

  test("absent and infinite values read as a dash, never as NaN", () => {
    expect(decimal(Number.NaN)).toBe("–");
    expect(decimal(Number.NEGATIVE_INFINITY)).toBe("–");
    expect(levelRangeWords(undefined, undefined)).toBe("–");
  });

  test("a range whose ends read alike is written once", () => {
    expect(levelRangeWords(61.8, 62.3)).toBe("62 dBµV");
    expect(levelRangeWords(58, 71)).toBe("58–71 dBµV");
  });

  test("one is singular", () => {
    expect(counted(1, "part")).toBe("1 part");
    expect(counted(0, "part")).toBe("0 parts");
  });
});
