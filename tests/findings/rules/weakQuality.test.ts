/**
 * C/N below what is asked for: 26 dB for 64 QAM (EN 60728-1, as quoted in a public table); where the profile sets none, what
 * the modulation needs and 3 dB: 20.8 + 3 for 256 QAM 2/3 of DVB-T2 (public table of receiver requirements).
 * A matched line has 3.59 dBµV of noise (290 K, 7.61 MHz, 75 Ω).
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";
import { judgedBy } from "./judged.ts";

const T = "dvbt-64qam-2/3";
const T2 = "dvbt2-256qam-2/3";
type Row = readonly [channel: number, mode: string, levelOffsetDb: number];
const aerial = (levelDbuv: number, ...rows: readonly Row[]): Sketch[string] => [
  "aerial-uhf",
  {
    levelDbuv,
    formerOnAir: true,
    channels: rows.map(([channel, mode, levelOffsetDb]) => ({ channel, mode, levelOffsetDb })),
  },
];
const found = (parts: Sketch, wires = "a.out > z.in") =>
  foundBy("low-carrier-to-noise", draw({ z: ["receiver-tv"], ...parts }, wires));

describe("too little C/N", () => {
  // 28, 26 and 40 dBµV: 24.41, 22.41 and 36.41 dB.
  test("is told of the carrier furthest below its limit", () => {
    const [poor, ...more] = found({ a: aerial(28, [21, T, 0], [25, T, -2], [30, T, 12]) });
    expect(more).toEqual([]);
    expect(poor).toMatchObject({
      severity: "warning",
      at: { part: "z", port: "in", service: "tv" },
      parts: ["a", "z"],
      wires: ["a.out>z.in"],
      limit: 26,
      unit: "dB",
      source: "EN 60728-1 outlet levels, as quoted in a public table",
      facts: {
        failing: 2,
        of: 3,
        worst: { name: "C25", index: 1 },
        spoiler: { by: "noise" },
        culprit: { part: "a", does: "weak source" },
      },
    });
    expect(poor?.at).not.toHaveProperty("side");
    expect(poor?.value).toBeCloseTo(22.41, 1);
    expect(poor?.facts.worst).not.toHaveProperty("limits");
  });

  // 25 dBµV in 64 QAM are 21.41 dB, 4.59 too little; 22 dBµV in 256 QAM 18.41, 5.39 below 23.8.
  test("is measured against each one's own limit", () => {
    const [poor] = found({ a: aerial(25, [21, T, 0], [25, T2, -3]) });
    expect(poor?.limit).toBeCloseTo(23.8, 6);
    expect(poor).toMatchObject({ facts: { failing: 2, worst: { name: "C25" } } });
    expect(poor?.source).toContain("3 dB to spare");
    const [other] = found({ a: aerial(25, [21, T, 0], [25, T2, -2]) });
    expect(other).toMatchObject({ limit: 26, facts: { worst: { name: "C21" } } });
  });

  test("begins below the limit", () => {
    expect(found({ a: aerial(29.5, [21, T, 0]) })).toHaveLength(1);
    expect(found({ a: aerial(30, [21, T, 0]) })).toEqual([]);
  });
});

describe("what spoils it", () => {
  // 15 dB to the other aerial, 56 to noise.
  test("is a foreign signal where that is the greater part", () => {
    const [poor, ...more] = found(
      { j: ["combiner"], b: aerial(45, [21, T, 0]), a: aerial(60, [21, T, 0]) },
      "a.out > j.in1, b.out > j.in2, j.out > z.in",
    );
    expect(more).toEqual([]);
    expect(poor).toMatchObject({
      parts: ["j", "z"],
      facts: { spoiler: { by: "foreign", part: "j" }, culprit: { part: "j", does: "brings together" } },
    });
  });

  test("counts together with the noise", () => {
    const at = (levelDbuv: number) =>
      found(
        { m: ["pick-up", { mast700: false, mastDbuv: 0 }], a: aerial(levelDbuv, [61, T, 0]) },
        "a.out > m.in, m.out > z.in",
      );
    // 0 dBµV of a mast, of which 6.305 of 9 MHz lie in channel 61: −1.55 dBµV; 3.59 and −1.55 dBµV are 4.75 together.
    expect(at(31)).toEqual([]);
    const [poor] = at(30.5);
    expect(poor?.value).toBeCloseTo(30.5 - 4.75, 1);
    expect(poor?.facts.spoiler).toEqual({ by: "noise" });
  });
});

describe("limits with an MER of their own", () => {
  // Royal Decree 346/2011: C/N 25 dB, MER 21 dB. 27 dBµV over 3.59 dBµV of noise: C/N 23.41 dB, short of 25; MER is not.
  test("noise alone is held to the C/N", () => {
    const weak = draw({ z: ["receiver-tv"], a: aerial(27, [21, T, 0]) }, "a.out > z.in");
    const [poor] = foundBy("low-carrier-to-noise", judgedBy("rd346", weak));
    expect(poor).toMatchObject({ limit: 25, facts: { figure: "C/N", spoiler: { by: "noise" } } });
    expect(poor?.value).toBeCloseTo(23.41, 1);
  });

  // Two aerials on one channel, 60 and 45 dBµV: the stronger is meant and has a C/I of 15 dB; noise alone leaves it 52 dB or so.
  test("what another signal does to it is held to the MER", () => {
    const two = draw(
      { z: ["receiver-tv"], c: ["combiner"], b: aerial(45, [21, T, 0]), a: aerial(60, [21, T, 0]) },
      "a.out > c.in1, b.out > c.in2, c.out > z.in",
    );
    const [poor] = foundBy("low-carrier-to-noise", judgedBy("rd346", two));
    expect(poor).toMatchObject({ limit: 21, facts: { figure: "MER", spoiler: { by: "foreign" } } });
    expect(poor?.value).toBeCloseTo(15, 1);
    expect(poor?.facts.worst.cnDb).toBeGreaterThan(25);
  });
});
