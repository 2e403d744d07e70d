/**
 * A tap or riser plate with its legs mixed up. A branch of 20 dB against a through line of
 * 0.45 + 1.45·(−10·log10(1 − 0.01)) = 0.513 dB (typical data sheets, as the part says): 19.487 dB.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { stagesTo } from "../../../src/findings/blame/stages.ts";
import { swappedLegs } from "../../../src/findings/blame/swappedLegs.ts";
import { draw, type Sketch } from "../../draw.ts";
import { aerial } from "./missed.ts";

const PARTS: Sketch = {
  z: ["receiver-tv"],
  y: ["receiver-tv"],
  e: ["outlet-end"],
  o: ["outlet-tv"],
  s: ["splitter"],
  b: ["dc-block"],
  c: ["cable"],
  t: ["tap"],
  x: ["tap", { tapLossDb: 20 }],
  a: aerial(62),
};

/** What is said of x at one of its outputs. */
function at(port: string, wires: string, more: Sketch = {}) {
  const evaluation = evaluate(draw({ ...PARTS, ...more }, `a.out > x.in, ${wires}`));
  const stage = stagesTo(evaluation, { part: "x", port }, { origin: "a", index: 0 }).at(-1);
  if (stage?.step.part !== "x") throw new Error("it does not come out there");
  return swappedLegs(evaluation, stage);
}

const SWAPPED = "x.tap1 > e.in, x.out > o.in";

describe("the line goes on from the branch, and the through output feeds one place", () => {
  test("costs the line the difference, and gives it to the place", () => {
    const branch = at("tap1", SWAPPED);
    expect(branch).toMatchObject({ does: "legs swapped" });
    expect(branch?.excessDb).toBeCloseTo(19.487, 2);
    expect(branch?.amount).toBeCloseTo(-20, 2);
    const through = at("out", SWAPPED);
    expect(through).toMatchObject({ does: "legs swapped" });
    expect(through?.excessDb).toBeCloseTo(19.487, 2);
    expect(through?.amount).toBeCloseTo(-0.513, 2);
  });

  test.each([
    { name: "another tap", wires: "x.tap1 > t.in, x.out > o.in" },
    { name: "a receiver at the through output", wires: "x.tap1 > e.in, x.out > z.in" },
    {
      name: "cables and blocks on both ways",
      wires: "x.tap1 > c.in, c.out > e.in, x.out > b.in, b.out > o.in",
    },
  ])("also with $name", ({ wires }) => {
    expect(at("tap1", wires)).toMatchObject({ does: "legs swapped" });
  });

  test("also at a riser plate, from whose socket the line goes on", () => {
    const found = at("tv", "x.tv > e.in, x.out > o.in", { x: ["outlet-through", { tapLossDb: 20 }] });
    expect(found).toMatchObject({ does: "legs swapped" });
    expect(found?.excessDb).toBeCloseTo(19.487, 2);
  });

  // The other branch of two is as it should be: two of 20 dB, so the through line loses 0.58 dB.
  test("but of two branches only that one", () => {
    const two: Sketch = { x: ["tap", { taps: "2", tapLossDb: 20 }] };
    const wires = "x.tap2 > e.in, x.out > o.in, x.tap1 > y.in";
    expect(at("tap2", wires, two)).toMatchObject({ does: "legs swapped" });
    expect(at("tap1", wires, two)).toBeUndefined();
  });
});

describe("nothing is swapped", () => {
  test.each([
    { name: "where the line goes on from the through output", wires: "x.out > e.in, x.tap1 > o.in" },
    { name: "where it goes on from both", wires: "x.out > e.in, x.tap1 > t.in" },
    { name: "where both feed a place", wires: "x.out > o.in, x.tap1 > z.in" },
    { name: "where the through output leads nowhere", wires: "x.tap1 > e.in" },
    { name: "where it leads to a cable with an open end", wires: "x.tap1 > e.in, x.out > c.in" },
    { name: "where it feeds several", wires: "x.tap1 > e.in, x.out > s.in, s.out1 > o.in, s.out2 > z.in" },
    { name: "where the branch feeds several", wires: "x.tap1 > s.in, s.out1 > e.in, x.out > o.in" },
  ])("$name", ({ wires }) => {
    expect(at("tap1", wires)).toBeUndefined();
    expect(at("out", wires)).toBeUndefined();
  });

  test("at a part without a through line, nor at a source", () => {
    expect(at("out1", "x.out1 > e.in, x.out2 > o.in", { x: ["splitter"] })).toBeUndefined();
    const evaluation = evaluate(draw(PARTS, `a.out > x.in, ${SWAPPED}`));
    const [source] = stagesTo(evaluation, { part: "x", port: "out" }, { origin: "a", index: 0 });
    expect(source && swappedLegs(evaluation, source)).toBeUndefined();
  });
});
