import { describe, expect, test } from "vitest";
import { dbuvToDbm, ratioToDb } from "../../src/rf/decibel.ts";
import { beamwidthDeg, dishGainDbi, pointingLossDb } from "../../src/rf/dish.ts";
import { BOLTZMANN, noiseFigureDbToKelvin, thermalNoiseUv2 } from "../../src/rf/noise.ts";
import { freeSpaceLossDb } from "../../src/rf/path.ts";

describe("dish gain", () => {
  test.each([
    {
      name: "3.05 m at 4 GHz (Couch, Ex. 8-5)",
      diameterM: 3.05,
      efficiency: 0.557,
      frequencyMHz: 4000,
      dbi: 39.6,
      within: 0.06,
    },
    {
      name: "0.45 m at 12.45 GHz (public link-budget example)",
      diameterM: 0.45,
      efficiency: 0.56,
      frequencyMHz: 12_450,
      dbi: 32.846,
      within: 0.02,
    },
    {
      name: "0.6 m at 11.7 GHz (ITU-R BO.1213-1, on axis)",
      diameterM: 0.6,
      efficiency: 0.65,
      frequencyMHz: 11_700,
      dbi: 35.5,
      within: 0.06,
    },
    {
      name: "1.2 m at 11.7 GHz (ITU-R BO.1213-1, on axis)",
      diameterM: 1.2,
      efficiency: 0.65,
      frequencyMHz: 11_700,
      dbi: 41.5,
      within: 0.06,
    },
  ])("$name is $dbi dBi", ({ dbi, within, ...dish }) => {
    expect(Math.abs(dishGainDbi(dish) - dbi)).toBeLessThan(within);
  });
});

describe("pointing", () => {
  // ITU-R BO.1213-1 main lobe, 0.6 m at 11.7 GHz: 35.5 dBi on axis, 35.4 at 0.1°, 34.1 at 1°, 30.0 at 2°.
  test.each([
    { offAxisDeg: 0.1, lossDb: 0.1, within: 0.1 },
    { offAxisDeg: 1, lossDb: 1.4, within: 0.1 },
    { offAxisDeg: 2, lossDb: 5.5, within: 0.2 },
  ])("0.6 m loses $lossDb dB at $offAxisDeg° beside the axis", ({ offAxisDeg, lossDb, within }) => {
    const beam = beamwidthDeg({ diameterM: 0.6, frequencyMHz: 11_700 });
    expect(Math.abs(pointingLossDb({ offAxisDeg, beamwidthDeg: beam }) - lossDb)).toBeLessThan(within);
  });

  test("half a beamwidth off costs 3 dB, which is what beamwidth means", () => {
    expect(pointingLossDb({ offAxisDeg: 1.4, beamwidthDeg: 2.8 })).toBeCloseTo(3, 9);
  });
});

describe("free space", () => {
  test.each([
    { name: "40 000 km at 11 GHz (Pratt, Ex. 4.2)", distanceKm: 40_000, frequencyMHz: 11_000, db: 205.3 },
    { name: "37 938 km at 12.1 GHz (Fischer)", distanceKm: 37_938, frequencyMHz: 12_100, db: 205.7 },
  ])("$name: $db dB", ({ distanceKm, frequencyMHz, db }) => {
    expect(freeSpaceLossDb({ distanceKm, frequencyMHz })).toBeCloseTo(db, 1);
  });
});

describe("a whole downlink", () => {
  // Fischer, Digital Video and Audio Broadcasting Technology, satellite link: C −117.7 dBW, N −128.5, C/N 10.8 dB.
  test("52 dBW, 37 938 km, dish of 37 dBi, 1 dB noise figure: C/N 10.8 dB", () => {
    const lossesDb = 0.3 + 0.5 + 0.2; // clear sky, pointing, polarisation
    const cDbw = 52 - freeSpaceLossDb({ distanceKm: 37_938, frequencyMHz: 12_100 }) - lossesDb + 37;
    // A transponder of 33 MHz with 27.5 MS/s: the published noise is that of the symbol rate, for a source
    // at 293 K (24.7 dBK), with the noise figure added: −228.6 + 24.7 + 74.4 + 1.0.
    const nDbw = dbuvToDbm(ratioToDb(thermalNoiseUv2(27.5, 293))) - 30 + 1;
    expect(cDbw).toBeCloseTo(-117.7, 1);
    expect(Math.abs(nDbw - -128.5)).toBeLessThan(0.1);
    expect(Math.abs(cDbw - nDbw - 10.8)).toBeLessThan(0.1);
  });

  /**
   * The same downlink two ways, algebra by hand: C/N from levels and noise powers must equal the
   * link-budget form EIRP − FSPL + G/T − 10·log10(k·B), for a 0.6 m dish and a 0.7 dB converter.
   */
  test("levels and noise powers agree with the G/T form of the link budget", () => {
    const [eirpDbw, bandwidthMHz, frequencyMHz] = [51, 27.5, 12_500];
    const fsplDb = freeSpaceLossDb({ distanceKm: 39_036, frequencyMHz });
    const gainDbi = dishGainDbi({ diameterM: 0.6, efficiency: 0.65, frequencyMHz });
    const kelvin = 35 + noiseFigureDbToKelvin(0.7);

    const carrierDbm = eirpDbw + 30 - fsplDb + gainDbi;
    const fromLevels = carrierDbm - dbuvToDbm(ratioToDb(thermalNoiseUv2(bandwidthMHz, kelvin)));
    const fromBudget =
      eirpDbw -
      fsplDb +
      (gainDbi - 10 * Math.log10(kelvin)) -
      10 * Math.log10(BOLTZMANN * bandwidthMHz * 1e6);
    expect(fromLevels).toBeCloseTo(fromBudget, 6);
  });
});
