/** Which places an output serves. Levels worked by hand; limits of EN 60728-1 for 64 QAM: 45 to 74 dBµV, C/N 26 dB. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { type MissedLimit, placesServed, type Served } from "../../../src/findings/blame/served.ts";
import type { Service } from "../../../src/signal/carrier.ts";
import { draw, type Sketch } from "../../draw.ts";
import { aerial } from "./missed.ts";

const FOUR_DB = { loss: "own", ownTvDb: 4 } as const;

/** One aerial, two sets behind a splitter of 4 dB; before the first set a pad. */
const house = (levelDbuv: number, lossDb: number, more: Sketch = {}) =>
  draw(
    {
      y: ["receiver-tv"],
      z: ["receiver-tv"],
      p: ["attenuator", { lossDb }],
      s: ["splitter", FOUR_DB],
      a: aerial(levelDbuv),
      ...more,
    },
    "a.out > s.in, s.out1 > p.in, p.out > z.in, s.out2 > y.in",
  );

function served(
  design: ReturnType<typeof draw>,
  limit: MissedLimit,
  output: string,
  service: Service = "tv",
) {
  const { failing, missingDb, inOrder, spareDb } = placesServed(evaluate(design), service, limit)(output);
  // To a thousandth of a decibel, so that figures worked by hand can be compared as a whole.
  const round = (db: number) => Math.round(db * 1000) / 1000;
  return { failing, missingDb: round(missingDb), inOrder, spareDb: round(spareDb) } satisfies Served;
}

const NOBODY = { failing: 0, missingDb: 0, inOrder: 0, spareDb: Number.POSITIVE_INFINITY };

describe("of too little", () => {
  // 60 − 4 = 56 at y: 18 below the most. 56 − 20 = 36 at z: 9 below the least.
  test("an output tells who misses it, and what those in order could still take", () => {
    const design = house(60, 20);
    expect(served(design, "too little", "p.out")).toEqual({ ...NOBODY, failing: 1, missingDb: 9 });
    expect(served(design, "too little", "s.out1")).toEqual({ ...NOBODY, failing: 1, missingDb: 9 });
    expect(served(design, "too little", "s.out2")).toEqual({ ...NOBODY, inOrder: 1, spareDb: 18 });
    expect(served(design, "too little", "a.out")).toEqual({
      failing: 1,
      missingDb: 9,
      inOrder: 1,
      spareDb: 18,
    });
  });

  // 40 − 4 = 36 at y, 36 − 5 = 31 at z: 9 and 14 are missing.
  test("of several that miss it all are counted, and the most that is missing", () => {
    expect(served(house(40, 5), "too little", "a.out")).toEqual({ ...NOBODY, failing: 2, missingDb: 14 });
  });

  // 60 − 4 = 56 and 56 − 5 = 51.
  test("of several in order the least that they could take", () => {
    expect(served(house(60, 5), "too little", "a.out")).toEqual({ ...NOBODY, inOrder: 2, spareDb: 18 });
  });

  // 49 − 4 = 45 is the least itself.
  test("a place just above the limit is in order, one just below it is not", () => {
    expect(served(house(49.1, 5), "too little", "s.out2")).toEqual({ ...NOBODY, inOrder: 1, spareDb: 28.9 });
    expect(served(house(48.9, 5), "too little", "s.out2")).toEqual({ ...NOBODY, failing: 1, missingDb: 0.1 });
  });

  // 85 − 4 = 81 at y is too much: it is neither without enough nor in order.
  test("a place that has too much counts on neither side", () => {
    expect(served(house(85, 20), "too little", "s.out2")).toEqual(NOBODY);
    expect(served(house(85, 20), "too little", "a.out")).toEqual({ ...NOBODY, inOrder: 1, spareDb: 13 });
  });

  // Two channels, 56 and 66 dBµV at y: the stronger could take 8 more. At 36 and 46 the weaker misses 9.
  test("of several channels the worst counts, and the least that any could take", () => {
    const channels = [{ channel: 30 }, { channel: 32, levelOffsetDb: 10 }];
    const two = (levelDbuv: number) => house(levelDbuv, 5, { a: ["aerial-uhf", { levelDbuv, channels }] });
    expect(served(two(60), "too little", "s.out2")).toEqual({ ...NOBODY, inOrder: 1, spareDb: 8 });
    expect(served(two(40), "too little", "s.out2")).toEqual({ ...NOBODY, failing: 1, missingDb: 9 });
  });
});

// 49 − 4 = 45 dBµV is the limit itself, whatever the last digit of the sum.
test("a place just at its limit is in order", () => {
  expect(served(house(49, 0), "too little", "s.out2")).toMatchObject({ failing: 0, inOrder: 1 });
});

describe("of too much", () => {
  // 85 − 4 = 81 at y, 7 too much; 81 − 20 = 61 at z, which could lose 16.
  test("an output tells who has it, and what those in order could lose", () => {
    const design = house(85, 20);
    expect(served(design, "too much", "a.out")).toEqual({
      failing: 1,
      missingDb: 7,
      inOrder: 1,
      spareDb: 16,
    });
    expect(served(design, "too much", "s.out2")).toEqual({ ...NOBODY, failing: 1, missingDb: 7 });
  });

  // 36 dBµV at z.
  test("a place without enough counts on neither side", () => {
    expect(served(house(60, 20), "too much", "s.out1")).toEqual(NOBODY);
  });
});

describe("of C/N", () => {
  // 30 dBµV over 3.59 dBµV of noise of a matched line (290 K, 7.61 MHz, 75 Ω) are 26.41 dB, 20 dBµV 16.41.
  test("an output tells whose is too low; more level never harms the others", () => {
    const design = house(34, 10);
    const at = served(design, "C/N", "a.out");
    expect(at).toMatchObject({ failing: 1, inOrder: 1, spareDb: Number.POSITIVE_INFINITY });
    expect(at.missingDb).toBeCloseTo(26 - 16.41, 1);
  });

  test("a place that has too little level may be in order all the same", () => {
    expect(served(house(34, 5), "C/N", "s.out2")).toEqual({ ...NOBODY, inOrder: 1 });
  });
});

describe("nobody is served", () => {
  test("by an output that leads to no place, nor by one that is not there", () => {
    expect(served(house(60, 20), "too little", "x.out")).toEqual(NOBODY);
    expect(served(house(60, 20), "too little", "s.in")).toEqual(NOBODY);
  });

  test("with another service, nor with one that nobody wants", () => {
    expect(served(house(60, 20), "too little", "a.out", "dab")).toEqual(NOBODY);
    expect(served(house(60, 20), "too little", "a.out", "mobile")).toEqual(NOBODY);
  });

  test("where nothing arrives", () => {
    const open = draw({ z: ["receiver-tv"], c: ["cable"], a: aerial(60) }, "c.out > z.in");
    expect(served(open, "too little", "c.out")).toEqual(NOBODY);
  });
});
