/** Who is on: an LNB of 60 mA and 35 mA for each output in use; sums by hand. */
import { describe, expect, test } from "vitest";
import { whoIsOn } from "../../src/findings/whoIsOn.ts";
import { draw, type Sketch } from "../draw.ts";

const twin = (limitMa: number, more: Sketch = {}, wires = "") =>
  draw(
    {
      l: ["lnb-universal", { outputs: "2", commonMa: 200, outputMa: 30 }],
      c: ["cable", { lengthM: 30, grade: "own", loopOhmPerKm: 100 }],
      a: ["receiver-sat", { state: "standby" }],
      b: ["receiver-sat", { limitMa }],
      tv: ["receiver-tv"],
      ...more,
    },
    `l.out1 > c.in, c.out > a.sat, l.out2 > b.sat${wires}`,
  );

describe("two receivers on a twin LNB", () => {
  // Alone 230 mA, together 260 of which nearly all comes over the short way; 13 V less 3 Ω · 230 mA = 12.31 V.
  test("are told alone and together, whatever they are drawn as", () => {
    const table = whoIsOn(twin(400), "l");
    expect(table?.receivers).toEqual(["a", "b"]);
    expect(table?.states.map((s) => s.on)).toEqual([[], ["a"], ["b"], ["a", "b"]]);
    expect(table?.states.map((s) => Math.round(s.milliamps))).toEqual([0, 230, 230, 260]);
    expect(table?.states.map((s) => s.works)).toEqual([false, true, true, true]);
    expect(table?.states[1]?.volts).toBeCloseTo(12.31, 3);
    expect(table?.states[2]?.volts).toBeCloseTo(13, 3);
    expect(table?.states[1]?.gives).toEqual([{ part: "a", milliamps: 230, isDown: false }]);
  });

  // 200 mA are too few for 230: alone it shuts down; beside the other it gives what it can, and the other the rest.
  test("of which one is too weak to feed alone", () => {
    const table = whoIsOn(twin(200), "l");
    const [, , alone, both] = table?.states ?? [];
    expect(alone).toMatchObject({
      on: ["b"],
      works: false,
      volts: 0,
      gives: [{ part: "b", milliamps: 0, isDown: true }],
    });
    expect(both).toMatchObject({ on: ["a", "b"], works: true });
    expect(both?.gives.map((g) => Math.round(g.milliamps))).toEqual([60, 200]);
  });
});

test("who cannot feed it is left out, and without receivers there is nothing to tell", () => {
  expect(whoIsOn(twin(400), "tv")).toBeUndefined();
  expect(whoIsOn(twin(400), "nobody")).toBeUndefined();
  const seven = draw(
    {
      l: ["lnb-universal", { outputs: "8" }],
      ...Object.fromEntries([1, 2, 3, 4, 5, 6, 7].map((n) => [`r${n}`, ["receiver-sat"] as const])),
    },
    [1, 2, 3, 4, 5, 6, 7].map((n) => `l.out${n} > r${n}.sat`).join(),
  );
  expect(whoIsOn(seven, "l")).toBeUndefined();
});

// 15 mA of the switch and 95 mA of the chosen LNB through 1 Ω of the switch alone: 13 V − 0.095 V for either LNB.
test("an LNB that is not chosen now is shown with the volts that it gets once it is", () => {
  const design = draw(
    {
      a: ["lnb-universal"],
      b: ["lnb-universal"],
      s: ["position-switch"],
      r: ["receiver-sat", { position: "2" }],
    },
    "a.out > s.in1, b.out > s.in2, s.out > r.sat",
  );
  const on = (part: string) => whoIsOn(design, part)?.states.find((state) => state.on.length === 1);
  expect(on("a")).toMatchObject({ works: true, isElsewhere: true, volts: expect.closeTo(12.905, 3) });
  expect(on("b")).toMatchObject({
    works: true,
    volts: expect.closeTo(12.905, 3),
    milliamps: expect.closeTo(95, 2),
  });
  expect(on("b")).not.toHaveProperty("isElsewhere");
});
