/** Isolation between flats: the worst pair against all pairs, and hand-worked sums. */
import { describe, expect, test } from "vitest";
import type { Design, Part, Wire } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { worstIsolation } from "../../src/findings/isolation.ts";
import { kindOf } from "../../src/parts/catalogue.ts";
import { gainDbAt } from "../../src/signal/gain.ts";
import { draw } from "../draw.ts";

type Parts = Parameters<typeof draw>[0];

function part(id: string, kindKey: string, options: Record<string, unknown> = {}): Part {
  const kind = kindOf(kindKey);
  if (!kind) throw new Error(`no kind ${kindKey}`);
  return { id, kind: kindKey, label: id, options: kind.options.parse(options), at: [0, 0] };
}

/** One splitter; on each of its outputs a cable of so many metres and the outlet of a flat. */
function star(flats: readonly { readonly dwelling: string; readonly lengthM: number }[]): Design {
  const parts = [part("aerial", "aerial-uhf"), part("split", "splitter", { ways: flats.length })];
  const wires: Wire[] = [{ from: ["aerial", "out"], to: ["split", "in"] }];
  flats.forEach(({ dwelling, lengthM }, n) => {
    parts.push(part(`cable${n}`, "cable", { lengthM }), part(`outlet${n}`, "outlet-tv", { dwelling }));
    wires.push({ from: ["split", `out${n + 1}`], to: [`cable${n}`, "in"] });
    wires.push({ from: [`cable${n}`, "out"], to: [`outlet${n}`, "in"] });
  });
  return { title: "Star", parts, wires };
}

function pairsOf(design: Design) {
  const search = worstIsolation(evaluate(design), 47);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

describe("the worst pair", () => {
  test.each([
    {
      name: "the two shortest ways where they lead to different flats",
      flats: [
        { dwelling: "a", lengthM: 30 },
        { dwelling: "b", lengthM: 10 },
        { dwelling: "c", lengthM: 20 },
      ],
      worst: ["outlet1", "outlet2"],
    },
    {
      name: "the shortest way to another flat where the two shortest lead to one",
      flats: [
        { dwelling: "a", lengthM: 5 },
        { dwelling: "a", lengthM: 6 },
        { dwelling: "b", lengthM: 40 },
        { dwelling: "c", lengthM: 30 },
      ],
      worst: ["outlet0", "outlet3"],
    },
  ])("is $name", ({ flats, worst }) => {
    const [pair, ...more] = pairsOf(star(flats));
    expect(more).toEqual([]);
    expect([...(pair?.outlets ?? [])].sort()).toEqual(worst);
  });

  test("comes to the loss of both legs and the decoupling of the splitter", () => {
    const design = star([
      { dwelling: "a", lengthM: 10 },
      { dwelling: "b", lengthM: 20 },
    ]);
    const evaluation = evaluate(design);
    // The sum by hand: each leg is its cable and its outlet at 47 MHz, both as the parts declare them.
    const loss = (id: string) => {
      const path = evaluation.record(id)?.treatment.paths?.[0];
      return path ? -gainDbAt(path.response, 47) : Number.NaN;
    };
    const legs = ["cable0", "outlet0", "cable1", "outlet1"].reduce((sum, id) => sum + loss(id), 0);
    expect(pairsOf(design)[0]?.isolationDb).toBeCloseTo(legs + 22, 6);
  });
});

/** Pads in place of cables: legs of so many decibels, whatever the frequency. */
describe("isolation behind pads, at 47 MHz", () => {
  const outlet = (dwelling: string): Parts[string] => ["outlet-tv", { dwelling, lossDb: 1 }];
  const pad = (lossDb: number): Parts[string] => ["attenuator", { lossDb }];
  const isolation = (parts: Parts, wires: string) =>
    [...pairsOf(draw(parts, wires))].map((p) => ({
      ...p,
      isolationDb: Math.round(p.isolationDb * 1e6) / 1e6,
    }));

  const two = (first: string, second: string): Parts => ({
    a: ["aerial-uhf"],
    s: ["splitter", { isolationDb: 20 }],
    p: pad(3),
    q: pad(6),
    o1: outlet(first),
    o2: outlet(second),
  });
  const wires = "a.out > s.in, s.out1 > p.in, s.out2 > q.in, p.out > o1.in, q.out > o2.in";

  // 3 + 1 dB up one leg, 6 + 1 dB down the other, 20 dB across the splitter.
  test("is the two legs and what the splitter keeps apart", () => {
    expect(isolation(two("A", "B"), wires)).toEqual([
      { at: "s", outlets: ["o1", "o2"], dwellings: ["A", "B"], frequencyMHz: 47, isolationDb: 31 },
    ]);
  });

  test("is no matter within one flat, however its name is written down", () => {
    expect(isolation(two("A", "A"), wires)).toEqual([]);
    expect(isolation(two("A", " A "), wires)).toEqual([]);
  });

  test("leaves out an outlet that belongs to no flat", () => {
    expect(isolation(two("A", ""), wires)).toEqual([]);
    expect(isolation(two("  ", "B"), wires)).toEqual([]);
  });

  test("leaves out an outlet that is not joined", () => {
    expect(isolation(two("A", "B"), "a.out > s.in, s.out1 > p.in, s.out2 > q.in, p.out > o1.in")).toEqual([]);
  });

  // Nothing goes backwards through an amplifier that is worth speaking of.
  test("is not asked through an amplifier", () => {
    const parts: Parts = { ...two("A", "B"), q: ["amp-masthead"], psu: ["power-inserter"] };
    const rest = "s.out1 > p.in, p.out > o1.in, s.out2 > q.in, q.out > psu.in, psu.out > o2.in";
    expect(isolation(parts, `a.out > s.in, ${rest}`)).toEqual([]);
  });

  // Behind the lower splitter, 20·log10 3 = 9.5424 dB, C is the nearest of three: 1 + 9.5424 + 3 + 1 + 20.
  test("takes the nearest of several flats behind one output, wherever it hangs", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      s: ["splitter", { isolationDb: 20 }],
      t: ["splitter", { ways: 3, type: "resistive" }],
      ...{ p: pad(9), q: pad(3), r: pad(6) },
      ...{ o: outlet("A"), o1: outlet("B"), o2: outlet("C"), o3: outlet("D") },
    };
    const found = isolation(
      parts,
      "a.out > s.in, s.out1 > o.in, s.out2 > t.in, t.out1 > p.in, t.out2 > q.in, t.out3 > r.in, p.out > o1.in, q.out > o2.in, r.out > o3.in",
    ).find((pair) => pair.at === "s");
    expect(found?.outlets).toEqual(["o", "o2"]);
    expect(found?.isolationDb).toBeCloseTo(34.5424, 4);
  });

  // The same with D the nearest of the three, behind the last output: 1 + 9.5424 + 3 + 1 + 20.
  test("takes the nearest of several flats behind one output, the last of them too", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      s: ["splitter", { isolationDb: 20 }],
      t: ["splitter", { ways: 3, type: "resistive" }],
      ...{ p: pad(9), q: pad(6), r: pad(3) },
      ...{ o: outlet("A"), o1: outlet("B"), o2: outlet("C"), o3: outlet("D") },
    };
    const found = isolation(
      parts,
      "a.out > s.in, s.out1 > o.in, s.out2 > t.in, t.out1 > p.in, t.out2 > q.in, t.out3 > r.in, p.out > o1.in, q.out > o2.in, r.out > o3.in",
    ).find((pair) => pair.at === "s");
    expect(found?.outlets).toEqual(["o", "o3"]);
    expect(found?.isolationDb).toBeCloseTo(34.5424, 4);
  });

  // At the lower splitter B meets C, at the upper one A meets the nearer of the two.
  test("is told at each part that branches, of the nearest two there", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      s: ["splitter", { isolationDb: 20 }],
      t: ["splitter", { type: "resistive" }],
      p: pad(3),
      q: pad(6),
      r: pad(2),
      o1: outlet("A"),
      o2: outlet("B"),
      o3: outlet("C"),
    };
    const found = isolation(
      parts,
      "a.out > s.in, s.out1 > p.in, p.out > o1.in, s.out2 > q.in, q.out > t.in, t.out1 > r.in, r.out > o2.in, t.out2 > o3.in",
    );
    expect(found.map((p) => [p.at, ...p.outlets])).toEqual([
      ["s", "o1", "o3"],
      ["t", "o2", "o3"],
    ]);
    // Resistive: 20·log10 2 = 6.0206 dB. (3 + 1) + (6 + 6.0206 + 1) + 20.
    expect(found[0]?.isolationDb).toBeCloseTo(37.0206, 4);
    // A resistive star keeps its legs apart by no more than it loses: (2 + 1) + 1 + 6.0206.
    expect(found[1]?.isolationDb).toBeCloseTo(10.0206, 4);
  });

  // Flat A has the two nearest outlets of the lower splitter; across the upper one it meets itself, so C is the pair.
  test("finds the nearest of another flat behind two of one's own", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      s: ["splitter", { isolationDb: 20 }],
      t: ["splitter", { ways: 3, type: "resistive" }],
      r: pad(12),
      o: outlet("A"),
      o1: outlet("A"),
      o2: outlet("A"),
      o3: outlet("C"),
    };
    const found = isolation(
      parts,
      "a.out > s.in, s.out1 > o.in, s.out2 > t.in, t.out1 > o1.in, t.out2 > o2.in, t.out3 > r.in, r.out > o3.in",
    );
    const upper = found.find((p) => p.at === "s");
    expect(upper?.outlets).toEqual(["o", "o3"]);
    // 1 + (20·log10 3 = 9.5424) + 12 + 1 + 20.
    expect(upper?.isolationDb).toBeCloseTo(43.5424, 4);
  });

  // A is far off: up to it 20 + 1, down to C 6 + 6.0206 + 1 dB. B and C meet nearer, but at the lower splitter.
  test("is not asked at a splitter between two flats behind the same of its outputs", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      s: ["splitter", { isolationDb: 20 }],
      t: ["splitter", { type: "resistive" }],
      p: pad(20),
      q: pad(6),
      o1: outlet("A"),
      o2: outlet("B"),
      o3: outlet("C"),
    };
    const found = isolation(
      parts,
      "a.out > s.in, s.out1 > p.in, p.out > o1.in, s.out2 > q.in, q.out > t.in, t.out1 > o2.in, t.out2 > o3.in",
    ).find((pair) => pair.at === "s");
    expect(found?.outlets[0]).toBe("o1");
    expect(found?.isolationDb).toBeCloseTo(54.0206, 4);
  });

  // To the socket of the plate on the riser it is 14 dB; its line on to the next plate loses far less. The plate itself
  // keeps its sockets 25 dB from the line that goes on, where the last one has 20 dB to its own: 45 dB.
  test("ends at the socket of a plate, whose own flat counts against the line behind it", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      s: ["splitter", { isolationDb: 20 }],
      x: ["outlet-through", { dwelling: "A", tapLossDb: 14 }],
      y: ["outlet-end", { dwelling: "B", lossDb: 20 }],
      o: outlet("C"),
    };
    expect(isolation(parts, "a.out > s.in, s.out1 > x.in, x.out > y.in, s.out2 > o.in")).toEqual([
      { at: "s", outlets: ["x", "o"], dwellings: ["A", "C"], frequencyMHz: 47, isolationDb: 35 },
      { at: "x", outlets: ["y", "x"], dwellings: ["B", "A"], frequencyMHz: 47, isolationDb: 45 },
    ]);
  });

  // Up from C: 6 dB of its plate, 2 dB of line, then at Y 25 dB between line and sockets. From B at Y down to D the same.
  // Up from D: 4 dB, then at X 22 dB between line and sockets, which is what its tap loses at least.
  test("is asked for at every plate of a riser, against the nearest flat further down", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      x: ["outlet-through", { dwelling: "A", tapLossDb: 22, isolationDb: 20 }],
      p: pad(1),
      y: ["outlet-through", { dwelling: "B", tapLossDb: 14, isolationDb: 25 }],
      q: pad(2),
      z: ["outlet-end", { dwelling: "C", lossDb: 6 }],
    };
    const found = isolation(parts, "a.out > x.in, x.out > p.in, p.out > y.in, y.out > q.in, q.out > z.in");
    expect(found).toMatchObject([
      { at: "x", outlets: ["z", "x"] },
      { at: "y", outlets: ["z", "y"], isolationDb: 33 },
    ]);
    // Y passes the line on with 0.45 dB and 1.45 times the ideal 10·log10(1/(1 − 10^−1.4)) = 0.1764 dB: 0.7058 dB.
    // C to A: 6 + 2 + 0.7058 + 1 dB of the line, then 22 dB; B to A would be 14 + 1 + 22 = 37 dB.
    expect(found[0]?.isolationDb).toBeCloseTo(31.7058, 3);
  });

  // From the branch of the tap to its line: 20 dB are declared, but a branch of 24 dB loses no less the other way.
  // 1 dB of the plate on the branch, 3 + 1 dB down the line.
  test.each([
    { name: "what a tap declares", tapLossDb: 12, isolationDb: 20, expected: 25 },
    { name: "no less than the loss of its branch", tapLossDb: 24, isolationDb: 20, expected: 29 },
  ])("between a tap's branch and its line is $name", ({ tapLossDb, isolationDb, expected }) => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      t: ["tap", { tapLossDb, isolationDb }],
      p: pad(3),
      o1: outlet("A"),
      o2: outlet("B"),
    };
    const found = isolation(parts, "a.out > t.in, t.tap1 > o1.in, t.out > p.in, p.out > o2.in");
    expect(found.map((pair) => pair.isolationDb)).toEqual([expected]);
  });

  // Two branches of one tap are kept apart by what it declares, whatever they lose.
  test("between two branches of a tap is what it declares", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      t: ["tap", { taps: "2", tapLossDb: 24, isolationDb: 20 }],
      o1: outlet("A"),
      o2: outlet("B"),
    };
    expect(isolation(parts, "a.out > t.in, t.tap1 > o1.in, t.tap2 > o2.in")).toMatchObject([
      { at: "t", isolationDb: 22 },
    ]);
  });

  test("is not told of a part of which it is not known how well it keeps its outputs apart", () => {
    const parts: Parts = {
      a: ["aerial-uhf"],
      m: ["amp-distribution", { outputs: 2 }],
      o1: outlet("A"),
      o2: outlet("B"),
    };
    expect(isolation(parts, "a.out > m.in, m.out > o1.in, m.out2 > o2.in")).toEqual([]);
  });

  // Splitter t feeds the combiner that feeds it: what goes round in there has no level to speak of.
  test("is not asked in a loop, nor through one", () => {
    const parts: Parts = {
      ...two("A", "B"),
      c: ["combiner"],
      t: ["splitter", { ways: 3, isolationDb: 20 }],
      o3: outlet("C"),
    };
    const loop = "q.out > c.in1, c.out > t.in, t.out1 > c.in2, t.out2 > o2.in, t.out3 > o3.in";
    expect(isolation(parts, `a.out > s.in, s.out1 > p.in, s.out2 > q.in, p.out > o1.in, ${loop}`)).toEqual(
      [],
    );
  });

  test("says how much work each part is, one after the other", () => {
    const search = worstIsolation(evaluate(draw(two("A", "B"), wires)), 47);
    const work: number[] = [];
    for (let step = search.next(); !step.done; step = search.next()) work.push(step.value);
    // Ports: an aerial has 1, a two-way splitter 3, a pad 2, an outlet 2.
    expect(work.toSorted()).toEqual([1, 2, 2, 2, 2, 3]);
  });
});

/** Four houses at 47 MHz, where taps and splitters lose what is set, each added up along the one way between two sockets. */
describe("isolation in whole houses", () => {
  const plate = (dwelling: string): Parts[string] => ["outlet-tv", { dwelling, lossDb: 1 }];
  const split = (isolationDb: number): Parts[string] => [
    "splitter",
    { loss: "own", ownTvDb: 4, isolationDb },
  ];
  const found = (parts: Parts, wires: string) =>
    [...pairsOf(draw({ a: ["aerial-uhf"], ...parts }, wires))].map(({ at, isolationDb }) => [
      at,
      Math.round(isolationDb * 100) / 100,
    ]);

  // From a branch to the line 22 dB, more than the branch of 20 dB has. A to B: 1 + 22 + 2 + 16 + 1 = 42 dB. A to C is less: the second tap's
  // line loses 0.45 + 1.45·0.1105 = 0.61 dB, so 1 + 22 + 2 + 0.61 + 4 + 1 = 30.61 dB. B to C at the second tap: 1 + 22 + 4 + 1 = 28 dB.
  test("a riser of two taps and a plate at its end", () => {
    const parts: Parts = {
      x: ["tap", { tapLossDb: 20, isolationDb: 22 }],
      p: ["attenuator", { lossDb: 2 }],
      y: ["tap", { tapLossDb: 16, isolationDb: 22 }],
      q: ["attenuator", { lossDb: 4 }],
      o1: plate("A"),
      o2: plate("B"),
      o3: plate("C"),
    };
    expect(
      found(
        parts,
        "a.out > x.in, x.tap1 > o1.in, x.out > p.in, p.out > y.in, y.tap1 > o2.in, y.out > q.in, q.out > o3.in",
      ),
    ).toEqual([
      ["x", 30.61],
      ["y", 28],
    ]);
  });

  // Simply joined: 3.52 dB from leg to leg and a plate of 1 dB at either end.
  test("two plates twisted on one line", () => {
    const parts: Parts = { t: ["t-joint"], o1: plate("A"), o2: plate("B") };
    expect(found(parts, "a.out > t.in, t.out1 > o1.in, t.out2 > o2.in")).toEqual([["t", 5.52]]);
  });

  // Behind one small splitter 1 + 22 + 1 = 24 dB; across the first 1 + 4 + 25 + 4 + 1 = 35.
  test("a tree of splitters, near and far", () => {
    const parts: Parts = {
      s: split(25),
      l: split(22),
      r: split(22),
      o1: plate("A"),
      o2: plate("B"),
      o3: plate("C"),
      o4: plate("D"),
    };
    expect(
      found(
        parts,
        "a.out > s.in, s.out1 > l.in, s.out2 > r.in, l.out1 > o1.in, l.out2 > o2.in, r.out1 > o3.in, r.out2 > o4.in",
      ),
    ).toEqual([
      ["s", 35],
      ["l", 24],
      ["r", 24],
    ]);
  });

  // 3 + 28 + 5 dB, and a plate of 1 dB at either end.
  test("two flats on one multiswitch", () => {
    const parts: Parts = {
      m: ["multiswitch", { isolationDb: 28 }],
      p: ["attenuator", { lossDb: 3 }],
      q: ["attenuator", { lossDb: 5 }],
      o1: plate("A"),
      o2: plate("B"),
    };
    expect(
      found(parts, "a.out > m.terr, m.out1 > p.in, m.out2 > q.in, p.out > o1.in, q.out > o2.in"),
    ).toEqual([["m", 38]]);
  });
});
