/**
 * What is left of a carrier behind each part. Noise by hand: k·T·B·75 Ω of 7.61 MHz (DVB-T, EN 300 744) at 290 K is
 * 2.285 (µV)², 3.59 dBµV; a passive part leaves it as it is. The mode needs 18.7 dB (NorDig Unified 2.2, as quoted in a
 * public table).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Limits } from "../../../src/findings/limits.ts";
import { carriersOffered } from "../../../src/findings/walk/choice.ts";
import { stepsTo, type WayStep } from "../../../src/findings/walk/step.ts";
import { draw, type Sketch } from "../../draw.ts";
import { bandOf, MODE } from "../../signal/bands.ts";
import { recordOf } from "../byHand.ts";

const aerial = (levelDbuv: number) =>
  ["aerial-uhf", { levelDbuv, channels: [{ channel: 21, mode: MODE }] }] as const;

/** Steps of the carrier from aerial “u” to the output of “x”. */
function steps(parts: Sketch, wires: string, limits?: Limits): readonly WayStep[] {
  const evaluation = evaluate(draw({ u: aerial(60), ...parts }, wires));
  const choice = carriersOffered(evaluation, recordOf(evaluation, "x"), { service: "tv" }).find(
    (c) => c.source === "u",
  );
  if (!choice) throw new Error("no such carrier");
  return stepsTo(evaluation, { part: "x", port: "out" }, choice, { limits });
}

const pad = ["attenuator", { lossDb: 6 }] as const;

describe("a carrier that nothing disturbs", () => {
  const [first, second] = steps({ x: pad }, "u.out > x.in");

  test("leaves its aerial above the thermal noise", () => {
    expect(first).toMatchObject({ part: "u", levelDbuv: 60, ciDb: Number.POSITIVE_INFINITY });
    expect(first?.noiseDbuv).toBeCloseTo(3.59, 2);
    expect(first?.cnDb).toBeCloseTo(56.41, 2);
    expect(first?.cniDb).toBeCloseTo(56.41, 2);
    expect(first?.marginDb).toBeCloseTo(37.71, 2);
  });

  test("is 6 dB nearer to it behind 6 dB", () => {
    expect(second).toMatchObject({ part: "x", levelDbuv: 54 });
    expect(second?.noiseDbuv).toBeCloseTo(3.59, 2);
    expect(second?.cnDb).toBeCloseTo(50.41, 2);
    expect(second?.marginDb).toBeCloseTo(31.71, 2);
  });

  test("has no interference to be told", () => {
    expect(first).not.toHaveProperty("interferenceDbuv");
    expect(second).not.toHaveProperty("interferenceDbuv");
  });
});

test("on the same channel another aerial 20 dB weaker disturbs with its level, 4 dB of combiner later", () => {
  const way = steps(
    { v: aerial(40), x: ["combiner", { loss: "own", ownTvDb: 4 }] },
    "u.out > x.in1, v.out > x.in2",
  );
  expect(way.map((s) => s.part)).toEqual(["u", "x"]);
  expect(way[0]).not.toHaveProperty("interferenceDbuv");
  expect(way[1]?.levelDbuv).toBeCloseTo(56, 6);
  expect(way[1]?.interferenceDbuv).toBeCloseTo(36, 6);
  expect(way[1]?.ciDb).toBeCloseTo(20, 6);
  // 20 dB against interference and 52.41 dB against noise: still 20.00 in all.
  expect(way[1]?.cniDb).toBeCloseTo(20, 2);
  expect(way[1]?.marginDb).toBeCloseTo(1.3, 2);
});

describe("limits at the end", () => {
  const limits: Limits = { minDbuv: 45, maxDbuv: 74, cnDb: 26 };

  test("reach back by what is lost from there on", () => {
    const within = steps({ x: pad }, "u.out > x.in", limits).map((s) => s.within);
    expect(within).toEqual([
      { minDbuv: 51, maxDbuv: 80 },
      { minDbuv: 45, maxDbuv: 74 },
    ]);
  });

  test("where there are none, none are told", () => {
    for (const step of steps({ x: pad }, "u.out > x.in")) expect(step).not.toHaveProperty("within");
  });
});

test("a source without any noise has none to be told, and nothing can be too noisy", () => {
  const evaluation = evaluate(draw({ u: aerial(60), x: ["receiver-tv"] }, "u.out > x.in"));
  const [choice] = carriersOffered(evaluation, recordOf(evaluation, "x"), { service: "tv" });
  if (!choice) throw new Error("no such carrier");
  const quiet = {
    ...recordOf(evaluation, "u"),
    outputs: { out: { bands: [bandOf({ from: "u", level: 60, noise: 0 })] } },
  };
  const [step] = stepsTo(
    { ...evaluation, record: (id) => (id === "u" ? quiet : evaluation.record(id)) },
    { part: "u", port: "out" },
    choice,
    {},
  );
  expect(step).toMatchObject({
    levelDbuv: 60,
    cnDb: Number.POSITIVE_INFINITY,
    marginDb: Number.POSITIVE_INFINITY,
  });
  expect(step).not.toHaveProperty("noiseDbuv");
});

test("where the carrier is not there, there is no step", () => {
  expect(steps({ x: pad }, "")).toEqual([]);
});
