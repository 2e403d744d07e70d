import { expect, test } from "vitest";
import { zeros } from "../../src/signal/floats.ts";

test("arrays cut from a block are zero, as long as asked for, and apart from each other", () => {
  const lengths = Array.from({ length: 400 }, (_, i) => (i * 37) % 700);
  const arrays = lengths.map((n) => zeros(n));
  expect(arrays.map((a) => a.length)).toEqual(lengths);
  expect(arrays.every((a) => a.every((x) => x === 0))).toBe(true);
  for (const [i, a] of arrays.entries()) a.fill(i);
  expect(arrays.every((a, i) => a.every((x) => x === i))).toBe(true);
});
