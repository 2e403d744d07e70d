/** User bands count at a socket only for the receivers behind it; each tuner has its own (EN 50494, as quoted). */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { profileOf } from "../../src/findings/limits.ts";
import { heardAt, placesOf } from "../../src/findings/places.ts";
import { carriersGot } from "../../src/findings/reception.ts";
import { isOfUse, userBandsBehind } from "../../src/findings/userBandsBehind.ts";
import { draw } from "../draw.ts";
import { bandOf, gridOf } from "../signal/bands.ts";
import { stackOf } from "./byHand.ts";

const set = (...numbers: readonly (readonly [number, number])[]) => ({
  tuners: numbers.length,
  userBands: numbers.map(([number, centreMHz]) => ({ number, centreMHz })),
});

/** Two flats on one line: bands 1 and 4 in the first, band 2 in the second, and a third socket that is free. */
function line() {
  return evaluate(
    draw(
      {
        second: ["receiver-stacked", set([2, 1420])],
        p3: ["outlet-sat"],
        p1: ["outlet-sat"],
        p2: ["outlet-sat"],
        split: ["splitter", { ways: 3, dc: "all" }],
        first: ["receiver-stacked", set([1, 1210], [4, 2040])],
        lnb: ["lnb-stacked"],
        dish: ["dish"],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > p1.in, split.out2 > p2.in, split.out3 > p3.in, p1.sat > first.sat, p2.sat > second.sat",
    ),
  );
}

function at(evaluation: ReturnType<typeof line>, part: string, port: string): readonly number[] {
  const record = evaluation.record(part);
  if (!record) throw new Error(`no part ${part}`);
  return [...userBandsBehind(record, port)].sort();
}

describe("user bands that count", () => {
  test("at a socket those of the receiver behind it, on the common line all, at a free socket none in particular", () => {
    const evaluation = line();
    expect(at(evaluation, "p1", "sat")).toEqual([1, 4]);
    expect(at(evaluation, "p2", "sat")).toEqual([2]);
    expect(at(evaluation, "split", "out1")).toEqual([1, 4]);
    expect(at(evaluation, "lnb", "out")).toEqual([1, 2, 4]);
    expect(at(evaluation, "p3", "sat")).toEqual([]);
  });

  test("at a receiver its own", () => {
    expect(at(line(), "second", "sat")).toEqual([2]);
  });

  // The LNB has four user bands; levels are judged at those that count.
  test("levels are judged at these", () => {
    const evaluation = line();
    const judged = (part: string) => {
      const record = evaluation.record(part);
      const places = record
        ? placesOf({ record, kindAt: (port) => evaluation.record(record.joined[port]?.[0] ?? "")?.kind })
        : [];
      return places.flatMap((place) => heardAt(place, "satellite", profileOf(evaluation.design))).length;
    };
    expect([judged("p1"), judged("p2"), judged("p3")]).toEqual([2, 1, 4]);
  });

  test("and each receiver tunes through its own", () => {
    const evaluation = line();
    const used = (part: string) => {
      const record = evaluation.record(part);
      return [...new Set((record ? carriersGot(record, "satellite") : []).map((c) => c.userBand))];
    };
    expect(used("second")).toEqual([2]);
    for (const band of used("first")) expect([1, 4]).toContain(band);
  });
});

describe("a carrier counts at a port", () => {
  const stack = stackOf([3, 5]);
  const stacked = bandOf({ service: "satellite", grid: gridOf([1210, 1420], 46), more: { stack } });

  test("where its user band is used", () => {
    expect([isOfUse(stacked, 0, new Set([3])), isOfUse(stacked, 1, new Set([3]))]).toEqual([true, false]);
    expect([isOfUse(stacked, 0, new Set([5, 7])), isOfUse(stacked, 1, new Set([5, 7]))]).toEqual([
      false,
      true,
    ]);
  });

  test("where no user band is used in particular, and where it is on none", () => {
    expect(isOfUse(stacked, 1, new Set())).toBe(true);
    expect(isOfUse(bandOf(), 0, new Set([3]))).toBe(true);
  });
});

test("behind a receiver in another mode, and at its own input, no user band counts in particular", () => {
  const evaluation = evaluate(
    draw(
      { rx: ["receiver-stacked", { mode: "universal" }], p: ["outlet-sat"], lnb: ["lnb-stacked"] },
      "lnb.out > p.in, p.sat > rx.sat",
    ),
  );
  expect(at(evaluation, "p", "sat")).toEqual([]);
  expect(at(evaluation, "rx", "sat")).toEqual([]);
});
