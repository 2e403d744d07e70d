/** TR: a level can be followed to its origin, and the steps add up to it. */
import { describe, expect, test } from "vitest";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { traceCarrier } from "../../src/evaluate/trace.ts";

const evaluationOf = (key: string) => {
  const design = EXAMPLES.find((e) => e.key === key)?.load();
  if (!design) throw new Error(`no example ${key}`);
  return evaluate(design);
};

describe("tracing a carrier", () => {
  test("TR1: a TV channel comes from its aerial by every part between, and the gains add up", () => {
    const evaluation = evaluationOf("house-universal");
    const steps = traceCarrier(evaluation, { part: "plate1", port: "tv" }, { origin: "uhf", index: 0 });
    expect(steps.map((s) => s.part)).toEqual(["uhf", "amp", "dip1", "drop1", "plate1"]);
    const gains = steps.reduce((sum, s) => sum + (s.gainDb ?? 0), 0);
    expect((steps[0]?.levelDbuv ?? 0) + gains).toBeCloseTo(steps.at(-1)?.levelDbuv ?? Number.NaN, 9);
  });

  test("TR2: what a step is made of adds up to its gain where nothing else happens", () => {
    const evaluation = evaluationOf("house-universal");
    const steps = traceCarrier(evaluation, { part: "plate1", port: "tv" }, { origin: "uhf", index: 2 });
    expect(steps).toHaveLength(5);
    for (const step of steps.slice(1))
      expect(step.made.reduce((sum, m) => sum + m.db, 0)).toBeCloseTo(step.gainDb ?? Number.NaN, 6);
  });

  test("TR3: a transponder is followed through its converter up to the dish", () => {
    const evaluation = evaluationOf("house-universal");
    const steps = traceCarrier(evaluation, { part: "plate1", port: "sat" }, { origin: "dish/H", index: 5 });
    expect(steps.map((s) => s.part)).toEqual(["dish", "lnb", "dip1", "drop1", "plate1"]);
    expect(steps.find((s) => s.part === "lnb")?.loMHz).toBeDefined();
    expect(steps[0]?.centreMHz).toBeGreaterThan(10_000);
  });

  test("TR4: through a channel-stacking converter the user band takes over", () => {
    const evaluation = evaluationOf("house-stacked");
    const steps = traceCarrier(
      evaluation,
      { part: "plate1", port: "sat" },
      { origin: "dish/V", index: 0 },
      2,
    );
    expect(steps.map((s) => s.part)).toEqual(["dish", "lnb", "stack", "drop1", "plate1"]);
    expect(steps.at(-1)?.userBand).toBe(2);
    // By EN 50607, as implemented in public code: 10 729 − 9750 = 979 MHz of IF, less 100; at the centre of user band
    // 2. The receiver reckons so although a wideband converter with its oscillator at 10 400 MHz feeds the stack.
    const stacking = steps.find((s) => s.tuning);
    expect([stacking?.part, steps[0]?.centreMHz]).toEqual(["stack", 10_729]);
    expect(stacking?.tuning).toEqual({ word: 879, tunesToMHz: 1420 });
  });

  test("TR5: the part that cuts a carrier is marked", () => {
    const evaluation = evaluationOf("house-wideband-fails");
    const lowest = evaluation.record("lnb")?.outputs.v?.bands[0]?.grid.index[0] ?? 0;
    const steps = traceCarrier(
      evaluation,
      { part: "plate1", port: "sat" },
      { origin: "dish/V", index: lowest },
    );
    expect(steps.filter((s) => s.cutHere).map((s) => s.part)).toEqual(["dip1"]);
  });

  test("TR6: a carrier that is not there has no steps", () => {
    const evaluation = evaluationOf("house-universal");
    expect(traceCarrier(evaluation, { part: "plate3", port: "tv" }, { origin: "dish/V", index: 0 })).toEqual(
      [],
    );
    expect(traceCarrier(evaluation, { part: "nobody", port: "out" }, { origin: "uhf", index: 0 })).toEqual(
      [],
    );
  });
});
