/** WS: supply and commands are walked upwards, with what is left of the volts and who decides. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { supplyStop } from "../../src/findings/walk/supplyStop.ts";
import { tellCommand } from "../../src/sentences/walk/command.ts";
import { tellSupply } from "../../src/sentences/walk/supply.ts";
import { draw, type Sketch } from "../draw.ts";

const satellite = { dish: ["dish"] } as const satisfies Sketch;
const AT_RX = { part: "rx", port: "sat" };

/** One LNB that draws 250 mA at the end of a cable. */
function drop(grade: string, receiver: Record<string, unknown> = {}): Design {
  return draw(
    {
      ...satellite,
      lnb: ["lnb-universal", { commonMa: 250, outputMa: 0 }],
      drop: ["cable", { grade, lengthM: 50 }],
      rx: ["receiver-sat", { volts18: 17, polarisation: "H", ...receiver }],
    },
    "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > rx.sat",
  );
}

describe("walking a supply", () => {
  // V = V0 − I·R·L (Ohm): 250 mA over 50 m. 130 Ω/km: loop of 1.0 mm copper-clad steel, 21 % IACS, computed.
  test("WS1: 50 m of copper-clad steel at 130 Ω/km take 1.6 V of 17 V at 250 mA", () => {
    const { steps } = tellSupply(evaluate(drop("clad-1.0")), AT_RX);
    expect(steps.map((s) => s.part)).toEqual(["rx", "drop", "lnb"]);
    expect(steps[1]?.ohms).toBeCloseTo(0.05 * 130, 6);
    expect(steps[2]?.volts18).toBeCloseTo(17 - 0.25 * 6.5, 6);
    expect(steps[2]).toMatchObject({ end: "feeds", before: 1, toneArrives: true });
    expect(steps.map((s) => s.milliamps)).toEqual([250, 250, 250]);
  });

  test("WS2: drops of the parts add up to what is missing at the end", () => {
    for (const { load } of EXAMPLES) {
      const evaluation = evaluate(load());
      for (const record of evaluation.records)
        for (const input of record.kind.reception?.(record.options).inputs ?? []) {
          const { steps } = tellSupply(evaluation, { part: record.part.id, port: input.port });
          for (const step of steps) {
            const before = steps[step.before ?? -1];
            // What a part takes is told for now; if one of several asked for more, or a switch stood elsewhere, currents
            // would divide anew.
            if (before && !step.dormant) expect(step.volts).toBeCloseTo(before.volts - before.dropVolts, 5);
          }
        }
    }
  });

  test.each([
    {
      name: "a block",
      parts: { block: ["dc-block"] } as Sketch,
      wires: "lnb.out > block.in, block.out > rx.sat",
      end: { part: "block", end: "blocked" },
    },
    {
      name: "a short",
      parts: { bad: ["bad-joint", { fault: "shorted" }] } as Sketch,
      wires: "lnb.out > bad.in, bad.out > rx.sat",
      end: { part: "bad", end: "shorted" },
    },
    {
      name: "an open cable",
      parts: { drop: ["cable"] } as Sketch,
      wires: "drop.out > rx.sat",
      end: { part: "drop", end: "nothing above" },
    },
  ])("WS3: it ends at $name (common practice, no source)", ({ parts, wires, end }) => {
    const evaluation = evaluate(
      draw(
        { ...satellite, lnb: ["lnb-universal"], ...parts, rx: ["receiver-sat"] },
        `dish.sky > lnb.sky, ${wires}`,
      ),
    );
    expect(tellSupply(evaluation, AT_RX).steps.at(-1)).toMatchObject(end);
  });

  test("WS4: too few volts for the converter are said to be too few", () => {
    // 250 mA over 200 m at 130 Ω/km lose 6.5 V: 10.5 of 17 V are left, the converter needs 11.5.
    const design = draw(
      {
        ...satellite,
        lnb: ["lnb-universal", { commonMa: 250, outputMa: 0 }],
        drop: ["cable", { grade: "clad-1.0", lengthM: 200 }],
        rx: ["receiver-sat", { volts18: 17 }],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > rx.sat",
    );
    const last = tellSupply(evaluate(design), AT_RX).steps.at(-1);
    expect(last).toMatchObject({ part: "lnb", end: "too low" });
    expect(last?.words).toMatch(/10\.5 V for horizontal arrive\. .*11\.5 V are needed: not enough/);
  });

  test("WS5: a receiver that is unplugged gives nothing, and the part it leaves unfed knows who is silent", () => {
    const evaluation = evaluate(drop("copper-1.0", { state: "unplugged" }));
    expect(tellSupply(evaluation, AT_RX).steps).toEqual([]);
    expect(tellSupply(evaluation, AT_RX).lines).toEqual(["“rx” puts no supply on this cable."]);
    expect(supplyStop(evaluation, "lnb")).toMatchObject({ part: "rx", why: "receiver off" });
  });

  test("WS6: a splitter that passes supply on one leg only keeps back the one on the other leg", () => {
    const evaluation = evaluate(
      draw(
        {
          ...satellite,
          lnb: ["lnb-universal"],
          split: ["splitter", { dc: "one" }],
          tv: ["receiver-tv"],
          rx: ["receiver-sat"],
        },
        "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > tv.in, split.out2 > rx.sat",
      ),
    );
    expect(supplyStop(evaluation, "lnb")).toMatchObject({
      part: "split",
      why: "blocks",
      port: "out2",
      supply: "rx",
    });
    expect(tellSupply(evaluation, AT_RX).steps.at(-1)).toMatchObject({ part: "split", end: "blocked" });
  });
});

describe("walking a command", () => {
  test("WS7: 18 V that arrive below the threshold are understood as vertical", () => {
    // Threshold 15 V between 13 and 18 V: EN 61319-1, from memory.
    const evaluation = evaluate(
      EXAMPLES.find((e) => e.key === "long-steel-drop")?.load() ?? drop("clad-1.0"),
    );
    const [stop] = tellCommand(evaluation, { part: "sat", port: "sat" }).stops;
    expect(stop).toMatchObject({ part: "lnb", asked: "HL", understood: "VL", granted: false, others: [] });
    expect(stop?.volts).toBeLessThan(15);
  });

  test("WS8: of two receivers on one output the one with 18 V decides (common practice, no source)", () => {
    const design = draw(
      {
        ...satellite,
        lnb: ["lnb-universal"],
        split: ["splitter", { dc: "all" }],
        rx: ["receiver-sat", { polarisation: "V" }],
        strong: ["receiver-sat", { polarisation: "H" }],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > rx.sat, split.out2 > strong.sat",
    );
    const evaluation = evaluate(design);
    const [weak] = tellCommand(evaluation, AT_RX).stops;
    expect(weak).toMatchObject({ decidedBy: "strong", others: ["strong"], granted: false, setting: "HL" });
    expect(weak?.words).toBe("“rx” asks “lnb” for VL, but “strong” decides: it is at HL.");
    const [strong] = tellCommand(evaluation, { part: "strong", port: "sat" }).stops;
    expect(strong).toMatchObject({ decidedBy: "strong", granted: true });
  });

  test("WS9: on a single-cable line a user band used twice, and one who holds the line (EN 50494, as quoted)", () => {
    const line = (second: Record<string, unknown>) =>
      tellCommand(
        evaluate(
          draw(
            {
              ...satellite,
              lnb: ["lnb-stacked"],
              split: ["splitter", { dc: "all" }],
              rx: ["receiver-stacked", { userBands: [{ number: 1, centreMHz: 1210 }] }],
              other: ["receiver-stacked", second],
            },
            "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > rx.sat, split.out2 > other.sat",
          ),
        ),
        AT_RX,
      ).stops[0];
    expect(line({ userBands: [{ number: 2, centreMHz: 1420 }] })).toMatchObject({ granted: true });
    expect(line({ userBands: [{ number: 1, centreMHz: 1210 }] })?.words).toMatch(/“other” uses it too/);
    expect(line({ mode: "universal" })?.words).toMatch(/“other” blocks the line/);
    expect(line({ mode: "universal" })?.granted).toBe(false);
  });

  test("WS10: a switch behind a position switch that stands elsewhere hears nothing now", () => {
    const design = draw(
      {
        d1: ["dish"],
        d2: ["dish"],
        lnb1: ["lnb-universal"],
        lnb2: ["lnb-universal"],
        pos: ["position-switch"],
        rx: ["receiver-sat", { position: "2" }],
      },
      "d1.sky > lnb1.sky, d2.sky > lnb2.sky, lnb1.out > pos.in1, lnb2.out > pos.in2, pos.out > rx.sat",
    );
    const { stops } = tellCommand(evaluate(design), AT_RX);
    expect(stops.map((s) => [s.part, s.granted, s.dormant])).toEqual([
      ["lnb1", false, true],
      ["lnb2", true, false],
      ["pos", true, false],
    ]);
  });
});
