/** Names that fit their cards. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  brokenLines,
  fittingName,
  keepsWords,
  linesOf,
  textWidth,
} from "../../../src/ui/canvas/lettering.ts";

const ROOM = { widthPx: 98, sizePx: 12.5 };

describe("a name", () => {
  test("that fits stays as it is", () => {
    expect(fittingName("TV flat 3", 2, ROOM)).toBe("TV flat 3");
  });

  test("in two lines takes its number along with the word before it", () => {
    const name = fittingName("Outlet bedroom 2", 2, { widthPx: 118, sizePx: 14 });
    expect(brokenLines(name, { widthPx: 118, sizePx: 14 })).toEqual(["Outlet", "bedroom\u00A02"]);
  });

  test("that is too long keeps its beginning and the end that tells it apart", () => {
    const names = ["Satellite receiver living room flat 12", "Satellite receiver living room flat 13"];
    const short = names.map((name) => fittingName(name, 2, ROOM));
    expect(new Set(short).size).toBe(2);
    for (const [i, text] of short.entries()) {
      expect(text).toMatch(/^Sat/);
      expect(text.endsWith(i === 0 ? "12" : "13")).toBe(true);
    }
  });

  test("with a line for each word is shortened inside its words, never across them", () => {
    // Seven letters of 0.6 and 0.36 em are some 48 px, so “combiner” loses letters and “Aerial” none.
    expect(fittingName("Aerial combiner", 2, { widthPx: 48, sizePx: 12.5 })).toMatch(/^Aerial com?…n?er$/);
    expect(fittingName("Riser amplifier", 2, { widthPx: 48, sizePx: 12.5 })).toMatch(/^Riser amp?l?…f?i?er$/);
  });

  test("keeps its words where each has room, and not where one is broken", () => {
    // “multiswitch” is 6.06 em: 76 px at 12.5 px.
    expect(keepsWords("SCR/dSCR multiswitch", 2, { widthPx: 77, sizePx: 12.5 })).toBe(true);
    expect(keepsWords("SCR/dSCR multiswitch", 1, { widthPx: 77, sizePx: 12.5 })).toBe(false);
    expect(keepsWords("SCR/dSCR multiswitch", 3, { widthPx: 70, sizePx: 12.5 })).toBe(false);
  });

  test("always fits, and never grows", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "grapheme", minLength: 1, maxLength: 60 }),
        fc.integer({ min: 1, max: 3 }),
        (name, lines) => {
          const short = fittingName(name, lines, ROOM);
          expect(linesOf(short, ROOM)).toBeLessThanOrEqual(lines);
          expect([...short].length).toBeLessThanOrEqual([...name].length + 1);
        },
      ),
    );
  });

  test("is broken without losing a letter", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), (text) => {
        const lines = brokenLines(text, ROOM);
        expect(lines.join("").replaceAll(" ", "")).toBe(text.replaceAll(" ", ""));
        for (const line of lines)
          if (line.length > 1) expect(textWidth(line, ROOM.sizePx)).toBeLessThanOrEqual(ROOM.widthPx);
      }),
    );
  });
});
