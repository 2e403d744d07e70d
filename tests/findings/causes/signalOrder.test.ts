/** Where parts stand along the signal: small designs whose order a tradesman would tell by looking at them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design, Part, PartId } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { signalOrderOf } from "../../../src/findings/causes/signalOrder.ts";
import { draw } from "../../draw.ts";
import { redrawn } from "../../redrawn.ts";

type Parts = Parameters<typeof draw>[0];
type Changed = Readonly<Record<PartId, Partial<Pick<Part, "label" | "at">>>>;

/** With other labels, or at other places of the canvas. */
function changed(design: Design, changes: Changed): Design {
  return { ...design, parts: design.parts.map((part) => ({ ...part, ...changes[part.id] })) };
}

function orderOf(design: Design): readonly PartId[] {
  const order = signalOrderOf(evaluate(design));
  return [...order].sort((a, b) => a[1] - b[1]).map(([id]) => id);
}

/** Parts and wires the other way round. */
function backwards(design: Design): Design {
  return { ...design, parts: design.parts.toReversed(), wires: design.wires.toReversed() };
}

/** Whether the parts stand so, separated by blanks, whichever way they were drawn. */
function expectOrder(design: Design, ids: string): void {
  expect(orderOf(design).join(" ")).toBe(ids);
  expect(orderOf(backwards(design)).join(" ")).toBe(ids);
}

describe("parts stand", () => {
  test("along the line, each at its own place, counted from 0", () => {
    const line = draw(
      { z: ["receiver-tv"], m: ["amp-distribution"], a: ["aerial-uhf"] },
      "a.out > m.in, m.out > z.in",
    );
    expect(Object.fromEntries(signalOrderOf(evaluate(line)))).toEqual({ a: 0, m: 1, z: 2 });
    expectOrder(line, "a m z");
  });

  // Ten pads one behind the other and the set: it is eleven parts away from the aerial.
  test("along a line of more than ten parts as well", () => {
    const pads = ["k", "j", "i", "h", "g", "f", "e", "d", "c", "b"];
    const parts: Parts = Object.fromEntries(pads.map((id): [string, Parts[string]] => [id, ["attenuator"]]));
    const wires = "a.out > k.in, k.out > j.in, j.out > i.in, i.out > h.in, h.out > g.in, g.out > f.in";
    const rest = "f.out > e.in, e.out > d.in, d.out > c.in, c.out > b.in, b.out > z.in";
    const line = draw({ z: ["receiver-tv"], ...parts, a: ["aerial-uhf"] }, `${wires}, ${rest}`);
    expectOrder(line, "a k j i h g f e d c b z");
  });

  test("behind everything that leads to them, by the longer of two ways", () => {
    const mast = draw(
      {
        c: ["combiner"],
        z: ["receiver-tv"],
        p: ["attenuator"],
        m: ["amp-masthead"],
        a: ["aerial-fm"],
        b: ["aerial-uhf"],
      },
      "a.out > c.in1, b.out > m.in, m.out > p.in, p.out > c.in2, c.out > z.in",
    );
    expectOrder(mast, "a b m p c z");
  });

  test("with those first that are joined to nothing, beside the sources", () => {
    const loose = draw({ z: ["receiver-tv"], s: ["splitter"], a: ["aerial-uhf"] }, "a.out > z.in");
    expectOrder(loose, "a s z");
  });
});

describe("at the same distance parts stand", () => {
  const room: Parts[string] = ["receiver-tv"];

  test("in the order of the outputs that feed them, whatever they are called", () => {
    const house = draw(
      { b: room, m: room, z: room, s: ["splitter", { ways: 3 }], a: ["aerial-uhf"] },
      "a.out > s.in, s.out1 > z.in, s.out2 > m.in, s.out3 > b.in",
    );
    expectOrder(house, "a s z m b");
  });

  // By their names as texts, out10 would come before out2.
  test("by the number of the output and not by its name as a text", () => {
    const house = draw(
      { b: room, c: room, d: room, u: ["multiswitch", { outputs: 12 }], a: ["aerial-uhf"] },
      "a.out > u.ter, u.out2 > d.in, u.out10 > b.in, u.out11 > c.in",
    );
    expectOrder(house, "a u d b c");
  });

  test("floor by floor: what feeds them counts before the number of its output", () => {
    const floors = draw(
      {
        b: room,
        c: room,
        y: room,
        z: room,
        q: ["splitter", { ways: 8 }],
        p: ["splitter", { ways: 8 }],
        s: ["splitter"],
        a: ["aerial-uhf"],
      },
      "a.out > s.in, s.out1 > q.in, s.out2 > p.in, q.out7 > y.in, q.out8 > z.in, p.out1 > b.in, p.out2 > c.in",
    );
    expectOrder(floors, "a s q p y z b c");
  });

  // The first input of “k” comes from the third line, its second from the first; “j” has the line between them.
  test("by the first of all parts that feed them", () => {
    const pad: Parts[string] = ["attenuator"];
    const house = draw(
      {
        j: ["combiner"],
        k: ["combiner"],
        p: pad,
        q: pad,
        r: pad,
        s: ["splitter", { ways: 3 }],
        a: ["aerial-uhf"],
      },
      "a.out > s.in, s.out1 > r.in, s.out2 > q.in, s.out3 > p.in, p.out > k.in1, r.out > k.in2, q.out > j.in1",
    );
    expectOrder(house, "a s r q p k j");
  });
});

describe("in a loop", () => {
  // The combiner feeds the amplifier, that the splitter, and the splitter the combiner again. Wires of the loop do not
  // count: what only they lead to stands with the sources, the combiner one behind the aerial, the set at the end.
  test("wires within it do not count, those into it and out of it do", () => {
    const loop = draw(
      {
        z: ["receiver-tv"],
        s: ["splitter"],
        m: ["amp-distribution"],
        c: ["combiner"],
        a: ["aerial-uhf"],
      },
      "a.out > c.in1, c.out > m.in, m.out > s.in, s.out1 > z.in, s.out2 > c.in2",
    );
    expectOrder(loop, "a m s c z");
  });
});

describe("sources stand", () => {
  const dab: Parts[string] = ["aerial-dab"];
  const uhf: Parts[string] = ["aerial-uhf"];

  /** Whether two parts keep their places when their labels and their places on the canvas are changed. */
  function expectApart(parts: Parts, wires: string, [a, b]: readonly [PartId, PartId]): void {
    const design = draw(parts, wires);
    const first: Partial<Part> = { label: "A", at: [0, 0] };
    const last: Partial<Part> = { label: "B", at: [900, 900] };
    const placesOf = (changes: Changed) => {
      const order = orderOf(changed(design, changes));
      expect(orderOf(backwards(changed(design, changes)))).toEqual(order);
      return order.indexOf(a) < order.indexOf(b);
    };
    expect(placesOf({ [a]: first, [b]: last })).toBe(placesOf({ [a]: last, [b]: first }));
  }

  test("by kind, whatever they are called and wherever they are drawn", () => {
    const design = draw({ a: ["dish"], b: uhf, c: ["aerial-fm"], d: dab }, "");
    expectOrder(design, "d c b a");
    expectApart({ a: uhf, b: dab }, "", ["a", "b"]);
  });

  test("of one kind by their options", () => {
    expectApart({ a: ["aerial-uhf", { levelDbuv: 70 }], b: uhf }, "", ["a", "b"]);
  });

  test("by what they are joined to", () => {
    expectApart({ a: uhf, b: uhf, p: ["attenuator"], m: ["amp-masthead"] }, "a.out > m.in, b.out > p.in", [
      "a",
      "b",
    ]);
  });

  test("by the input to which they are joined", () => {
    expectApart({ a: uhf, b: uhf, c: ["combiner"] }, "a.out > c.in1, b.out > c.in2", ["a", "b"]);
  });

  test("by what follows several parts further on", () => {
    const pad: Parts[string] = ["attenuator"];
    expectApart(
      { a: uhf, b: uhf, p: pad, q: pad, r: pad, s: pad, t: pad, u: pad, y: ["receiver-tv"], z: ["meter"] },
      "a.out > p.in, p.out > q.in, q.out > r.in, r.out > y.in, b.out > s.in, s.out > t.in, t.out > u.in, u.out > z.in",
      ["a", "b"],
    );
  });

  test("as twins by label, then from top to bottom, then from left to right", () => {
    const twins = draw({ b: uhf, a: uhf, c: uhf }, "");
    const label = (text: string, at: Part["at"]): Partial<Part> => ({ label: text, at });
    const labelled = { b: label("1", [0, 900]), c: label("2", [900, 0]), a: label("3", [300, 300]) };
    expectOrder(changed(twins, labelled), "b c a");
    const above = { b: label("", [900, 0]), c: label("", [600, 100]), a: label("", [0, 200]) };
    expectOrder(changed(twins, above), "b c a");
    const beside = { b: label("", [100, 50]), c: label("", [200, 50]), a: label("", [300, 50]) };
    expectOrder(changed(twins, beside), "b c a");
  });

  // Two splitters that nothing feeds, the one wired from its first output on, the other from its last.
  test("as twins by label in whatever order their leads were drawn", () => {
    const room: Parts[string] = ["receiver-tv"];
    const design = draw(
      { x: ["splitter"], y: ["splitter"], a: room, b: room, c: room, d: room },
      "x.out1 > a.in, x.out2 > b.in, y.out2 > d.in, y.out1 > c.in",
    );
    const labelled = (x: string, y: string) => changed(design, { x: { label: x }, y: { label: y } });
    expectOrder(labelled("1", "2"), "x y a b c d");
    expectOrder(labelled("2", "1"), "y x c d a b");
  });

  test("twins keep the order of their labels through equal parts behind them", () => {
    const design = draw(
      { p: ["attenuator"], q: ["attenuator"], a: uhf, b: uhf },
      "a.out > q.in, b.out > p.in",
    );
    const label = (text: string): Partial<Part> => ({ label: text, at: [0, 0] });
    expectOrder(changed(design, { a: label("2"), b: label("1") }), "b a p q");
  });
});

test("neither ids nor the order of drawing matter", () => {
  const pad: Parts[string] = ["attenuator"];
  const design = draw(
    {
      a: ["aerial-uhf"],
      b: ["aerial-uhf"],
      c: ["combiner"],
      l: ["combiner"],
      p: pad,
      q: pad,
      s: ["splitter", { ways: 4 }],
      x: ["receiver-tv"],
      y: ["receiver-tv"],
    },
    "a.out > c.in1, b.out > c.in2, c.out > s.in, s.out1 > p.in, s.out2 > q.in, s.out3 > l.in1, p.out > l.in2, l.out > x.in, q.out > y.in",
  );
  fc.assert(
    fc.property(redrawn(design), (again) => {
      const former = orderOf(again.design).map((id) => again.former.get(id));
      expect(former).toEqual(["a", "b", "c", "s", "p", "q", "l", "y", "x"]);
    }),
    { numRuns: 20 },
  );
});
