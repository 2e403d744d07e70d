/** Where a carrier that does not arrive was lost: hand-drawn jobs, what a tradesman would find named beforehand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { whereLost } from "../../src/findings/lost.ts";
import { sourcesOf, wantedCarriers } from "../../src/findings/wanted.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";
import { recordOf } from "./byHand.ts";

type Parts = Parameters<typeof draw>[0];

/** Where receiver z loses a service: of a satellite the first transponder of a quadrant ("HL") of dish d. */
function lost(parts: Parts, wires: string, what: string, source = "d") {
  const evaluation = evaluate(draw(parts, wires));
  const record = recordOf(evaluation, "z");
  const service: Service = what === "tv" ? "tv" : "satellite";
  const wanted = wantedCarriers(record, sourcesOf(evaluation), service).find(({ plane }) => {
    if (!plane) return true;
    return plane.source === source && `${plane.polarisation}${plane.half === "low" ? "L" : "H"}` === what;
  });
  if (!wanted) throw new Error(`nothing of ${what} is wanted`);
  const inputs = record.kind.reception?.(record.options).inputs ?? [];
  return whereLost(
    evaluation,
    record,
    inputs.filter((i) => i.services.includes(service)),
    wanted,
  );
}

const roof: Parts = { z: ["receiver-sat"], m: ["multiswitch"], d: ["dish"], a: ["lnb-quattro"] };
const sky = "d.sky > a.sky";

describe("a part that has it at an input and lets nothing out", () => {
  const all = `${sky}, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, a.hh > m.hh, m.out1 > z.sat`;

  // The lower one of a cascade: the upper one feeds the LNB, and its trunk is a plain conductor.
  test("is switched off", () => {
    const parts: Parts = {
      z: ["receiver-sat"],
      low: ["multiswitch", { mainsOn: false, feedsLnb: false }],
      m: ["multiswitch", { cascade: true }],
      d: ["dish"],
      a: ["lnb-quattro"],
    };
    const trunk = ["vl", "vh", "hl", "hh"].map((q) => `a.${q} > m.${q}, m.${q}-thru > low.${q}`).join();
    expect(lost(parts, `${sky}, ${trunk}, low.out1 > z.sat`, "HL")).toEqual({
      reason: { kind: "no supply", part: "low" },
      culprit: { part: "low" },
    });
  });

  test("would be supplied by a unit that is off", () => {
    expect(lost({ ...roof, m: ["multiswitch", { mainsOn: false }] }, all, "HL")).toEqual({
      reason: { kind: "no supply", part: "a" },
      culprit: { part: "m" },
    });
  });
});

test("gets no supply past a block", () => {
  const parts: Parts = {
    z: ["receiver-sat"],
    b: ["dc-block"],
    k: ["cable"],
    a: ["lnb-universal"],
    d: ["dish"],
  };
  expect(lost(parts, `${sky}, a.out > k.in, k.out > b.in, b.out > z.sat`, "VL")).toEqual({
    reason: { kind: "no supply", part: "a" },
    culprit: { part: "b" },
  });
});

// 80 m of 1.0 mm steel have 10.4 Ω and the LNB draws 280 mA: 10.1 V are left of 13 V, and it needs 11.5 V.
test("gets too few volts over a long cable", () => {
  const parts: Parts = {
    z: ["receiver-sat"],
    short: ["cable", { lengthM: 1 }],
    long: ["cable", { lengthM: 80, grade: "clad-1.0" }],
    a: ["lnb-universal", { outputs: "4", commonMa: 280, outputMa: 0 }],
    d: ["dish"],
  };
  expect(lost(parts, `${sky}, a.out1 > long.in, long.out > short.in, short.out > z.sat`, "VL")).toEqual({
    reason: { kind: "no supply", part: "a" },
    culprit: { part: "long" },
  });
});

describe("a part that hands it on at other outputs", () => {
  test("is named with them", () => {
    const parts: Parts = { z: ["receiver-sat"], a: ["lnb-quattro"], d: ["dish"] };
    expect(lost(parts, `${sky}, a.vl > z.sat`, "VH")).toEqual({
      reason: { kind: "other output", part: "a", port: "vl", outputs: ["vh"] },
      culprit: { part: "a" },
    });
  });

  // A plate for two leads: the lines only pass it side by side, they part at the LNB.
  test("is where the lines part, and not a plate that both pass", () => {
    const parts: Parts = { z: ["receiver-sat"], p: ["outlet-sat-twin"], a: ["lnb-quattro"], d: ["dish"] };
    const wires = `${sky}, a.vl > p.in, a.vh > p.in2, p.sat > z.sat`;
    expect(lost(parts, wires, "VH")).toMatchObject({
      reason: { kind: "other output", part: "a", port: "vl" },
      culprit: { part: "a" },
    });
  });

  test("feeds an input that is meant for what is missing: that lead is wrong", () => {
    const wires = `${sky}, a.vl > m.vl, a.vh > b.in, b.out1 > m.vh, b.out2 > k.in, k.out > m.hh, a.hl > m.hl, m.out1 > z.sat`;
    const parts: Parts = { ...roof, b: ["splitter"], k: ["cable"] };
    expect(lost(parts, wires, "HH")).toEqual({
      reason: {
        kind: "wrong lead",
        part: "m",
        port: "hh",
        from: { part: "a", port: "vh" },
        right: { part: "a", port: "hh" },
      },
      culprit: { part: "m", port: "hh" },
    });
  });

  test("feeds a receiver's input for a polarisation: that lead is wrong", () => {
    const parts: Parts = { z: ["receiver-hybrid"], s: ["splitter"], a: ["lnb-wideband"], d: ["dish"] };
    const wires = `${sky}, a.v > s.in, s.out1 > z.v, s.out2 > z.h`;
    expect(lost(parts, wires, "HL")).toMatchObject({
      reason: { kind: "wrong lead", part: "z", port: "h", from: { part: "a", port: "v" } },
      culprit: { part: "z", port: "h" },
    });
  });
});

describe("of two leads of a twin receiver", () => {
  const twin: Parts = { ...roof, z: ["receiver-sat-twin"] };

  test("the one that is off is not to blame for a trunk that is missing further up", () => {
    const wires = `${sky}, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, m.out1 > z.sat1`;
    expect(lost(twin, wires, "HH").culprit).toEqual({ part: "m", port: "hh" });
  });

  test("nor for what its other line has no way to ask for", () => {
    expect(lost(twin, `${sky}, a.vl > z.sat1`, "HH")).toEqual({
      reason: { kind: "other output", part: "a", port: "vl", outputs: ["hh"] },
      culprit: { part: "a" },
    });
  });
});

describe("an open input by which it would come", () => {
  test("of a switch, with the output that has it and leads nowhere", () => {
    const wires = `${sky}, a.vl > m.vl, a.vh > m.vh, a.hh > m.hh, m.out1 > z.sat`;
    expect(lost(roof, wires, "HL")).toEqual({
      reason: { kind: "open input", part: "m", port: "hl", free: { part: "a", port: "hl" } },
      culprit: { part: "m", port: "hl" },
    });
  });

  test("of a receiver with an input for each polarisation", () => {
    const parts: Parts = { z: ["receiver-hybrid"], a: ["lnb-wideband"], d: ["dish"] };
    expect(lost(parts, `${sky}, a.v > z.v`, "HH")).toEqual({
      reason: { kind: "open input", part: "z", port: "h", free: { part: "a", port: "h" } },
      culprit: { part: "z", port: "h" },
    });
  });

  test("is the nearest one to the receiver", () => {
    const parts: Parts = { z: ["receiver-tv"], k: ["cable"], c: ["combiner"], u: ["aerial-uhf"] };
    expect(lost(parts, "c.out > k.in, k.out > z.in", "tv")).toEqual({
      reason: { kind: "open input", part: "c", port: "in1", free: { part: "u", port: "out" } },
      culprit: { part: "c", port: "in1" },
    });
  });

  test("names no output where none is free", () => {
    const parts: Parts = {
      z: ["receiver-sat"],
      a: ["lnb-universal"],
      k: ["cable"],
      d: ["dish"],
      y: ["receiver-sat"],
    };
    const { reason } = lost(parts, `${sky}, a.out > y.sat, k.out > z.sat`, "VL");
    expect(reason).toEqual({ kind: "open input", part: "k", port: "in" });
  });

  // Of two satellites' inputs that are open those beside the dish in question are meant.
  test.each([
    { on: "", meant: "hh" },
    { on: "2", meant: "hh2" },
  ])("of a switch for two satellites: $meant beside the dish's other leads", ({ on, meant }) => {
    const parts: Parts = { ...roof, m: ["multiswitch", { satelliteInputs: "8" }] };
    const wires = `${sky}, a.vl > m.vl${on}, a.vh > m.vh${on}, a.hl > m.hl${on}, m.out1 > z.sat`;
    expect(lost(parts, wires, "HH").culprit).toEqual({ part: "m", port: meant });
  });
});

/** A set that hangs on an aerial for radio: nothing is open on its way, and its TV is drawn elsewhere. */
describe("an output that has it and leads nowhere", () => {
  const parts: Parts = {
    z: ["receiver-tv"],
    r: ["aerial-dab"],
    u: ["aerial-uhf"],
    k: ["cable"],
    s: ["splitter"],
  };
  const own = "r.out > z.in";

  test("is that of the source", () => {
    expect(lost(parts, own, "tv")).toEqual({
      reason: { kind: "open output", part: "u", port: "out" },
      culprit: { part: "u", port: "out" },
    });
  });

  test("is the last one on its way", () => {
    expect(lost(parts, `${own}, u.out > k.in, k.out > s.in`, "tv").culprit).toEqual({
      part: "s",
      port: "out1",
    });
    expect(lost(parts, `${own}, u.out > k.in`, "tv").culprit).toEqual({ part: "k", port: "out" });
  });

  // A splitter that serves another set has a spare leg, which is no fault.
  test("is no spare one of a part that hands it on elsewhere", () => {
    const two: Parts = { ...parts, y: ["receiver-tv"] };
    expect(lost(two, `${own}, u.out > s.in, s.out1 > y.in`, "tv")).toEqual({
      reason: { kind: "does not arrive" },
    });
  });
});
