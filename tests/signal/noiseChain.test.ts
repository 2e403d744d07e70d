/**
 * Chains of stages, each as the project treats one, against noise figures and temperatures of textbooks: Friis' formula
 * is coded nowhere, and has to come out.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { kelvinToNoiseFigureDb } from "../../src/rf/noise.ts";
import type { Band } from "../../src/signal/band.ts";
import { flat } from "../../src/signal/response.ts";
import { amplifyBand, sourceBand } from "../../src/signal/treat.ts";
import { gridOf } from "./bands.ts";

type Stage = (band: Band) => Band;

const active =
  (gainDb: number, noiseFigureDb: number): Stage =>
  (band) =>
    amplifyBand(band, flat(gainDb), { part: "stage", noiseFigureDb });
const passive =
  (lossDb: number): Stage =>
  (band) =>
    amplifyBand(band, flat(-lossDb), { part: "stage" });
/** A stage whose book states a noise temperature: F = 1 + T/290 by definition. */
const activeKelvin = (gainDb: number, kelvin: number) => active(gainDb, kelvinToNoiseFigureDb(kelvin));

/**
 * Noise behind a chain, referred to its input, as a temperature [K]: what C/N is lost on the way, times the source's.
 * The source is one carrier in 8 MHz at that temperature.
 */
function systemKelvin(stages: readonly Stage[], sourceKelvin: number): number {
  const source = sourceBand({
    origin: { key: "source", service: "tv", part: "source" },
    grid: gridOf([474]),
    levelDbuv: () => 60,
    noiseKelvin: sourceKelvin,
  });
  const end = stages.reduce((band, stage) => stage(band), source);
  const gain = 10 ** (((end.level[0] ?? 0) - 60) / 10);
  return (sourceKelvin * (end.noise[0] ?? 0)) / gain / (source.noise[0] ?? 0);
}

/** By the IEEE's definition: against a source at 290 K. */
const noiseFigureDb = (stages: readonly Stage[]) => 10 * Math.log10(systemKelvin(stages, 290) / 290);

describe("noise figures of chains", () => {
  // Couch, Digital and Analog Communication Systems, SA8-1: 0.63 dB, 45.14 K.
  test("converter 0.6 dB and 40 dB, coax 8.8 dB, receiver 10 dB: 0.63 dB, 45.14 K", () => {
    const stages = [active(40, 0.6), passive(8.8), active(0, 10)];
    expect(noiseFigureDb(stages)).toBeCloseTo(0.63, 2);
    expect(systemKelvin(stages, 290) - 290).toBeCloseTo(45.14, 1);
  });

  // Friis by hand: F = 1.585 + (10 − 1)/31.62 + (6.310 − 1)·10/31.62 = 3.549 → 5.50 dB; without: 10 + 8 = 18 dB.
  test("a masthead amplifier of 2 dB before 10 dB of cable improves 18.0 dB to 5.50 dB", () => {
    expect(noiseFigureDb([passive(10), active(0, 8)])).toBeCloseTo(18, 9);
    expect(noiseFigureDb([active(15, 2), passive(10), active(0, 8)])).toBeCloseTo(5.5, 2);
  });

  // F of a passive at 290 K is its loss (any textbook): of several, their sum in decibels.
  test.each([
    { losses: [10], figure: 10 },
    { losses: [0.5], figure: 0.5 },
    { losses: [3, 7, 20], figure: 30 },
  ])("passives of $losses dB in a row: $figure dB", ({ losses, figure }) => {
    expect(noiseFigureDb(losses.map(passive))).toBeCloseTo(figure, 9);
  });

  // n equal stages whose gain makes up for the loss before them: n·(F·L) − (n − 1), Friis with gains of 1 between.
  // 4 dB of loss and 4 dB of gain with F = 4 dB: F·L = 10^0.8 = 6.310; for n = 4: 25.24 − 3 = 22.24 → 13.47 dB.
  test("four like stages, each after as much loss as it gains: 13.47 dB", () => {
    const stages = Array.from({ length: 4 }, () => [passive(4), active(4, 4)]).flat();
    expect(noiseFigureDb(stages)).toBeCloseTo(13.47, 2);
  });
});

describe("system temperatures of chains", () => {
  // Pratt, Satellite Communications, Examples 4.3 and 4.4: RF 50 K, mixer 500 K with −10 dB, IF 1000 K; aerial 25 K.
  test.each([
    { name: "RF stage of 23 dB", rfGainDb: 23, kelvin: 127.6 },
    { name: "RF stage of 50 dB", rfGainDb: 50, kelvin: 75.1 },
  ])("earth station, $name: $kelvin K", ({ rfGainDb, kelvin }) => {
    const chain = [activeKelvin(rfGainDb, 50), activeKelvin(-10, 500), activeKelvin(0, 1000)];
    expect(systemKelvin(chain, 25)).toBeCloseTo(kelvin, 1);
  });

  // The same with 2 dB of feed: behind it 25/1.5849 + 290·(1 − 1/1.5849) = 15.77 + 107.02 K, and 50.1 K of the chain:
  // 172.9 K. (The book has its feed at 300 K: 176.6 K.)
  test("earth station with 2 dB of feed at 290 K: 172.9 K behind the feed", () => {
    const chain = [passive(2), activeKelvin(50, 50), activeKelvin(-10, 500), activeKelvin(0, 1000)];
    expect(systemKelvin(chain, 25) / 1.5849).toBeCloseTo(172.9, 1);
  });
});

test("two passives in a row are one of their sum, and never hand on a better C/N than they got", () => {
  const db = fc.double({ min: 0, max: 40, noNaN: true });
  fc.assert(
    fc.property(db, db, fc.double({ min: 1, max: 10_000, noNaN: true }), (a, b, kelvin) => {
      const [both, one] = [
        systemKelvin([passive(a), passive(b)], kelvin),
        systemKelvin([passive(a + b)], kelvin),
      ];
      expect(both / one).toBeCloseTo(1, 9);
      expect(both).toBeGreaterThanOrEqual(kelvin * (1 - 1e-9));
    }),
  );
});
