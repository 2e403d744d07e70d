import { describe, expect, test } from "vitest";
import { SYMBOLS } from "../../src/parts/symbols.ts";

/** End points of a path, with half a pen's width left clear at the rim so that nothing is clipped. */
function points(path: string): readonly (readonly [number, number])[] {
  const out: (readonly [number, number])[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter = "", text = ""] of path.matchAll(/([MmLlHhVvAaQqTtZz])([^MmLlHhVvAaQqTtZz]*)/g)) {
    const numbers = (text.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    const size = { M: 2, L: 2, H: 1, V: 1, A: 7, Q: 4, T: 2, Z: 0 }[letter.toUpperCase()] ?? 0;
    if (size === 0) [x, y] = [startX, startY];
    for (let i = 0; size > 0 && i + size <= numbers.length; i += size) {
      const relative = letter === letter.toLowerCase();
      const [baseX, baseY] = relative ? [x, y] : [0, 0];
      const last = numbers[i + size - 1] ?? 0;
      const beforeLast = numbers[i + size - 2] ?? 0;
      if (letter.toUpperCase() === "H") x = baseX + last;
      else if (letter.toUpperCase() === "V") y = baseY + last;
      else [x, y] = [baseX + beforeLast, baseY + last];
      if (letter.toUpperCase() === "M" && i === 0) [startX, startY] = [x, y];
      out.push([x, y]);
    }
  }
  return out;
}

describe.each(Object.entries(SYMBOLS))("the symbol %s", (_, { lines, fill = [] }) => {
  test("is drawn inside its 48 × 32 grid", () => {
    const all = [...lines, ...fill].flatMap(points);
    expect(all.length).toBeGreaterThan(2);
    for (const [x, y] of all) {
      expect(x).toBeGreaterThanOrEqual(1);
      expect(x).toBeLessThanOrEqual(47);
      expect(y).toBeGreaterThanOrEqual(1);
      expect(y).toBeLessThanOrEqual(31);
    }
  });
});

test("no two symbols look the same", () => {
  const drawings = Object.values(SYMBOLS).map((s) => JSON.stringify(s));
  expect(new Set(drawings).size).toBe(drawings.length);
});
