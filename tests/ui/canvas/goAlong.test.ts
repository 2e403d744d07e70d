/** Steps by the keys from card to wire to card, along a chain drawn by hand. */
import { describe, expect, test } from "vitest";
import { itemLeftBeside, itemOn } from "../../../src/ui/canvas/goAlong.ts";
import { draw } from "../../draw.ts";

const CHAIN = draw(
  { uhf: ["aerial-uhf"], split: ["splitter"], den: ["receiver-tv"], hall: ["receiver-tv"] },
  "uhf.out > split.in, split.out1 > den.in, split.out2 > hall.in",
);

describe("a step", () => {
  test.each([
    [{ part: "uhf" }, "downstream", { wire: "uhf.out>split.in" }],
    [{ wire: "uhf.out>split.in" }, "downstream", { part: "split" }],
    [{ wire: "uhf.out>split.in" }, "upstream", { part: "uhf" }],
    [{ part: "den" }, "upstream", { wire: "split.out1>den.in" }],
    [{ part: "den" }, "downstream", null],
    [{ wire: "split.out1>den.in" }, "after", { wire: "split.out2>hall.in" }],
    [{ wire: "split.out2>hall.in" }, "before", { wire: "split.out1>den.in" }],
    [{ part: "den" }, "after", { part: "hall" }],
    [{ part: "uhf" }, "before", null],
  ] as const)("from %o %s leads to %o", (at, way, next) => {
    expect(itemOn(CHAIN, at, way)).toEqual(next);
  });

  test("after step comes to every part", () => {
    const seen = ["uhf"];
    for (let at = itemOn(CHAIN, { part: "uhf" }, "after"); at; at = itemOn(CHAIN, at, "after"))
      if ("part" in at) seen.push(at.part);
    expect(seen.toSorted()).toEqual(["den", "hall", "split", "uhf"]);
  });
});

describe("what stays when parts go", () => {
  const gone = (parts: readonly string[], wires: readonly string[] = []) =>
    itemLeftBeside(CHAIN, { parts, wires });

  test("is what fed them, else what they fed, else nothing", () => {
    expect(gone(["den"])).toEqual({ part: "split" });
    expect(gone(["split", "den"])).toEqual({ part: "uhf" });
    expect(gone(["uhf"])).toEqual({ part: "split" });
    expect(gone([], ["split.out1>den.in"])).toEqual({ part: "split" });
    expect(gone(["uhf", "split", "den", "hall"])).toBeNull();
  });
});
