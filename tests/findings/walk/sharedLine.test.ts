/** Who speaks on a line and where their leads come together: read off each drawing. Common practice, no source. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { sharedLine } from "../../../src/findings/walk/sharedLine.ts";
import { draw, type Sketch } from "../../draw.ts";

const line = (parts: Sketch, wires: string, at = { part: "m", port: "out" }) =>
  sharedLine(evaluate(draw(parts, wires)), at);

const LNB = { m: ["lnb-universal"] } as const satisfies Sketch;
const rx = ["receiver-sat"] as const;
const sat = (...parts: string[]) => parts.map((part) => ({ part, port: "sat" }));

describe("a line with at most one speaker", () => {
  test("a receiver alone shares it with nobody", () => {
    expect(line({ ...LNB, c: ["cable"], a: rx }, "m.out > c.in, c.out > a.sat")).toStrictEqual({
      speakers: sat("a"),
    });
  });

  test("an output with nothing on it, and one of a part that is gone", () => {
    expect(line(LNB, "")).toStrictEqual({ speakers: [] });
    expect(line(LNB, "", { part: "nobody", port: "out" })).toStrictEqual({ speakers: [] });
  });

  test("a receiver that only feeds, and asks for nothing, is no speaker", () => {
    const alone = line({ m: ["lnb-wideband"], h: ["receiver-hybrid"] }, "m.v > h.v", {
      part: "m",
      port: "v",
    });
    expect(alone).toStrictEqual({ speakers: [] });
  });

  test("nor does its leg make a place where speakers come together", () => {
    const beside = line(
      { ...LNB, s: ["splitter"], h: ["receiver-hybrid"], a: rx },
      "m.out > s.in, s.out1 > h.v, s.out2 > a.sat",
    );
    expect(beside).toStrictEqual({ speakers: sat("a") });
  });

  test("a TV set on the other leg does not either", () => {
    const beside = line(
      { ...LNB, s: ["splitter"], q: ["receiver-tv"], a: rx },
      "m.out > s.in, s.out1 > q.in, s.out2 > a.sat",
    );
    expect(beside).toStrictEqual({ speakers: sat("a") });
  });

  test("a plate on two cables keeps the two lines apart", () => {
    const parts = { m: ["lnb-universal", { outputs: "2" }], plate: ["outlet-quad"], a: rx, b: rx } as const;
    const wires = "m.out1 > plate.in, m.out2 > plate.in2, plate.sat > a.sat, plate.sat2 > b.sat";
    expect(line(parts, wires, { part: "m", port: "out1" })).toStrictEqual({ speakers: sat("a") });
    expect(line(parts, wires, { part: "m", port: "out2" })).toStrictEqual({ speakers: sat("b") });
  });

  test("one that is reached by two legs speaks once", () => {
    const { speakers } = line(
      { ...LNB, s: ["splitter"], j: ["combiner", { dc: "all" }], a: rx },
      "m.out > s.in, s.out1 > j.in1, s.out2 > j.in2, j.out > a.sat",
    );
    expect(speakers).toEqual(sat("a"));
  });
});

describe("a line with several speakers", () => {
  test("they are told in the order of the legs, whatever the order in which they are drawn", () => {
    const shared = line(
      { c: rx, a: rx, b: rx, s: ["splitter", { ways: 3 }], ...LNB },
      "s.out3 > c.sat, s.out2 > b.sat, s.out1 > a.sat, m.out > s.in",
    );
    expect(shared).toStrictEqual({ joins: "s", speakers: sat("a", "b", "c") });
  });

  test("of two splitters the one nearer to the LNB joins them", () => {
    const shared = line(
      { ...LNB, low: ["splitter"], up: ["splitter"], a: rx, b: rx, c: rx },
      "m.out > up.in, up.out1 > low.in, up.out2 > c.sat, low.out1 > a.sat, low.out2 > b.sat",
    );
    expect(shared).toStrictEqual({ joins: "up", speakers: sat("a", "b", "c") });
  });

  test("the second splitter, where the first one has only one leg with speakers", () => {
    const shared = line(
      { ...LNB, low: ["splitter"], up: ["splitter"], a: rx, b: rx, q: ["receiver-tv"] },
      "m.out > up.in, up.out1 > low.in, up.out2 > q.in, low.out1 > a.sat, low.out2 > b.sat",
    );
    expect(shared).toStrictEqual({ joins: "low", speakers: sat("a", "b") });
  });

  test("a receiver behind an inserter that lets it through speaks beside the inserter's supply", () => {
    const shared = line(
      { ...LNB, s: ["splitter"], p: ["power-inserter", { receiver: "passed" }], a: rx, b: rx },
      "m.out > s.in, s.out1 > p.in, p.out > a.sat, s.out2 > b.sat",
    );
    expect(shared).toStrictEqual({ joins: "s", speakers: sat("a", "b") });
  });
});
