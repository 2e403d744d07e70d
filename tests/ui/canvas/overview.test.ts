/**
 * What an overview shows in which pane. Least sizes of strips and names are those the drawing is to have: 115 × 45 px and
 * 11 px for a block of twelve receivers, 125 × 50 for one of forty outlets at 1440 × 900, 114 × 40 at 1280 × 800.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { EXAMPLES, exampleOf } from "../../../src/design/examples.ts";
import type { Box } from "../../../src/ui/canvas/layout.ts";
import { textWidth } from "../../../src/ui/canvas/lettering.ts";
import { placeNames } from "../../../src/ui/canvas/overview/names.ts";
import { type OverviewPlan, overviewFor } from "../../../src/ui/canvas/overview/overviewFor.ts";
import {
  isStripItem,
  itemOfParts,
  partsOfItem,
  placesIn,
  skeletonOf,
  stripItem,
} from "../../../src/ui/canvas/overview/skeleton.ts";
import { stepsInOverview } from "../../../src/ui/canvas/overview/walkSteps.ts";
import { hasOverview, leavesDrawing, opensAsOverview } from "../../../src/ui/canvas/overview/whenOverview.ts";
import { largeDesign } from "../../bench/largeDesign.ts";
import { drawn as house } from "../../design/house.ts";
import { anyStructure, blockOfFlats } from "../../structures.ts";

/** What rail, side pane, title and the row below leave of a screen of 1440 × 900 and of 1280 × 800 [px]. */
const DESK = { width: 1091, height: 816 };
const SMALL_DESK = { width: 967, height: 716 };
const NAME_PX = 12.5;

const example = (key: string): Design => {
  const found = exampleOf(key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
};

const plan = (design: Design, pane = DESK, isBarOver = false): OverviewPlan =>
  overviewFor(skeletonOf(design), { ...pane, isBarOver });

type Drawn = Exclude<OverviewPlan, { level: "cells" }>;

const drawn = (design: Design, pane = DESK): Drawn => {
  const found = plan(design, pane);
  if (found.level === "cells") throw new Error("cells have no plan");
  return found;
};

/** Everything that has a place of its own: cards, boxes, tiles. */
const boxesIn = ({ layout }: Drawn): readonly Box[] =>
  "places" in layout
    ? [...layout.cards.values(), ...layout.places.values()]
    : [...layout.head.cards.values(), ...layout.frames.flatMap((frame) => [...frame.tiles.values()])];

const stripOf = ({ layout, scale }: Drawn) =>
  "places" in layout
    ? { width: 144 * scale, height: layout.style.stripPx * scale }
    : { width: layout.strip.width * scale, height: layout.strip.height * scale };

describe("what fits a pane", () => {
  test("twelve receivers of six flats: boxes, with strips and names that can be read", () => {
    const found = drawn(example("block-multiswitch"));
    expect(found.level).toBe("boxes");
    expect(stripOf(found).width).toBeGreaterThanOrEqual(115);
    expect(stripOf(found).height).toBeGreaterThanOrEqual(45);
    expect(NAME_PX * found.scale).toBeGreaterThanOrEqual(11);
  });

  test.each([
    { pane: DESK, least: { width: 125, height: 50 } },
    { pane: SMALL_DESK, least: { width: 114, height: 40 } },
  ])("forty outlets: a façade with readable strips in $pane.width px", ({ pane, least }) => {
    const found = drawn(blockOfFlats({ switches: 2, flatsEach: 20 }), pane);
    expect(found.level).toBe("facade");
    expect(stripOf(found).width).toBeGreaterThanOrEqual(least.width);
    expect(stripOf(found).height).toBeGreaterThanOrEqual(least.height);
    expect(NAME_PX * found.scale).toBeGreaterThanOrEqual(11);
  });

  test("where strips have no room, or would be too many to draw, places are cells", () => {
    expect(plan(blockOfFlats({ switches: 2, flatsEach: 20 }), { width: 640, height: 360 }).level).toBe(
      "cells",
    );
    expect(plan(blockOfFlats({ switches: 9, flatsEach: 30 }), { width: 4000, height: 3000 }).level).toBe(
      "cells",
    );
  });

  test("nothing is cut off, nothing lies on another, every place is there once", () => {
    const panes = [DESK, SMALL_DESK, { width: 1571, height: 996 }, { width: 820, height: 1000 }];
    const designs = [
      ...EXAMPLES.map((e) => e.load()),
      blockOfFlats({ switches: 2, flatsEach: 20 }),
      blockOfFlats({ switches: 3, flatsEach: 4 }),
    ];
    for (const design of designs) for (const pane of panes) expectSound(design, pane);
    fc.assert(
      fc.property(anyStructure(8), fc.constantFrom(...panes), (design, pane) => expectSound(design, pane)),
      { numRuns: 40 },
    );
  });

  // A tablet held upright with its sheet put away, and with it open. Outlets of one flat are one place: four flats of
  // one multiswitch are four tiles, six are six. Four side by side would be a fifth narrower than three and one below;
  // of six flats, three by two are larger than two by two with half the pane empty.
  test.each([
    { key: "block-stacked", pane: { width: 820, height: 1010 }, columns: 3 },
    { key: "block-stacked", pane: { width: 820, height: 613 }, columns: 3 },
    { key: "block-multiswitch", pane: { width: 820, height: 1010 }, columns: 3 },
    { key: "block-multiswitch", pane: { width: 820, height: 780 }, columns: 3 },
  ])("a façade leaves no column empty: $key in $pane.height px", ({ key, pane, columns }) => {
    const found = drawn(example(key), pane);
    if ("places" in found.layout) throw new Error("no façade");
    const tiles = found.layout.frames.flatMap((frame) => [...frame.tiles.values()]);
    expect(new Set(tiles.map((tile) => tile.x)).size).toBe(columns);
    const right = Math.max(...tiles.map((tile) => tile.x + tile.width)) * found.scale;
    expect(right).toBeGreaterThan(0.85 * pane.width);
  });

  test("the names in the head of a façade keep all their words", () => {
    // A card 95 px wide has 48 beside its symbol: “multiswitch” takes 76 and needs the symbol above it.
    const found = drawn(example("block-stacked"), { width: 820, height: 613 });
    if ("places" in found.layout) throw new Error("no façade");
    const { cards, isTall } = found.layout.head;
    expect(isTall).toBe(true);
    const names = new Map(skeletonOf(example("block-stacked")).cards.map(({ id, name }) => [id, name]));
    for (const [id, { width }] of cards)
      for (const word of (names.get(id) ?? "").split(" "))
        expect(textWidth(word, NAME_PX), word).toBeLessThanOrEqual(width - 12);
    // In a wide pane there is room beside them.
    const wide = drawn(blockOfFlats({ switches: 2, flatsEach: 20 }));
    expect("places" in wide.layout ? true : wide.layout.head.isTall).toBe(false);
  });

  test("the bar that floats in the corner covers nothing", () => {
    for (const { load } of EXAMPLES) {
      const found = plan(load(), { width: 820, height: 700 }, true);
      if (found.level === "cells") continue;
      for (const { x, y, height } of boxesIn(found)) {
        const isLeft = found.left + x * found.scale < 340;
        // The bar is 42 px high and stands 10 px above the lower edge.
        if (isLeft) expect(found.top + (y + height) * found.scale).toBeLessThanOrEqual(700 - 52 + 0.5);
      }
    }
  });
});

function expectSound(design: Design, pane: { width: number; height: number }): void {
  const found = plan(design, pane);
  if (found.level === "cells") return;
  const boxes = boxesIn(found);
  for (const { x, y, width, height } of boxes) {
    expect(found.left + x * found.scale).toBeGreaterThanOrEqual(-0.5);
    expect(found.top + y * found.scale).toBeGreaterThanOrEqual(-0.5);
    expect(found.left + (x + width) * found.scale).toBeLessThanOrEqual(pane.width + 0.5);
    expect(found.top + (y + height) * found.scale).toBeLessThanOrEqual(pane.height + 0.5);
  }
  const overlapping = boxes.flatMap((a, n) =>
    boxes
      .slice(n + 1)
      .filter(
        (b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height,
      ),
  );
  expect(overlapping).toEqual([]);
  const keys =
    "places" in found.layout
      ? [...found.layout.places.keys()]
      : found.layout.frames.flatMap((f) => [...f.tiles.keys()]);
  expect([...keys].sort()).toEqual(
    placesIn(skeletonOf(design))
      .map((place) => place.key)
      .sort(),
  );
}

describe("what an overview is made of", () => {
  test("cables are lengths of lines: from the multiswitch to each flat, from the LNB by four trunks", () => {
    // Read off the drawing of the example: drops of 12 to 32 m, trunks of 12 m; the third drop has the usual 20 m.
    const { links, cards } = skeletonOf(example("block-multiswitch"));
    const lengths = (from: string, to: RegExp) =>
      links.filter((l) => l.from === from && to.test(l.to)).map((l) => l.cableM);
    expect(lengths("ms", /^plate/)).toEqual([12, 16, 20, 24, 28, 32]);
    expect(lengths("lnb", /^ms$/)).toEqual([12, 12, 12, 12]);
    expect(lengths("dish", /^lnb$/)).toEqual([0]);
    expect(cards.map((card) => card.id)).toEqual(
      expect.arrayContaining(["dish", "lnb", "fm", "dab", "uhf", "trip", "amp", "ms"]),
    );
    expect(cards).toHaveLength(8);
  });

  test("in a thousand parts every receiver belongs to one place, whatever its state", () => {
    const design = largeDesign(1000);
    const receivers = design.parts.filter((part) => part.kind.startsWith("receiver")).map((part) => part.id);
    const shown = placesIn(skeletonOf(design)).flatMap((place) => place.receivers);
    expect(receivers.length).toBeGreaterThan(400);
    expect([...shown].sort()).toEqual([...receivers].sort());
  });

  test("a strip is a thing of its own, and stands for what it belongs to", () => {
    const skeleton = skeletonOf(example("block-multiswitch"));
    expect(partsOfItem(skeleton, stripItem("ms"))).toEqual(["ms"]);
    expect(isStripItem(stripItem("ms"))).toBe(true);
    expect(isStripItem("ms")).toBe(false);
  });

  test("a thing stands for its parts, and a part that only lies on the way for none", () => {
    const skeleton = skeletonOf(example("block-multiswitch"));
    expect(partsOfItem(skeleton, "plate2")).toEqual(["plate2", "sat2", "tv2"]);
    expect(itemOfParts(skeleton, ["tv2"])).toBe("plate2");
    expect(itemOfParts(skeleton, ["lnb"])).toBe("lnb");
    expect(itemOfParts(skeleton, ["drop2"])).toBeNull();
    expect(itemOfParts(skeleton, ["tv2", "drop2"])).toBeNull();
  });

  // Read off the drawing of the example: LNB, a trunk, the multiswitch, the drop of a flat, its outlet, its receiver.
  const DOWN = ["lnb", "down_hl", "ms", "drop3", "plate3", "sat3"];
  const walk = (way: readonly string[], here: string, lostAt?: string) =>
    stepsInOverview(
      skeletonOf(example("block-multiswitch")),
      new Map(
        way.map((part, n) => {
          const trouble = part === lostAt ? ({ kind: "lost", mark: "lost here" } as const) : null;
          return [part, { number: n + 1, isHere: part === here, trouble }];
        }),
      ),
    );
  const hereIn = (found: ReturnType<typeof walk>) =>
    [...found].filter(([, { isHere }]) => isHere).map(([item, { number }]) => `${item} ${number}`);

  test("each step of a walk is marked at one thing; a cable belongs to what it leads to", () => {
    expect(DOWN.map((here) => hereIn(walk(DOWN, here)))).toEqual([
      ["lnb 1"],
      ["ms 2"],
      ["ms 3"],
      ["plate3 4"],
      ["plate3 5"],
      ["plate3 6"],
    ]);
    // A supply goes up the same way, and is marked at the same things.
    const up = DOWN.toReversed();
    expect(up.map((here) => hereIn(walk(up, here)))).toEqual([
      ["plate3 1"],
      ["plate3 2"],
      ["plate3 3"],
      ["ms 4"],
      ["ms 5"],
      ["lnb 6"],
    ]);
  });

  test("a walk marks nothing beside its way, and where the signal is lost even if one stands elsewhere", () => {
    const found = walk(DOWN, "lnb", "sat3");
    expect([...found.keys()]).toEqual(["lnb", "ms", "plate3"]);
    expect(found.get("plate3")).toMatchObject({ number: 4, isHere: false, trouble: { kind: "lost" } });
    expect(found.get("ms")?.trouble).toBeNull();
    // A way that ends in a cable ends at what it came from.
    expect(hereIn(walk(["lnb", "down_hl"], "down_hl"))).toEqual(["lnb 2"]);
    expect(walk([], "lnb").size).toBe(0);
  });

  test("of several risers the one that is walked along is marked at its heading", () => {
    const wires = [
      "aerial1/out > split1/in",
      "split1/out1 > plate1/in",
      "plate1/out > plate2/in",
      "split1/out2 > plate3/in",
      "plate3/out > plate4/in",
    ];
    const outlets = ["outlet-through", "outlet-end", "outlet-through", "outlet-end"] as const;
    const skeleton = skeletonOf(house(["aerial-uhf", "splitter", ...outlets], wires));
    const steps = ["aerial1", "split1", "plate3", "plate4"].map(
      (part, n) => [part, { number: n + 1, isHere: n === 1, trouble: null }] as const,
    );
    expect([...stepsInOverview(skeleton, new Map(steps)).keys()]).toEqual([
      "aerial1",
      "split1",
      "split1.out2",
      "plate3",
      "plate4",
    ]);
  });

  test("neighbours keep what tells them apart; a number keeps the word before it", () => {
    const places = ["a", "b"].map((key) => ({ key, outlets: [key], receivers: [], cableM: 0 }));
    const named = (labels: Readonly<Record<string, string>>) =>
      placeNames(places, (id) => labels[id] ?? "").map(({ name, short }) => [name, short]);
    expect(named({ a: "Plate flat 1", b: "Plate flat 2" })).toEqual([
      ["Flat 1", "1"],
      ["Flat 2", "2"],
    ]);
    expect(named({ a: "Plate living room", b: "Plate bedroom" })).toEqual([
      ["Living room", "Living room"],
      ["Bedroom", "Bedroom"],
    ]);
  });
});

describe("when the overview stands in for the drawing", () => {
  test("where the names of cards could not be read", () => {
    expect(opensAsOverview(blockOfFlats({ switches: 2, flatsEach: 20 }), DESK)).toBe(true);
    expect(opensAsOverview(example("long-steel-drop"), DESK)).toBe(false);
  });

  test("never for a design without places, nor in the pane of a phone", () => {
    const { parts } = example("house-universal");
    const roof = { title: "Roof", parts: parts.filter((p) => p.id === "dish"), wires: [] };
    const far = {
      ...roof,
      parts: [...roof.parts, ...roof.parts.map((p) => ({ ...p, id: "d2", at: [9000, 0] as const }))],
    };
    expect(opensAsOverview(far, DESK)).toBe(false);
    expect(leavesDrawing(far, DESK, 0.1)).toBe(false);
    expect(hasOverview(largeDesign(300), { width: 390, height: 700 })).toBe(false);
  });

  test("zooming out of a small design leads there later than out of a large one", () => {
    const small = example("long-steel-drop");
    expect(leavesDrawing(small, DESK, 0.7)).toBe(false);
    expect(leavesDrawing(small, DESK, 0.6)).toBe(true);
  });
});
