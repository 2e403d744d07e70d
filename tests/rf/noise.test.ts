import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ratioToDb } from "../../src/rf/decibel.ts";
import {
  kelvinToNoiseFigureDb,
  noiseFactor,
  noiseFigureDbToKelvin,
  REFERENCE_KELVIN,
  thermalNoiseUv2,
} from "../../src/rf/noise.ts";

describe("thermal noise of a matched source at 290 K", () => {
  // k·T·B with k = 1.380649e-23 J/K (SI), in dBm, plus 108.75 for 75 Ω; −174 dBm/Hz is the textbook figure.
  test.each([
    { name: "FM reference bandwidth", bandwidthMHz: 0.2, dbuv: -12.21 },
    { name: "DAB ensemble", bandwidthMHz: 1.536, dbuv: -3.36 },
    { name: "5 MHz", bandwidthMHz: 5, dbuv: 1.77 },
    { name: "DVB-C symbol rate", bandwidthMHz: 6.875, dbuv: 3.15 },
    { name: "DVB-T occupied width", bandwidthMHz: 7.61, dbuv: 3.59 },
    { name: "UHF channel", bandwidthMHz: 8, dbuv: 3.81 },
    { name: "transponder of 27.5 MS/s", bandwidthMHz: 27.5, dbuv: 9.17 },
    { name: "transponder of 36 MHz", bandwidthMHz: 36, dbuv: 10.34 },
  ])("$name: $dbuv dBµV", ({ bandwidthMHz, dbuv }) => {
    expect(ratioToDb(thermalNoiseUv2(bandwidthMHz))).toBeCloseTo(dbuv, 2);
  });

  test("noise rises in proportion to bandwidth and temperature, and is nothing at 0 K", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (bandwidthMHz, kelvin) => {
          expect(thermalNoiseUv2(2 * bandwidthMHz, kelvin)).toBeCloseTo(
            2 * thermalNoiseUv2(bandwidthMHz, kelvin),
            6,
          );
        },
      ),
    );
    expect(thermalNoiseUv2(8, 0)).toBe(0);
  });
});

describe("noise figure and noise temperature", () => {
  // Pratt, Satellite Communications, Table 4.4 (reference 290 K).
  test.each([
    { kelvin: 20, noiseFigureDb: 0.29 },
    { kelvin: 40, noiseFigureDb: 0.56 },
  ])("$kelvin K are a noise figure of $noiseFigureDb dB", ({ kelvin, noiseFigureDb }) => {
    expect(kelvinToNoiseFigureDb(kelvin)).toBeCloseTo(noiseFigureDb, 2);
  });

  test("the two convert back and forth without loss", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30, noNaN: true }), (noiseFigureDb) => {
        expect(kelvinToNoiseFigureDb(noiseFigureDbToKelvin(noiseFigureDb))).toBeCloseTo(noiseFigureDb, 9);
      }),
    );
  });
});

/** A stage as the chain below adds it: gain [dB] and what it adds at its own input, as a temperature [K]. */
type Stage = { readonly gainDb: number; readonly kelvin: number };

const amplifier = (gainDb: number, noiseFigureDb: number): Stage => ({
  gainDb,
  kelvin: noiseFigureDbToKelvin(noiseFigureDb),
});
/** A passive of a loss at a physical temperature adds T·(L − 1) at its input; at 290 K that is F = L. */
const passive = (lossDb: number, physicalKelvin = REFERENCE_KELVIN): Stage => ({
  gainDb: -lossDb,
  kelvin: physicalKelvin * (noiseFactor(lossDb) - 1),
});

const BANDWIDTH_MHZ = 8;

/** Noise power at the end of a chain, carried to its input [K]: powers added stage by stage, no Friis formula. */
function systemKelvin(stages: readonly Stage[], sourceKelvin = 0): number {
  let noise = thermalNoiseUv2(BANDWIDTH_MHZ, sourceKelvin);
  let gainDb = 0;
  for (const stage of stages) {
    noise = (noise + thermalNoiseUv2(BANDWIDTH_MHZ, stage.kelvin)) * noiseFactor(stage.gainDb);
    gainDb += stage.gainDb;
  }
  return noise / noiseFactor(gainDb) / thermalNoiseUv2(BANDWIDTH_MHZ, 1);
}

describe("a chain whose noise powers are added stage by stage gives what Friis' formula says", () => {
  // Couch, Digital and Analog Communication Systems, SA8-1: 0.63 dB, 45.14 K.
  test("converter 0.6 dB and 40 dB, coax 8.8 dB, receiver 10 dB: 0.63 dB, 45.14 K", () => {
    const kelvin = systemKelvin([amplifier(40, 0.6), passive(8.8), amplifier(0, 10)]);
    expect(kelvin).toBeCloseTo(45.14, 1);
    expect(kelvinToNoiseFigureDb(kelvin)).toBeCloseTo(0.63, 2);
  });

  // Pratt, Satellite Communications, Examples 4.3 and 4.4.
  test.each([
    { name: "RF stage of 23 dB", rfGainDb: 23, feedLossDb: 0, kelvin: 127.6 },
    { name: "RF stage of 50 dB", rfGainDb: 50, feedLossDb: 0, kelvin: 75.1 },
  ])("earth station, $name: $kelvin K", ({ rfGainDb, kelvin }) => {
    const chain: Stage[] = [
      { gainDb: rfGainDb, kelvin: 50 },
      { gainDb: -10, kelvin: 500 },
      { gainDb: 0, kelvin: 1000 },
    ];
    expect(systemKelvin(chain, 25)).toBeCloseTo(kelvin, 1);
  });

  // Pratt, Example 4.4: referred to the input of the RF stage, behind the feed.
  test("earth station with 2 dB of feed at 300 K: 176.6 K behind the feed", () => {
    const chain: Stage[] = [
      passive(2, 300),
      { gainDb: 50, kelvin: 50 },
      { gainDb: -10, kelvin: 500 },
      { gainDb: 0, kelvin: 1000 },
    ];
    // The book rounds 10^(−0.2) to 0.631; that moves the sum by about 0.1 K.
    expect(systemKelvin(chain, 25) / noiseFactor(2)).toBeCloseTo(176.6, 0);
  });

  // Friis by hand: F = 1.585 + (10 − 1)/31.62 + (6.310 − 1)·10/31.62 = 3.549 → 5.50 dB; without: 10 + 8 = 18 dB.
  test("a masthead amplifier before 10 dB of cable improves 18.0 dB to 5.50 dB", () => {
    const cableAndTv = [passive(10), amplifier(0, 8)];
    expect(kelvinToNoiseFigureDb(systemKelvin(cableAndTv))).toBeCloseTo(18, 2);
    expect(kelvinToNoiseFigureDb(systemKelvin([amplifier(15, 2), ...cableAndTv]))).toBeCloseTo(5.5, 2);
  });
});
