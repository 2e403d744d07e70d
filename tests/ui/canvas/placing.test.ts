/** Where cards go: by hand, into wires, and in line with others. Geometry of our own. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN, wireId } from "../../../src/design/design.ts";
import { addPart, moveParts, newPart } from "../../../src/design/edits/parts.ts";
import { partById } from "../../../src/design/lookup.ts";
import { CATALOGUE } from "../../../src/parts/catalogue.ts";
import { boxesOf, boxOf, portPoint } from "../../../src/ui/canvas/boxes.ts";
import { detailFor } from "../../../src/ui/canvas/detail.ts";
import { edgesOf, nodesOf } from "../../../src/ui/canvas/flowItems.ts";
import { alignTo } from "../../../src/ui/canvas/guides.ts";
import { boundsOf, overlaps } from "../../../src/ui/canvas/layout.ts";
import { freePlace, insertWithRoom } from "../../../src/ui/canvas/place.ts";
import { fittingView, nudgedIntoView } from "../../../src/ui/canvas/viewMath.ts";
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
  boxesOf(design).some((a, i, all) => all.slice(i + 1).some((b) => overlaps(a, b)));

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
    const end = portPoint(design, part(design, "amp"), "in");
    expect(portPoint(design, part(design, fresh.id), "in")?.y).toBe(end?.y);
  });

  test("gets room on both sides: its own row moves right as far as it must, and nothing else", () => {
    expect(anyOverlap(design)).toBe(false);
    const shift = part(design, "amp").at[0] - part(chain, "amp").at[0];
    expect(shift).toBeGreaterThan(0);
    expect(part(design, "tv").at[0]).toBeGreaterThanOrEqual(part(chain, "tv").at[0]);
    expect(part(design, "uhf").at).toEqual(part(chain, "uhf").at);
    const middle = boxOf(design, part(design, fresh.id));
    const uhf = boxOf(design, part(design, "uhf"));
    const left = middle.x - (uhf.x + uhf.width);
    const right = boxOf(design, part(design, "amp")).x - (middle.x + middle.width);
    expect(Math.abs(left - right)).toBeLessThanOrEqual(8);
    // Two ports, and a wire that bends between them.
    expect(Math.min(left, right)).toBeGreaterThanOrEqual(24);
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

  test("of the whole shows all four corners, and blows up nothing", () => {
    const place = fc.integer({ min: -5000, max: 5000 });
    const length = fc.integer({ min: 10, max: 9000 });
    fc.assert(
      fc.property(place, place, length, length, (x, y, width, height) => {
        const view = fittingView({ x, y, width, height }, pane);
        expect(view.zoom).toBeLessThanOrEqual(1.6);
        const [a, b] = [seen(view, x, y), seen(view, x + width, y + height)];
        expect(Math.min(a.x, a.y)).toBeGreaterThanOrEqual(0);
        expect(b.x).toBeLessThanOrEqual(pane.width);
        expect(b.y).toBeLessThanOrEqual(pane.height);
      }),
    );
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
    { name: "a thousand parts as a plan", zoom: 1, partsInView: 1000, wiresInView: 1, detail: "plan" },
    { name: "a thousand wires as a plan", zoom: 1, partsInView: 20, wiresInView: 1000, detail: "plan" },
    { name: "a speck as a plan", zoom: 0.1, partsInView: 30, wiresInView: 30, detail: "plan" },
    { name: "half size with the least", zoom: 0.5, partsInView: 30, wiresInView: 30, detail: "small" },
    { name: "three quarters with large tags", zoom: 0.75, partsInView: 30, wiresInView: 30, detail: "mid" },
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
