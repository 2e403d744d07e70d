/** Ends that nothing is connected to: what is merely open, and what somebody is without. Common practice. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { isToldByPlanes, missedEnds, openEnds } from "../../src/findings/openEnds.ts";
import { draw } from "../draw.ts";
import { recordOf } from "./byHand.ts";

type Parts = Parameters<typeof draw>[0];

const open = (parts: Parts, wires: string, part: string) =>
  openEnds(recordOf(evaluate(draw(parts, wires)), part)).map((end) => `${end.part}.${end.port}`);

describe("open ends", () => {
  const parts: Parts = {
    z: ["receiver-tv"],
    p: ["outlet-tv"],
    s: ["splitter"],
    c: ["combiner"],
    u: ["aerial-uhf"],
    g: ["meter"],
  };

  test("are all inputs without a lead", () => {
    expect(open(parts, "c.out > z.in", "c")).toEqual(["c.in1", "c.in2"]);
    expect(open(parts, "c.out > z.in, u.out > c.in1", "c")).toEqual(["c.in2"]);
    expect(open(parts, "", "z")).toEqual(["z.in"]);
  });

  test("are one output of a part of which none leads anywhere", () => {
    expect(open(parts, "u.out > s.in", "s")).toEqual(["s.out1"]);
    expect(open(parts, "", "u")).toEqual(["u.out"]);
    expect(open(parts, "", "s")).toEqual(["s.in", "s.out1"]);
  });

  // A spare leg is no open end, a socket waits for its receiver, and a meter ends a line.
  test("are no spare outputs, no sockets and nothing behind a meter", () => {
    expect(open(parts, "u.out > s.in, s.out2 > z.in", "s")).toEqual([]);
    expect(open(parts, "u.out > p.in", "p")).toEqual([]);
    expect(open(parts, "u.out > g.in", "g")).toEqual([]);
  });
});

/** Open ends and who is without what would come in there. */
const missed = (parts: Parts, wires: string) =>
  missedEnds(evaluate(draw(parts, wires)))
    .map(({ part, port, receivers }) => `${part}.${port}: ${receivers.join()}`)
    .sort();

const sky = "d.sky > a.sky";

describe("open inputs that a receiver suffers from", () => {
  const tv: Parts = {
    z: ["receiver-tv"],
    y: ["receiver-tv"],
    k: ["cable"],
    s: ["splitter"],
    x: ["diplexer-combine"],
    u: ["aerial-uhf"],
  };

  test("lie at the end of its line; those of one line are named together", () => {
    expect(missed(tv, "k.out > z.in")).toEqual(["k.in: z"]);
    expect(missed(tv, "k.out > s.in, s.out1 > z.in, s.out2 > y.in")).toEqual(["k.in: y,z"]);
  });

  test("are those by which its service could come", () => {
    expect(missed(tv, "x.out > k.in, k.out > z.in")).toEqual(["x.tv: z"]);
    expect(missed({ ...tv, z: ["receiver-sat"] }, "x.out > k.in, k.out > z.sat")).toEqual(["x.sat: z"]);
  });

  test("are none where the service comes, or its source is on the line", () => {
    expect(missed(tv, "u.out > x.tv, x.out > z.in")).toEqual([]);
    const silent: Parts = { ...tv, x: ["combiner"], b: ["bad-joint", { fault: "open" }] };
    expect(missed(silent, "u.out > x.in1, x.out > b.in, b.out > z.in")).toEqual([]);
  });

  test("are none of a receiver without a lead, or one that is off", () => {
    expect(missed(tv, "u.out > s.in")).toEqual([]);
    const off: Parts = { k: ["cable"], z: ["receiver-sat", { state: "standby" }] };
    expect(missed(off, "k.out > z.sat")).toEqual([]);
  });

  test("are a second input of its own, where the first has a lead", () => {
    const twin: Parts = { z: ["receiver-sat-twin"], a: ["lnb-universal"], d: ["dish"] };
    expect(missed(twin, `${sky}, a.out > z.sat1`)).toEqual(["z.sat2: z"]);
    expect(missed(twin, sky)).toEqual([]);
  });

  // It wants terrestrial TV as well, on an input of its own.
  test("are an input for another service, where those for the first have leads", () => {
    const hybrid: Parts = { z: ["receiver-hybrid", { aerial: true }], a: ["lnb-wideband"], d: ["dish"] };
    expect(missed(hybrid, `${sky}, a.v > z.v, a.h > z.h`)).toEqual(["z.ter: z"]);
    const alone: Parts = { ...hybrid, z: ["receiver-hybrid"] };
    expect(missed(alone, `${sky}, a.v > z.v, a.h > z.h`)).toEqual([]);
  });

  test("are no further ones of a ring", () => {
    const ring: Parts = { z: ["receiver-tv"], s: ["splitter"], c: ["combiner", { ways: 3 }] };
    expect(missed(ring, "c.out > s.in, s.out1 > c.in1, s.out2 > z.in")).toEqual([]);
  });

  test("are a converter's sky, where there is no dish", () => {
    expect(missed({ z: ["receiver-sat"], a: ["lnb-universal"] }, "a.out > z.sat")).toEqual(["a.sky: z"]);
  });
});

describe("open inputs that a switch stands at", () => {
  const two: Parts = {
    z: ["receiver-sat", { position: "2" }],
    p: ["position-switch"],
    a: ["lnb-universal"],
    d: ["dish"],
  };

  test("are missed by whoever asks for that position", () => {
    expect(missed(two, `${sky}, a.out > p.in1, p.out > z.sat`)).toEqual(["p.in2: z"]);
    const first: Parts = { ...two, z: ["receiver-sat", { position: "1" }] };
    expect(missed(first, `${sky}, a.out > p.in1, p.out > z.sat`)).toEqual([]);
    expect(missed(two, `${sky}, a.out > p.in1`)).toEqual([]);
  });
});

describe("open inputs of a multiswitch", () => {
  const roof: Parts = {
    z: ["receiver-sat"],
    y: ["receiver-sat"],
    k: ["cable"],
    m: ["multiswitch", { terrestrial: false }],
    a: ["lnb-quattro"],
    d: ["dish"],
  };
  const three = `${sky}, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, m.out1 > z.sat, m.out2 > y.sat`;

  test("are told by the rule of quadrants, and one further up here", () => {
    expect(missed(roof, three)).toEqual([]);
    expect(missed(roof, `${three}, k.out > m.hh`)).toEqual(["k.in: y,z"]);
  });

  test("the rule of quadrants speaks of them where somebody asks", () => {
    const told = (wires: string, port: string) =>
      isToldByPlanes(evaluate(draw(roof, wires)), { part: "m", port });
    expect(told(three, "hh")).toBe(true);
    expect(told(three, "hl")).toBe(false);
    expect(told(`${sky}, a.vl > m.vl`, "hh")).toBe(false);
    expect(isToldByPlanes(evaluate(draw(roof, three)), { part: "nobody", port: "hh" })).toBe(false);
  });

  test("for a second satellite are missed by whoever asks for it", () => {
    const wide: Parts = { ...roof, m: ["multiswitch", { terrestrial: false, satelliteInputs: "8" }] };
    const one = `${three}, a.hh > m.hh`;
    expect(missed(wide, one)).toEqual([]);
    const asking: Parts = { ...wide, y: ["receiver-sat", { position: "2" }] };
    expect(missed(asking, one)).toEqual(["m.hh2: y", "m.hl2: y", "m.vh2: y", "m.vl2: y"]);
  });

  // The second dish is begun: one lead hangs at the switch, and leads nowhere yet.
  test("for a second satellite are missed by all where one lead to it is laid", () => {
    const wide: Parts = { ...roof, m: ["multiswitch", { terrestrial: false, satelliteInputs: "8" }] };
    expect(missed(wide, `${three}, a.hh > m.hh, k.out > m.hl2`)).toEqual([
      "k.in: y,z",
      "m.hh2: y,z",
      "m.vh2: y,z",
      "m.vl2: y,z",
    ]);
  });

  test("further up are no matter where nobody asks, nor where a source is on the line", () => {
    const idle = `${sky}, a.vl > m.vl, k.out > m.hh`;
    expect(missed(roof, idle)).toEqual([]);
    const broken: Parts = { ...roof, x: ["bad-joint", { fault: "open" }] };
    expect(missed(broken, `${three}, a.hh > x.in, x.out > m.hh`)).toEqual([]);
  });
});
