/** By which inputs a signal gets to an output: as parts of each sort are built (common practice). */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { PartRecord } from "../../src/evaluate/evaluation.ts";
import { inletsOf, mayCarry } from "../../src/findings/inlets.ts";
import type { Plane } from "../../src/findings/missing.ts";
import type { Path } from "../../src/parts/contract.ts";
import type { Polarisation, SkyHalf } from "../../src/signal/carrier.ts";
import { flat } from "../../src/signal/response.ts";
import { draw } from "../draw.ts";
import { recordOf } from "./byHand.ts";

/** Inlets of a record, each in one line: "port position polarisation half", "!" where it is meant. */
const inletsIn = (record: PartRecord, to?: string): readonly string[] =>
  inletsOf(record, to).map(({ port, position, polarisation, half, isMeant }) =>
    [port, position, polarisation, half, isMeant ? "!" : undefined].filter((x) => x !== undefined).join(" "),
  );

/** Those of a part that stands alone. */
const inlets = (kind: string, options: Record<string, unknown>, to?: string): readonly string[] =>
  inletsIn(recordOf(evaluate(draw({ x: [kind, options] }, "")), "x"), to);

/** A part made by hand of these paths, with inputs that say nothing of what they are for. */
function madeOf(...paths: readonly Omit<Path, "response">[]): PartRecord {
  const record = recordOf(evaluate(draw({ x: ["combiner", { ways: 4 }] }, "")), "x");
  const response = flat(0);
  return {
    ...record,
    kind: { ...record.kind, signal: () => ({ paths: paths.map((path) => ({ ...path, response })) }) },
  };
}

describe("inputs that lead to an output", () => {
  test("of a splitter: the one there is, for each leg", () => {
    expect(inlets("splitter", {}, "out2")).toEqual(["in"]);
    expect(inlets("splitter", {}, "nowhere")).toEqual([]);
  });

  test("of a combiner: all", () => {
    expect(inlets("combiner", { ways: 3 }, "out")).toEqual(["in1", "in2", "in3"]);
  });

  test("of a plate for two leads: its own", () => {
    expect(inlets("outlet-sat-twin", {}, "sat")).toEqual(["in"]);
    expect(inlets("outlet-sat-twin", {}, "sat2")).toEqual(["in2"]);
    expect(inlets("outlet-sat-twin", {})).toEqual(["in", "in2"]);
  });

  test("of a source or a receiver: none", () => {
    expect(inlets("dish", {})).toEqual([]);
    expect(inlets("receiver-sat", {})).toEqual([]);
  });

  // A converter picks the quadrant out of the sky: its input is meant for none.
  test("of a converter: the sky, for each quadrant that it can give", () => {
    const all = ["sky V low", "sky V high", "sky H low", "sky H high"];
    expect(inlets("lnb-universal", {}, "out")).toEqual(all);
    expect(inlets("lnb-quattro", {}, "hl")).toEqual(["sky H low"]);
    expect(inlets("lnb-wideband", {}, "v")).toEqual(["sky V"]);
    expect(inlets("lnb-stacked", {}, "out")).toEqual(all);
  });

  test("of a multiswitch: each for the quadrant that it is meant for, the aerial's for none", () => {
    expect(inlets("multiswitch", {}, "out3")).toEqual([
      "vl 1 V low !",
      "vh 1 V high !",
      "hl 1 H low !",
      "hh 1 H high !",
      "ter",
    ]);
  });

  test("of one for two satellites: the second ones for the second position", () => {
    const second = inlets("multiswitch", { satelliteInputs: "8" }, "out1").slice(4, 8);
    expect(second).toEqual(["vl2 2 V low !", "vh2 2 V high !", "hl2 2 H low !", "hh2 2 H high !"]);
  });

  test("of a trunk through it: the one trunk alone", () => {
    expect(inlets("multiswitch", { cascade: true }, "hl-thru")).toEqual(["hl 1 H low !"]);
    expect(inlets("multiswitch", { cascade: true }, "ter-thru")).toEqual(["ter"]);
  });

  // As if it were supplied: what is off now has its inputs all the same.
  test("of one that is off: as if it were on", () => {
    const on = ["vl 1 V low !", "vh 1 V high !", "hl 1 H low !", "hh 1 H high !"];
    expect(inlets("multiswitch", { mainsOn: false, terrestrial: false }, "out1")).toEqual(on);
  });

  test("of a position switch: any plane, by position", () => {
    expect(inlets("position-switch", { inputs: "4" }, "out")).toEqual(["in1 1", "in2 2", "in3 3", "in4 4"]);
  });

  test("of a unit that makes user bands: each for its plane, quadrants or whole polarisations", () => {
    expect(inlets("stacking-converter", { terrestrial: false }, "out2")).toEqual([
      "vl 1 V low !",
      "vh 1 V high !",
      "hl 1 H low !",
      "hh 1 H high !",
    ]);
    const wideband = { feed: "wideband", satellites: "2", terrestrial: false };
    expect(inlets("stacking-converter", wideband, "out1")).toEqual([
      "v 1 V !",
      "h 1 H !",
      "v2 2 V !",
      "h2 2 H !",
    ]);
  });
});

describe("what a path says of the input that it begins at", () => {
  const at = (setting: string) => ({ condition: { port: "out", setting } });

  test("by the setting of a switch that stands right behind it: a plane is meant there", () => {
    const record = madeOf(
      { from: "in1", to: "out", ...at("VL") },
      { from: "in2", to: "out", ...at("2:HH") },
      { from: "in3", to: "out", ...at("3") },
      { from: "in4", to: "out" },
    );
    expect(inletsIn(record)).toEqual(["in1 V low !", "in2 2 H high !", "in3 3", "in4"]);
  });

  test("by what it takes: half a band or a polarisation is meant there as well", () => {
    const record = madeOf(
      { from: "in1", to: "out", takes: { half: "low" } },
      { from: "in2", to: "out", takes: { polarisation: "H" } },
      { from: "in3", to: "out", takes: { fromMHz: 950, toMHz: 2150 } },
    );
    expect(inletsIn(record)).toEqual(["in1 low !", "in2 H !", "in3"]);
  });

  // A converter picks the plane out of what comes in: nothing is meant there.
  test("but not by a path that converts", () => {
    const takes = { polarisation: "V", half: "high" } as const;
    expect(inletsIn(madeOf({ from: "in1", to: "out", takes, loMHz: 10_600 }))).toEqual(["in1 V high"]);
  });

  test("and by what is further inside, which tells the plane and not that it is meant there", () => {
    const record = madeOf(
      { from: "in1", to: "#a" },
      { from: "#a", to: "out", ...at("2:HL") },
      { from: "in2", to: "#b", ...at("VH") },
      { from: "#b", to: "#c" },
      { from: "#c", to: "out" },
    );
    expect(inletsIn(record)).toEqual(["in1 2 H low", "in2 V high !"]);
  });

  test("a ring inside a part comes to an end", () => {
    const record = madeOf(
      { from: "in1", to: "#a" },
      { from: "#a", to: "#b" },
      { from: "#b", to: "#a" },
      { from: "#b", to: "out" },
    );
    expect(inletsIn(record, "out")).toEqual(["in1"]);
  });
});

describe("a plane may come in", () => {
  const plane = (polarisation: Polarisation, half: SkyHalf): Plane => ({ source: "d", polarisation, half });
  const plain = { port: "in", isMeant: false };

  test("by an input for nothing in particular, as a terrestrial signal may", () => {
    expect(mayCarry(plain, plane("V", "low"))).toBe(true);
    expect(mayCarry(plain, undefined)).toBe(true);
  });

  test("by an input for its polarisation and its half, and by no other", () => {
    const hl = { port: "hl", polarisation: "H", half: "low", isMeant: true } as const;
    expect(mayCarry(hl, plane("H", "low"))).toBe(true);
    expect(mayCarry(hl, plane("H", "high"))).toBe(false);
    expect(mayCarry(hl, plane("V", "low"))).toBe(false);
  });

  test("by an input for its whole polarisation", () => {
    const v = { port: "v", polarisation: "V", isMeant: true } as const;
    expect(mayCarry(v, plane("V", "low"))).toBe(true);
    expect(mayCarry(v, plane("V", "high"))).toBe(true);
    expect(mayCarry(v, plane("H", "high"))).toBe(false);
  });

  test("but no terrestrial signal where a plane is meant", () => {
    expect(mayCarry({ port: "v", polarisation: "V", isMeant: true }, undefined)).toBe(false);
  });
});
