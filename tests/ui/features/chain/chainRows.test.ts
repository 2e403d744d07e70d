/** The list of the design: what is checked is that nothing is left out, by counting against the design itself. */
import { describe, expect, test } from "vitest";
import { type Design, wireId } from "../../../../src/design/design.ts";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { chainRows } from "../../../../src/ui/features/chain/chainRows.ts";

const NONE: ReadonlySet<string> = new Set();

function designOf(ids: readonly string[], joints: readonly (readonly [string, string])[]): Design {
  return {
    title: "test",
    parts: ids.map((id) => ({ id, kind: "cable", label: id, options: {}, at: [0, 0] })),
    wires: joints.map(([from, to], i) => ({ from: [from, `o${i}`], to: [to, `i${i}`] })),
  };
}

const listed = (design: Design, folded = NONE) => chainRows(design, folded).map((r) => r.id);

describe("the chain", () => {
  test.each(EXAMPLES)("lists every part once in full and every wire once: $key", ({ load }) => {
    const design = load();
    const rows = chainRows(design, NONE);
    const parts = rows.filter((r) => r.type === "part" && !r.again).map((r) => r.id);
    const wires = rows.filter((r) => r.type === "wire").map((r) => r.id);
    expect(parts.toSorted()).toEqual(design.parts.map((p) => p.id).toSorted());
    expect(wires.toSorted()).toEqual(design.wires.map(wireId).toSorted());
  });

  test("goes on straight without indenting, and indents where it splits", () => {
    const design = designOf(
      ["dish", "lnb", "tv1", "tv2"],
      [
        ["dish", "lnb"],
        ["lnb", "tv1"],
        ["lnb", "tv2"],
      ],
    );
    const levels = Object.fromEntries(
      chainRows(design, NONE)
        .filter((r) => r.type === "part")
        .map((r) => [r.id, r.level]),
    );
    expect(levels).toEqual({ dish: 1, lnb: 1, tv1: 2, tv2: 2 });
  });

  test("lists a part with two sources again at the second, but not what follows it", () => {
    const design = designOf(
      ["uhf", "dab", "combiner", "tv"],
      [
        ["uhf", "combiner"],
        ["dab", "combiner"],
        ["combiner", "tv"],
      ],
    );
    const combiners = chainRows(design, NONE).filter((r) => r.id === "combiner");
    expect(combiners.map((r) => r.again)).toEqual([false, true]);
    expect(listed(design).filter((id) => id === "tv")).toHaveLength(1);
  });

  test("lists the parts of a loop, which has no beginning", () => {
    const design = designOf(
      ["a", "b"],
      [
        ["a", "b"],
        ["b", "a"],
      ],
    );
    expect(new Set(listed(design))).toEqual(new Set(["a", "b", ...design.wires.map(wireId)]));
  });

  test("hides what hangs below a folded part, and nothing else", () => {
    const design = designOf(
      ["lnb", "tv1", "tv2", "alone"],
      [
        ["lnb", "tv1"],
        ["lnb", "tv2"],
      ],
    );
    expect(listed(design, new Set(["lnb"]))).toEqual(["lnb", "alone"]);
  });

  test("takes a chain of five thousand parts", () => {
    const ids = Array.from({ length: 5000 }, (_, i) => `p${i}`);
    const joints = ids.slice(1).map((id, i) => [`p${i}`, id] as const);
    expect(chainRows(designOf(ids, joints), NONE)).toHaveLength(2 * 5000 - 1);
  });
});
