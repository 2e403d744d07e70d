/** Where a failure runs: from its culprit to the receivers, and nowhere else. */
import { describe, expect, test } from "vitest";
import { exampleOf } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { failingWays } from "../../src/findings/failingWays.ts";
import { report } from "../../src/findings/report.ts";
import { draw } from "../draw.ts";

const waysOf = (design: Parameters<typeof evaluate>[0]) => {
  const evaluation = evaluate(design);
  return failingWays(report(evaluation), evaluation);
};

describe("failing ways", () => {
  test("run from a shorted joint to the receiver behind it, not to its neighbour", () => {
    // Inner conductor on the screen: nothing passes (common practice, no source).
    const ways = waysOf(
      draw(
        {
          uhf: ["aerial-uhf"],
          split: ["splitter"],
          joint: ["bad-joint", { fault: "open" }],
          dead: ["receiver-tv"],
          sound: ["receiver-tv"],
        },
        "uhf.out > split.in, split.out1 > joint.in, joint.out > dead.in, split.out2 > sound.in",
      ),
    );
    expect([...ways.wires]).toEqual(["joint.out>dead.in"]);
    expect([...ways.parts].toSorted()).toEqual(["dead", "joint"]);
  });

  test("are none in a design that works", () => {
    const design = exampleOf("house-universal")?.load();
    if (!design) throw new Error("no example");
    const ways = waysOf(design);
    expect([ways.wires.size, ways.parts.size]).toEqual([0, 0]);
  });

  test("of a house with a wideband feed over its TV end at four of seven receivers", () => {
    const design = exampleOf("house-wideband-fails")?.load();
    if (!design) throw new Error("no example");
    const ways = waysOf(design);
    const tiles = design.parts.filter((p) => p.kind.startsWith("receiver") && ways.parts.has(p.id));
    expect(tiles).toHaveLength(4);
    // Every wire on the way has both ends on it.
    for (const id of ways.wires) {
      const [from = "", to = ""] = id.split(">").map((end) => end.split(".")[0] ?? "");
      expect([ways.parts.has(from), ways.parts.has(to)]).toEqual([true, true]);
    }
  });
});
