/**
 * Whose noise, or whose interference, spoils a C/N. Shares are reckoned by Friis' formula: noise over carrier behind the
 * source counts 1, a loss L makes it L, an amplifier behind a loss L adds (F − 1)·L (matched line at 290 K). What a
 * part brings when it is put right follows from that. Who is to be named is common practice, no source.
 * Channel 30, 546 MHz: cable of 1.0 mm copper loses 14.581 dB/100 m.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { blameForNoise, blameForQuality, disturbed } from "../../../src/findings/blame/quality.ts";
import type { Served } from "../../../src/findings/blame/served.ts";
import { stagesTo } from "../../../src/findings/blame/stages.ts";
import { draw, type Sketch } from "../../draw.ts";
import { aerial, blamedForQuality, figures } from "./missed.ts";

const NONE: Served = { failing: 1, missingDb: 0, inOrder: 0, spareDb: Number.POSITIVE_INFINITY };

function way(parts: Sketch, wires: string) {
  const evaluation = evaluate(draw({ z: ["receiver-tv"], ...parts }, wires));
  const stages = stagesTo(evaluation, { part: "z", port: "in" }, { origin: "a", index: 0 });
  if (stages.length === 0) throw new Error("it does not arrive");
  return { evaluation, stages };
}

function noise(parts: Sketch, wires: string, missingDb = 4, behind?: number) {
  const about = { missingDb, served: () => NONE, ...(behind === undefined ? {} : { behind }) };
  return blameForNoise(way(parts, wires).stages, about);
}

const HOUSE = ["amp-distribution", { gainDb: 15 }] as const;

describe("noise is the fault of what is worse than it should be", () => {
  // 10^1.4581 = 28.71 behind the cable, the amplifier of 5 dB adds 2.162·28.71 = 62.09: 90.80 in all. A usual run of
  // 30 m would leave 4.374 dB: what is added from the cable on (89.80) counts for 10^−1.0207 of it:
  // 1 + 8.56 = 9.56, 9.77 dB better.
  test("a long cable before the amplifier", () => {
    const found = noise(
      { d: HOUSE, c: ["cable", { lengthM: 100 }], a: aerial(45) },
      "a.out > c.in, c.out > d.in, d.out > z.in",
    );
    expect(found).toMatchObject({ part: "c", port: "out", does: "long cable", lengthM: 100 });
    expect(found?.excessDb).toBeCloseTo(9.77, 1);
    expect(found?.amount).toBeCloseTo(-14.581, 2);
  });

  // 11 dB where 5 are usual: behind a source at 290 K all of the 6 dB.
  test("a noisy amplifier", () => {
    const found = noise(
      { d: ["amp-distribution", { noiseFigureDb: 11 }], a: aerial(55) },
      "a.out > d.in, d.out > z.in",
    );
    expect(found).toMatchObject({ part: "d", port: "out", does: "noisy", amount: 11 });
    expect(found?.excessDb).toBeCloseTo(6, 1);
  });

  test("but not one that is as good as usual, or better", () => {
    const at = (noiseFigureDb: number) =>
      noise({ d: ["amp-distribution", { noiseFigureDb }], a: aerial(55) }, "a.out > d.in, d.out > z.in", 0.1);
    expect(at(5)).toMatchObject({ part: "a", does: "weak source", excessDb: 0 });
    expect(at(2)).toMatchObject({ part: "a", does: "weak source", excessDb: 0 });
    expect(at(5.5)).toMatchObject({ part: "d", does: "noisy", amount: 5.5 });
  });

  // 5 dB where 2 are usual under an aerial: 3 dB.
  test("what is usual depends on the kind", () => {
    const found = noise(
      { i: ["power-inserter"], m: ["amp-masthead", { noiseFigureDb: 5 }], a: aerial(55) },
      "a.out > m.in, m.out > i.in, i.out > z.in",
    );
    expect(found).toMatchObject({ part: "m", does: "noisy", amount: 5 });
    expect(found?.excessDb).toBeCloseTo(3, 1);
  });

  // Masthead amplifier at 6 of 16 dB, F = 1.585; 30 m of cable add (2.738 − 1)/3.981 = 0.437, the amplifier behind
  // 2.162·2.738/3.981 = 1.487: 3.509 in all. Its gain put right makes a tenth of the 1.924 behind it, and nothing of
  // its own noise: 1.777, 2.95 dB better.
  test("an amplifier that is turned down lacks gain for what is behind it, not for its own noise", () => {
    const found = noise(
      {
        d: ["amp-distribution", { aerialSupply: "12" }],
        c: ["cable", { lengthM: 30 }],
        m: ["amp-masthead", { gainDb: 6 }],
        a: aerial(55),
      },
      "a.out > m.in, m.out > c.in, c.out > d.in, d.out > z.in",
    );
    expect(found).toMatchObject({ part: "m", does: "low gain" });
    expect(found?.excessDb).toBeCloseTo(2.95, 1);
    expect(found?.amount).toBeCloseTo(6, 6);
  });

  // A pad of 12 dB and F = 3.162: 50.12 in all, of which 49.12 are added here. With 12 dB more they count 3.10:
  // 4.10 in all, 10.87 dB better.
  test("an attenuator at its input counts for its own noise as well", () => {
    const found = noise(
      { d: ["amp-distribution", { padDb: 12 }], a: aerial(55) },
      "a.out > d.in, d.out > z.in",
    );
    expect(found).toMatchObject({ part: "d", does: "input attenuator" });
    expect(found?.excessDb).toBeCloseTo(10.87, 1);
  });

  // 30 dBµV: an aerial is a weak one below 52. All noise is over its carrier.
  test("a weak source lacks all that is missing to its level", () => {
    const found = noise({ d: HOUSE, a: aerial(30) }, "a.out > d.in, d.out > z.in");
    expect(found).toMatchObject({ part: "a", port: "out", does: "weak source" });
    expect(found?.excessDb).toBeCloseTo(22, 3);
    expect(found?.amount).toBeCloseTo(30, 6);
  });

  // The noisy amplifier could bring 6 dB: a quarter of what is missing from 24 dB down.
  test("only where that is a quarter of what is missing", () => {
    const at = (missingDb: number) =>
      noise(
        { d: ["amp-distribution", { noiseFigureDb: 11 }], a: aerial(55) },
        "a.out > d.in, d.out > z.in",
        missingDb,
      );
    expect(at(23.5)).toMatchObject({ part: "d", does: "noisy" });
    expect(at(24.5)).toMatchObject({ part: "a", does: "weak source", excessDb: 0 });
  });
});

describe("where every part is as it should be", () => {
  // L = 2.738: 2.738 behind the cable, 2.738·3.162 = 8.658 behind the amplifier. Without the cable what is added from
  // it on (7.658) counts for 1/2.738: 3.797 in all, 3.58 dB better.
  test("noise is the fault of the greatest loss before an amplifier", () => {
    const found = noise(
      { d: HOUSE, c: ["cable", { lengthM: 30 }], a: aerial(55) },
      "a.out > c.in, c.out > d.in, d.out > z.in",
    );
    expect(found).toMatchObject({ part: "c", port: "out", does: "long cable", lengthM: 30 });
    expect(found?.excessDb).toBeCloseTo(3.58, 1);
    expect(found?.amount).toBeCloseTo(-4.374, 2);
  });

  test("be it a splitter", () => {
    const found = noise(
      { d: HOUSE, s: ["splitter", { loss: "own", ownTvDb: 4.5 }], a: aerial(55) },
      "a.out > s.in, s.out2 > d.in, d.out > z.in",
    );
    expect(found).toMatchObject({ part: "s", port: "out2", does: "loses" });
    expect(found?.amount).toBeCloseTo(-4.5, 6);
    expect(found).not.toHaveProperty("lengthM");
  });

  // 0.5 dB of a block cannot bring 1 dB.
  test("not of one that could bring no decibel: then the source is weak", () => {
    const found = noise(
      { d: HOUSE, b: ["dc-block"], a: aerial(55) },
      "a.out > b.in, b.out > d.in, d.out > z.in",
    );
    expect(found).toMatchObject({ part: "a", port: "out", does: "weak source", excessDb: 0 });
    expect(found?.amount).toBeCloseTo(55, 6);
  });

  // A source of T kelvin counts T/290, cable and amplifier add 7.658 as above: at 2000 K 6.90 of 14.55, at 2600 K
  // 8.97 of 16.62, of which the cable could still bring 1.5 dB.
  test("nor where most noise comes from the source", () => {
    const at = (noiseKelvin: number) =>
      noise(
        { d: HOUSE, c: ["cable", { lengthM: 30 }], a: aerial(65, { noiseKelvin }) },
        "a.out > c.in, c.out > d.in, d.out > z.in",
      );
    expect(at(2000)).toMatchObject({ part: "c", does: "long cable" });
    expect(at(2600)).toMatchObject({ part: "a", does: "weak source" });
  });
});

describe("noise that is added where the way ends", () => {
  const pad: Sketch = { p: ["attenuator", { lossDb: 20 }], a: aerial(60) };
  const wires = "a.out > p.in, p.out > z.in";

  // Behind the pad 100; the source's carrier of 60 dBµV over 3.59 dBµV of noise (4.00·10⁻²¹ W/Hz in 7.61 MHz on 75 Ω)
  // is 56.41 dB. A tuner of 900 such parts makes 1000 in all; without the pad 1 + 999/100 = 10.99: 19.59 dB better.
  test("counts with what is before it", () => {
    const one = 10 ** -5.641;
    const found = noise(pad, wires, 4, 900 * one);
    expect(found).toMatchObject({ part: "p", does: "attenuates" });
    expect(found?.excessDb).toBeCloseTo(19.59, 1);
  });

  // Without it 1 + 99/100 = 1.99 of 100: 17.01 dB.
  test("is none where the way ends at a socket", () => {
    expect(noise(pad, wires)?.excessDb).toBeCloseTo(17.01, 1);
  });

  test("of a way that is not there nobody is named", () => {
    expect(blameForNoise([], { missingDb: 3, served: () => NONE })).toBeUndefined();
  });
});

describe("what disturbs a carrier most", () => {
  const found = (parts: Sketch, wires: string) => {
    const { evaluation, stages } = way(parts, wires);
    return disturbed(evaluation, stages);
  };

  // Two aerials on one channel: 60 against 50 dBµV, 10 dB, whatever the combiner loses.
  test("another wanted signal: the part that brings the two together", () => {
    const quality = found(
      { j: ["combiner"], b: aerial(50), a: aerial(60) },
      "a.out > j.in1, b.out > j.in2, j.out > z.in",
    );
    expect(quality?.spoiler).toEqual({ by: "foreign", signal: { service: "tv", part: "b" }, part: "j" });
    expect(quality?.culprit).toMatchObject({ part: "j", port: "out", does: "brings together", excessDb: 0 });
    expect(quality?.culprit?.amount).toBeCloseTo(10, 1);
  });

  // Channel 61 (794 ± 4 MHz) lies in the band of the masts from 791 MHz.
  test("a signal from outside: where it comes in, told at the output where they meet", () => {
    const channels = [{ channel: 61, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }];
    const quality = found(
      { x: ["pick-up", { mast700: false, mastDbuv: 50 }], a: aerial(60, { channels, formerOnAir: true }) },
      "a.out > x.in, x.out > z.in",
    );
    expect(quality?.spoiler).toMatchObject({
      by: "foreign",
      signal: { service: "mobile", part: "x" },
      part: "x",
    });
    expect(quality?.culprit).toMatchObject({ part: "x", port: "out", does: "lets in", excessDb: 0 });
  });

  // Six channels at 100 dBµV each where 100 are rated for two: 7.5·log10 5 = 5.24 dB over, the ratio of 60 less twice
  // that.
  test("products of an amplifier that is driven too hard", () => {
    const many = { channels: [22, 25, 28, 32, 36, 40].map((channel) => ({ channel })) };
    const quality = found({ d: HOUSE, a: aerial(85, many) }, "a.out > d.in, d.out > z.in");
    expect(quality?.spoiler).toEqual({ by: "products", part: "d", amplifiers: 1 });
    expect(quality?.culprit).toMatchObject({ part: "d", port: "#sum", does: "overdriven" });
    expect(quality?.culprit?.excessDb).toBeCloseTo(5.24, 1);
    expect(quality?.culprit?.amount).toBeCloseTo(60 - 10.48, 1);
  });

  // Two channels of 85 + 15 = 100 dBµV, and one of 85 − 30 + 10 = 65 by the radio input, which it should not come by: C/I
  // 35 dB. Rated 80 the products lie 60 − 2·20 = 20 dB below, more than half of it all; rated 95 50 dB.
  test("of products and a foreign signal at one part the greater", () => {
    const at = (outputDbuv: number) =>
      found(
        {
          x: ["amp-distribution", { inputs: "two", outputDbuv }],
          b: aerial(85),
          a: aerial(85, { channels: [{ channel: 30 }, { channel: 40 }] }),
        },
        "a.out > x.in, b.out > x.radio, x.out > z.in",
      );
    expect(at(80)?.spoiler).toEqual({ by: "products", part: "x", amplifiers: 1 });
    expect(at(95)?.spoiler).toMatchObject({ by: "foreign", signal: { part: "b" }, part: "x" });
    expect(at(95)?.culprit).toMatchObject({ part: "x", port: "out", does: "brings together" });
  });

  // C/I of 20 dB is 0.0100 of the carrier, of 15 dB 0.0316: the second adds more. 10 dB is 0.1: then the first does.
  test("of two the one that adds more, not the one behind which there is most", () => {
    const at = (near: number, far: number) =>
      found(
        { j: ["combiner"], k: ["combiner"], c: aerial(far), b: aerial(near), a: aerial(60) },
        "a.out > j.in1, b.out > j.in2, j.out > k.in1, c.out > k.in2, k.out > z.in",
      );
    // The second combiner gets a carrier that is weaker by the loss of the first, 3.67 dB.
    expect(at(40, 41.3)?.culprit).toMatchObject({ part: "k" });
    expect(at(50, 41.3)?.culprit).toMatchObject({ part: "j" });
  });

  test("nothing where nothing does", () => {
    expect(found({ a: aerial(60) }, "a.out > z.in")).toBeUndefined();
  });
});

describe("a C/N that is too low", () => {
  const line = draw(
    { z: ["receiver-tv"], d: ["amp-distribution", { noiseFigureDb: 11 }], a: aerial(45) },
    "a.out > d.in, d.out > z.in",
  );
  const joined = draw(
    { z: ["receiver-tv"], j: ["combiner"], b: aerial(50), a: aerial(60) },
    "a.out > j.in1, b.out > j.in2, j.out > z.in",
  );
  const at = (cnDb: number, ciDb: number) => ({ worst: { cnDb, ciDb } });

  test("is followed by noise where noise is the greater part, or as great", () => {
    for (const design of [line, joined]) {
      expect(blamedForQuality(design, "z.in", 5, at(20, 20)).spoiler).toEqual({ by: "noise" });
      expect(blamedForQuality(design, "z.in", 5, at(20, 25)).spoiler).toEqual({ by: "noise" });
    }
    expect(blamedForQuality(line, "z.in", 5).culprit).toMatchObject({ part: "d", does: "noisy" });
  });

  test("is followed by what disturbs where that is", () => {
    const found = blamedForQuality(joined, "z.in", 5, at(20, 19.9));
    expect(found.spoiler).toMatchObject({ by: "foreign", part: "j" });
    expect(found.culprit).toMatchObject({ does: "brings together" });
  });

  test("keeps what is known where nothing can be followed", () => {
    expect(blamedForQuality(line, "z.in", 5, at(20, 10))).toEqual({ spoiler: { by: "foreign" } });
    expect(blamedForQuality(line, "z", 5)).toEqual({ spoiler: { by: "foreign" } });
    const ofNoService = blameForQuality(evaluate(line), {
      severity: "warning",
      at: { part: "z", port: "in" },
      parts: ["z"],
      wires: [],
      facts: { failing: 1, of: 1, figure: "C/(N+I)", worst: figures(), spoiler: { by: "foreign" } },
    });
    expect(ofNoService).toEqual({ spoiler: { by: "foreign" } });
  });

  // 6 dB are a quarter of 24.
  test("asks how much is missing", () => {
    expect(blamedForQuality(line, "z.in", 23.5).culprit).toMatchObject({ part: "d" });
    expect(blamedForQuality(line, "z.in", 25).culprit).toMatchObject({ part: "a" });
  });

  // 48 − 9 − 4 = 35 dBµV at y are 31.4 dB, in order; 29 at z are 25.4. The pad of 9 dB before both would bring about 9,
  // of which the 3 that are missing count, and of these a half; that of 6 dB before z 10·log10(1/(1 − 0.749·0.749)) = 3.57.
  test("asks who else is served: a part before a place in order comes behind", () => {
    const parts: Sketch = {
      z: ["receiver-tv"],
      p: ["attenuator", { lossDb: 6 }],
      s: ["splitter", { loss: "own", ownTvDb: 4 }],
      q: ["attenuator", { lossDb: 9 }],
      a: aerial(48),
    };
    const wires = "a.out > q.in, q.out > s.in, s.out1 > p.in, p.out > z.in";
    const beside = draw({ y: ["receiver-tv"], ...parts }, `${wires}, s.out2 > y.in`);
    const found = blamedForQuality(beside, "z.in", 3).culprit;
    expect(found).toMatchObject({ part: "p", does: "attenuates" });
    expect(found?.excessDb).toBeCloseTo(3.57, 1);
    expect(blamedForQuality(draw(parts, wires), "z.in", 3).culprit).toMatchObject({ part: "q" });
  });

  test("names nobody where the carrier does not come", () => {
    expect(blamedForQuality(line, "z.in", 5, { worst: { index: 3 } })).toEqual({ spoiler: { by: "noise" } });
  });
});

// A usual switch keeps its inputs 30 dB apart. A line 20 dB weaker than the others hears them 10 dB below its own carriers:
// the joint that loses them is at fault, no better switch is sold. Of a switch of 12 dB it is the switch.
describe("crosstalk beside a line that something weakens", () => {
  const culprit = (lossDb: number, crosstalkDb: number) => {
    const parts: Sketch = {
      z: ["receiver-sat", { polarisation: "H" }],
      ms: ["multiswitch", { outputs: 4, terrestrial: false, crosstalkDb }],
      j: ["bad-joint", { fault: "corroded", lossDb }],
      l: ["lnb-quattro"],
      d: ["dish", { diameterM: 1.2, neighbours: [] }],
    };
    const wires =
      "d.sky > l.sky, l.vl > ms.vl, l.vh > ms.vh, l.hl > j.in, j.out > ms.hl, l.hh > ms.hh, ms.out1 > z.sat";
    const evaluation = evaluate(draw(parts, wires));
    const stages = stagesTo(evaluation, { part: "z", port: "sat" }, { origin: "d/H", index: 5 });
    return disturbed(evaluation, stages);
  };

  test("is the joint's", () => {
    expect(culprit(20, 30)).toMatchObject({ spoiler: { by: "crosstalk" }, culprit: { part: "j" } });
  });

  test("is the switch's where that is the worse of the two", () => {
    expect(culprit(4, 12)).toMatchObject({ spoiler: { by: "crosstalk" }, culprit: { part: "ms" } });
  });
});
