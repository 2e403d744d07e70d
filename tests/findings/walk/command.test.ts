/**
 * Which switches hear an input, what they are asked for and who decides. 13/18 V, 22 kHz and the threshold of 15 V:
 * EN 61319-1; user bands and a line held: EN 50494, as quoted. Who decides is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { walkCommand } from "../../../src/findings/walk/command.ts";
import { draw, type Sketch } from "../../draw.ts";

const stops = (parts: Sketch, wires: string, part = "a", port = "sat") =>
  walkCommand(evaluate(draw(parts, wires)), { part, port });

const rx = (options: Record<string, unknown> = {}) => ["receiver-sat", options] as const;

describe("what is asked for", () => {
  test.each([
    { polarisation: "V", half: "low", asked: "VL" },
    { polarisation: "V", half: "high", asked: "VH" },
    { polarisation: "H", half: "low", asked: "HL" },
    { polarisation: "H", half: "high", asked: "HH" },
  ])("of an LNB: $asked", ({ asked, ...wish }) => {
    expect(stops({ m: ["lnb-universal"], a: rx(wish) }, "m.out > a.sat")).toStrictEqual([
      {
        part: "m",
        port: "out",
        speaker: "a",
        kind: "switch",
        setting: asked,
        asked,
        understood: asked,
        decidedBy: "a",
        others: [],
        volts: wish.polarisation === "V" ? 13 : 18,
        toneArrives: true,
        dormant: false,
        thresholdVolts: 15,
        granted: true,
      },
    ]);
  });

  test.each([
    { position: "none", asked: "1:HH" },
    { position: "2", asked: "2:HH" },
  ])("of a multiswitch for two satellites, with position $position: $asked", ({ position, asked }) => {
    const heard = stops(
      { ms: ["multiswitch", { satelliteInputs: "8" }], a: rx({ polarisation: "H", half: "high", position }) },
      "ms.out2 > a.sat",
    );
    expect(heard).toHaveLength(1);
    expect(heard[0]).toMatchObject({ part: "ms", port: "out2", asked, setting: asked, granted: true });
  });

  test("of a position switch only the position", () => {
    const heard = stops({ pos: ["position-switch"], a: rx({ position: "2" }) }, "pos.out > a.sat");
    expect(heard.map((s) => s.kind === "switch" && s.asked)).toEqual(["2"]);
  });
});

test("each input of a receiver is heard by the switch on its own lead", () => {
  const parts = { m: ["lnb-universal", { outputs: "2" }], a: ["receiver-sat-twin"] } as const;
  const wires = "m.out1 > a.sat1, m.out2 > a.sat2";
  expect(stops(parts, wires, "a", "sat1").map((s) => s.port)).toEqual(["out1"]);
  expect(stops(parts, wires, "a", "sat2").map((s) => s.port)).toEqual(["out2"]);
});

describe("who decides", () => {
  test("a supply without commands is none of the others that speak", () => {
    // 12 V beside the receiver's 18 V: the higher one wins.
    const [heard] = stops(
      {
        m: ["lnb-universal"],
        p: ["power-inserter", { receiver: "passed", limitMa: 500 }],
        a: rx({ polarisation: "H" }),
      },
      "m.out > p.in, p.out > a.sat",
    );
    expect(heard).toMatchObject({ decidedBy: "a", others: [], volts: 18, granted: true });
  });

  test("one whose position switch stands elsewhere is not heard beside the one whose stands here", () => {
    const parts = {
      m: ["lnb-universal"],
      s: ["splitter"],
      pa: ["position-switch"],
      pb: ["position-switch"],
      a: rx({ polarisation: "H", position: "2" }),
      b: rx({ polarisation: "V", position: "1" }),
    } as const satisfies Sketch;
    const wires = "m.out > s.in, s.out1 > pa.in1, s.out2 > pb.in1, pa.out > a.sat, pb.out > b.sat";
    const atLnb = (part: string) => stops(parts, wires, part).find((s) => s.part === "m");
    expect(atLnb("b")).toMatchObject({
      decidedBy: "b",
      others: [],
      dormant: false,
      setting: "VL",
      granted: true,
    });
    // Alone, and set to position 1, it would be understood.
    expect(atLnb("a")).toMatchObject({
      decidedBy: "b",
      others: ["b"],
      dormant: true,
      asked: "HL",
      understood: "HL",
      granted: false,
    });
  });

  test("where all stand elsewhere the one that would is named, and nothing is granted", () => {
    const parts = { m: ["lnb-universal"], pos: ["position-switch"], a: rx({ position: "2" }) } as const;
    const found = stops(parts, "m.out > pos.in1, pos.out > a.sat").find((s) => s.part === "m");
    expect(found).toMatchObject({ decidedBy: "a", others: [], dormant: true, granted: false });
  });
});

describe("on a single-cable line", () => {
  const single = (...numbers: number[]) =>
    ["receiver-stacked", { userBands: numbers.map((number) => ({ number, centreMHz: 1210 })) }] as const;
  const universal = ["receiver-stacked", { mode: "universal" }] as const;
  const line = (a: Sketch[string], b?: Sketch[string]) =>
    stops(
      { m: ["lnb-stacked"], s: ["splitter"], a, ...(b ? { b } : {}) },
      b ? "m.out > s.in, s.out1 > a.sat, s.out2 > b.sat" : "m.out > s.in, s.out1 > a.sat",
    )[0];

  test("alone it has its user bands", () => {
    const heard = line(single(1, 3));
    expect(heard).toMatchObject({
      kind: "single-cable",
      userBands: [1, 3],
      isUnderstood: true,
      granted: true,
      others: [],
    });
    expect(heard).not.toHaveProperty("rival");
  });

  test("in universal mode it is not understood, though nobody else is there", () => {
    const heard = line(universal);
    expect(heard).toMatchObject({ userBands: null, isUnderstood: false, granted: false });
    expect(heard).not.toHaveProperty("rival");
  });

  test("whoever shares one of several user bands is a rival, whoever shares none is not", () => {
    expect(line(single(1, 2), single(4, 2))).toMatchObject({
      rival: { part: "b", holdsLine: false },
      isUnderstood: true,
      granted: false,
    });
    expect(line(single(1, 2), single(3, 4))).toMatchObject({ others: ["b"], granted: true });
  });

  test("whoever is in universal mode holds the line", () => {
    expect(line(single(1), universal)).toMatchObject({
      rival: { part: "b", holdsLine: true },
      granted: false,
    });
  });

  test("two in universal mode hold it against each other", () => {
    expect(line(universal, universal)).toMatchObject({
      rival: { part: "b", holdsLine: true },
      granted: false,
    });
  });
});
