import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ratioToDb } from "../../src/rf/decibel.ts";
import { kelvinToNoiseFigureDb, noiseFigureDbToKelvin, thermalNoiseUv2 } from "../../src/rf/noise.ts";

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

  // F = 1 + T/290 by hand: 0 dB nothing, 3.0103 dB 290 K, 10 dB nine times 290 K.
  test.each([
    { noiseFigureDb: 0, kelvin: 0 },
    { noiseFigureDb: 3.0103, kelvin: 290 },
    { noiseFigureDb: 10, kelvin: 2610 },
  ])("$noiseFigureDb dB are $kelvin K", ({ noiseFigureDb, kelvin }) => {
    expect(noiseFigureDbToKelvin(noiseFigureDb)).toBeCloseTo(kelvin, 2);
  });

  test("the two convert back and forth without loss", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30, noNaN: true }), (noiseFigureDb) => {
        expect(kelvinToNoiseFigureDb(noiseFigureDbToKelvin(noiseFigureDb))).toBeCloseTo(noiseFigureDb, 9);
      }),
    );
  });
});
