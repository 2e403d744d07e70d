/** More tuners than feeds or user bands. Common practice, no source. */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const found = (lnb: Sketch[string], receiver: Sketch[string], wire = ", l.out > r.sat") =>
  foundBy("too-many-tuners", draw({ r: receiver, l: lnb, k: ["dish"] }, `k.sky > l.sky${wire}`));
const stacked = (tuners: number, ...numbers: readonly number[]): Sketch[string] => [
  "receiver-stacked",
  { tuners, userBands: numbers.map((number) => ({ number, centreMHz: [1210, 1420][number - 1] })) },
];
const universal = (tuners: number): Sketch[string] => ["receiver-stacked", { tuners, mode: "universal" }];

describe("on a single-cable line", () => {
  test("each tuner needs a user band", () => {
    expect(found(["lnb-stacked"], stacked(4, 1, 2))).toMatchObject([
      {
        severity: "error",
        at: { part: "r", port: "sat" },
        parts: ["r"],
        wires: ["l.out>r.sat"],
        value: 2,
        limit: 4,
        unit: "user bands",
        facts: { of: "user bands" },
      },
    ]);
  });

  test("as many as tuners are enough, more are no fault", () => {
    expect(found(["lnb-stacked"], stacked(2, 1, 2))).toEqual([]);
    expect(found(["lnb-stacked"], stacked(1, 1, 2))).toEqual([]);
  });
});

describe("on a switched output", () => {
  test("several tuners share one feed", () => {
    expect(found(["lnb-universal"], universal(3))).toMatchObject([
      {
        severity: "warning",
        at: { part: "r", port: "sat" },
        parts: ["r"],
        wires: ["l.out>r.sat"],
        value: 1,
        limit: 3,
        unit: "feeds",
        facts: { of: "feeds" },
      },
    ]);
  });

  test("one tuner does not", () => {
    expect(found(["lnb-universal"], universal(1))).toEqual([]);
    expect(found(["lnb-universal"], ["receiver-sat"])).toEqual([]);
  });

  test("and what matters on a single-cable line is the mode, not the feed", () => {
    expect(found(["lnb-stacked"], universal(3))).toEqual([]);
  });
});

test("a receiver with nothing connected is not judged", () => {
  expect(found(["lnb-stacked"], stacked(4, 1), "")).toEqual([]);
  expect(found(["lnb-universal"], universal(3), "")).toEqual([]);
});
