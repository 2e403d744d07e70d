/** Numbers as typed: decimal point and comma are both in use (SI Brochure, 9th edition, 5.4.4). */
import { describe, expect, test } from "vitest";
import { readNumeral, stepOf, stepped, writeNumeral } from "../../../../src/ui/kit/fields/numeral.ts";

describe("a typed number", () => {
  test.each([
    { text: "12.5", value: 12.5 },
    { text: "12,5", value: 12.5 },
    { text: " −3 ", value: -3 },
    { text: "11 778", value: 11_778 },
    { text: "1e3", value: 1000 },
  ])("“$text” reads as $value", ({ text, value }) => {
    expect(readNumeral(text)).toBe(value);
  });

  test.each(["", "-", "1.2.3", "1,234,5", "12 m", "Infinity", "NaN", "1e999", "0x10", "--1"])(
    "“%s” is refused",
    (text) => {
      expect(readNumeral(text)).toBeNull();
    },
  );

  test("is written with all its digits, so that what was typed stands there again", () => {
    expect(writeNumeral(225.648)).toBe("225.648");
    expect(readNumeral(writeNumeral(11_778.25))).toBe(11_778.25);
  });

  test("steps without the crumbs of binary fractions and stops at the ends of its range", () => {
    expect(stepped({ value: 0.1, step: 0.2, times: 1, min: 0, max: 1 })).toBe(0.3);
    expect(stepped({ value: 0.9, step: 0.2, times: 10, min: 0, max: 1 })).toBe(1);
    expect(stepped({ value: 0.1, step: 0.2, times: -10, min: 0, max: 1 })).toBe(0);
  });

  test("has steps that suit its range where the field names none", () => {
    expect(stepOf({ min: 0, max: 1 })).toBe(0.01);
    expect(stepOf({ min: 0, max: 500 })).toBe(1);
    expect(stepOf({ min: 0, max: 500, step: 5 })).toBe(5);
  });
});
