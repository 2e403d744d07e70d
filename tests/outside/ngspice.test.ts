import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { idealSplitDb, resistiveSplitDb } from "../../src/parts/splitLoss.ts";
import { coaxLossDb } from "../../src/rf/coax.ts";
import { gapLossDb } from "../../src/rf/gap.ts";
import { thirdOrderProductDbuv, thirdOrderRatioDb } from "../../src/rf/intermod.ts";
import { joinedLinesDb } from "../../src/rf/mismatch.ts";
import { thermalNoiseUv2 } from "../../src/rf/noise.ts";
import { stubLossDb } from "../../src/rf/stub.ts";
import { makeGrid } from "../../src/signal/grid.ts";
import { flat } from "../../src/signal/response.ts";
import { amplifyBand, sourceBand } from "../../src/signal/treat.ts";
import { draw } from "../draw.ts";
import { hasNgspice, simulate } from "./ngspice.ts";

const simulated = hasNgspice("splitters, cable loss and thermal noise against a circuit simulator");

/** An EMF of 2 V behind 75 Ω: a matched port sees 1 V, that is 0 dB. */
const SOURCE = "V1 emf 0 dc 0 ac 2\nRs emf in 75";
const AT_1_GHZ = ["ac lin 1 1e9 1e9"];

describe.skipIf(!simulated)("a resistive star, simulated by ngspice", () => {
  /** N + 1 arms of Z·(N − 1)/(N + 1): 25 Ω for two ways. */
  function star(ways: number): string {
    const arm = (75 * (ways - 1)) / (ways + 1);
    const legs = Array.from({ length: ways }, (_, i) => `Ra${i} hub o${i} ${arm}\nRl${i} o${i} 0 75`);
    return [SOURCE, `Rin in hub ${arm}`, ...legs].join("\n");
  }

  // Literature value for the two-way star of 3 × 25 Ω: −6.0206 dB.
  test("of 3 × 25 Ω is matched and loses 6.0206 dB to either leg", () => {
    const [input, one, two] = simulate({
      circuit: star(2),
      commands: AT_1_GHZ,
      read: ["vdb(in)", "vdb(o0)", "vdb(o1)"],
    });
    expect(input).toBeCloseTo(0, 6);
    expect(one).toBeCloseTo(-6.0206, 4);
    expect(two).toBeCloseTo(-6.0206, 4);
  });

  test.each([2, 3, 4, 8])("with %i ways loses what our formula says", (ways) => {
    const [leg = Number.NaN] = simulate({ circuit: star(ways), commands: AT_1_GHZ, read: ["vdb(o0)"] });
    expect(resistiveSplitDb(ways)).toBeCloseTo(-leg, 4);
  });
});

describe.skipIf(!simulated)("an ideal two-way hybrid, simulated by ngspice", () => {
  /** 75 to 37.5 Ω by an ideal transformer, then a centre-tapped winding with a balance resistor of 150 Ω. */
  const HYBRID = [
    "E1 up 0 tap 0 1.41421356237",
    "Vm in up 0",
    "F1 0 tap Vm 1.41421356237",
    "L1 a tap 1m",
    "L2 tap b 1m",
    "K1 L1 L2 1",
    "Rb a b 150",
  ].join("\n");

  test("is matched and loses 3.0103 dB to either leg, as our formula says", () => {
    const [input, one, two] = simulate({
      circuit: [SOURCE, HYBRID, "Ra a 0 75", "Rbb b 0 75"].join("\n"),
      commands: AT_1_GHZ,
      read: ["vdb(in)", "vdb(a)", "vdb(b)"],
    });
    expect(input).toBeCloseTo(0, 4);
    expect(one).toBeCloseTo(-idealSplitDb(2), 4);
    expect(two).toBeCloseTo(-idealSplitDb(2), 4);
  });

  test("lets nothing through from leg to leg, where a resistive star lets through as much as it splits", () => {
    const [across = 0] = simulate({
      circuit: ["V1 emf 0 dc 0 ac 2", "Rs emf a 75", "Rin in 0 75", HYBRID, "Rbb b 0 75"].join("\n"),
      commands: AT_1_GHZ,
      read: ["vdb(b)"],
    });
    expect(across).toBeLessThan(-80);
  });
});

describe.skipIf(!simulated)("a lossy line, simulated by ngspice", () => {
  /** 30 m of 75 Ω line: 301.41 nH/m, 53.58 pF/m, and a series resistance. */
  function line(ohmPerM: number): string {
    return [
      SOURCE,
      "O1 in 0 out 0 lossy",
      `.model lossy ltra r=${ohmPerM} l=301.41n g=0 c=53.58p len=30`,
      "Rl out 0 75",
    ].join("\n");
  }
  /** Insertion loss between 75 Ω and 75 Ω: what arrives, against the 0 dB of a matched port. */
  const lossOf = (ohmPerM: number, frequencyMHz: number): number => {
    const commands = [`ac lin 1 ${frequencyMHz}e6 ${frequencyMHz}e6`];
    const [output = Number.NaN] = simulate({ circuit: line(ohmPerM), commands, read: ["vdb(out)"] });
    return -output;
  };

  // Transmission line theory, low loss: R·l/(2·Z₀) nepers = 2 · 30/150 · 8.686 = 3.4743 dB.
  test("of 2 Ω/m loses 3.4743 dB on 30 m", () => {
    expect(lossOf(2, 1000)).toBeCloseTo(3.4743, 3);
  });

  /**
   * Resistance of a 1.0/4.6 mm copper cable from skin effect alone, per frequency; k1 of the same cable fixed
   * once, at 1 MHz. The law must then meet the simulator at every frequency.
   */
  test.each([50, 200, 862, 2150])(
    "with the skin effect of copper at %i MHz follows the cable law",
    (frequencyMHz) => {
      const skinOhmPerM = (mhz: number): number =>
        (Math.sqrt(Math.PI * mhz * 1e6 * 4e-7 * Math.PI * 1.724e-8) / Math.PI) * (1 / 1.0e-3 + 1 / 4.6e-3);
      const k1 = (skinOhmPerM(1) / (2 * 75)) * 20 * Math.LOG10E * 100;
      const ours = coaxLossDb({ k1, k2: 0, lengthM: 30, temperatureC: 20, frequencyMHz });
      expect(ours / lossOf(skinOhmPerM(frequencyMHz), frequencyMHz)).toBeCloseTo(1, 3);
    },
  );
});

describe.skipIf(!simulated)("thermal noise at 290 K, simulated by ngspice", () => {
  const EIGHT_MHZ = ["noise v(out) V1 lin 2 600e6 608e6"];

  test("of a matched source in 8 MHz is kTB into a noiseless 75 Ω load", () => {
    const [volts = Number.NaN] = simulate({
      circuit: "V1 emf 0 dc 0 ac 1\nRs emf out 75\nRl out 0 75 noisy=0",
      commands: EIGHT_MHZ,
      read: ["noise2.onoise_total"],
    });
    expect((volts * 1e6) ** 2 / thermalNoiseUv2(8)).toBeCloseTo(1, 3);
  });

  /**
   * Noise behind a T pad for 75 Ω at 290 K, and its gain: series Z·(k − 1)/(k + 1), shunt Z·2k/(k² − 1) with k = 10^(dB/20).
   * The source's own resistance is noiseless: its noise is that of another resistor, in proportion to the temperature,
   * put in series by a controlled source.
   */
  function behindPad(db: number, sourceKelvin: number): { noiseUv2: number; gainDb: number } {
    const k = 10 ** (db / 20);
    const series = (75 * (k - 1)) / (k + 1);
    const shunt = (75 * 2 * k) / (k * k - 1);
    const [volts = Number.NaN, gainDb = Number.NaN] = simulate({
      circuit: [
        "V1 emf 0 dc 0 ac 1",
        `Rn warm 0 ${(75 * sourceKelvin) / 290}`,
        "E1 noisy emf warm 0 1",
        "Rs noisy in 75 noisy=0",
        `R1 in mid ${series}`,
        `R2 mid 0 ${shunt}`,
        `R3 mid out ${series}`,
        "Rl out 0 75 noisy=0",
      ].join("\n"),
      commands: ["ac lin 1 600e6 600e6", "let gain = vdb(out) - vdb(in)", ...EIGHT_MHZ],
      read: ["noise2.onoise_total", "ac1.gain"],
    });
    return { noiseUv2: (volts * 1e6) ** 2, gainDb };
  }

  // Of a source at 290 K the noise stays kTB, whatever the loss; of a hotter or a colder one it moves towards it.
  test.each([
    { db: 10, sourceKelvin: 290 },
    { db: 10, sourceKelvin: 5800 },
    { db: 3, sourceKelvin: 5800 },
    { db: 3, sourceKelvin: 29 },
    { db: 20, sourceKelvin: 29 },
  ])("a pad of $db dB behind a source of $sourceKelvin K hands on the noise that ours does", (o) => {
    const source = sourceBand({
      origin: { key: "source", service: "tv", part: "source" },
      grid: makeGrid([{ name: "604", airMHz: 604, widthMHz: 8, noiseMHz: 8, mode: "" }]),
      levelDbuv: () => 60,
      noiseKelvin: o.sourceKelvin,
    });
    const ours = amplifyBand(source, flat(-o.db), { part: "pad" });
    const simulation = behindPad(o.db, o.sourceKelvin);
    expect((ours.level[0] ?? 0) - 60).toBeCloseTo(simulation.gainDb, 6);
    expect((ours.noise[0] ?? 0) / simulation.noiseUv2).toBeCloseTo(1, 3);
  });
});

describe.skipIf(!simulated)(
  "an amplifier with a weak cubic curve and two carriers, simulated by ngspice",
  () => {
    /** Levels of the upper carrier and of the product below the lower one [dBµV], for a drive in volts each. */
    function twoTone(driveVolts: number): { carrierDbuv: number; productDbuv: number } {
      const [carrier = Number.NaN, product = Number.NaN] = simulate({
        circuit: [
          `V1 one 0 dc 0 sin(0 ${driveVolts} 9e6)`,
          `V2 in one dc 0 sin(0 ${driveVolts} 10e6)`,
          "Rin in 0 75",
          "B1 out 0 V = 10*v(in) - 2*v(in)*v(in)*v(in)",
          "Rl out 0 75",
        ].join("\n"),
        // 1024 samples of exactly one microsecond: bin n is n MHz, without leakage between them.
        commands: [
          "set specwindow=none",
          "tran 0.9765625n 999.0234375n 0 0.2n",
          "linearize v(out)",
          "fft v(out)",
        ],
        read: ["mag(v(out)[9])", "mag(v(out)[8])"],
      });
      const dbuv = (peakVolts: number): number => 20 * Math.log10((peakVolts / Math.SQRT2) * 1e6);
      return { carrierDbuv: dbuv(carrier), productDbuv: dbuv(product) };
    }

    test("keeps the products where the rating at one level puts them at others", () => {
      const rated = twoTone(0.1);
      const amplifier = {
        ratedDbuv: rated.carrierDbuv,
        ratioDb: rated.carrierDbuv - rated.productDbuv,
        rule: "beats",
        carriers: 2,
      } as const;
      for (const driveVolts of [0.05, 0.07, 0.15]) {
        const { carrierDbuv, productDbuv } = twoTone(driveVolts);
        const ours = { ...amplifier, levelDbuv: carrierDbuv };
        // Compression by the same curve, up to a tenth of a decibel, counts three times over.
        expect(Math.abs(thirdOrderProductDbuv(ours) - productDbuv)).toBeLessThan(0.3);
        expect(Math.abs(thirdOrderRatioDb(ours) - (carrierDbuv - productDbuv))).toBeLessThan(0.3);
      }
    });
  },
);

describe.skipIf(!simulated)("a stub on a joint of three lines, simulated by ngspice", () => {
  // A line of 75 Ω that takes t seconds a metre: L = 75·t, C = t/75.
  const SECONDS_PER_M = 1 / (299_792_458 * 0.83);
  const line = (lengthM: number, ohmPerM: number) =>
    `.model cable ltra(r=${ohmPerM} l=${75 * SECONDS_PER_M} c=${SECONDS_PER_M / 75} len=${lengthM})`;

  test("loses 3.52 dB to each of two matched legs and has a return loss of 9.54 dB", () => {
    const [node = 0] = simulate({
      circuit: [SOURCE, "Ra in 0 75", "Rb in 0 75"].join("\n"),
      commands: AT_1_GHZ,
      read: ["vdb(in)"],
    });
    const { lossDb, returnLossDb } = joinedLinesDb(3);
    expect(lossDb).toBeCloseTo(-node, 6);
    // What comes back is the node's voltage less the 1 V that went in.
    expect(returnLossDb).toBeCloseTo(-20 * Math.log10(1 - 10 ** (node / 20)), 6);
  });

  // 2 m of 0.83, R of 1 Ω/m: aL = 2/(2·75) Np, 0.1158 dB, whatever the frequency.
  test.each([60, 93.3, 124.4, 500, 591])(
    "of 2 m with an open end loses the same at %d MHz",
    (frequencyMHz) => {
      const [node = 0] = simulate({
        circuit: [SOURCE, line(2, 1), "O1 in 0 far 0 cable", "Rfar far 0 1e9", "Rl in 0 75"].join("\n"),
        commands: [`ac lin 1 ${frequencyMHz}e6 ${frequencyMHz}e6`],
        read: ["vdb(in)"],
      });
      const lossDb = (2 / (2 * 75)) * 20 * Math.LOG10E;
      const ours = stubLossDb({ electricalM: 2 / 0.83, end: "open" }, { frequencyMHz, lossDb });
      expect(Math.abs(ours + node)).toBeLessThan(0.02);
    },
  );

  // The same as a drawn design: four FM stations, a T joint and 2 m of dead cable of 0.1158 dB.
  test("takes the same from the stations of a house", () => {
    const stations = [88, 93.3, 98, 106];
    const lossDb = (2 / (2 * 75)) * 20 * Math.LOG10E;
    const evaluation = evaluate(
      draw(
        {
          a: ["aerial-fm", { levelDbuv: 70, stations: stations.map((frequencyMHz) => ({ frequencyMHz })) }],
          t: ["t-joint"],
          d: ["cable", { grade: "own", k1: 0, k2: 0, velocityFactor: 0.83, lengthM: 2 }],
          p: ["attenuator", { lossDb }],
          z: ["receiver-fm"],
        },
        "a.out > t.in, t.out1 > z.in, t.out2 > d.in, d.out > p.in",
      ),
    );
    const [band] = evaluation.record("z")?.inputs["in"]?.bands ?? [];
    expect(band?.grid.centre).toHaveLength(4);
    stations.forEach((frequencyMHz, i) => {
      const [node = 0] = simulate({
        circuit: [SOURCE, line(2, 1), "O1 in 0 far 0 cable", "Rfar far 0 1e9", "Rl in 0 75"].join("\n"),
        commands: [`ac lin 1 ${frequencyMHz}e6 ${frequencyMHz}e6`],
        read: ["vdb(in)"],
      });
      // Ours is the mean over a station of 0.2 MHz: in the notch ±0.1 MHz turn the stub by 0.005 rad, a third of whose square is 4.8 %
      // of (aL)² = 0.0133²: 0.2 dB less deep.
      expect(Math.abs((band?.level[i] ?? 0) - 70 - node)).toBeLessThan(0.25);
    });
  });
});

// A broken inner conductor is a capacitor between 75 Ω and 75 Ω. ω·C·150 Ω at 950 MHz and 0.09 pF: 0.0806, 21.9 dB.
describe.skipIf(!simulated)("a capacitor in series, simulated by ngspice", () => {
  test.each([
    { picofarad: 0.09, frequencyMHz: 950, roughDb: 21.9 },
    { picofarad: 0.09, frequencyMHz: 98, roughDb: 41.6 },
    { picofarad: 1, frequencyMHz: 474, roughDb: 7.8 },
    { picofarad: 1, frequencyMHz: 2150, roughDb: 1 },
  ])("of $picofarad pF loses $roughDb dB at $frequencyMHz MHz", ({ picofarad, frequencyMHz, roughDb }) => {
    const [out = 0] = simulate({
      circuit: [SOURCE, `C1 in out ${picofarad}p`, "Rl out 0 75"].join("\n"),
      commands: [`ac lin 1 ${frequencyMHz}e6 ${frequencyMHz}e6`],
      read: ["vdb(out)"],
    });
    expect(gapLossDb({ picofarad, frequencyMHz })).toBeCloseTo(-out, 4);
    expect(Math.abs(-out - roughDb)).toBeLessThan(0.15);
  });
});
