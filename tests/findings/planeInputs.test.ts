/** What the plane inputs of switches get: small jobs with leads right, changed, missing, and of the wrong sort. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { isAsked, missingPlanes, missingSatellites, planeInputs } from "../../src/findings/planeInputs.ts";
import { draw } from "../draw.ts";
import { recordOf } from "./byHand.ts";

type Parts = Parameters<typeof draw>[0];

const switchIn = (parts: Parts, wires: string) => recordOf(evaluate(draw(parts, wires)), "m");

const quattro: Parts = { z: ["receiver-sat"], m: ["multiswitch"], a: ["lnb-quattro"], d: ["dish"] };
const roof = "d.sky > a.sky";
const rightly = `${roof}, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, a.hh > m.hh`;

/** Two satellites on one multiswitch. */
const two: Parts = {
  ...quattro,
  m: ["multiswitch", { satelliteInputs: "8" }],
  b: ["lnb-quattro"],
  e: ["dish"],
};
const second = "e.sky > b.sky, b.vl > m.vl2, b.vh > m.vh2, b.hl > m.hl2, b.hh > m.hh2";

/** Port, and what it gets in a word or two. */
const gets = (parts: Parts, wires: string) =>
  planeInputs(switchIn(parts, wires)).map(({ port, gets: what }) => {
    if (what.kind === "plane") return `${port}: ${what.quadrant} of ${what.dish}`;
    return what.kind === "loose" ? `${port}: ${what.feed} of ${what.dish}` : `${port}: ${what.kind}`;
  });

describe("plane inputs", () => {
  test("of a multiswitch are its four, by name", () => {
    const named = planeInputs(switchIn(quattro, rightly)).map((i) => [
      i.port,
      i.plane,
      i.satellite,
      i.quadrant,
    ]);
    expect(named).toEqual([
      ["vl", "VL", "1", "VL"],
      ["vh", "VH", "1", "VH"],
      ["hl", "HL", "1", "HL"],
      ["hh", "HH", "1", "HH"],
    ]);
  });

  test("for two satellites are told by the satellite as well", () => {
    const named = planeInputs(switchIn(two, rightly)).map((i) => [i.port, i.plane, i.satellite, i.quadrant]);
    expect(named).toHaveLength(8);
    expect([named[0], named[7]]).toEqual([
      ["vl", "1:VL", "1", "VL"],
      ["hh2", "2:HH", "2", "HH"],
    ]);
  });

  test("for whole polarisations have no half", () => {
    const named = planeInputs(switchIn({ m: ["stacking-converter", { feed: "wideband" }] }, ""));
    expect(named.map((i) => [i.port, i.plane, i.quadrant])).toEqual([
      ["v", "V", "V"],
      ["h", "H", "H"],
    ]);
  });

  test("are no outputs, though those of a trunk stand for planes as well", () => {
    const cascade = planeInputs(switchIn({ m: ["multiswitch", { cascade: true }] }, ""));
    expect(cascade.map((i) => i.port)).toEqual(["vl", "vh", "hl", "hh"]);
  });

  test("are none of a receiver, of a converter, and of a switch in a ring", () => {
    const evaluation = evaluate(
      draw({ w: ["receiver-hybrid"], a: ["lnb-quattro"], p: ["position-switch"] }, ""),
    );
    for (const id of ["w", "a", "p"]) expect(planeInputs(recordOf(evaluation, id))).toEqual([]);
    expect(gets({ m: ["multiswitch"], k: ["cable"] }, "m.out1 > k.in, k.out > m.vl")).toEqual([]);
  });
});

describe("a plane input gets", () => {
  test("the plane that its lead brings, right or changed", () => {
    expect(gets(quattro, rightly)).toEqual(["vl: VL of d", "vh: VH of d", "hl: HL of d", "hh: HH of d"]);
    const changed = `${roof}, a.vl > m.vl, a.hl > m.vh, a.vh > m.hl, a.hh > m.hh`;
    expect(gets(quattro, changed)).toEqual(["vl: VL of d", "vh: HL of d", "hl: VH of d", "hh: HH of d"]);
  });

  test("nothing where nothing is connected, silence where the lead brings nothing", () => {
    const parts: Parts = { ...quattro, k: ["cable"], u: ["aerial-uhf"] };
    expect(gets(parts, "k.out > m.vl, u.out > m.vh")).toEqual([
      "vl: silence",
      "vh: silence",
      "hl: nothing connected",
      "hh: nothing connected",
    ]);
  });

  // The filter lets 470 to 694 MHz pass: of the satellite IF nothing usable is left.
  test("silence where a filter keeps the satellite from it", () => {
    const parts: Parts = { ...quattro, f: ["filter", { dcPass: true, fromMHz: 470, toMHz: 694 }] };
    expect(gets(parts, `${roof}, a.vl > f.in, f.out > m.vl, a.vh > m.vh`).slice(0, 2)).toEqual([
      "vl: silence",
      "vh: VH of d",
    ]);
  });

  test("its own plane where another one comes by the same lead", () => {
    const parts: Parts = { ...quattro, c: ["combiner", { dc: "all" }] };
    const both = (wires: string) => gets(parts, `${roof}, ${wires}, c.out > m.hl`)[2];
    expect(both("a.vl > c.in1, a.hl > c.in2")).toBe("hl: HL of d");
    expect(both("a.hl > c.in1, a.vl > c.in2")).toBe("hl: HL of d");
  });

  test("a loose feed from a converter of another sort", () => {
    const from = (lnb: string, out: string) =>
      gets({ ...quattro, a: [lnb] }, `${roof}, a.${out} > m.vl, m.out1 > z.sat`)[0];
    expect(from("lnb-universal", "out")).toBe("vl: switched of d");
    expect(from("lnb-wideband", "v")).toBe("vl: wideband of d");
    expect(from("lnb-stacked", "out")).toBe("vl: single-cable of a");
  });

  test("a loose feed where one comes beside the plane", () => {
    const parts: Parts = { ...quattro, c: ["combiner", { dc: "all" }], b: ["lnb-wideband"], e: ["dish"] };
    const both = (first: string, second: string) =>
      gets(parts, `${roof}, e.sky > b.sky, ${first} > c.in1, ${second} > c.in2, c.out > m.vl`)[0];
    expect(both("a.vl", "b.v")).toBe("vl: wideband of e");
    expect(both("b.v", "a.vl")).toBe("vl: wideband of e");
  });

  test("for a whole polarisation: a quadrant is half of it", () => {
    const unit = (lnb: string, out: string) =>
      gets(
        { m: ["stacking-converter", { feed: "wideband" }], a: [lnb], d: ["dish"] },
        `${roof}, a.${out} > m.h`,
      )[1];
    expect(unit("lnb-quattro", "hl")).toBe("h: quadrant of d");
    expect(unit("lnb-wideband", "h")).toBe("h: H of d");
    expect(unit("lnb-wideband", "v")).toBe("h: V of d");
  });
});

describe("a switch", () => {
  test("is asked where a receiver speaks to it", () => {
    expect(isAsked(switchIn(quattro, `${rightly}, m.out2 > z.sat`))).toBe(true);
    expect(isAsked(switchIn(quattro, rightly))).toBe(false);
    expect(isAsked(switchIn({ ...quattro, z: ["receiver-tv"] }, `${rightly}, m.out2 > z.in`))).toBe(false);
  });

  test("is not asked by what merely supplies it", () => {
    const parts: Parts = { ...quattro, p: ["power-inserter", { receiver: "stopped" }] };
    expect(isAsked(switchIn(parts, `${rightly}, m.out2 > p.in`))).toBe(false);
    expect(isAsked(switchIn(parts, `${rightly}, m.out2 > p.in, p.out > z.sat`))).toBe(false);
  });
});

describe("what a switch lacks", () => {
  const missing = (parts: Parts, wires: string) => missingPlanes(switchIn(parts, wires)).map((i) => i.port);

  test("are planes of a satellite of which others come", () => {
    expect(missing(quattro, rightly)).toEqual([]);
    expect(missing(quattro, `${roof}, a.vl > m.vl, a.hh > m.hh`)).toEqual(["vh", "hl"]);
    expect(missing({ ...quattro, k: ["cable"] }, `${roof}, a.vl > m.vl, k.out > m.hh`)).toEqual([
      "vh",
      "hl",
      "hh",
    ]);
    expect(missing(two, `${rightly}, e.sky > b.sky, b.vl > m.vl2`)).toEqual(["vh2", "hl2", "hh2"]);
  });

  test("a loose feed is one that comes", () => {
    const parts: Parts = { ...quattro, a: ["lnb-wideband"] };
    expect(missing(parts, `${roof}, a.v > m.vl`)).toEqual(["vh", "hl", "hh"]);
  });

  test("are none of a satellite that is silent as a whole", () => {
    expect(missing(two, rightly)).toEqual([]);
    expect(missing(quattro, "")).toEqual([]);
  });
});

describe("a satellite that is silent", () => {
  const silent = (parts: Parts, wires: string, asked: readonly string[] = []) =>
    missingSatellites(switchIn(parts, wires), (satellite) => asked.includes(satellite)).map((i) => i.port);
  const all = ["vl2", "vh2", "hl2", "hh2"];

  test("is missing where somebody asks for it, and may be there for later where nobody does", () => {
    expect(silent(two, rightly, ["2"])).toEqual(all);
    expect(silent(two, rightly, ["1"])).toEqual([]);
    expect(silent(two, rightly)).toEqual([]);
  });

  test("is missing where a lead is there that brings nothing", () => {
    expect(silent({ ...two, k: ["cable"] }, `${rightly}, k.out > m.hl2`)).toEqual(all);
  });

  test("is not missing where it comes, in part or in full", () => {
    expect(silent(two, `${rightly}, ${second}`, ["1", "2"])).toEqual([]);
    expect(silent(two, `${rightly}, e.sky > b.sky, b.vl > m.vl2`, ["1", "2"])).toEqual([]);
  });

  test("is no matter where nothing comes at all", () => {
    expect(silent(two, "", ["1", "2"])).toEqual([]);
    expect(silent({ ...two, k: ["cable"] }, "k.out > m.hl2", ["1", "2"])).toEqual([]);
  });
});
