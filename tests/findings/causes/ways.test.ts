/** Ways along which a fault is felt, and where parts stand by the signal: small designs, the ways known beforehand. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { signalOrderOf } from "../../../src/findings/causes/signalOrder.ts";
import { type Passed, servicesAt, waysOf } from "../../../src/findings/causes/ways.ts";
import { draw } from "../../draw.ts";

const told = (passed: readonly Passed[]) =>
  passed.map(({ part, port, distance }) => `${distance} ${part}.${port}`);

const house = draw(
  {
    z: ["receiver-sat"],
    y: ["receiver-sat"],
    ms: ["multiswitch", { outputs: 4 }],
    q: ["lnb-quattro"],
    d: ["dish"],
    k: ["cable"],
    a: ["aerial-uhf"],
  },
  "a.out > k.in, k.out > ms.ter, q.vl > ms.vl, q.hh > ms.hh, d.sky > q.sky, ms.out1 > z.sat, ms.out2 > y.sat",
);

describe("what a signal passes", () => {
  test("is told nearest first, each with the output that it leaves by", () => {
    const passed = told(waysOf(evaluate(house)).signalTo("z"));
    expect(passed[0]).toBe("1 ms.out1");
    expect(passed.slice(1, 4).toSorted()).toEqual(["2 k.out", "2 q.hh", "2 q.vl"]);
    expect(passed.slice(4).toSorted()).toEqual(["3 a.out", "3 d.sky"]);
  });

  test("is nothing before a source, or before a part that is not joined", () => {
    const ways = waysOf(evaluate(draw({ a: ["aerial-uhf"], t: ["receiver-tv"] }, "")));
    expect(ways.signalTo("a")).toEqual([]);
    expect(ways.signalTo("t")).toEqual([]);
  });
});

describe("what could feed a part", () => {
  const line = draw(
    {
      m: ["amp-masthead"],
      k: ["cable"],
      s: ["splitter", { dc: "all" }],
      b: ["dc-block"],
      psu: ["power-inserter"],
      t: ["receiver-tv"],
      a: ["aerial-uhf"],
    },
    "a.out > m.in, m.out > k.in, k.out > s.in, s.out1 > psu.in, psu.out > t.in, s.out2 > b.in",
  );

  test("is told nearest first, as far as direct current could come", () => {
    const fed = told(waysOf(evaluate(line)).supplyTo("m"));
    expect(fed.slice(0, 2)).toEqual(["1 k.in", "2 s.in"]);
    expect(fed.slice(2).toSorted()).toEqual(["3 b.in", "3 psu.in"]);
  });

  test("is nothing where nothing takes supply", () => {
    expect(waysOf(evaluate(line)).supplyTo("a")).toEqual([]);
  });

  // The commands of a receiver set a switch, even one with its own mains.
  test("or tell a switch how to stand", () => {
    expect(told(waysOf(evaluate(house)).supplyTo("ms")).toSorted()).toEqual(["1 y.sat", "1 z.sat"]);
  });
});

test("services at a part are those that come or leave, lost or not", () => {
  const evaluation = evaluate(house);
  const at = (id: string) => {
    const record = evaluation.record(id);
    return record && [...servicesAt(record)].toSorted();
  };
  expect(at("k")).toEqual(["tv"]);
  expect(at("q")).toEqual(["satellite"]);
  expect(at("z")).toEqual(["satellite", "tv"]);
  expect(evaluation.record("ms") && at("ms")).toEqual(["satellite", "tv"]);
});

describe("places by the signal", () => {
  const inOrder = (design: Design) => {
    const order = signalOrderOf(evaluate(design));
    return design.parts.map((p) => p.id).toSorted((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0));
  };

  test("are sources first and receivers last, however it was drawn", () => {
    const parts = {
      z: ["receiver-tv"],
      k: ["cable"],
      s: ["splitter"],
      b: ["cable"],
      a: ["aerial-uhf"],
    } as const;
    const wires = ["b.out > s.in", "s.out1 > k.in", "a.out > b.in", "k.out > z.in"];
    expect(inOrder(draw(parts, wires.join(", ")))).toEqual(["a", "b", "s", "k", "z"]);
    expect(inOrder(draw(parts, wires.toReversed().join(", ")))).toEqual(["a", "b", "s", "k", "z"]);
  });

  // Two ways of one and of three parts meet at a combiner: it stands behind the longer.
  test("go by the longest way from a source", () => {
    const design = draw(
      {
        c: ["combiner"],
        x: ["cable", { lengthM: 1 }],
        y: ["cable", { lengthM: 2 }],
        w: ["cable", { lengthM: 3 }],
        a: ["aerial-uhf"],
        b: ["aerial-dab"],
      },
      "a.out > c.in1, b.out > x.in, x.out > y.in, y.out > w.in, w.out > c.in2",
    );
    expect(inOrder(design).at(-1)).toBe("c");
    expect(inOrder(design).slice(2, 5)).toEqual(["x", "y", "w"]);
  });

  /** Two rooms on one splitter that differ in nothing but the length of their cables, drawn under these ids. */
  const rooms = (long: string, short: string) =>
    draw(
      {
        [long]: ["cable", { lengthM: 30 }],
        [`t${long}`]: ["receiver-tv"],
        [short]: ["cable", { lengthM: 10 }],
        [`t${short}`]: ["receiver-tv"],
        s: ["splitter"],
        a: ["aerial-uhf"],
      },
      `a.out > s.in, s.out1 > ${short}.in, s.out2 > ${long}.in, ${long}.out > t${long}.in, ${short}.out > t${short}.in`,
    );

  test("do not go by ids: like parts are told apart by what they hang on", () => {
    const name = (ids: readonly string[], long: string, short: string) =>
      ids.map((id) => id.replace(long, "long").replace(short, "short"));
    const first = name(inOrder(rooms("p", "q")), "p", "q");
    const second = name(inOrder(rooms("q", "p")), "q", "p");
    expect(second).toEqual(first);
    // Whichever cable comes first, its own set does among the sets.
    const [one, other] = first.slice(2, 4);
    expect(first.slice(4)).toEqual([`t${one}`, `t${other}`]);
  });

  test("of twins go by their labels, then by where they lie: from top to bottom, from left to right", () => {
    const twins = (change: readonly Partial<Design["parts"][number]>[]) => {
      const design = draw({ a: ["aerial-uhf"], b: ["aerial-uhf"] }, "");
      return { ...design, parts: design.parts.map((part, n) => ({ ...part, label: "x", ...change[n] })) };
    };
    expect(inOrder(twins([{ label: "north" }, { label: "east" }]))).toEqual(["b", "a"]);
    expect(inOrder(twins([{ label: "east" }, { label: "north" }]))).toEqual(["a", "b"]);
    expect(inOrder(twins([{ at: [0, 50] }, { at: [99, 10] }]))).toEqual(["b", "a"]);
    expect(inOrder(twins([{ at: [99, 10] }, { at: [0, 50] }]))).toEqual(["a", "b"]);
    expect(inOrder(twins([{ at: [9, 5] }, { at: [3, 5] }]))).toEqual(["b", "a"]);
    expect(inOrder(twins([{ at: [3, 5] }, { at: [9, 5] }]))).toEqual(["a", "b"]);
  });

  test("are given to parts in a circle as well", () => {
    const circle = draw(
      { x: ["combiner"], y: ["splitter"], a: ["aerial-uhf"] },
      "a.out > x.in1, x.out > y.in, y.out1 > x.in2",
    );
    expect(inOrder(circle)[0]).toBe("a");
    expect(signalOrderOf(evaluate(circle)).size).toBe(3);
  });
});
