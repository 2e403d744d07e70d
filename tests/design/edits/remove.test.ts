import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { removeParts } from "../../../src/design/edits/remove.ts";
import { readDesign, writeDesign } from "../../../src/design/file.ts";
import { kindOf } from "../../../src/parts/catalogue.ts";
import { anyDesign, someOf } from "../../arbitraries.ts";
import { drawn, must, wiring } from "../house.ts";

const NONE: ReadonlySet<string> = new Set();

const chain = drawn(
  ["aerial-uhf", "cable", "attenuator", "cable", ["splitter", { ways: 2 }], "receiver-tv", "receiver-tv"],
  [
    "aerial1/out > cable1/in",
    "cable1/out > pad1/in",
    "pad1/out > cable2/in",
    "cable2/out > split1/in",
    "split1/out1 > tv1/in",
    "split1/out2 > tv2/in",
  ],
);

describe("Removing", () => {
  test.each([
    {
      name: "one inline part",
      ids: ["pad1"],
      left: ["aerial1/out > cable1/in", "cable1/out > cable2/in", "cable2/out > split1/in"],
    },
    { name: "three in a row", ids: ["cable1", "pad1", "cable2"], left: ["aerial1/out > split1/in"] },
    { name: "two apart", ids: ["cable1", "cable2"], left: ["aerial1/out > pad1/in", "pad1/out > split1/in"] },
  ])("closes the wire again: $name", ({ ids, left }) => {
    const after = must(removeParts(chain, new Set(ids), NONE));
    expect(wiring(after)).toEqual([...left, "split1/out1 > tv1/in", "split1/out2 > tv2/in"]);
    expect(after.parts.map((part) => part.id)).not.toEqual(expect.arrayContaining(ids));
  });

  test("takes the wires of a part with several ways off", () => {
    expect(wiring(must(removeParts(chain, new Set(["split1"]), NONE)))).toEqual([
      "aerial1/out > cable1/in",
      "cable1/out > pad1/in",
      "pad1/out > cable2/in",
    ]);
  });

  test("leaves no wire where the chain ends in a removed part", () => {
    const after = must(removeParts(chain, new Set(["cable2", "split1"]), NONE));
    expect(wiring(after)).toEqual(["aerial1/out > cable1/in", "cable1/out > pad1/in"]);
  });

  test("a wire that is taken off together with the part stays off", () => {
    const after = must(removeParts(chain, new Set(["pad1"]), new Set(["pad1.out>cable2.in"])));
    expect(wiring(after)).toEqual([
      "aerial1/out > cable1/in",
      "cable2/out > split1/in",
      "split1/out1 > tv1/in",
      "split1/out2 > tv2/in",
    ]);
  });

  test("closes the trunk of a tap, and drops its branch", () => {
    const tapped = drawn(
      ["aerial-uhf", "tap", "receiver-tv", "receiver-tv"],
      ["aerial1/out > tap1/in", "tap1/out > tv1/in", "tap1/tap1 > tv2/in"],
    );
    expect(wiring(must(removeParts(tapped, new Set(["tap1"]), NONE)))).toEqual(["aerial1/out > tv1/in"]);
  });

  test("a circle of removed parts comes to an end", () => {
    const circle = {
      ...drawn(["cable", "cable"]),
      wires: [
        { from: ["cable1", "out"], to: ["cable2", "in"] },
        { from: ["cable2", "out"], to: ["cable1", "in"] },
      ] as const,
    };
    expect(must(removeParts(circle, new Set(["cable1", "cable2"]), NONE)).wires).toEqual([]);
  });

  test("nothing changes nothing: the same object comes back", () => {
    expect(must(removeParts(chain, NONE, NONE))).toBe(chain);
    expect(must(removeParts(chain, new Set(["gone1"]), new Set(["gone"])))).toBe(chain);
  });

  test("leaves a design that a file can hold, for any design and any choice", () => {
    fc.assert(
      fc.property(
        anyDesign({ loops: true }).chain((design) => fc.tuple(fc.constant(design), someOf(design))),
        ([design, chosen]) => {
          const after = must(removeParts(design, chosen.parts, chosen.wires));
          expect(readDesign(writeDesign(after))).toEqual({ ok: true, design: after, notes: [] });
          expect(after.parts.some((part) => chosen.parts.has(part.id))).toBe(false);
        },
      ),
      { numRuns: 150 },
    );
  });

  test("of one joined inline part takes away exactly one wire, for any design", () => {
    fc.assert(
      fc.property(anyDesign(), (design) => {
        for (const part of design.parts) {
          const way = kindOf(part.kind)?.inline;
          const count = (port: string | undefined, side: "from" | "to") =>
            design.wires.filter((wire) => wire[side][0] === part.id && wire[side][1] === port).length;
          const all = design.wires.filter(
            (wire) => wire.from[0] === part.id || wire.to[0] === part.id,
          ).length;
          const healed = count(way?.in, "to") === 1 && count(way?.out, "from") === 1 ? 1 : 0;
          const after = must(removeParts(design, new Set([part.id]), NONE));
          expect(after.wires.length).toBe(design.wires.length - all + healed);
        }
      }),
      { numRuns: 60 },
    );
  });
});
