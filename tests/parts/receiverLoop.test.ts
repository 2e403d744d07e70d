/**
 * A receiver with a loop-out, and a second one behind it. One cable carries one voltage: whoever feeds it decides for
 * all (13/18 V and 22 kHz after EN 61319-1). That volts of the second pass in standby only is common practice, no source.
 * Sums by hand: 30 m of 100 Ω/km are 3 Ω, and 200 mA take 0.6 V there.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { judgedUnderConditions } from "../../src/findings/underConditions.ts";
import { whoIsOn } from "../../src/findings/whoIsOn.ts";
import { draw } from "../draw.ts";

const house = (first: Record<string, unknown>, second: Record<string, unknown> = {}) =>
  draw(
    {
      d: ["dish", { diameterM: 0.8 }],
      l: ["lnb-universal", { commonMa: 200, outputMa: 0 }],
      c: ["cable", { lengthM: 30, grade: "own", loopOhmPerKm: 100 }],
      a: ["receiver-sat", first],
      b: ["receiver-sat", { polarisation: "H", half: "high", ...second }],
    },
    "d.sky > l.sky, l.out > c.in, c.out > a.sat, a.loop > b.sat",
  );

const stateOf = (first: Record<string, unknown>, second?: Record<string, unknown>) => {
  const evaluation = evaluate(house(first, second));
  const lnb = evaluation.record("l");
  return {
    setting: lnb?.switches.out?.setting,
    volts: lnb?.feeds.out?.[0]?.volts,
    given: evaluation.record("b")?.demands.sat?.milliamps ?? 0,
    verdicts: Object.fromEntries(report(evaluation).verdicts.map((v) => [v.part, v.state])),
    rules: report(evaluation).causes.map((c) => [c.root.rule, c.root.parts[0]]),
  };
};

describe("the second receiver", () => {
  test("gets the first one’s quadrant alone, and gives the cable nothing, while the first is on", () => {
    const { setting, volts, given, verdicts, rules } = stateOf({ loopOut: "always" });
    expect(setting).toBe("VL");
    expect(volts).toBeCloseTo(12.4, 6);
    expect(given).toBe(0);
    expect(verdicts).toMatchObject({ a: "works", b: "fails" });
    expect(rules).toEqual([["command-lost", "a"]]);
  });

  test("commands and feeds the LNB while the first is in standby", () => {
    const { setting, volts, given, verdicts, rules } = stateOf({ loopOut: "always", state: "standby" });
    expect(setting).toBe("HH");
    expect(volts).toBeCloseTo(17.4, 6);
    expect(given).toBeCloseTo(200, 6);
    expect(verdicts).toMatchObject({ b: "works" });
    expect(rules).toEqual([]);
  });

  test("stays without commands where the first feeds the cable even in standby", () => {
    const { setting, rules } = stateOf({ loopOut: "always", state: "standby", standbySupply: true });
    expect(setting).toBe("VL");
    expect(rules).toEqual([["command-lost", "a"]]);
  });

  test("gets nothing from a loop-out that works in standby only, while the first is on", () => {
    const { verdicts, rules } = stateOf({ loopOut: "standby" });
    expect(verdicts).toMatchObject({ a: "works", b: "fails" });
    expect(rules).toEqual([["receiver-misses", "a"]]);
    expect(stateOf({ loopOut: "standby", state: "standby" }).verdicts).toMatchObject({ b: "works" });
  });

  test("gets nothing and feeds nothing through one that is unplugged", () => {
    const { setting, given, rules } = stateOf({ loopOut: "always", state: "unplugged" });
    expect(setting).toBeNull();
    expect(given).toBe(0);
    expect(rules).toEqual([["no-supply", "a"]]);
  });

  test("may sleep itself without anybody missing anything", () => {
    expect(stateOf({ loopOut: "always" }, { state: "standby" }).rules).toEqual([]);
  });
});

test("the loop-out takes its loss off every carrier: 3 dB usual, and what is set", () => {
  const levels = (loopLossDb: number) => {
    const record = evaluate(house({ loopOut: "always", loopLossDb })).record("b");
    const own = evaluate(house({ loopOut: "always", loopLossDb })).record("a");
    const at = (from: typeof own) => from?.inputs.sat?.bands.find((b) => b.selected)?.level[5] ?? Number.NaN;
    return at(own) - at(record);
  };
  expect(levels(3)).toBeCloseTo(3, 9);
  expect(levels(5.5)).toBeCloseTo(5.5, 9);
});

test("without a loop-out a receiver has one socket, as before", () => {
  const design = draw({ a: ["receiver-sat"] }, "");
  expect(
    evaluate(design)
      .record("a")
      ?.ports.map((p) => p.id),
  ).toEqual(["sat"]);
});

// 13 V less 0.6 for whoever asks for vertical, 18 V less 0.6 for the second alone; together the first decides.
test("the table of who is on has both, and the first one's volts wherever it is on", () => {
  const table = whoIsOn(house({ loopOut: "always" }), "l");
  expect(table?.receivers).toEqual(["a", "b"]);
  expect(table?.states.map((s) => s.on)).toEqual([[], ["a"], ["b"], ["a", "b"]]);
  expect(table?.states.map((s) => Number(s.volts.toFixed(6)))).toEqual([0, 12.4, 17.4, 12.4]);
  expect(table?.states[3]?.gives).toEqual([
    { part: "a", milliamps: 200, isDown: false },
    { part: "b", milliamps: 0, isDown: false },
  ]);
});

test("alone each of them works; with both on the second fails", () => {
  const judging = judgedUnderConditions(house({ loopOut: "always" }));
  let step = judging.next();
  while (!step.done) step = judging.next();
  const { places } = step.value;
  const standing = (part: string, condition: "one on" | "all on" | "as drawn") =>
    places.find((p) => p.part === part)?.standings.get(condition)?.verdict.state;
  expect([standing("a", "one on"), standing("b", "one on")]).toEqual(["works", "works"]);
  expect(standing("b", "as drawn")).toBe("fails");
});
