/** Designs laid out all at once. Geometry of our own; sizes wanted from the drawing guide of the canvas. */
import Elk from "elkjs/lib/elk.bundled.js";
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { moveParts } from "../../../src/design/edits/parts.ts";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { partById } from "../../../src/design/lookup.ts";
import { arranged, arrangedAmong, arrangedAround, type Places } from "../../../src/ui/canvas/arrangement.ts";
import { boxesOf, boxOf, portPoint } from "../../../src/ui/canvas/boxes.ts";
import { boundsOf, GRID_PX, overlaps } from "../../../src/ui/canvas/layout.ts";
import { fittingView } from "../../../src/ui/canvas/viewMath.ts";
import { draw } from "../../draw.ts";

function example(key: string): Design {
  const found = EXAMPLES.find((e) => e.key === key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
}

function moved(design: Design, places: Places): Design {
  const edit = moveParts(design, places);
  if (!edit.ok) throw new Error(edit.reason);
  return edit.design;
}

function zoomIn(design: Design, width: number, height: number): number {
  const bounds = boundsOf(boxesOf(design));
  if (!bounds) throw new Error("nothing there");
  return fittingView(bounds, { width, height }).zoom;
}

const anyOverlap = (design: Design) =>
  boxesOf(design).some((a, i, all) => all.slice(i + 1).some((b) => overlaps(a, b)));

function point(design: Design, id: string, port: string) {
  const part = partById(design, id);
  const at = part && portPoint(design, part, port);
  if (!at) throw new Error(`no port ${id}.${port}`);
  return at;
}

describe("the examples", () => {
  test.each(EXAMPLES)(
    "$key: stands as it is laid out, on the grid, no card over another",
    async ({ load }) => {
      const design = load();
      const places = await arranged(design, new Elk());
      for (const { id, at } of design.parts) {
        expect([id, at]).toEqual([id, places.get(id)]);
        expect([at[0] % GRID_PX, at[1] % GRID_PX]).toEqual([0, 0]);
      }
      expect(anyOverlap(design)).toBe(false);
    },
  );

  test.each(EXAMPLES)("$key: every wire runs to the right", ({ load }) => {
    const design = load();
    for (const { from, to } of design.wires) {
      // Two ports with a straight piece at each.
      expect(point(design, to[0], to[1]).x - point(design, from[0], from[1]).x).toBeGreaterThanOrEqual(16);
    }
  });

  test.each(EXAMPLES)(
    "$key: a run of cable is level with what it feeds, and most wires are straight",
    ({ load }) => {
      const design = load();
      const cables = new Set(design.parts.filter((p) => boxOf(design, p).height === 24).map((p) => p.id));
      const offs = design.wires.filter(
        ({ from, to }) => point(design, from[0], from[1]).y !== point(design, to[0], to[1]).y,
      );
      expect(offs.length).toBeLessThanOrEqual(design.wires.length * 0.55);
      // Where two cables feed one plate, one of them gives way.
      const bent = offs.filter(({ from }) => cables.has(from[0]));
      expect(bent.length).toBeLessThanOrEqual(cables.size / 2);
    },
  );

  // Canvas beside the verdict in windows of 1440×900, 1920×1080, 1280×800 and 820×1180. Strips are 136×60 at zoom 1:
  // 140, 200, 120 and 110 px wide are wanted, that is 1.03, 1.471, 0.883 and 0.81; the first aims higher.
  test.each([
    { key: "house-wideband-fails", width: 1092, height: 816, least: 1.15 },
    { key: "house-wideband-fails", width: 1572, height: 996, least: 1.471 },
    { key: "house-wideband-fails", width: 968, height: 716, least: 0.89 },
    { key: "house-wideband-fails", width: 820, height: 700, least: 0.82 },
    { key: "house-universal", width: 1092, height: 816, least: 1.15 },
    { key: "house-universal", width: 1572, height: 996, least: 1.471 },
    { key: "house-universal", width: 968, height: 716, least: 0.89 },
    { key: "house-universal", width: 820, height: 700, least: 0.82 },
    { key: "house-stacked", width: 1092, height: 816, least: 1.15 },
    { key: "split-switched-output", width: 1092, height: 816, least: 1.3 },
    { key: "long-steel-drop", width: 1092, height: 816, least: 1.5 },
    { key: "house-separate-cables", width: 1092, height: 816, least: 0.8 },
  ])("$key fits into $width×$height at zoom $least and more", ({ key, width, height, least }) => {
    expect(zoomIn(example(key), width, height)).toBeGreaterThanOrEqual(least);
  });

  test("have their receivers in one column at the right", () => {
    const design = example("house-wideband-fails");
    const ends = design.parts.filter((p) => p.kind.startsWith("receiver"));
    const right = boundsOf(boxesOf(design));
    expect(new Set(ends.map((p) => p.at[0])).size).toBe(1);
    for (const p of ends) {
      const { x, width } = boxOf(design, p);
      expect(x + width).toBe((right?.x ?? 0) + (right?.width ?? 0));
    }
  });
});

describe("arranging", () => {
  test("of nothing is nothing", async () => {
    expect((await arranged({ title: "", parts: [], wires: [] }, new Elk())).size).toBe(0);
  });

  test("puts what no wire joins below the rest, beside each other", async () => {
    const design = draw(
      { a: ["aerial-uhf"], b: ["amp-masthead"], e: ["receiver-tv"], c: ["splitter"], d: ["dish"] },
      "a.out > b.in, b.out > e.in",
    );
    const after = moved(design, await arranged(design, new Elk()));
    const [a, b, e, c, d] = boxesOf(after);
    if (!a || !b || !c || !d || !e) throw new Error("parts are missing");
    expect(anyOverlap(after)).toBe(false);
    expect(Math.min(c.y, d.y)).toBeGreaterThanOrEqual(
      Math.max(...[a, b, e].map((each) => each.y + each.height)),
    );
    expect(c.y).toBe(d.y);
  });

  test("of a selection leaves the others where they are, and comes to lie where it was", async () => {
    const design = example("house-wideband-fails");
    const chosen = new Set(["plate3", "tv3", "drop3", "plate4", "tv4", "drop4"]);
    const messy = moved(
      design,
      new Map([...chosen].map((id, i) => [id, [560 + 40 * i, 432 + 16 * i] as const])),
    );
    const places = await arrangedAmong(messy, chosen, new Elk());
    expect(new Set(places.keys())).toEqual(chosen);
    const after = moved(messy, places);
    expect(anyOverlap(after)).toBe(false);
    const bounds = boundsOf(after.parts.filter((p) => chosen.has(p.id)).map((p) => boxOf(after, p)));
    expect(bounds?.x).toBe(560);
    expect(Math.abs((bounds?.y ?? 0) - 432)).toBeLessThanOrEqual(200);
    expect(point(after, "drop3", "out").y).toBe(point(after, "plate3", "in").y);
    expect(point(after, "plate3", "tv").y).toBe(point(after, "tv3", "in").y);
  });

  test("around what was placed by hand leaves that alone, covers nothing and still runs to the right", async () => {
    const design = example("house-wideband-fails");
    const byHand = new Map([
      ["plate3", [640, 80]],
      ["tv3", [800, 96]],
    ] as const);
    const heap = moved(
      design,
      new Map(design.parts.map((p) => [p.id, byHand.get(p.id as "plate3") ?? ([8, 8] as const)])),
    );
    const places = await arrangedAround(heap, new Set(byHand.keys()), new Elk());
    expect([...places.keys()].sort()).toEqual(
      design.parts
        .map((p) => p.id)
        .filter((id) => id !== "plate3" && id !== "tv3")
        .sort(),
    );
    const after = moved(heap, places);
    expect(anyOverlap(after)).toBe(false);
    expect(partById(after, "plate3")?.at).toEqual([640, 80]);
    expect(partById(after, "tv3")?.at).toEqual([800, 96]);
    for (const { from, to } of after.wires) {
      const [left, right] = [partById(after, from[0]), partById(after, to[0])];
      expect(left?.at[0] ?? 0, `${from} > ${to}`).toBeLessThan(right?.at[0] ?? 0);
    }
  });

  test("of a selection over which others stand gives way to them", async () => {
    const design = draw({ a: ["aerial-uhf"], b: ["splitter"], c: ["dish"] }, "a.out > b.in");
    const crowded = moved(
      design,
      new Map([
        ["a", [0, 0]],
        ["b", [0, 200]],
        ["c", [160, 0]],
      ] as const),
    );
    const after = moved(crowded, await arrangedAmong(crowded, new Set(["a", "b"]), new Elk()));
    expect(anyOverlap(after)).toBe(false);
    expect(partById(after, "c")?.at).toEqual([160, 0]);
  });
});
