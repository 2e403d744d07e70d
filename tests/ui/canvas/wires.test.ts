/** How wires run. Geometry of our own; checked against plain arithmetic, written apart from the router's. */
import Elk from "elkjs/lib/elk.bundled.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { moveParts } from "../../../src/design/edits/parts.ts";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { arranged } from "../../../src/ui/canvas/arrangement.ts";
import { boxesOf } from "../../../src/ui/canvas/boxes.ts";
import { BoxIndex } from "../../../src/ui/canvas/boxIndex.ts";
import { avoidLyingOn } from "../../../src/ui/canvas/crosswise.ts";
import { inLanes } from "../../../src/ui/canvas/lanes.ts";
import type { Box, Point } from "../../../src/ui/canvas/layout.ts";
import { routePath, routeWire } from "../../../src/ui/canvas/route.ts";
import { routesOf } from "../../../src/ui/canvas/routes.ts";
import { anyDesign } from "../../arbitraries.ts";
import { draw } from "../../draw.ts";
import { anyStructure, STRUCTURES } from "../../structures.ts";

const box = (x: number, y: number, width = 144, height = 104): Box => ({ x, y, width, height });

type Run = { readonly wire: string; readonly a: Point; readonly b: Point };

const runsOf = (wire: string, points: readonly Point[]): Run[] =>
  points.slice(1).map((b, i) => ({ wire, a: points[i] ?? b, b }));

const allRuns = (design: Design) => [...routesOf(design)].flatMap(([id, { points }]) => runsOf(id, points));

/** Length that a run has inside a box, more than a pixel from its edges, where ports sit. */
function inside({ a, b }: Run, each: Box): boolean {
  const [left, right] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const [top, bottom] = [Math.min(a.y, b.y), Math.max(a.y, b.y)];
  return (
    right > each.x + 1 &&
    left < each.x + each.width - 1 &&
    bottom > each.y + 1 &&
    top < each.y + each.height - 1
  );
}

/** Wires that lie on each other, nearer than 2 px over more than 4 px. */
function lyingOnEachOther(runs: readonly Run[]): string[] {
  const found: string[] = [];
  runs.forEach((p, i) => {
    for (const q of runs.slice(i + 1)) {
      if (p.wire === q.wire) continue;
      for (const [along, across] of [
        ["x", "y"],
        ["y", "x"],
      ] as const) {
        if (p.a[across] !== p.b[across] || q.a[across] !== q.b[across]) continue;
        const start = Math.max(Math.min(p.a[along], p.b[along]), Math.min(q.a[along], q.b[along]));
        const stop = Math.min(Math.max(p.a[along], p.b[along]), Math.max(q.a[along], q.b[along]));
        if (stop - start > 4 && Math.abs(p.a[across] - q.a[across]) < 2) found.push(`${p.wire} ${q.wire}`);
      }
    }
  });
  return found;
}

function throughBoxes(design: Design, runs: readonly Run[]): string[] {
  const boxes = boxesOf(design);
  return runs.flatMap((run) =>
    boxes.flatMap((b, i) => (inside(run, b) ? [`${run.wire} ${design.parts[i]?.id}`] : [])),
  );
}

async function laidOut(design: Design): Promise<Design> {
  const edit = moveParts(design, await arranged(design, new Elk()));
  if (!edit.ok) throw new Error(edit.reason);
  return edit.design;
}

function expectTidy(design: Design): void {
  const runs = allRuns(design);
  expect(throughBoxes(design, runs)).toEqual([]);
  expect(lyingOnEachOther(runs)).toEqual([]);
}

describe("a wire", () => {
  test("between ports at one height is one straight line", () => {
    const route = routeWire({ from: { x: 0, y: 28 }, to: { x: 200, y: 28 }, boxes: [] });
    expect(route.points).toEqual([
      { x: 0, y: 28 },
      { x: 200, y: 28 },
    ]);
  });

  test("goes around a card that stands between", () => {
    const between = box(300, 0);
    const { points } = routeWire({
      from: { x: 144, y: 28 },
      to: { x: 700, y: 28 },
      boxes: [box(0, 0), between, box(700, 0)],
    });
    expect(runsOf("", points).filter((run) => inside(run, between))).toEqual([]);
  });

  test("goes around a fence that leaves no way of few bends", () => {
    // Two columns of cards with gaps at other heights, and no end of them within reach.
    const fence = [-9, -8, -7, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8].flatMap((n) => [
      box(300, n * 120),
      box(500, n * 120 + 56),
    ]);
    const { points } = routeWire({ from: { x: 144, y: 28 }, to: { x: 760, y: 28 }, boxes: fence });
    expect(runsOf("", points).filter((run) => fence.some((b) => inside(run, b)))).toEqual([]);
  });

  test("to a card on the left runs around both ends rather than under them", () => {
    const ends = [box(400, 0), box(0, 0)];
    const { points } = routeWire({ from: { x: 544, y: 28 }, to: { x: 0, y: 28 }, boxes: ends });
    expect(runsOf("", points).filter((run) => ends.some((b) => inside(run, b)))).toEqual([]);
  });

  test("begins at the output, ends level at the input, and only ever runs level or upright", () => {
    const place = fc.record({
      x: fc.integer({ min: -900, max: 900 }),
      y: fc.integer({ min: -900, max: 900 }),
    });
    fc.assert(
      fc.property(place, place, fc.array(place, { maxLength: 6 }), (from, to, at) => {
        const { points } = routeWire({ from, to, boxes: at.map(({ x, y }) => box(x, y)) });
        expect(points[0]).toEqual(from);
        expect(points.at(-1)).toEqual(to);
        for (const { a, b } of runsOf("", points)) expect(a.x === b.x || a.y === b.y).toBe(true);
        expect(routePath(points)).not.toMatch(/NaN|undefined/);
        if (from.x === to.x && from.y === to.y) return;
        expect([points[1]?.y, points.at(-2)?.y]).toEqual([from.y, to.y]);
        if (at.length > 0) return;
        // Where nothing stands in its way: out of an output to the right, into an input from the left.
        expect(points[1]?.x).toBeGreaterThan(from.x);
        expect(points.at(-2)?.x).toBeLessThan(to.x);
      }),
      // Ends so near to each other that a wire must come back are rare among all.
      {
        numRuns: 500,
        examples: [
          [{ x: 4, y: 0 }, { x: -16, y: -1 }, []],
          [{ x: 0, y: 5 }, { x: -1, y: 5 }, []],
        ],
      },
    );
  });
});

describe("lanes", () => {
  const upright = (y1: number, y2: number, wanted = 20) => ({
    wanted,
    min: 10,
    max: 40,
    ends: [
      { at: y1, side: -1 },
      { at: y2, side: 1 },
    ] as const,
  });

  test("keep wires that run beside each other at least 7 px apart where there is room", () => {
    const places = inLanes([upright(0, 100), upright(20, 120), upright(40, 140), upright(60, 160)]);
    const sorted = [...places].sort((a, b) => a - b);
    sorted.slice(1).forEach((x, i) => {
      expect(x - (sorted[i] ?? 0)).toBeGreaterThanOrEqual(7);
    });
    for (const x of places) expect(x >= 10 && x <= 40).toBe(true);
  });

  test("are ordered so that wires that go down side by side do not cross: the upper one bends last", () => {
    // Both come from the left and go on to the right, the second always below the first.
    const [first = 0, second = 0] = inLanes([upright(0, 100), upright(20, 120)]);
    expect(first).toBeGreaterThan(second);
  });

  test("are left alone by what runs elsewhere", () => {
    expect(inLanes([upright(0, 100), upright(200, 300)])).toEqual([20, 20]);
  });
});

describe("wires that change places", () => {
  test("in one gap: one turns first and last, the other between", () => {
    const down = { from: { x: 0, y: 52 }, to: { x: 40, y: 76 }, way: { uprights: [20], levels: [52, 76] } };
    const up = { from: { x: 0, y: 76 }, to: { x: 40, y: 52 }, way: { uprights: [20], levels: [76, 52] } };
    avoidLyingOn([down, up], new BoxIndex([]));
    expect(down.way).toEqual({ uprights: [10, 30], levels: [52, 64, 76] });
    expect(up.way).toEqual({ uprights: [20], levels: [76, 52] });
  });

  test("past a card: who arrives where another leaves turns behind it, not before the card", () => {
    // The card stands from 24 to 168; the other one turns in the gap behind it.
    const arrives = {
      from: { x: 0, y: 68 },
      to: { x: 200, y: 196 },
      way: { uprights: [12], levels: [68, 196] },
    };
    const leaves = {
      from: { x: 0, y: 196 },
      to: { x: 200, y: 172 },
      way: { uprights: [181], levels: [196, 172] },
    };
    avoidLyingOn([arrives, leaves], new BoxIndex([box(24, 80)]));
    expect(arrives.way.levels).toEqual([68, 196]);
    expect(arrives.way.uprights[0]).toBeGreaterThanOrEqual(181);
    expect(leaves.way.uprights).toEqual([181]);
  });

  test("where no other place is left: it runs beside the other one until that has turned", () => {
    // Another card stands in the way of the late turn.
    const arrives = {
      from: { x: 0, y: 116 },
      to: { x: 200, y: 236 },
      way: { uprights: [12], levels: [116, 236] },
    };
    const leaves = {
      from: { x: 0, y: 236 },
      to: { x: 200, y: 212 },
      way: { uprights: [181], levels: [236, 212] },
    };
    avoidLyingOn([arrives, leaves], new BoxIndex([box(24, 96, 144, 128)]));
    expect(arrives.way).toEqual({ uprights: [12, 190], levels: [116, 248, 236] });
  });

  test("trunks that sit on each other's inputs do not lie on each other", async () => {
    const swapped = "q.vl > m.hl, q.hl > m.vl, q.vh > m.hh, q.hh > m.vh";
    expectTidy(await laidOut(draw({ q: ["lnb-quattro"], m: ["multiswitch"] }, swapped)));
  });
});

describe("the wires of a design", () => {
  test.each(EXAMPLES)("$key: none through a card, none on another", ({ load }) => {
    expectTidy(load());
  });

  test.each(EXAMPLES)("$key: run the same when asked again", ({ load }) => {
    const once = [...routesOf(load())];
    routesOf(draw({ a: ["aerial-uhf"] }, ""));
    expect([...routesOf(load())]).toEqual(once);
  });

  test.each(Object.entries(STRUCTURES))(
    "%s, laid out: none through a card, none on another",
    async (_, make) => {
      expectTidy(await laidOut(make(24)));
    },
  );

  test("laid out, whatever the row of stages: none through a card, none on another", async () => {
    await fc.assert(
      fc.asyncProperty(anyStructure(5), async (design) => expectTidy(await laidOut(design))),
      { numRuns: 12 },
    );
  });

  test("laid out, whatever is joined with whatever: none through a card, none on another", async () => {
    await fc.assert(
      fc.asyncProperty(anyDesign(), async (design) => expectTidy(await laidOut(design))),
      { numRuns: 25 },
    );
  });

  test("that did not change keep their objects when another card moves", () => {
    const example = EXAMPLES[0]?.load();
    if (!example) throw new Error("no example");
    const before = routesOf(example);
    const moved = moveParts(example, new Map([["tv4", [2000, 2000]]]));
    if (!moved.ok) throw new Error(moved.reason);
    const after = routesOf(moved.design);
    expect(after.get("dish.sky>lnb.sky")).toBe(before.get("dish.sky>lnb.sky"));
    expect(after.get("plate4.tv>tv4.in")).not.toBe(before.get("plate4.tv>tv4.in"));
  });
});
