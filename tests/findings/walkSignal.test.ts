/** WA: a signal is walked from its source to a socket; where it is lost is marked, with the reason. */
import { describe, expect, test } from "vitest";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { tellSignal } from "../../src/sentences/walk/signal.ts";
import { draw, type Sketch } from "../draw.ts";
import { everyWay } from "./everyWay.ts";

const example = (key: string) => {
  const design = EXAMPLES.find((e) => e.key === key)?.load();
  if (!design) throw new Error(`no example ${key}`);
  return evaluate(design);
};

const satellite = { dish: ["dish", { diameterM: 0.8 }] } as const satisfies Sketch;

describe("walking a signal", () => {
  test("WA1: without being told, it takes the lowest, the highest and the worst carrier", () => {
    const { ways } = tellSignal(example("long-steel-drop"), { part: "sat", service: "satellite" });
    expect(ways.map((w) => w.airMHz)).toEqual([...ways.map((w) => w.airMHz)].sort((a, b) => a - b));
    expect(ways.some((w) => !w.got)).toBe(true);
    expect(ways.length).toBeLessThanOrEqual(3);
  });

  test("the worst at an outlet is the weakest of carriers that bear the same noise", () => {
    // C35 comes 30 dB weaker than C21 and C48 and meets the same thermal noise: 30 dB less C/N.
    const mode = "dvbt-64qam-2/3";
    const evaluation = evaluate(
      draw(
        {
          strong: [
            "aerial-uhf",
            {
              levelDbuv: 60,
              channels: [
                { channel: 21, mode },
                { channel: 48, mode },
              ],
            },
          ],
          weak: ["aerial-uhf", { levelDbuv: 30, channels: [{ channel: 35, mode }] }],
          join: ["combiner"],
          plate: ["outlet-tv"],
        },
        "strong.out > join.in1, weak.out > join.in2, join.out > plate.in",
      ),
    );
    const { ways } = tellSignal(evaluation, { part: "plate", service: "tv" });
    expect(ways.map((w) => w.name)).toEqual(["C21", "C35", "C48"]);
  });

  test("WA2: level at the end is what the aerial gives, less the plate's loss and the cable's", () => {
    // 60 − 20 m of 1.0 mm copper at 474 MHz (13.5 dB/100 m by skin effect) − 2 dB of plate = 55.3 dBµV.
    const evaluation = evaluate(
      draw(
        {
          uhf: ["aerial-uhf", { levelDbuv: 60, channels: [{ channel: 21, mode: "dvbt-64qam-2/3" }] }],
          drop: ["cable", { grade: "copper-1.0", lengthM: 20 }],
          plate: ["outlet-tv", { lossDb: 2 }],
        },
        "uhf.out > drop.in, drop.out > plate.in",
      ),
    );
    const [way] = tellSignal(evaluation, { part: "plate", service: "tv" }).ways;
    expect(way?.end?.levelDbuv).toBeCloseTo(60 - 0.2 * 13.5 - 2, 0);
    expect(way?.steps.map((s) => s.part)).toEqual(["uhf", "drop", "plate"]);
    expect(way?.got).toBe(true);
  });

  test("WA3: limits reach back along the way: what must lie here to come out right at the end", () => {
    // EN 60728-1 as quoted: DVB-T 64 QAM 45 to 74 dBµV at the outlet; 10 dB of loss before it make 55 to 84.
    const evaluation = evaluate(
      draw(
        {
          uhf: ["aerial-uhf", { levelDbuv: 60, channels: [{ channel: 21, mode: "dvbt-64qam-2/3" }] }],
          pad: ["attenuator", { lossDb: 9 }],
          plate: ["outlet-tv", { lossDb: 1 }],
        },
        "uhf.out > pad.in, pad.out > plate.in",
      ),
    );
    const [way] = tellSignal(evaluation, { part: "plate", service: "tv" }).ways;
    expect(way?.steps[0]?.within?.minDbuv).toBeCloseTo(55, 6);
    expect(way?.steps[0]?.within?.maxDbuv).toBeCloseTo(84, 6);
  });

  test("WA4: the plate that cuts a wideband feed is where the lowest transponder is lost", () => {
    // Common practice, no source: a plate made for 950 MHz and up mutilates a feed that starts at 300 MHz.
    const evaluation = evaluate(
      draw(
        { ...satellite, lnb: ["lnb-wideband"], plate: ["outlet-diplexed"], rx: ["receiver-hybrid"] },
        "dish.sky > lnb.sky, lnb.v > plate.in, plate.sat > rx.v",
      ),
    );
    const way = tellSignal(evaluation, { part: "rx", service: "satellite", port: "v" }).ways.find(
      (w) => w.carrier.origin === "dish/V",
    );
    expect(way?.loss).toMatchObject({ part: "plate", why: "cut" });
    expect(way?.steps[way.loss?.step ?? -1]?.part).toBe("plate");
    expect(way?.got).toBe(false);
  });

  test("WA5: where a wideband feed comes onto the TV cable, TV is lost, and the other signal is named", () => {
    const { ways } = tellSignal(example("house-wideband-fails"), { part: "plate1", service: "tv" });
    const lost = ways.filter((w) => !w.got);
    expect(lost.length).toBeGreaterThan(0);
    for (const { loss } of lost) expect(loss).toMatchObject({ part: "dip1", why: "disturbed" });
    expect(lost[0]?.loss?.words).toMatch(/it meets Satellite V/);
  });

  test("WA6: a switched output says how it must stand, and a receiver that cannot set it is told who does", () => {
    const evaluation = example("split-switched-output");
    const other = everyWay(evaluation, { part: "sat2", service: "satellite" }).filter((w) => !w.got);
    expect(other.length).toBe(60);
    for (const way of other) {
      expect(way.needs).toHaveLength(1);
      expect(way.needs[0]?.now).not.toBe(way.needs[0]?.setting);
      expect(way.loss).toMatchObject({ why: "not for this receiver", step: way.steps.length });
      expect(way.loss?.words).toMatch(/only when “.*” asks for the same/);
    }
  });

  test("WA7: on a stacked feed it goes by the receiver's own user band, and the limits start behind the stacker", () => {
    const { ways } = tellSignal(example("block-stacked"), { part: "sat11", service: "satellite" });
    expect(ways.length).toBeGreaterThan(1);
    for (const way of ways) {
      expect([1, 2]).toContain(way.userBand);
      expect(way.steps.at(-1)?.userBand).toBe(way.userBand);
      for (const step of way.steps) expect(step.within !== undefined).toBe(step.userBand !== undefined);
    }
  });

  test("WA8: what a part does not hand on is followed to that part", () => {
    const unfed = evaluate(
      draw(
        { ...satellite, lnb: ["lnb-universal"], block: ["dc-block"], rx: ["receiver-sat"] },
        "dish.sky > lnb.sky, lnb.out > block.in, block.out > rx.sat",
      ),
    );
    const [way] = tellSignal(unfed, { part: "rx", service: "satellite" }).ways;
    expect(way?.steps.map((s) => s.part)).toEqual(["dish"]);
    expect(way?.loss).toMatchObject({ part: "lnb", why: "stopped", step: 1 });
    expect(way?.loss?.words).toMatch(/“lnb” has no supply/);
  });

  test("WA9: a source without a way to the receiver is said to have none", () => {
    const evaluation = evaluate(draw({ uhf: ["aerial-uhf"], tv: ["receiver-tv"] }, ""));
    const { ways } = tellSignal(evaluation, { part: "tv", service: "tv" });
    expect(ways.length).toBeGreaterThan(0);
    for (const way of ways) expect(way.loss).toMatchObject({ why: "no way", part: "uhf" });
  });

  test("WA10: too low a level is marked at the step from which on it stays too low", () => {
    // EN 60728-1 as quoted: at least 45 dBµV. 50 − 3.5 (splitter) = 46.5; the attenuator takes it below.
    const evaluation = evaluate(
      draw(
        {
          uhf: ["aerial-uhf", { levelDbuv: 50, channels: [{ channel: 21, mode: "dvbt-64qam-2/3" }] }],
          split: ["splitter", { range: "tv" }],
          pad: ["attenuator", { lossDb: 10 }],
          plate: ["outlet-tv"],
        },
        "uhf.out > split.in, split.out1 > pad.in, pad.out > plate.in",
      ),
    );
    const [way] = tellSignal(evaluation, { part: "plate", service: "tv" }).ways;
    expect(way?.got).toBe(true);
    expect(way?.loss).toMatchObject({ why: "too weak", part: "pad" });
  });

  test("WA11: a part that is gone and a service that nobody sends are said in a sentence", () => {
    const evaluation = evaluate(draw({ tv: ["receiver-tv"] }, ""));
    expect(tellSignal(evaluation, { part: "nobody", service: "tv" }).lines).toHaveLength(1);
    expect(tellSignal(evaluation, { part: "tv", service: "tv" }).lines).toEqual([
      "No source sends such carriers.",
    ]);
  });
});
