/** Where cards go: by hand, into wires, in line with others, and all at once. Geometry of our own. */
import Elk from "elkjs/lib/elk.bundled.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN, wireId } from "../../../src/design/design.ts";
import { addPart, moveParts, newPart } from "../../../src/design/edits/parts.ts";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { partById } from "../../../src/design/lookup.ts";
import { CATALOGUE } from "../../../src/parts/catalogue.ts";
import { arranged } from "../../../src/ui/canvas/arrangement.ts";
import { boxesOf, boxOf, overlaps, portPoint } from "../../../src/ui/canvas/boxes.ts";
import { edgesOf, nodesOf } from "../../../src/ui/canvas/flowItems.ts";
import { alignTo } from "../../../src/ui/canvas/guides.ts";
import { boundsOf } from "../../../src/ui/canvas/layout.ts";
import { freePlace, insertWithRoom } from "../../../src/ui/canvas/place.ts";
import { detailFor } from "../../../src/ui/canvas/state.ts";
import { fittingView, nudgedIntoView, openingView } from "../../../src/ui/canvas/viewMath.ts";
import { foundKinds } from "../../../src/ui/features/tray/search.ts";
import { draw } from "../../draw.ts";

function part(design: Design, id: string) {
  const found = partById(design, id);
  if (!found) throw new Error(`no part ${id}`);
  return found;
}

function made(design: Design, kind: string) {
  const fresh = newPart(design, kind, [0, 0]);
  if (!fresh) throw new Error(`no kind ${kind}`);
  return fresh;
}

const anyOverlap = (design: Design) =>
  design.parts.some((a, i) => design.parts.slice(i + 1).some((b) => overlaps(boxOf(a), boxOf(b))));

describe("a part put into a wire", () => {
  const chain = draw(
    { uhf: ["aerial-uhf"], amp: ["amp-distribution"], tv: ["receiver-tv"] },
    "uhf.out > amp.in, amp.out > tv.in",
  );
  const fresh = made(chain, "attenuator");
  const edit = insertWithRoom(chain, fresh, "uhf.out>amp.in");
  if (!edit.ok) throw new Error(edit.reason);
  const { design } = edit;

  test("lies on the wire, its ports at the height of the far end", () => {
    const end = portPoint(part(design, "amp"), "in");
    expect(portPoint(part(design, fresh.id), "in")?.y).toBe(end?.y);
  });

  test("gets room on both sides: what follows moves right, and keeps its distances", () => {
    expect(anyOverlap(design)).toBe(false);
    const shift = part(design, "amp").at[0] - part(chain, "amp").at[0];
    expect(shift).toBeGreaterThan(0);
    expect(part(design, "tv").at[0] - part(chain, "tv").at[0]).toBe(shift);
    expect(part(design, "uhf").at).toEqual(part(chain, "uhf").at);
    const middle = boxOf(part(design, fresh.id));
    const left = middle.x - (boxOf(part(design, "uhf")).x + middle.width);
    const right = boxOf(part(design, "amp")).x - (middle.x + middle.width);
    expect(Math.abs(left - right)).toBeLessThanOrEqual(8);
    expect(Math.min(left, right)).toBeGreaterThan(160);
  });

  test("without a way through is refused with a reason", () => {
    const refused = insertWithRoom(chain, made(chain, "aerial-fm"), "uhf.out>amp.in");
    expect(refused.ok).toBe(false);
  });
});

describe("a new part", () => {
  test("finds a place that no card has, however full it is", () => {
    const kinds = fc.constantFrom(...CATALOGUE.map((k) => k.kind));
    fc.assert(
      fc.property(fc.array(kinds, { maxLength: 12 }), (wanted) => {
        let design = EMPTY_DESIGN;
        for (const kind of wanted) {
          const fresh = made(design, kind);
          const edit = addPart(design, { ...fresh, at: freePlace(design, fresh, { x: 100, y: 100 }) });
          if (!edit.ok) throw new Error(edit.reason);
          design = edit.design;
        }
        expect(anyOverlap(design)).toBe(false);
      }),
      { numRuns: 40 },
    );
  });
});

describe("lining up", () => {
  const other = { box: { x: 400, y: 100, width: 168, height: 56 }, heights: [28] };

  test.each([
    { name: "4 px from the height of a port snaps to it", x: 0, y: 104, at: [0, 100], guides: [null, 128] },
    { name: "5 px from an edge snaps to it", x: 405, y: 300, at: [400, 300], guides: [400, null] },
    { name: "out of reach stays where it is", x: 380, y: 110, at: [380, 110], guides: [null, null] },
  ])("a card $name", ({ x, y, at, guides }) => {
    const aligned = alignTo({
      moving: { x, y, width: 168, height: 56 },
      heights: [28],
      others: [other],
    });
    expect([aligned.at.x, aligned.at.y]).toEqual(at);
    expect([aligned.guideX, aligned.guideY]).toEqual(guides);
  });

  test("chooses the nearest of several", () => {
    const near = { box: { ...other.box, y: 103 }, heights: [28] };
    const aligned = alignTo({
      moving: { x: 0, y: 104, width: 168, height: 56 },
      heights: [28],
      others: [other, near],
    });
    expect(aligned.at.y).toBe(103);
  });
});

describe("arranging", () => {
  test.each(EXAMPLES.map((e) => ({ key: e.key, load: e.load })))(
    "$key: no cards overlap, and every wire runs to the right with room for its strip",
    async ({ load }) => {
      const design = load();
      const edit = moveParts(design, await arranged(design, new Elk()));
      if (!edit.ok) throw new Error(edit.reason);
      expect(anyOverlap(edit.design)).toBe(false);
      for (const wire of design.wires) {
        const from = portPoint(part(edit.design, wire.from[0]), wire.from[1]);
        const to = portPoint(part(edit.design, wire.to[0]), wire.to[1]);
        expect((to?.x ?? 0) - (from?.x ?? 0)).toBeGreaterThanOrEqual(180);
      }
      expect(edit.design.wires).toBe(design.wires);
    },
  );
});

describe("the library's items", () => {
  const design = draw({ a: ["aerial-uhf"], b: ["cable"], c: ["receiver-tv"] }, "a.out > b.in, b.out > c.in");
  const none = { parts: [], wires: [] };
  const still = new Map();

  test("stay the same objects for all that did not change", () => {
    const before = nodesOf({ design, selection: none, dragged: still, before: new Map() });
    const edges = edgesOf({ design, selection: none, before: new Map(), nodes: before });
    const moved = moveParts(design, new Map([["b", [300, 80]]]));
    if (!moved.ok) throw new Error(moved.reason);
    const after = nodesOf({
      design: moved.design,
      selection: { parts: ["c"], wires: [] },
      dragged: still,
      before,
    });
    expect(after.get("a")).toBe(before.get("a"));
    expect(after.get("b")).not.toBe(before.get("b"));
    expect(after.get("c")?.selected).toBe(true);
    const same = edgesOf({ design: moved.design, selection: none, before: edges, nodes: after });
    for (const wire of design.wires) expect(same.get(wireId(wire))).toBe(edges.get(wireId(wire)));
  });

  test("follow the pointer without the design knowing", () => {
    const nodes = nodesOf({
      design,
      selection: none,
      dragged: new Map([["b", { x: 5, y: 6 }]]),
      before: new Map(),
    });
    expect(nodes.get("b")?.position).toEqual({ x: 5, y: 6 });
    expect(part(design, "b").at).toEqual([300, 0]);
  });

  test("have no wire to a card that is not shown", () => {
    const nodes = nodesOf({ design, selection: none, dragged: still, before: new Map() });
    nodes.delete("c");
    expect([...edgesOf({ design, selection: none, before: new Map(), nodes }).keys()]).toEqual([
      "a.out>b.in",
    ]);
  });

  test("keep the boxes of all cards while only an option changes", () => {
    const changed: Design = {
      ...design,
      parts: design.parts.map((p) => (p.id === "b" ? { ...p, options: { ...p.options, lengthM: 50 } } : p)),
    };
    const before = boxesOf(design);
    expect(boxesOf(changed)).toBe(before);
    const moved = moveParts(changed, new Map([["b", [0, 500]]]));
    expect(moved.ok && boxesOf(moved.design)).not.toBe(before);
  });
});

describe("the view", () => {
  const pane = { width: 1000, height: 600 };
  const seen = (view: { x: number; y: number; zoom: number }, x: number, y: number) => ({
    x: x * view.zoom + view.x,
    y: y * view.zoom + view.y,
  });

  test("of the whole shows all four corners, and magnifies nothing", () => {
    const place = fc.integer({ min: -5000, max: 5000 });
    const length = fc.integer({ min: 10, max: 9000 });
    fc.assert(
      fc.property(place, place, length, length, (x, y, width, height) => {
        const view = fittingView({ x, y, width, height }, pane);
        expect(view.zoom).toBeLessThanOrEqual(1);
        const [a, b] = [seen(view, x, y), seen(view, x + width, y + height)];
        expect(Math.min(a.x, a.y)).toBeGreaterThanOrEqual(0);
        expect(b.x).toBeLessThanOrEqual(pane.width);
        expect(b.y).toBeLessThanOrEqual(pane.height);
      }),
    );
  });

  test("at first can be read, from the roof side, unless the design is too large for that", () => {
    const wide = { x: -300, y: 0, width: 4000, height: 300 };
    const view = openingView(wide, pane, 30);
    expect(view.zoom).toBeGreaterThanOrEqual(0.5);
    expect(seen(view, -300, 0).x).toBeGreaterThan(0);
    expect(openingView(wide, pane, 1000).zoom).toBeLessThan(0.5);
  });

  test("moves no further than it must to show something", () => {
    const view = { x: 0, y: 0, zoom: 1 };
    expect(nudgedIntoView(view, { x: 400, y: 200, width: 100, height: 100 }, pane)).toEqual(view);
    const below = nudgedIntoView(view, { x: 400, y: 700, width: 100, height: 100 }, pane, 50);
    expect(below).toEqual({ x: 0, y: -250, zoom: 1 });
  });

  test("bounds of nothing are nothing", () => {
    expect(boundsOf([])).toBeNull();
  });

  test.each([
    { name: "a thousand parts as a plan", zoom: 0.1, partsInView: 1000, wiresInView: 1100, detail: "plan" },
    { name: "many wires as lines", zoom: 1, partsInView: 200, wiresInView: 300, detail: "far" },
    {
      name: "a house from afar with bars of colour",
      zoom: 0.3,
      partsInView: 30,
      wiresInView: 30,
      detail: "small",
    },
    { name: "a speck as lines", zoom: 0.1, partsInView: 30, wiresInView: 30, detail: "far" },
    { name: "half size with large tags", zoom: 0.5, partsInView: 30, wiresInView: 30, detail: "mid" },
    { name: "full size in full", zoom: 1, partsInView: 10, wiresInView: 10, detail: "near" },
    { name: "magnified with frequencies", zoom: 2, partsInView: 3, wiresInView: 3, detail: "close" },
  ])("shows $name", ({ zoom, partsInView, wiresInView, detail }) => {
    expect(detailFor({ zoom, partsInView, wiresInView })).toBe(detail);
  });
});

describe("the search of the tray", () => {
  test("finds nothing wrong with an empty search: all kinds, in the catalogue's order", () => {
    expect(foundKinds("  ")).toEqual(CATALOGUE);
  });

  test("finds every kind by its own name, first", () => {
    for (const kind of CATALOGUE) expect(foundKinds(kind.name)[0]?.name).toBe(kind.name);
  });

  test("finds every kind by each of its search words", () => {
    for (const kind of CATALOGUE) {
      for (const word of kind.keywords) expect(foundKinds(word)).toContain(kind);
    }
  });

  test("finds nothing for what no part is called", () => {
    expect(foundKinds("qqqzzz")).toEqual([]);
  });
});
