/**
 * The way that a supply took, seen from where it arrives, and what took the volts. Volts by Ohm's law, worked by hand
 * beside each case: 50 m of copper-clad steel at 130 Ω/km are 6.5 Ω and take 1.625 V of 250 mA.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import {
  cableVolts,
  failingTemperatureC,
  isCable,
  mostTaking,
  type SupplyPassage,
  supplyWay,
} from "../../../src/findings/walk/supplyWay.ts";
import { draw, type Sketch } from "../../draw.ts";
import { recordOf } from "../byHand.ts";

const LNB = ["lnb-universal", { commonMa: 250, outputMa: 0 }] as const;
const FIFTY_METRES = ["cable", { grade: "clad-1.0", lengthM: 50 }] as const;
const horizontal = ["receiver-sat", { polarisation: "H" }] as const;

/** The way to the output of LNB “m”, of the supply that comes from an input. */
function wayTo(parts: Sketch, wires: string, source = { part: "a", port: "sat" }) {
  const evaluation = evaluate(draw({ m: LNB, ...parts }, wires));
  const offers = recordOf(evaluation, "m").feeds.out ?? [];
  const offer = offers.find((o) => o.part === source.part && o.port === source.port);
  if (!offer) throw new Error(`nothing arrives from ${source.part}`);
  return { evaluation, way: supplyWay(evaluation, { part: "m", port: "out" }, offer) };
}

/** Parts passed, and the outputs at which it came into them. */
const passed = (way: readonly SupplyPassage[]) => way.map((step) => `${step.part}.${step.from}`);

const passage = (part: string, more: Partial<SupplyPassage>): SupplyPassage => ({
  part,
  from: "out",
  to: "in",
  ohms: 0,
  milliamps: 250,
  diodeVolts: 0,
  dropVolts: 0,
  tone: true,
  ...more,
});

describe("the way of a supply", () => {
  test("from the LNB down to the receiver, with what each part takes", () => {
    const { way } = wayTo(
      { up: FIFTY_METRES, s: ["splitter"], a: horizontal },
      "m.out > up.in, up.out > s.in, s.out2 > a.sat",
    );
    expect(way).toStrictEqual([
      passage("up", { ohms: 6.5, dropVolts: 1.625 }),
      passage("s", { from: "out2", diodeVolts: 0.5, dropVolts: 0.5 }),
    ]);
  });

  test("is empty where the receiver hangs on the LNB itself", () => {
    expect(wayTo({ a: horizontal }, "m.out > a.sat").way).toEqual([]);
  });

  test("goes through a combiner by the input that leads here", () => {
    const { way } = wayTo({ j: ["combiner", { dc: "all" }], a: horizontal }, "m.out > j.in2, j.out > a.sat");
    expect(way).toStrictEqual([passage("j", { to: "in2" })]);
  });
});

describe("of several ways of one supply the one that leaves most", () => {
  // A tap passes it along its through line, and from its branch by a diode that takes 0.5 V.
  const tap = ["tap", { dc: "all" }] as const;
  const joined = { t: tap, j: ["combiner", { dc: "all" }], a: horizontal } as const satisfies Sketch;

  test("the through line, which takes nothing", () => {
    const { way } = wayTo(joined, "m.out > t.in, t.out > j.in1, t.tap1 > j.in2, j.out > a.sat");
    expect(passed(way)).toEqual(["t.out", "j.out"]);
  });

  test("the branch, where the through line has come by 1.625 V of cable", () => {
    const { way } = wayTo(
      { ...joined, c: FIFTY_METRES },
      "m.out > t.in, t.out > c.in, c.out > j.in1, t.tap1 > j.in2, j.out > a.sat",
    );
    expect(passed(way)).toEqual(["t.tap1", "j.out"]);
  });

  test("the first of equals", () => {
    const { way } = wayTo(
      { s: ["splitter"], j: ["combiner", { dc: "all" }], a: horizontal },
      "m.out > s.in, s.out1 > j.in1, s.out2 > j.in2, j.out > a.sat",
    );
    expect(passed(way)).toEqual(["s.out1", "j.out"]);
  });

  test("a stronger supply of another receiver on the other leg is none of its ways", () => {
    const { way } = wayTo(
      { t: tap, a: horizontal, b: ["receiver-sat", { polarisation: "H", volts18: 21 }] },
      "m.out > t.in, t.out > a.sat, t.tap1 > b.sat",
    );
    expect(passed(way)).toEqual(["t.out"]);
  });

  test("nor is that of another input of the same receiver", () => {
    const { way } = wayTo(
      { t: tap, a: ["receiver-sat-twin", { polarisation1: "V", polarisation2: "H" }] },
      "m.out > t.in, t.out > a.sat1, t.tap1 > a.sat2",
      { part: "a", port: "sat1" },
    );
    expect(passed(way)).toEqual(["t.out"]);
  });
});

describe("what takes the volts", () => {
  const drops = (...volts: number[]) => volts.map((dropVolts, n) => passage(`part ${n + 1}`, { dropVolts }));

  test.each([
    { name: "the first", way: drops(3, 1, 2), part: "part 1" },
    { name: "the last", way: drops(1, 2, 3), part: "part 3" },
    { name: "of equals the one nearest to the source", way: drops(2, 1, 2), part: "part 3" },
    { name: "nothing where there is no way", way: [], part: undefined },
  ])("most: $name", ({ way, part }) => {
    expect(mostTaking(way)?.part).toBe(part);
  });

  test("cables: their resistance alone, not the diodes of a splitter between them", () => {
    // 1.625 V above the splitter and 20 m, 2.6 Ω, 0.65 V below it.
    const { evaluation, way } = wayTo(
      {
        up: FIFTY_METRES,
        s: ["splitter"],
        low: ["cable", { grade: "clad-1.0", lengthM: 20 }],
        a: horizontal,
      },
      "m.out > up.in, up.out > s.in, s.out1 > low.in, low.out > a.sat",
    );
    expect(cableVolts(evaluation, way).nowVolts).toBeCloseTo(2.275, 5);
    expect(cableVolts(evaluation, way).ohmicVolts).toBeCloseTo(2.275, 5);
  });

  test("a length of cable is told from a part that has no way through and from one that splits", () => {
    const evaluation = evaluate(
      draw({ c: FIFTY_METRES, s: ["splitter"], a: horizontal }, "s.out1 > c.in, c.out > a.sat"),
    );
    expect(["c", "s", "a", "nobody"].map((id) => isCable(evaluation.record(id)))).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  // Copper: 0.393 % more for each degree (IEC 60028, from memory). 1 V and 39.3 % of it: 100 degrees above 20 °C. Cables
  // that take 1.1965 V instead of 1 V are at 70 °C: 0.1965 V more are used up at 120 °C.
  test.each([
    { spareVolts: 0.393, ohmicVolts: 1, celsius: 120 },
    { spareVolts: 0.393, ohmicVolts: 2, celsius: 70 },
    { spareVolts: 0.1965, ohmicVolts: 1, nowVolts: 1.1965, celsius: 120 },
    { spareVolts: 0, ohmicVolts: 1, celsius: 20 },
    { spareVolts: -1, ohmicVolts: 1, celsius: 20 },
  ])("$spareVolts V to spare, $ohmicVolts V on cables: $celsius °C", ({ celsius, ...volts }) => {
    expect(failingTemperatureC(volts)).toBeCloseTo(celsius, 6);
  });

  test("where no cable takes any, heat changes nothing", () => {
    expect(failingTemperatureC({ spareVolts: 0, ohmicVolts: 0 })).toBe(Number.POSITIVE_INFINITY);
  });
});
