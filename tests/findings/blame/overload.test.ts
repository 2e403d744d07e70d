/**
 * Who drives a part too hard. Two channels of equal level, for which an amplifier's rating holds without derating;
 * products lie 60 dB below them at the rating, and 2 dB more for each decibel beyond it. Who is to be named is common
 * practice, no source.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { blameForOverload, sourceOfOverload } from "../../../src/findings/blame/overload.ts";
import type { Draft } from "../../../src/findings/finding.ts";
import { draw, type Sketch } from "../../draw.ts";
import { recordOf } from "../byHand.ts";

const two = (levelDbuv: number): Sketch[string] => [
  "aerial-uhf",
  { levelDbuv, channels: [{ channel: 30 }, { channel: 40 }] },
];
/** Amplifiers that nothing drives too hard, and the one that is: rated 80 dBµV. */
const strong = (gainDb: number): Sketch[string] => ["amp-distribution", { gainDb, outputDbuv: 130 }];
const driven = (gainDb: number): Sketch[string] => ["amp-distribution", { gainDb, outputDbuv: 80 }];

function blamed(parts: Sketch, wires: string) {
  const evaluation = evaluate(draw({ z: ["receiver-tv"], ...parts }, `${wires}, x.out > z.in`));
  return sourceOfOverload(evaluation, recordOf(evaluation, "x"));
}

describe("who makes the products of a part", () => {
  // 76 + 5 = 81: 1 dB over, less than its own 5 dB.
  test("it itself, where it could do with less gain", () => {
    const found = blamed({ x: driven(5), a: two(76) }, "a.out > x.in");
    expect(found).toMatchObject({ part: "x", does: "overdriven" });
    expect(found?.excessDb).toBeCloseTo(1, 3);
    expect(found?.amount).toBeCloseTo(58, 3);
  });

  // 70 + 5 = 75: 5 dB below.
  test("it itself with nothing too much where it is not driven too hard", () => {
    const found = blamed({ x: driven(5), a: two(70) }, "a.out > x.in");
    expect(found).toMatchObject({ part: "x", does: "overdriven", excessDb: 0 });
    expect(found?.amount).toBeCloseTo(70, 3);
  });

  // 79.5 + 5 = 84.5: less than it gains. A rest of few decibels is no fault of the source: its 5 dB are four fifths of an
  // excess of 6.25 dB, so at 81 + 5 = 86 it is the culprit and at 81.5 + 5 = 86.5 the source is (the share is our choice).
  test("it itself as long as its gain is four fifths of what is too much", () => {
    expect(blamed({ x: driven(5), a: two(79.5) }, "a.out > x.in")).toMatchObject({ part: "x" });
    expect(blamed({ x: driven(5), a: two(81) }, "a.out > x.in")).toMatchObject({ part: "x" });
    expect(blamed({ x: driven(5), a: two(81.5) }, "a.out > x.in")).toMatchObject({ part: "a" });
  });

  // 80 + 30 = 110 against 80 is 30 dB over, and it only limits: less than 30 dB of gain are left to be seen.
  test("it itself where it is driven so far that its gain collapses", () => {
    expect(blamed({ x: driven(30), a: two(80) }, "a.out > x.in")).toMatchObject({
      part: "x",
      does: "overdriven",
    });
  });

  // 62 + 20 + 5 = 87: 7 over. The first amplifier gives 5 dB beyond the usual 15.
  test("an amplifier before it, by what it gives beyond the usual", () => {
    const found = blamed({ x: driven(5), m: strong(20), a: two(62) }, "a.out > m.in, m.out > x.in");
    expect(found).toMatchObject({ part: "m", port: "out", does: "high gain" });
    expect(found?.excessDb).toBeCloseTo(5, 3);
    expect(found?.amount).toBeCloseTo(20, 3);
  });

  // 70 + 15 + 2 = 87: 7 over, and the usual gain: then all of the 7.
  test("an amplifier with a usual gain, by what is too much", () => {
    const found = blamed({ x: driven(2), m: strong(15), a: two(70) }, "a.out > m.in, m.out > x.in");
    expect(found).toMatchObject({ part: "m", does: "high gain" });
    expect(found?.excessDb).toBeCloseTo(7, 3);
    expect(found?.amount).toBeCloseTo(15, 3);
  });

  // 95 + 8 + 2 = 105: 25 over, of which the amplifier could take 8; the aerial gives 33 beyond a usual one.
  test("a source that by itself gives far too much, also behind an amplifier", () => {
    const found = blamed({ x: driven(2), m: strong(8), a: two(95) }, "a.out > m.in, m.out > x.in");
    expect(found).toMatchObject({ part: "a", port: "out", does: "strong source" });
    expect(found?.excessDb).toBeCloseTo(33, 3);
    expect(found?.amount).toBeCloseTo(95, 3);
  });

  // a + 16 + 18 − 80 with no gain at the end: 24 over for 70 dBµV, and 8 beyond a usual aerial; for 75 dBµV 29 and 13,
  // for 78 dBµV 32 and 16: half of it.
  test("of two amplifiers the one with more gain, until the source makes up half of it", () => {
    const wires = "a.out > m.in, m.out > n.in, n.out > x.in";
    const at = (levelDbuv: number, m = 16, n = 18) =>
      blamed({ x: driven(0), n: strong(n), m: strong(m), a: two(levelDbuv) }, wires);
    expect(at(70)).toMatchObject({ part: "n", does: "high gain" });
    expect(at(70, 18, 16)).toMatchObject({ part: "m", does: "high gain" });
    expect(at(77.5)).toMatchObject({ part: "n" });
    expect(at(78.5)).toMatchObject({ part: "a" });
  });

  // 85 dBµV are 23 beyond a usual aerial, but nobody amplifies: 85 + 2 − 80 = 7 over, more than the 2.
  test("the source where no amplifier stands before it", () => {
    expect(
      blamed({ x: driven(2), c: ["cable", { lengthM: 1 }], a: two(85) }, "a.out > c.in, c.out > x.in"),
    ).toMatchObject({ part: "a", does: "strong source" });
  });

  test("of several sources the loudest, in any order", () => {
    const wires = (a: string, b: string) => `a.out > j.${a}, b.out > j.${b}, j.out > x.in`;
    const parts = { x: driven(2), j: ["combiner"], b: two(62), a: two(100) } as const;
    expect(blamed(parts, wires("in1", "in2"))).toMatchObject({ part: "a" });
    expect(blamed({ ...parts, a: two(62), b: two(100) }, wires("in1", "in2"))).toMatchObject({ part: "b" });
  });

  test("nobody of a part that amplifies nothing, or a single carrier", () => {
    expect(blamed({ x: ["cable"], a: two(100) }, "a.out > x.in")).toBeUndefined();
    const single: Sketch[string] = ["aerial-uhf", { levelDbuv: 90, channels: [{ channel: 30 }] }];
    expect(blamed({ x: driven(5), a: single }, "a.out > x.in")).toBeUndefined();
  });
});

describe("a part that gets more than it could take without any gain", () => {
  const draft = (value: number, because: Draft<"overload">["facts"]["because"]): Draft<"overload"> => ({
    severity: "warning",
    at: { part: "x", port: "#sum" },
    parts: ["x", "q"],
    wires: [],
    value,
    limit: 80,
    facts: {
      carriers: 2,
      totalDbuv: value + 3,
      rule: "beats",
      ratioDb: 40,
      drowned: [],
      load: [],
      gainDb: 2,
      because,
    },
  });
  const loud = evaluate(
    draw(
      { z: ["receiver-tv"], x: driven(2), m: strong(15), a: two(70) },
      "a.out > m.in, m.out > x.in, x.out > z.in",
    ),
  );

  test("has the amplifier before it named first", () => {
    expect(blameForOverload(loud, draft(87, "input"))).toEqual({
      ...draft(87, "input"),
      parts: ["m", "x", "q"],
    });
  });

  // 8 dB beyond a usual aerial: half of 15.9, and more than the amplifier's 15 dB would be needed.
  test("has a source named behind it: nobody takes that in hand", () => {
    expect(blameForOverload(loud, draft(95.9, "input")).parts).toEqual(["x", "a", "q"]);
    expect(blameForOverload(loud, draft(96.1, "input")).parts).toEqual(["m", "x", "q"]);
    expect(blameForOverload(loud, draft(94.9, "input")).parts).toEqual(["m", "x", "q"]);
  });

  test("is left as it is where its own gain is too much, or what nobody wants", () => {
    for (const because of ["gain", "foreign"] as const) {
      const own = draft(87, because);
      expect(blameForOverload(loud, own)).toBe(own);
    }
  });

  test("is left as it is where nothing comes", () => {
    const open = evaluate(draw({ x: driven(2) }, ""));
    const own = draft(87, "input");
    expect(blameForOverload(open, own)).toBe(own);
    expect(blameForOverload(evaluate(draw({}, "")), own)).toBe(own);
  });
});
