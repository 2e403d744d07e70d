/** Converters, receivers and cables that do not suit each other: who is named. Common practice, no source. */
import { expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { report } from "../../../src/findings/report.ts";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const sky = { d: ["dish", { diameterM: 0.8 }] } as const satisfies Sketch;

/** Rule and culprit of each cause but mere notes. */
function named(parts: Sketch, wires: string): readonly (readonly [string, string])[] {
  return report(evaluate(draw({ ...sky, ...parts }, `d.sky > l.sky, ${wires}`)))
    .causes.filter((c) => c.root.severity === "error")
    .map(({ root }) => [root.rule, root.parts[0]]);
}

test("a receiver that alone takes another feed is named itself; the LNB where it suits nobody", () => {
  const wires = "l.v > s.in, s.out1 > a.v, s.out2 > b.sat, l.h > a.h";
  const wideband = { l: ["lnb-wideband"], s: ["splitter"] } as const;
  expect(named({ ...wideband, a: ["receiver-hybrid"], b: ["receiver-sat"] }, wires)).toEqual([
    ["wrong-feed", "b"],
  ]);
  expect(
    named({ l: ["lnb-wideband"], a: ["receiver-sat"], b: ["receiver-sat"] }, "l.v > a.sat, l.h > b.sat"),
  ).toEqual([["wrong-feed", "l"]]);
});

test("receivers in single-cable mode do not contend for a switched output: the LNB does not suit them", () => {
  const set = (number: number, centreMHz: number) =>
    ["receiver-stacked", { tuners: 1, userBands: [{ number, centreMHz }] }] as const;
  expect(
    named(
      { l: ["lnb-universal"], s: ["splitter"], a: set(1, 1210), b: set(2, 1420) },
      "l.out > s.in, s.out1 > a.sat, s.out2 > b.sat",
    ),
  ).toEqual([["wrong-feed", "l"]]);
});

test("a stacking LNB before universal receivers alone is the wrong one", () => {
  expect(named({ l: ["lnb-stacked"], a: ["receiver-sat"] }, "l.out > a.sat")).toEqual([
    ["user-band-conflict", "l"],
  ]);
});

test("wideband and TV on one cable: the LNB where every line is shared, else the part that joins them", () => {
  const parts = {
    l: ["lnb-wideband"],
    u: ["aerial-uhf", { levelDbuv: 68 }],
    x: ["diplexer-combine"],
    y: ["diplexer-split"],
    t: ["receiver-tv"],
    r: ["receiver-hybrid"],
  } as const satisfies Sketch;
  const wires = "l.v > x.sat, u.out > x.tv, x.out > y.in, y.tv > t.in, y.sat > r.v";
  expect(named(parts, wires)).toEqual([["wideband-shared", "l"]]);
  expect(named(parts, `${wires}, l.h > r.h`)).toEqual([["wideband-shared", "x"]]);
});

test("wideband and TV on one cable are no fault yet while nothing hangs on it", () => {
  const parts = {
    u: ["aerial-uhf"],
    l: ["lnb-wideband"],
    r: ["receiver-hybrid"],
    x: ["diplexer-combine"],
    c: ["cable"],
  } as const;
  const wires = "l.h > r.h, l.v > x.sat, u.out > x.tv, x.out > c.in";
  const severities = (more: Sketch, wire: string) =>
    foundBy(
      "wideband-shared",
      draw({ ...more, ...parts, k: ["dish"] }, `k.sky > l.sky, ${wires}${wire}`),
    ).map((f) => f.severity);
  expect(severities({}, "")).toEqual(["note"]);
  expect(severities({ p: ["outlet-diplexed"] }, ", c.out > p.in")).toEqual(["error"]);
});

test("who is heard by one of two converters on a line lacks no user band", () => {
  const bands = (numbers: readonly number[], centres: readonly number[]) => ({
    bandSet: "own",
    ownBands: numbers.map((number, i) => ({ number, centreMHz: centres[i] ?? 0 })),
  });
  const planes = ["vl", "vh", "hl", "hh"];
  const parts: Sketch = {
    l: ["lnb-quattro"],
    ...Object.fromEntries(planes.map((p) => [p, ["splitter"] as const])),
    a: ["stacking-converter", { outputs: 1, terrestrial: false, ...bands([1, 2], [1210, 1420]) }],
    b: ["stacking-converter", { outputs: 1, terrestrial: false, feedsLnb: false, ...bands([3], [1680]) }],
    j: ["combiner", { dc: "all" }],
    k: ["cable", { lengthM: 15 }],
    r: ["receiver-stacked", { tuners: 1, userBands: [{ number: 3, centreMHz: 1680 }] }],
  };
  const trunks = planes.map((p) => `l.${p} > ${p}.in, ${p}.out1 > a.${p}, ${p}.out2 > b.${p}`).join(", ");
  expect(named(parts, `${trunks}, a.out > j.in1, b.out > j.in2, j.out > k.in, k.out > r.sat`)).toEqual([]);
});
