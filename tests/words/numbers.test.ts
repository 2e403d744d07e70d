/**
 * Numbers in one form everywhere. Notation: SI Brochure, 9th edition, 5.4.4 (groups of three digits by a narrow space,
 * four digits may stay together; point or comma by language). Decimal comma of German: CLDR.
 */
import { afterEach, describe, expect, test } from "vitest";
import { readNumeral, writeNumeral } from "../../src/ui/kit/fields/numeral.ts";
import { numeral, numeralAsSet, writeNumbersAs } from "../../src/words/numbers.ts";

afterEach(() => writeNumbersAs("en"));

describe("a number", () => {
  test.each([
    [62.04, "62"],
    [62.06, "62.1"],
    [-4.1, "−4.1"],
    [-0.04, "0"],
    [2150, "2150"],
    [11_778, "11\u202f778"],
    [1_234_567, "1\u202f234\u202f567"],
    [Number.NaN, "–"],
    [Number.POSITIVE_INFINITY, "–"],
    [undefined, "–"],
  ])("%s reads %s", (value, text) => expect(numeral(value)).toBe(text));

  test("has as many decimals as are asked for", () => {
    expect(numeral(62, 1, 1)).toBe("62.0");
    expect(numeral(225.648, 3)).toBe("225.648");
  });

  test("that somebody set keeps its decimals and gets no more", () => {
    expect([45, 0.5, 0.585, 0.00167].map(numeralAsSet)).toEqual(["45", "0.5", "0.585", "0.0017"]);
  });

  test("is written as in the user’s language, with digits from 0 to 9 in every one", () => {
    writeNumbersAs("de-CH-1996");
    expect(numeral(11_778)).toBe("11\u202f778");
    writeNumbersAs("de");
    expect(numeral(-11_778.25, 2)).toBe("−11\u202f778,25");
    writeNumbersAs("ar-EG");
    expect(numeral(62)).toBe("62");
  });

  test("is written in English where the language is none", () => {
    for (const language of ["C", "no language", "", "en_GB.UTF-8"]) {
      writeNumbersAs(language);
      expect(numeral(62.5)).toBe("62.5");
    }
  });

  test("in a field is read as it was written, in any language", () => {
    for (const language of ["en", "de", "fr", "sv", "ar-EG"]) {
      writeNumbersAs(language);
      for (const value of [0, -3, 0.25, 11_778.25]) expect(readNumeral(writeNumeral(value))).toBe(value);
    }
  });
});
