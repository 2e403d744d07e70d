/** Room for what comes: nothing that is added, pasted or put into a wire covers anything. Geometry of our own. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN, type Part, type PartId, wireId } from "../../../src/design/design.ts";
import { freePorts } from "../../../src/design/edits/attach.ts";
import { copyParts, pasteFragment } from "../../../src/design/edits/clipboard.ts";
import { planJoin } from "../../../src/design/edits/join.ts";
import { setOption } from "../../../src/design/edits/options.ts";
import { newPart } from "../../../src/design/edits/parts.ts";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { partById } from "../../../src/design/lookup.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { fitsAt } from "../../../src/findings/fitting/fits.ts";
import { CATALOGUE } from "../../../src/parts/catalogue.ts";
import { boxesOf, boxOf, portPoint } from "../../../src/ui/canvas/boxes.ts";
import { joinedByDrop } from "../../../src/ui/canvas/dropJoin.ts";
import { GRID_PX, overlaps } from "../../../src/ui/canvas/layout.ts";
import { addInRoom, attachInLane, insertWithRoom, pastePlace, roomy } from "../../../src/ui/canvas/place.ts";
import { nearestPort } from "../../../src/ui/canvas/ports.ts";
import { movedIntoRoom, withRoom } from "../../../src/ui/canvas/rooms.ts";
import { draw } from "../../draw.ts";

/** Pairs of parts that cover one another. */
function covering(design: Design): readonly string[] {
  const boxes = boxesOf(design);
  return design.parts.flatMap((a, i) =>
    design.parts.slice(i + 1).flatMap((b, j) => {
      const [boxA, boxB] = [boxes[i], boxes[i + 1 + j]];
      return boxA && boxB && overlaps(boxA, boxB) ? [`${a.id} ${b.id}`] : [];
    }),
  );
}

function must<T extends { readonly ok: boolean }>(edit: T): Extract<T, { readonly ok: true }> {
  if (!edit.ok) throw new Error("refused");
  return edit as Extract<T, { readonly ok: true }>;
}

function fresh(design: Design, kind: string): Part {
  const part = newPart(design, kind, [0, 0]);
  if (!part) throw new Error(`no kind ${kind}`);
  return part;
}

function at(design: Design, id: PartId): readonly [number, number] {
  return partById(design, id)?.at ?? [Number.NaN, Number.NaN];
}

function example(key: string): Design {
  const found = EXAMPLES.find((e) => e.key === key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
}

const HOUSE = example("house-universal");
const KINDS = fc.constantFrom(...CATALOGUE.map((k) => k.kind));

describe("pasting", () => {
  test("n times never covers anything, and lies on the grid", () => {
    const ids = fc.subarray(
      HOUSE.parts.map(({ id }) => id),
      { minLength: 1 },
    );
    fc.assert(
      fc.property(ids, fc.integer({ min: 1, max: 4 }), (chosen, times) => {
        const fragment = copyParts(HOUSE, new Set(chosen));
        let design: Design = HOUSE;
        const before = covering(HOUSE).length;
        for (let n = 0; n < times; n += 1) {
          const pasted = must(pasteFragment(design, fragment, pastePlace(design, fragment, null)));
          design = withRoom(design, pasted.design);
        }
        expect(covering(design).length).toBe(before);
        const added = design.parts.slice(HOUSE.parts.length);
        expect(added.length).toBe(chosen.length * times);
        expect(added.every(({ at: [x, y] }) => x % GRID_PX === 0 && y % GRID_PX === 0)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  test("a room again takes the next free outputs of what fed it, until none is left", () => {
    const design = draw(
      { lnb: ["lnb-universal", { outputs: "4" }], dip: ["diplexer-combine"], amp: ["splitter", { ways: 3 }] },
      "lnb.out1 > dip.sat, amp.out1 > dip.tv",
    );
    const room = copyParts(design, new Set(["dip"]));
    let now = design;
    for (let n = 0; n < 3; n += 1) now = must(pasteFragment(now, room, pastePlace(now, room, null))).design;
    const into = (id: string) => now.wires.filter((w) => w.to[0] === id).map((w) => w.from.join(" "));
    const [, , , first, second, third] = now.parts.map(({ id }) => id);
    expect(into(first ?? "")).toEqual(["lnb out2", "amp out2"]);
    expect(into(second ?? "")).toEqual(["lnb out3", "amp out3"]);
    // A splitter of three ways has no fourth.
    expect(into(third ?? "")).toEqual(["lnb out4"]);
  });

  test("no copy is fed by an output for something else", () => {
    const design = draw(
      { plate: ["outlet-triplexed"], tv: ["receiver-tv"], quattro: ["lnb-quattro"], c: ["cable"] },
      "plate.tv > tv.in, quattro.hl > c.in",
    );
    const pasted = must(pasteFragment(design, copyParts(design, new Set(["tv", "c"]))));
    // The radio socket is no TV socket, and the next plane of a quattro LNB is another plane.
    expect(pasted.design.wires.length).toBe(design.wires.length);
  });

  test("what was cut out comes back to the output that it had", () => {
    const design = draw({ s: ["splitter"], tv: ["receiver-tv"] }, "s.out2 > tv.in");
    const cut = { ...design, parts: design.parts.slice(0, 1), wires: [] };
    const pasted = must(pasteFragment(cut, copyParts(design, new Set(["tv"]))));
    expect(pasted.design.wires.map((w) => w.from)).toEqual([["s", "out2"]]);
  });
});

describe("a part put into a wire", () => {
  test("of any example and of any kind covers nothing, and moves nothing that lies before it", () => {
    const inline = CATALOGUE.filter((k) => k.inline).map((k) => k.kind);
    for (const { load } of EXAMPLES) {
      const design = load();
      const before = new Set(covering(design));
      for (const wire of design.wires.slice(0, 12)) {
        const kind = inline[design.wires.indexOf(wire) % inline.length] ?? "cable";
        const edit = insertWithRoom(design, fresh(design, kind), wireId(wire));
        if (!edit.ok) continue;
        expect(covering(edit.design).filter((pair) => !before.has(pair))).toEqual([]);
        expect(at(edit.design, wire.from[0])[0]).toBe(at(design, wire.from[0])[0]);
      }
    }
  });

  test("moves its own row alone", () => {
    // Two rows, one below the other: 300 px from part to part, 400 px between the rows.
    const two = draw(
      { a: ["aerial-uhf"], b: ["receiver-tv"], c: ["aerial-uhf"], d: ["receiver-tv"] },
      "a.out > b.in, c.out > d.in",
    );
    const rows: Design = {
      ...two,
      parts: two.parts.map((p, i) => ({ ...p, at: [(i % 2) * 176, i < 2 ? 0 : 400] })),
    };
    const { design } = must(insertWithRoom(rows, fresh(rows, "amp-distribution"), "a.out>b.in"));
    expect(at(design, "b")[0]).toBeGreaterThan(at(rows, "b")[0]);
    for (const id of ["a", "c", "d"]) expect(at(design, id)).toEqual(at(rows, id));
  });
});

/** What a house begins with: eight outputs that are free. */
const ROOF = draw(
  {
    dish: ["dish"],
    lnb: ["lnb-universal", { outputs: "4" }],
    uhf: ["aerial-uhf"],
    amp: ["amp-distribution", { outputs: 4 }],
  },
  "dish.sky > lnb.sky, uhf.out > amp.in",
);

describe("a chain", () => {
  test("of whatever the ports offer covers nothing, joins by one wire a part and lies beside what it hangs on", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(), fc.nat()), { minLength: 1, maxLength: 6 }), (picks) => {
        let design: Design = ROOF;
        for (const [port, choice] of picks) {
          const free = design.parts.flatMap(({ id }) => freePorts(design, id));
          const from = free[port % free.length];
          if (!from) return;
          const fits = fitsAt(evaluate(design), from);
          const fit = fits[choice % Math.max(1, Math.min(6, fits.length))];
          if (!fit) continue;
          const edit = must(attachInLane(design, from, fit));
          expect(edit.design.wires.length).toBe(design.wires.length + edit.added.length);
          design = edit.design;
        }
        expect(covering(design)).toEqual([]);
        expect(design.parts.length).toBeGreaterThan(ROOF.parts.length);
      }),
      { numRuns: 12 },
    );
  });

  test("runs level in its lane, each part in the next column", () => {
    const dish = draw({ lnb: ["lnb-universal", { outputs: "4" }] }, "");
    const evaluation = evaluate(dish);
    const cable = fitsAt(evaluation, ["lnb", "out1"]).find((f) => f.kind === "cable");
    if (!cable) throw new Error("no cable is offered");
    const { design, added } = must(attachInLane(dish, ["lnb", "out1"], cable));
    const lnb = partById(design, "lnb");
    const own = partById(design, added[0]?.part ?? "");
    if (!lnb || !own) throw new Error("no parts");
    expect(portPoint(design, own, "in")?.y).toBe(portPoint(design, lnb, "out1")?.y);
    expect(own.at[0]).toBeGreaterThan(lnb.at[0] + boxOf(design, lnb).width);
  });
});

describe("a card that grows", () => {
  const stacked = draw({ s: ["lnb-universal", { outputs: "2" }], below: ["aerial-uhf"] }, "");
  const height = boxesOf(stacked)[0]?.height ?? 0;
  const column: Design = {
    ...stacked,
    parts: stacked.parts.map((p, i) => ({ ...p, at: [0, i * (Math.ceil(height / 8) * 8 + 16)] })),
  };

  test("pushes its neighbours below", () => {
    const { design } = must(roomy(column, setOption(column, "s", "outputs", "8")));
    expect(covering(design)).toEqual([]);
    expect(at(design, "s")).toEqual(at(column, "s"));
    expect(at(design, "below")[1]).toBeGreaterThan(at(column, "below")[1]);
  });

  test("leaves alone what covered it before: somebody put it there", () => {
    const heap: Design = { ...column, parts: column.parts.map((p) => ({ ...p, at: [0, 0] })) };
    const { design } = must(roomy(heap, setOption(heap, "s", "outputs", "8")));
    expect(at(design, "below")).toEqual([0, 0]);
  });

  test("does so when a wire docks a strip to it", () => {
    const more = draw({ q: ["outlet-quad"], tv: ["receiver-tv"], r: ["receiver-sat"] }, "q.tv > tv.in");
    const { design } = must(roomy(more, planJoin(more, ["q", "sat"], ["r", "sat"])));
    expect(covering(design)).toEqual([]);
  });
});

describe("a part that is dropped", () => {
  const plate = draw({ plate: ["outlet-triplexed"] }, "");

  test.each([
    ["receiver-tv", "tv"],
    ["receiver-fm", "radio"],
    ["receiver-sat", "sat"],
  ])("on an outlet: %s is connected to its own socket", (kind, socket) => {
    const part = fresh(plate, kind);
    const box = boxesOf(plate)[0];
    if (!box) throw new Error("nothing to drop");
    const edit = joinedByDrop(plate, part, { x: box.x + box.width / 2, y: box.y + box.height / 2 });
    expect(edit?.ok && edit.design.wires.map((w) => w.from)).toEqual([["plate", socket]]);
    expect(edit?.ok && covering(edit.design)).toEqual([]);
  });

  test("beside a free port that fits is connected there, farther off it is not", () => {
    const source = draw({ a: ["aerial-uhf"] }, "");
    const part = fresh(source, "amp-distribution");
    const [box] = boxesOf(source);
    if (!box) throw new Error("nothing to drop");
    const beside = { x: box.x + box.width + 20 + 72, y: box.y + 52 };
    expect(joinedByDrop(source, part, beside)?.ok).toBe(true);
    expect(joinedByDrop(source, part, { x: beside.x + 200, y: beside.y })).toBeNull();
  });

  test("is connected as the port rules allow, or not at all", () => {
    const spot = fc.record({
      x: fc.integer({ min: -100, max: 1200 }),
      y: fc.integer({ min: -100, max: 700 }),
    });
    fc.assert(
      fc.property(KINDS, spot, (kind, centre) => {
        const part = fresh(HOUSE, kind);
        const edit = joinedByDrop(HOUSE, part, centre);
        if (!edit?.ok) return;
        const [wire] = edit.design.wires.filter((w) => w.from[0] === part.id || w.to[0] === part.id);
        if (!wire) throw new Error("dropped without a wire");
        const added = must(addInRoom(HOUSE, part, centre));
        expect(planJoin(added.design, wire.from, wire.to).ok).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe("the nearest port", () => {
  const design = draw({ lnb: ["lnb-universal", { outputs: "4" }] }, "");
  const [lnb] = design.parts;
  const place = (port: string) => (lnb && portPoint(design, lnb, port)) ?? { x: 0, y: 0 };

  test("wins, within half of the field on the screen at any zoom", () => {
    for (const zoom of [0.3, 1, 2]) {
      const { x, y } = place("out3");
      const near = { x: x + 9 / zoom, y };
      expect(nearestPort(design, near, { fieldPx: 24, zoom })?.ref).toEqual(["lnb", "out3"]);
      expect(nearestPort(design, { x: x + 13 / zoom, y }, { fieldPx: 24, zoom })).toBeUndefined();
      expect(nearestPort(design, { x: x + 20 / zoom, y }, { fieldPx: 44, zoom })?.ref).toEqual([
        "lnb",
        "out3",
      ]);
    }
    // 10 px below one and 14 px above the next, both within a field of 44.
    const between = { x: place("out3").x, y: place("out3").y + 10 };
    expect(nearestPort(design, between, { fieldPx: 44, zoom: 1 })?.ref).toEqual(["lnb", "out3"]);
  });

  test("may be asked for among some only", () => {
    const { x, y } = place("out3");
    const found = nearestPort(design, { x, y }, { fieldPx: 60, zoom: 1, among: new Set(["lnb/out4"]) });
    expect(found?.ref).toEqual(["lnb", "out4"]);
  });
});

test("in an empty design the first part is added where one looks", () => {
  const { design } = must(addInRoom(EMPTY_DESIGN, fresh(EMPTY_DESIGN, "dish"), { x: 400, y: 304 }));
  const [box] = boxesOf(design);
  expect(Math.abs((box?.x ?? 0) + (box?.width ?? 0) / 2 - 400)).toBeLessThanOrEqual(GRID_PX);
});

describe("moving onto others", () => {
  const ids = HOUSE.parts.map(({ id }) => id);
  const boxOfId = (id: PartId) => {
    const part = partById(HOUSE, id);
    if (!part) throw new Error(`no part ${id}`);
    return boxOf(HOUSE, part);
  };
  const shift = fc.integer({ min: -100, max: 100 }).map((steps) => steps * GRID_PX);

  test("whatever is moved wherever, together, covers none that stays, and keeps its shape", () => {
    fc.assert(
      fc.property(fc.subarray(ids, { minLength: 1 }), shift, shift, (chosen, dx, dy) => {
        const wanted = new Map(
          chosen.map((id) => [id, { x: boxOfId(id).x + dx, y: boxOfId(id).y + dy }] as const),
        );
        const found = movedIntoRoom(HOUSE, wanted);
        const stays = ids.filter((id) => !wanted.has(id)).map(boxOfId);
        const moved = chosen.map((id) => ({ ...boxOfId(id), ...found.get(id) }));
        expect(moved.filter((box) => stays.some((other) => overlaps(box, other)))).toEqual([]);
        const steps = chosen.map((id) => {
          const [from, to] = [wanted.get(id), found.get(id)];
          return `${(to?.x ?? Number.NaN) - (from?.x ?? 0)} ${(to?.y ?? Number.NaN) - (from?.y ?? 0)}`;
        });
        expect(new Set(steps).size).toBe(1);
        // Straight on: along one axis only.
        expect(steps[0]).toMatch(/^-?\d+ 0$|^0 -?\d+$/);
      }),
      { numRuns: 60 },
    );
  });

  test("what covers nothing stays where it was put", () => {
    const far = new Map([["lnb", { x: 5000, y: 5000 }]]);
    expect(movedIntoRoom(HOUSE, far)).toBe(far);
  });

  test("a key leads on in its own direction, past all that stands there", () => {
    const [fm, uhf] = ["FM aerial", "UHF aerial"].map((label) => {
      const part = HOUSE.parts.find((p) => p.label === label);
      if (!part) throw new Error(`no ${label}`);
      return part;
    });
    if (!fm || !uhf) throw new Error("no aerials");
    // Eight pixels into the card above it.
    const above = boxOf(HOUSE, uhf);
    const into = { x: fm.at[0], y: above.y + above.height - GRID_PX };
    const { x, y } = movedIntoRoom(HOUSE, new Map([[fm.id, into]]), ["up"]).get(fm.id) ?? into;
    expect(x).toBe(into.x);
    expect(y + boxOf(HOUSE, fm).height).toBeLessThanOrEqual(above.y);
    const down = movedIntoRoom(HOUSE, new Map([[fm.id, into]]), ["down"]).get(fm.id) ?? into;
    expect(down.y).toBeGreaterThanOrEqual(above.y + above.height);
  });
});
