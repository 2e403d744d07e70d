/** Open ends that reflect. Which end a tradesman would close is common practice, no source. */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const PARTS: Sketch = { y: ["receiver-tv"], z: ["receiver-tv"], a: ["aerial-uhf"] };
const found = (x: Sketch[string], wires: string) => foundBy("open-end", draw({ ...PARTS, x }, wires));

test("a tap whose through line ends open is a warning, also where its branches are open as well", () => {
  const tap: Sketch[string] = ["tap", { taps: "2" }];
  expect(found(tap, "a.out > x.in, x.tap1 > z.in")).toMatchObject([
    { severity: "warning", parts: ["x"], wires: [], facts: { of: "trunk", ports: ["out"] } },
  ]);
  expect(found(tap, "a.out > x.in, x.tap1 > z.in")[0]?.at).toEqual({ part: "x" });
});

test("free legs are a note", () => {
  expect(found(["splitter", { ways: 4 }], "a.out > x.in, x.out1 > z.in, x.out3 > y.in")).toMatchObject([
    { severity: "note", at: { part: "x" }, parts: ["x"], facts: { of: "legs", ports: ["out2", "out4"] } },
  ]);
});

test("so is a free branch of a tap whose line goes on", () => {
  expect(found(["tap"], "a.out > x.in, x.out > z.in")).toMatchObject([
    { severity: "note", facts: { of: "legs", ports: ["tap1"] } },
  ]);
});

describe("nothing is said", () => {
  test.each([
    {
      name: "where all ends are joined",
      x: ["splitter"],
      wires: "a.out > x.in, x.out1 > z.in, x.out2 > y.in",
    },
    { name: "where all legs are free: then it leads nowhere", x: ["splitter"], wires: "a.out > x.in" },
    { name: "where nothing comes in", x: ["splitter"], wires: "x.out1 > z.in" },
    { name: "where nothing comes in by the through line", x: ["tap"], wires: "x.tap1 > z.in" },
    { name: "of a free socket", x: ["outlet-end"], wires: "a.out > x.in" },
    { name: "of a cable", x: ["cable"], wires: "a.out > x.in" },
  ] as const)("$name", ({ x, wires }) => {
    expect(found(x, wires)).toEqual([]);
  });
});
