/** Names that fit their cards. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { brokenLines, fittingName, linesOf, textWidth } from "../../../src/ui/canvas/lettering.ts";

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
