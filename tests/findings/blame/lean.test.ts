/** Which part makes two carriers differ in level: figures from data-sheet arithmetic, culprits common practice, no source. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Blamed } from "../../../src/findings/blame/culprit.ts";
import { blameForLean } from "../../../src/findings/blame/lean.ts";
import { draw, type Sketch } from "../../draw.ts";

function blamed(
  design: Design,
  at: string,
  above: readonly [origin: string, index: number],
  below: readonly [origin: string, index: number],
): Blamed | undefined {
  const [part = "", port = ""] = at.split(".");
  const arriving = ([origin, index]: readonly [string, number]) => ({ origin, index });
  return blameForLean(evaluate(design), { part, port }, { above: arriving(above), below: arriving(below) });
}

/** Two dishes, an LNB each (the first is fed over its HL), a multiswitch with two positions; `parts` and `wires` stand before its input 1 VL. */
const twoDishes = (parts: Sketch, wires: string) =>
  draw(
    {
      plate: ["outlet-sat"],
      ...parts,
      unit: ["multiswitch", { satelliteInputs: "8", terrestrial: false }],
      lnb: ["lnb-quattro"],
      lnb2: ["lnb-quattro"],
      dish: ["dish"],
      dish2: ["dish"],
    },
    `dish.sky > lnb.sky, dish2.sky > lnb2.sky, lnb2.vl > unit.vl2, lnb.hl > unit.hl, unit.out1 > plate.in, ${wires}`,
  );

describe("two carriers that come by different ways", () => {
  // The LNBs amplify alike, so neither of them makes a difference: the joint does.
  test("a bad joint in the way of the weaker one is named, no LNB", () => {
    const design = twoDishes(
      { joint: ["bad-joint", { fault: "corroded", lossDb: 30 }] },
      "lnb.vl > joint.in, joint.out > unit.vl",
    );
    const found = blamed(design, "plate.sat", ["dish2/V", 0], ["dish/V", 0]);
    expect(found).toMatchObject({ part: "joint", does: "bad joint" });
    expect(found?.excessDb).toBeGreaterThanOrEqual(30);
  });

  // 100 m against 10 m of the same cable: the longer one is the one that differs.
  test("the longer of two cables is named with its length, and by the difference of the two", () => {
    const grade = { grade: "own", k1: 0.5, k2: 0 };
    const design = draw(
      {
        plate: ["outlet-tv"],
        join: ["combiner"],
        near: ["cable", { lengthM: 10, ...grade }],
        far: ["cable", { lengthM: 100, ...grade }],
        a: ["aerial-uhf", { channels: [{ channel: 30 }] }],
        b: ["aerial-uhf", { channels: [{ channel: 40 }] }],
      },
      "a.out > near.in, b.out > far.in, near.out > join.in1, far.out > join.in2, join.out > plate.in",
    );
    const found = blamed(design, "plate.tv", ["a", 0], ["b", 0]);
    expect(found).toMatchObject({ part: "far", does: "long cable", lengthM: 100 });
    // Channel 40 at 626 MHz: 0.5·√626 = 12.51 dB in 100 m; channel 30 at 546 MHz: 1.17 dB in 10 m.
    expect(found?.excessDb).toBeCloseTo(12.51 - 1.17, 1);
  });

  test("an amplifier that only the stronger one has is named", () => {
    const design = draw(
      {
        plate: ["outlet-tv"],
        join: ["combiner"],
        amp: ["amp-distribution", { gainDb: 18 }],
        a: ["aerial-uhf", { channels: [{ channel: 30 }] }],
        b: ["aerial-uhf", { channels: [{ channel: 40 }] }],
      },
      "a.out > amp.in, amp.out > join.in1, b.out > join.in2, join.out > plate.in",
    );
    expect(blamed(design, "plate.tv", ["a", 0], ["b", 0])).toMatchObject({ part: "amp", does: "high gain" });
  });

  test("of two sources that give unlike levels the weaker is named where it is a weak one", () => {
    const design = draw(
      {
        plate: ["outlet-tv"],
        join: ["combiner"],
        a: ["aerial-uhf", { levelDbuv: 70, channels: [{ channel: 30 }] }],
        b: ["aerial-uhf", { levelDbuv: 30, channels: [{ channel: 40 }] }],
      },
      "a.out > join.in1, b.out > join.in2, join.out > plate.in",
    );
    const found = blamed(design, "plate.tv", ["a", 0], ["b", 0]);
    expect(found).toMatchObject({ part: "b", does: "weak source" });
    expect(found?.excessDb).toBeCloseTo(40, 6);
  });
});

describe("two carriers that come by one way", () => {
  const line = (cable: Record<string, unknown>, source: Record<string, unknown> = {}) =>
    draw(
      {
        plate: ["outlet-tv"],
        run: ["cable", cable],
        a: ["aerial-uhf", { channels: [{ channel: 22 }, { channel: 48 }], ...source }],
      },
      "a.out > run.in, run.out > plate.in",
    );

  // √482 = 21.95, √690 = 26.27: 40 m of 0.5 dB/100 m/√MHz lose 4.39 and 5.25 dB.
  test("a cable leans by its length", () => {
    const found = blamed(line({ lengthM: 40, grade: "own", k1: 0.5, k2: 0 }), "plate.tv", ["a", 0], ["a", 1]);
    expect(found).toMatchObject({ part: "run", does: "long cable", lengthM: 40 });
    expect(found?.excessDb).toBeCloseTo(5.25 - 4.39, 2);
    expect(found?.amount).toBeCloseTo(-4.39, 2);
  });

  test("a source whose channels are unlike is uneven", () => {
    const uneven = { channels: [{ channel: 22 }, { channel: 48, levelOffsetDb: -15 }] };
    expect(blamed(line({ lengthM: 1 }, uneven), "plate.tv", ["a", 0], ["a", 1])).toMatchObject({
      part: "a",
      does: "uneven source",
    });
  });

  test("nobody is named where nothing puts the one above the other, nor at a whole part", () => {
    const level = draw(
      { plate: ["outlet-tv"], a: ["aerial-uhf", { channels: [{ channel: 22 }] }] },
      "a.out > plate.in",
    );
    expect(blamed(level, "plate.tv", ["a", 0], ["a", 0])).toBeUndefined();
    const ends = { above: { origin: "a", index: 0 }, below: { origin: "a", index: 0 } };
    expect(blameForLean(evaluate(level), { part: "plate" }, ends)).toBeUndefined();
  });
});
