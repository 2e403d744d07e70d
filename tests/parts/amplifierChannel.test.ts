/** Amplifiers that hold each channel at a level, and amplifiers with a gain for each aerial. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { traceCarrier } from "../../src/evaluate/trace.ts";
import { report } from "../../src/findings/report.ts";
import { cnDb } from "../../src/signal/readout.ts";
import { draw, type Sketch } from "../draw.ts";

const MODE = "dvbt2-256qam-2/3";

function levelsOf(part: string, parts: Sketch, wires: string): Record<string, number> {
  const bands = evaluate(draw(parts, wires)).record(part)?.outputs.out?.bands ?? [];
  return Object.fromEntries(
    bands.flatMap((band) =>
      Array.from(band.level, (level, i) => [band.grid.plan[band.grid.index[i] ?? 0]?.name ?? "", level]),
    ),
  );
}

describe("a channel amplifier", () => {
  const uneven = [
    { channel: 23, mode: MODE, levelOffsetDb: 10 },
    { channel: 26, mode: MODE },
    { channel: 30, mode: MODE, levelOffsetDb: -15 },
    { channel: 33, mode: MODE, levelOffsetDb: 12 },
  ];
  const parts = (o: object): Sketch => ({
    p: ["outlet-tv"],
    x: [
      "amp-channel",
      { levelDbuv: 70, channels: [{ channel: 23 }, { channel: 26 }, { channel: 30 }], ...o },
    ],
    a: ["aerial-uhf", { levelDbuv: 55, channels: uneven }],
  });
  const wires = "a.out > x.in, x.out > p.in";

  test("holds what is listed at its level, however far apart it comes in, and lets nothing else through", () => {
    const held = levelsOf("x", parts({}), wires);
    expect(Object.keys(held).sort()).toEqual(["C23", "C26", "C30"]);
    for (const level of Object.values(held)) expect(level).toBeCloseTo(70, 6);
  });

  // 55 − 15 + 20 = 60 dBµV: ten less than it should hold. The others come in strong enough.
  test("reaches its level only as far as its gain does", () => {
    const held = levelsOf("x", parts({ mostGainDb: 20 }), wires);
    expect(held.C30).toBeCloseTo(60, 6);
    expect(held.C26).toBeCloseTo(70, 6);
  });

  test("holds one channel above or below the others as its row says", () => {
    const channels = [{ channel: 23 }, { channel: 26, levelOffsetDb: -4 }];
    expect(levelsOf("x", parts({ channels }), wires)).toMatchObject({
      C23: expect.closeTo(70, 6),
      C26: expect.closeTo(66, 6),
    });
  });

  // Friis for one stage at 290 K: C/N = level − kTB (3.59 dBµV in 7.61 MHz) − noise figure; 40 − 3.59 − 7 = 29.4 dB.
  test("adds the noise of its input stage, which a weak channel feels", () => {
    const band = evaluate(draw(parts({ noiseFigureDb: 7 }), wires))
      .record("x")
      ?.outputs.out?.bands.find((b) => b.grid.plan[b.grid.index[0] ?? 0]?.name === "C30");
    expect(band && cnDb(band, 0)).toBeCloseTo(29.4, 1);
  });

  test("is a step of a walk, with what its level control adds", () => {
    const evaluation = evaluate(draw(parts({}), wires));
    const steps = traceCarrier(evaluation, { part: "x", port: "out" }, { origin: "a", index: 2 });
    // 70 − 40 dBµV.
    expect(steps.at(-1)?.gainDb).toBeCloseTo(30, 6);
    expect(steps.at(-1)?.made.at(-1)).toEqual({ what: "level control", db: expect.closeTo(30, 6) });
  });

  // Two signals of one channel pass together: their powers are held, and C/I stays as it came.
  test("cannot tell two transmitters on one channel apart", () => {
    const both = [
      { channel: 26, mode: MODE, transmitter: "Hill" },
      { channel: 26, mode: MODE, transmitter: "Far", wanted: false, levelOffsetDb: -30 },
    ];
    const design = draw({ ...parts({}), a: ["aerial-uhf", { levelDbuv: 55, channels: both }] }, wires);
    const levels = (evaluate(design).record("x")?.outputs.out?.bands ?? []).map((b) => b.level[0] ?? 0);
    expect((levels[0] ?? 0) - (levels[1] ?? 0)).toBeCloseTo(30, 6);
    expect(10 * Math.log10(levels.reduce((sum, l) => sum + 10 ** (l / 10), 0))).toBeCloseTo(70, 6);
  });

  test("between an uneven aerial and an outlet is in order where the outlet gets its level", () => {
    const { findings } = report(evaluate(draw(parts({ levelDbuv: 62 }), wires)));
    expect(findings.filter((f) => f.severity !== "note")).toEqual([]);
  });
});

describe("an amplifier with several inputs", () => {
  const aerials: Sketch = {
    u: ["aerial-uhf", { levelDbuv: 60, channels: [{ channel: 23, mode: MODE }] }],
    w: ["aerial-uhf", { levelDbuv: 45, channels: [{ channel: 40, mode: MODE }] }],
    v: ["aerial-vhf", { levelDbuv: 58, channels: [{ channel: 7, mode: "dvbt-64qam-2/3" }] }],
  };
  const into = "u.out > x.uhf1, w.out > x.uhf2, v.out > x.vhf, ";

  test("at the mast gives each aerial a gain of its own", () => {
    const amp: Sketch = { x: ["amp-masthead-inputs", { uhf1GainDb: 10, uhf2GainDb: 25, radioGainDb: 2 }] };
    const levels = levelsOf(
      "x",
      { ...aerials, ...amp, i: ["power-inserter"], tv: ["receiver-tv"] },
      `${into}x.out > i.in, i.out > tv.in`,
    );
    // 60 + 10, 45 + 25, 58 + 2.
    expect(levels).toEqual({
      C23: expect.closeTo(70, 3),
      C40: expect.closeTo(70, 3),
      E7: expect.closeTo(60, 3),
    });
  });

  test("takes by each UHF input only the channels that it is set to", () => {
    const amp: Sketch = { x: ["amp-launch", { uhf1GainDb: 20, uhf1To: 30, uhf2GainDb: 35, uhf2From: 38 }] };
    const strays: Sketch = {
      ...aerials,
      w: [
        "aerial-uhf",
        {
          levelDbuv: 45,
          channels: [
            { channel: 40, mode: MODE },
            { channel: 25, mode: MODE, wanted: false, levelOffsetDb: 10 },
          ],
        },
      ],
    };
    const levels = levelsOf("x", { ...strays, ...amp, p: ["outlet-tv"] }, `${into}x.out > p.in`);
    // 60 + 20 and 45 + 35; channel 25 is stopped at the second input by its filter, 30 dB or nearly so.
    expect(levels.C23).toBeCloseTo(80, 3);
    expect(levels.C40).toBeCloseTo(80, 3);
    expect(levels.C25).toBeLessThan(55 + 35 - 25);
  });

  test("is rated at its output, where all inputs come together", () => {
    const amp: Sketch = {
      x: ["amp-launch", { uhf1GainDb: 40, uhf2GainDb: 50, outputDbuv: 95 }],
      p: ["outlet-tv"],
    };
    const record = evaluate(draw({ ...aerials, ...amp }, `${into}x.out > p.in`)).record("x");
    expect(record?.drives).toHaveLength(1);
    expect(record?.drives[0]?.levelDbuv).toBeGreaterThan(95);
  });
});
