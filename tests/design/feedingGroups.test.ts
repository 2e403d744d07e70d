/**
 * Places grouped under what feeds them. Expected groups are read off the drawings as a tradesman would; what holds for
 * any drawing is checked by counting against the drawing itself.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { exampleOf } from "../../src/design/examples.ts";
import { feedingGroupsOf } from "../../src/design/feeding/feedingGroups.ts";
import { kindOf } from "../../src/parts/catalogue.ts";
import { anyDesign } from "../arbitraries.ts";
import { largeDesign } from "../bench/largeDesign.ts";
import { anyStructure } from "../structures.ts";
import { drawn } from "./house.ts";

const example = (key: string): Design => {
  const found = exampleOf(key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
};

/** "feeder: place place": each place by the part that it is named after. */
const summary = (design: Design): readonly string[] =>
  feedingGroupsOf(design).groups.map(
    ({ feeder, places }) => `${feeder ?? "nothing"}: ${places.map((p) => p.key).join(" ")}`,
  );

const RISER_WIRES = [
  "aerial1/out > amp1/in",
  "amp1/out > cable1/in",
  "cable1/out > plate1/in",
  "plate1/out > cable2/in",
  "cable2/out > plate2/in",
  "plate2/out > plate3/in",
  "plate1/tv > tv1/in",
  "plate3/tv > tv2/in",
];
const RISER = [
  "aerial-uhf",
  ["amp-distribution", { inputs: "one" }],
  ["cable", { lengthM: 5 }],
  "outlet-through",
  ["cable", { lengthM: 3 }],
  "outlet-through",
  "outlet-end",
  "receiver-tv",
  "receiver-tv",
] as const;

describe("places under what feeds them", () => {
  test("the rooms of a house hang on the amplifier in the loft, with the diplexers and drops between", () => {
    const { head, groups } = feedingGroupsOf(example("house-universal"));
    expect(groups).toHaveLength(1);
    expect(groups[0]).toMatchObject({ key: "amp", feeder: "amp" });
    expect(groups[0]?.places.map((p) => [p.outlets, p.receivers.length, p.cableM])).toEqual([
      [["plate1"], 3, 16],
      [["plate2"], 2, 12],
      [["plate3"], 1, 9],
      [["plate4"], 1, 18],
    ]);
    expect([...head].sort()).toEqual(["dab", "dish", "fm", "lnb", "uhf"]);
    expect(groups[0]?.between).toHaveLength(6);
  });

  test("the flats of a block hang on its multiswitch, in the order of its outputs", () => {
    const design = example("block-multiswitch");
    const turned = { ...design, parts: [...design.parts].reverse(), wires: [...design.wires].reverse() };
    for (const each of [design, turned])
      expect(summary(each)).toEqual(["ms: plate1 plate2 plate3 plate4 plate5 plate6"]);
  });

  test("rooms without a flat's name hang on the splitter of their flat", () => {
    const named = example("block-stacked");
    const parts = named.parts.map((part) =>
      "dwelling" in part.options ? { ...part, options: { ...part.options, dwelling: "" } } : part,
    );
    expect(summary({ ...named, parts })).toEqual([
      "split1: plate11 plate12",
      "split2: plate21 plate22",
      "split3: plate31 plate32",
      "split4: plate41 plate42",
    ]);
  });

  test("outlets of one flat are one place, and its own splitter belongs to it", () => {
    const design = example("block-stacked");
    const named = {
      ...design,
      parts: design.parts.map((part) => {
        const [, flat] = /^plate(\d)\d$/.exec(part.id) ?? [];
        return flat ? { ...part, options: { ...part.options, dwelling: ` ${flat} ` } } : part;
      }),
    };
    const { groups } = feedingGroupsOf(named);
    expect(groups.map((g) => g.feeder)).toEqual(["stack"]);
    // Drop to the flat and the longer of the two leads within it: 14 + 10, 18 + 10, 22 + 10, 26 + 10 m.
    expect(
      groups[0]?.places.map((p) => [p.dwelling, p.outlets.length, p.receivers.length, p.cableM]),
    ).toEqual([
      ["1", 2, 3, 24],
      ["2", 2, 3, 28],
      ["3", 2, 3, 32],
      ["4", 2, 3, 36],
    ]);
    expect(groups[0]?.between).toContain("split1");
  });

  test("plates on a riser hang on what begins the riser, along the line", () => {
    const { head, groups } = feedingGroupsOf(drawn(RISER, RISER_WIRES));
    expect(groups).toHaveLength(1);
    expect(groups[0]).toMatchObject({ feeder: "amp1", riser: "out" });
    expect(groups[0]?.places.map((p) => [p.key, p.receivers, p.cableM])).toEqual([
      ["plate1", ["tv1"], 5],
      ["plate2", [], 8],
      ["plate3", ["tv2"], 8],
    ]);
    expect(head).toEqual(["aerial1"]);
  });

  test("two risers of one splitter are two groups", () => {
    const design = drawn(
      ["aerial-uhf", "splitter", "outlet-through", "outlet-end", "outlet-through", "outlet-end"],
      [
        "aerial1/out > split1/in",
        "split1/out1 > plate1/in",
        "plate1/out > plate2/in",
        "split1/out2 > plate3/in",
        "plate3/out > plate4/in",
      ],
    );
    expect(feedingGroupsOf(design).groups.map((g) => [g.key, g.places.map((p) => p.key)])).toEqual([
      ["split1.out1", ["plate1", "plate2"]],
      ["split1.out2", ["plate3", "plate4"]],
    ]);
  });

  test("of two that feed a place the nearer one is taken, cable not counted", () => {
    const design = drawn(
      [
        "aerial-uhf",
        "splitter",
        "cable",
        "diplexer-combine",
        "outlet-diplexed",
        "outlet-tv",
        "lnb-universal",
        ["splitter", { ways: 3 }],
        "amp-if",
        "outlet-sat",
        "outlet-sat",
      ],
      [
        "aerial1/out > split1/in",
        "split1/out1 > cable1/in",
        "cable1/out > diplex1/tv",
        "diplex1/out > plate1/in",
        "split1/out2 > plate2/in",
        "lnb1/out > split2/in",
        "split2/out1 > lineamp1/in",
        "lineamp1/out > diplex1/sat",
        "split2/out2 > plate3/in",
        "split2/out3 > plate4/in",
      ],
    );
    expect(summary(design)).toEqual(["split1: plate1 plate2", "split2: plate3 plate4"]);
  });

  test("without any branch the nearest part that is no cable feeds", () => {
    expect(summary(example("long-steel-drop"))).toEqual(["lnb: plate"]);
  });

  test("what nothing feeds comes last, under nothing", () => {
    const design = drawn(["receiver-tv", "aerial-uhf", "receiver-tv"], ["aerial1/out > tv2/in"]);
    expect(summary(design)).toEqual(["aerial1: tv2", "nothing: tv1"]);
  });

  test("loops do no harm: splitters that feed each other, a cable that feeds itself", () => {
    const split = drawn(["splitter", "splitter", "receiver-tv", "cable"]);
    const design: Design = {
      ...split,
      wires: [
        { from: ["split1", "out1"], to: ["split2", "in"] },
        { from: ["split2", "out1"], to: ["split1", "in"] },
        { from: ["split2", "out2"], to: ["tv1", "in"] },
        { from: ["cable1", "out"], to: ["cable1", "in"] },
      ],
    };
    expect(summary(design)).toEqual(["split2: tv1"]);
    expect(feedingGroupsOf(design).head).toContain("cable1");
  });
});

describe("any drawing", () => {
  const anything = fc.oneof(anyDesign({ maxParts: 25 }), anyStructure(4));

  test("has every part in one place, every receiver and outlet among the places", () => {
    fc.assert(
      fc.property(anything, (design) => {
        const { head, groups } = feedingGroupsOf(design);
        const places = groups.flatMap((g) => g.places.flatMap((p) => [...p.outlets, ...p.receivers]));
        const feeders = new Set(groups.flatMap((g) => (g.feeder === undefined ? [] : [g.feeder])));
        const all = [...head, ...feeders, ...places, ...groups.flatMap((g) => g.between)];
        expect([...all].sort()).toEqual(design.parts.map((p) => p.id).sort());
        const served = design.parts.filter((p) => {
          const kind = kindOf(p.kind);
          return kind?.delivery !== undefined || kind?.reception !== undefined;
        });
        expect([...places].sort()).toEqual(served.map((p) => p.id).sort());
        expect(new Set(groups.map((g) => g.key)).size).toBe(groups.length);
      }),
    );
  });

  test("is grouped alike in whatever order its wires were drawn", () => {
    fc.assert(
      fc.property(anything, (design) => {
        const turned = { ...design, wires: [...design.wires].reverse() };
        const { groups } = feedingGroupsOf(turned);
        expect(groups.map(({ between: _, ...g }) => g)).toEqual(
          feedingGroupsOf(design).groups.map(({ between: _, ...g }) => g),
        );
      }),
    );
  });

  test("of 4,000 parts is grouped by its multiswitches", () => {
    const { groups } = feedingGroupsOf(largeDesign(4000));
    // 9 parts of the head-end and 16 flats of four parts each: 73 parts a block.
    expect(groups.length).toBe(Math.ceil(4000 / 73));
    expect(groups[0]?.places).toHaveLength(16);
  });
});
