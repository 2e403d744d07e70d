import { expect, test, vi } from "vitest";
import { zeros } from "../../src/signal/floats.ts";

test("arrays cut from a block are zero, as long as asked for, and apart from each other", () => {
  const lengths = Array.from({ length: 400 }, (_, i) => (i * 37) % 700);
  const arrays = lengths.map((n) => zeros(n));
  expect(arrays.map((a) => a.length)).toEqual(lengths);
  expect(arrays.every((a) => a.every((x) => x === 0))).toBe(true);
  for (const [i, a] of arrays.entries()) a.fill(i);
  expect(arrays.every((a, i) => a.every((x) => x === i))).toBe(true);
});

/** The module as on its first use, with an empty block of 2048 numbers. */
async function fresh(): Promise<typeof zeros> {
  vi.resetModules();
  return (await import("../../src/signal/floats.ts")).zeros;
}

test("small arrays share one allocation until it is full, and then the next", async () => {
  const make = await fresh();
  // Four quarters fill a block exactly.
  const [a, b, c, d, e] = Array.from({ length: 5 }, () => make(512));
  expect(new Set([a, b, c, d].map((array) => array?.buffer)).size).toBe(1);
  expect([a, b, c, d].map((array) => array?.byteOffset)).toEqual([0, 4096, 8192, 12_288]);
  expect(a?.buffer.byteLength).toBe(2048 * 8);
  expect(e?.buffer).not.toBe(a?.buffer);
  expect(e?.byteOffset).toBe(0);
});

test("what does not fit into the rest of a block begins another, and nothing overlaps there", async () => {
  const make = await fresh();
  const [a, b, c, d] = [make(500), make(512), make(512), make(512)];
  expect(d.buffer).toBe(a.buffer);
  const [e, f] = [make(20), make(30)];
  expect([e.buffer === a.buffer, f.buffer === e.buffer]).toEqual([false, true]);
  expect([e.byteOffset, f.byteOffset]).toEqual([0, 160]);
  for (const array of [a, b, c, d, e]) array.fill(1);
  expect([...f]).toEqual(Array(30).fill(0));
});

test("large arrays stand alone", async () => {
  const make = await fresh();
  expect(make(513).buffer.byteLength).toBe(513 * 8);
  expect(make(5000)).toHaveLength(5000);
  expect(make(1).byteOffset).toBe(0);
});
