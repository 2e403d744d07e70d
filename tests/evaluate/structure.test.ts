/** Who is joined to whom, in which order to work, and what lies on a loop. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design, Part, Wire } from "../../src/design/design.ts";
import { structureOf } from "../../src/evaluate/structure.ts";

const part = (id: string): Part => ({ id, kind: "attenuator", label: id, options: {}, at: [0, 0] });

/** Parts "a b c" and wires "a>b b.x>c.y"; a port that is not named is "o" or "i". */
function designOf(parts: string, wires: string): Design {
  const end = (text: string, port: string) => {
    const [id = "", own = port] = text.split(".");
    return [id, own] as const;
  };
  return {
    title: "t",
    parts: parts.split(" ").map(part),
    wires: wires.split(" ").flatMap((text): Wire[] => {
      const [from, to] = text.split(">");
      return from && to ? [{ from: end(from, "o"), to: end(to, "i") }] : [];
    }),
  };
}

/** Ids in working order. */
function orderOf(design: Design): string[] {
  return Array.from(structureOf(design).order, (i) => design.parts[i]?.id ?? "");
}

function loopedOf(design: Design): string[] {
  const { looped } = structureOf(design);
  return design.parts.filter((_, i) => looped[i] === 1).map((p) => p.id);
}

describe("joints", () => {
  test("are known from both ends, by id and by index", () => {
    const { joined, neighbours, indexOf } = structureOf(designOf("a b", "a.out>b.in"));
    expect(joined.map((ends) => ({ ...ends }))).toEqual([{ out: ["b", "in"] }, { in: ["a", "out"] }]);
    expect(neighbours.map((ends) => ({ ...ends }))).toEqual([
      { out: { index: 1, port: "in" } },
      { in: { index: 0, port: "out" } },
    ]);
    expect([indexOf.get("a"), indexOf.get("b"), indexOf.get("c")]).toEqual([0, 1, undefined]);
  });

  test("to parts that do not exist are none", () => {
    const { joined } = structureOf(designOf("a b", "a>x x>b"));
    expect(joined.map((ends) => ({ ...ends }))).toEqual([{}, {}]);
  });

  test.each([
    { name: "output", wires: "a>b a>c", left: { a: { o: ["b", "i"] }, b: { i: ["a", "o"] }, c: {} } },
    { name: "input", wires: "a>c b>c", left: { a: { o: ["c", "i"] }, b: {}, c: { i: ["a", "o"] } } },
  ])("a port takes one wire: of two at one $name the first counts", ({ wires, left }) => {
    const design = designOf("a b c", wires);
    const { joined, looped } = structureOf(design);
    expect(Object.fromEntries(design.parts.map((p, i) => [p.id, { ...joined[i] }]))).toEqual(left);
    expect([...looped]).toEqual([0, 0, 0]);
  });

  test("a port may bear any name", () => {
    const { joined } = structureOf(designOf("a b", "a.constructor>b.__proto__"));
    expect(joined[0]?.constructor).toEqual(["b", "__proto__"]);
    expect(joined[1]?.o).toBeUndefined();
  });
});

describe("the working order", () => {
  test("runs from sources to receivers, however the parts are listed", () => {
    expect(orderOf(designOf("tv cable aerial", "aerial>cable cable>tv"))).toEqual(["aerial", "cable", "tv"]);
    expect(orderOf(designOf("aerial cable tv", "aerial>cable cable>tv"))).toEqual(["aerial", "cable", "tv"]);
  });

  test("says the place of every part", () => {
    const { order, place } = structureOf(designOf("d c b a", "a>b b>c c>d"));
    expect([...order]).toEqual([3, 2, 1, 0]);
    expect([...place]).toEqual([3, 2, 1, 0]);
  });

  const graph = fc.record({
    parts: fc.integer({ min: 1, max: 12 }),
    ends: fc.array(fc.tuple(fc.nat(11), fc.nat(11)), { maxLength: 24 }),
  });
  /** Each wire with ports of its own. */
  const drawn = ({
    parts,
    ends,
  }: {
    parts: number;
    ends: readonly (readonly [number, number])[];
  }): Design => ({
    title: "t",
    parts: Array.from({ length: parts }, (_, i) => part(`p${i}`)),
    wires: ends.map(([a, b], n) => ({
      from: [`p${a % parts}`, `o${n}`],
      to: [`p${b % parts}`, `i${n}`],
    })),
  });

  /** By the definition: whether a way of wires leads from one part to another. */
  function leads({ wires }: Design, from: string, to: string): boolean {
    const seen = new Set<string>();
    const next = [from];
    for (let here = next.pop(); here !== undefined; here = next.pop())
      for (const wire of wires) {
        if (wire.from[0] !== here || seen.has(wire.to[0])) continue;
        if (wire.to[0] === to) return true;
        seen.add(wire.to[0]);
        next.push(wire.to[0]);
      }
    return false;
  }

  test("of any graph: on a loop is what leads back to itself; all else stands behind whatever leads to it", () => {
    fc.assert(
      fc.property(graph, (sketch) => {
        const design = drawn(sketch);
        const { order, place, looped, indexOf } = structureOf(design);
        expect([...order].sort((a, b) => a - b)).toEqual(design.parts.map((_, i) => i));
        expect(loopedOf(design)).toEqual(design.parts.map((p) => p.id).filter((id) => leads(design, id, id)));
        for (const wire of design.wires) {
          const [a = -1, b = -1] = [indexOf.get(wire.from[0]), indexOf.get(wire.to[0])];
          const isOnOneLoop = looped[a] === 1 && looped[b] === 1 && leads(design, wire.to[0], wire.from[0]);
          if (!isOnOneLoop) expect(place[a]).toBeLessThan(place[b] ?? -1);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("loops", () => {
  test.each([
    { name: "none", design: designOf("a b c", "a>b b>c"), looped: [] },
    { name: "of one part", design: designOf("a b", "a>a b>b.x"), looped: ["a", "b"] },
    {
      name: "of two, with parts before and behind",
      design: designOf("a b c d", "a>b b>c c>b.x c.p>d"),
      looped: ["b", "c"],
    },
    { name: "two apart", design: designOf("a b c d", "a>b b>a c>d d>c"), looped: ["a", "b", "c", "d"] },
    {
      name: "two in a row, joined by a way in one direction",
      design: designOf("a b c d e", "a>b b>a b.p>c c>d d.p>e e>d.x"),
      looped: ["a", "b", "d", "e"],
    },
    { name: "a diamond, which is none", design: designOf("a b c d", "a>b a.p>c b>d c>d.x"), looped: [] },
    {
      name: "a diamond closed by a way back",
      design: designOf("a b c d", "a>b a.p>c b>d c>d.x d>a"),
      looped: ["a", "b", "c", "d"],
    },
  ])("$name", ({ design, looped }) => {
    expect(loopedOf(design)).toEqual(looped);
  });
});

describe("a structure is kept", () => {
  const design = designOf("a b", "a>b");
  const before = { design, structure: structureOf(design) };

  test("while wires and ids are the same", () => {
    expect(structureOf({ ...design, title: "other" }, before)).toBe(before.structure);
    const moved = { ...design, parts: design.parts.map((p) => ({ ...p, at: [5, 5] as const })) };
    expect(structureOf(moved, before)).toBe(before.structure);
  });

  test.each([
    { name: "wires", change: { wires: [...design.wires] } },
    { name: "another part", change: { parts: [...design.parts, part("c")] } },
    { name: "a part less", change: { parts: design.parts.slice(0, 1) } },
    { name: "another id", change: { parts: [part("a"), part("c")] } },
    { name: "another order", change: { parts: design.parts.toReversed() } },
  ])("not with $name", ({ change }) => {
    const after = { ...design, ...change };
    const found = structureOf(after, before);
    expect(found).not.toBe(before.structure);
    expect(found).toEqual(structureOf(after));
  });
});
