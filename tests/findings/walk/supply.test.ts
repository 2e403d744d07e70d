/**
 * The walk of a supply: which parts it reaches, by which way, and with how many volts. Volts by Ohm's law, worked by
 * hand beside each case; how a part passes them is declared at its kind.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { type SupplyStep, walkSupply } from "../../../src/findings/walk/supply.ts";
import { draw, type Sketch } from "../../draw.ts";

const walked = (parts: Sketch, wires: string, source: { part: string; port: string }) =>
  walkSupply(evaluate(draw(parts, wires)), source);

const A = { part: "a", port: "sat" };

/** A step that takes nothing of 13 V for vertical, 18 V for horizontal and 18 V now. */
const step = (part: string, port: string, more: Partial<SupplyStep>): SupplyStep => ({
  part,
  port,
  before: null,
  volts13: 13,
  volts18: 18,
  volts: 18,
  milliamps: 0,
  ohms: 0,
  dropVolts: 0,
  diodeVolts: 0,
  toneArrives: true,
  dormant: false,
  ...more,
});

/** Draws 250 mA. */
const LNB = ["lnb-universal", { commonMa: 250, outputMa: 0 }] as const;
const horizontal = ["receiver-sat", { polarisation: "H" }] as const;

describe("where a supply ends", () => {
  test("at the receiver itself, with nothing on its input", () => {
    expect(walked({ a: horizontal }, "", A)).toStrictEqual([step("a", "sat", { end: "nothing above" })]);
  });

  test("at the door of a loop, with what arrives there", () => {
    const steps = walked(
      { m: LNB, j: ["combiner"], s: ["splitter"], a: horizontal },
      "m.out > j.in1, j.out > s.in, s.out1 > a.sat, s.out2 > j.in2",
      A,
    );
    expect(steps).toStrictEqual([step("a", "sat", {}), step("s", "out1", { before: 0, end: "loop" })]);
  });

  test("a switched output of a unit with mains of its own hears the commands", () => {
    const steps = walked({ ms: ["multiswitch"], a: horizontal }, "ms.out3 > a.sat", A);
    expect(steps).toStrictEqual([step("a", "sat", {}), step("ms", "out3", { before: 0, end: "heard" })]);
  });

  test("an output of such a unit that is not switched blocks it", () => {
    const steps = walked(
      { ms: ["multiswitch", { cascade: true, terrestrial: true }], p: ["power-inserter"] },
      "ms.ter-thru > p.in",
      { part: "p", port: "in" },
    );
    expect(steps.map((s) => [s.part, s.end])).toEqual([
      ["p", undefined],
      ["ms", "blocked"],
    ]);
  });
});

describe("which way a supply goes", () => {
  test("where ways part and come together again, each point is met once and the first way goes on", () => {
    // The splitter's diodes take 0.5 V, whatever the current; two equal ways share 250 mA.
    const steps = walked(
      { m: LNB, s: ["splitter"], j: ["combiner", { dc: "all" }], a: horizontal },
      "m.out > s.in, s.out1 > j.in1, s.out2 > j.in2, j.out > a.sat",
      A,
    );
    expect(steps.slice(0, 4)).toStrictEqual([
      step("a", "sat", { milliamps: 250 }),
      step("j", "out", { before: 0, milliamps: 250 }),
      step("s", "out1", { before: 1, milliamps: 125, dropVolts: 0.5, diodeVolts: 0.5 }),
      step("m", "out", {
        before: 2,
        milliamps: 250,
        volts13: 12.5,
        volts18: 17.5,
        volts: 17.5,
        needsVolts: 11.5,
        end: "feeds",
      }),
    ]);
    expect(steps.slice(4)).toMatchObject([
      { part: "s", port: "out2", before: 1, volts: 18, end: "met before" },
    ]);
  });

  test("each cable is told with its own resistance", () => {
    // 50 m at 130 Ω/km: 6.5 Ω, and 250 mA through them take 1.625 V; 20 m: 2.6 Ω and 0.65 V.
    const steps = walked(
      {
        m: LNB,
        up: ["cable", { grade: "clad-1.0", lengthM: 50 }],
        low: ["cable", { grade: "clad-1.0", lengthM: 20 }],
        a: horizontal,
      },
      "m.out > up.in, up.out > low.in, low.out > a.sat",
      A,
    );
    expect(steps.map((s) => s.part)).toEqual(["a", "low", "up", "m"]);
    expect(steps[1]?.ohms).toBeCloseTo(2.6, 9);
    expect(steps[1]?.dropVolts).toBeCloseTo(0.65, 9);
    expect(steps[2]?.ohms).toBeCloseTo(6.5, 9);
    expect(steps[2]?.dropVolts).toBeCloseTo(1.625, 9);
    expect(steps[3]?.volts).toBeCloseTo(15.725, 9);
    expect(steps.map((s) => s.end)).toEqual([undefined, undefined, undefined, "feeds"]);
  });

  test("a position switch takes what the input in use draws through it, not what the open one does", () => {
    // 1 Ω and 250 mA: 0.25 V; the switch itself draws 15 mA beside it.
    const steps = walked(
      { m: LNB, pos: ["position-switch"], a: ["receiver-sat", { polarisation: "H", position: "2" }] },
      "m.out > pos.in2, pos.out > a.sat",
      A,
    );
    expect(steps).toStrictEqual([
      step("a", "sat", { milliamps: 265 }),
      step("pos", "out", {
        before: 0,
        milliamps: 265,
        ohms: 1,
        dropVolts: 0.25,
        needsVolts: 11.5,
      }),
      step("m", "out", {
        before: 1,
        milliamps: 250,
        volts13: 12.75,
        volts18: 17.75,
        volts: 17.75,
        needsVolts: 11.5,
        end: "feeds",
      }),
    ]);
  });

  test("behind a position switch that stands elsewhere it is dormant", () => {
    const steps = walked(
      { m: LNB, pos: ["position-switch"], a: ["receiver-sat", { position: "1" }] },
      "m.out > pos.in2, pos.out > a.sat",
      A,
    );
    expect(steps.map((s) => [s.part, s.dormant])).toEqual([
      ["a", false],
      ["pos", false],
      ["m", true],
    ]);
  });
});

describe("of several supplies on one line", () => {
  test("the one is followed that was asked for, by its receiver", () => {
    // The diodes of the splitter take 0.5 V of 16 V.
    const steps = walked(
      {
        m: LNB,
        s: ["splitter"],
        strong: horizontal,
        a: ["receiver-sat", { polarisation: "H", volts13: 12, volts18: 16 }],
      },
      "m.out > s.in, s.out1 > strong.sat, s.out2 > a.sat",
      A,
    );
    expect(steps.map((s) => [s.part, s.port, s.volts13, s.volts18, s.volts])).toEqual([
      ["a", "sat", 12, 16, 16],
      ["s", "out2", 12, 16, 16],
      ["m", "out", 11.5, 15.5, 15.5],
    ]);
  });

  test("and by the input of a receiver that has two", () => {
    const steps = walked(
      {
        m: LNB,
        s: ["splitter"],
        a: ["receiver-sat-twin", { polarisation1: "V", polarisation2: "H" }],
      },
      "m.out > s.in, s.out1 > a.sat1, s.out2 > a.sat2",
      { part: "a", port: "sat1" },
    );
    expect(steps.map((s) => [s.part, s.port, s.volts])).toEqual([
      ["a", "sat1", 13],
      ["s", "out1", 13],
      ["m", "out", 12.5],
    ]);
  });
});
