/** Cross-polarisation: turned feeds, feeds that leak, circular waves, rain. */
import { describe, expect, test } from "vitest";
import {
  axialRatioCrossPolarDb,
  crossPolarCiDb,
  HALF_SHARE,
  turnedFeedShares,
  worstCrossPolarCiDb,
} from "../../src/rf/crossPolar.ts";
import { ratioToDb } from "../../src/rf/decibel.ts";
import { rainCrossPolarDb } from "../../src/rf/rainCrossPolar.ts";

const PERFECT = Number.POSITIVE_INFINITY;

// Malus: −20·log10(cos δ), −20·log10(tan δ); with a leak in power or in voltage. Tables of trigonometry.
describe("a linear feed that is turned", () => {
  test.each([
    {
      turnedDeg: 1,
      lossDb: 0.001,
      idealDb: 35.16,
      worst25: 22.65,
      power25: 24.6,
      worst20: 18.6,
      power20: 19.87,
    },
    {
      turnedDeg: 2,
      lossDb: 0.005,
      idealDb: 29.14,
      worst25: 20.8,
      power25: 23.58,
      worst20: 17.4,
      power20: 19.5,
    },
    {
      turnedDeg: 5,
      lossDb: 0.033,
      idealDb: 21.16,
      worst25: 16.85,
      power25: 19.66,
      worst20: 14.54,
      power20: 17.53,
    },
    {
      turnedDeg: 7,
      lossDb: 0.065,
      idealDb: 18.22,
      worst25: 14.94,
      power25: 17.39,
      worst20: 13.04,
      power20: 16.01,
    },
    {
      turnedDeg: 15,
      lossDb: 0.301,
      idealDb: 11.44,
      worst25: 9.78,
      power25: 11.25,
      worst20: 8.68,
      power20: 10.87,
    },
  ])("by $turnedDeg° loses $lossDb dB and keeps the other polarisation $idealDb dB down", (row) => {
    const ideal = turnedFeedShares({ turnedDeg: row.turnedDeg, crossPolarDb: PERFECT });
    expect(-ratioToDb(ideal.wanted)).toBeCloseTo(row.lossDb, 3);
    expect(crossPolarCiDb(ideal)).toBeCloseTo(row.idealDb, 2);
    for (const [crossPolarDb, power, worst] of [
      [25, row.power25, row.worst25],
      [20, row.power20, row.worst20],
    ] as const) {
      const o = { turnedDeg: row.turnedDeg, crossPolarDb };
      expect(Math.abs(crossPolarCiDb(turnedFeedShares(o)) - power)).toBeLessThan(0.06);
      expect(Math.abs(worstCrossPolarCiDb(o) - worst)).toBeLessThan(0.06);
    }
  });

  test("that is turned by 90° takes the other polarisation for its own", () => {
    const { wanted, other } = turnedFeedShares({ turnedDeg: 90, crossPolarDb: 25 });
    expect(ratioToDb(other)).toBeCloseTo(0, 6);
    expect(ratioToDb(wanted)).toBeCloseTo(-25, 6);
  });
});

describe("circular waves", () => {
  test("give a linear feed 3.01 dB less", () => {
    expect(ratioToDb(HALF_SHARE)).toBeCloseTo(-3.01, 2);
  });

  // (r + 1)/(r − 1) with r = 10^(AR/20), by hand: 1 dB r = 1.1220 → 17.39 → 24.8 dB.
  test.each([
    { axialRatioDb: 1, db: 24.8 },
    { axialRatioDb: 2, db: 18.8 },
    { axialRatioDb: 3, db: 15.3 },
  ])("an axial ratio of $axialRatioDb dB keeps left and right $db dB apart", ({ axialRatioDb, db }) => {
    expect(axialRatioCrossPolarDb(axialRatioDb)).toBeCloseTo(db, 1);
  });
});

// Official validation rows of ITU-R for P.618-13 §4.1: 14.25 GHz, elevation 31.07699124°, tilt 0.
describe("rain", () => {
  const site = { frequencyMHz: 14_250, elevationDeg: 31.07699124, tiltDeg: 0 };
  test.each([
    { timePercent: 1, attenuationDb: 0.49531707, db: 49.47769944 },
    { timePercent: 0.01, attenuationDb: 6.79807227, db: 32.88758591 },
  ])("that is met $timePercent % of the time leaves $db dB", ({ db, ...rain }) => {
    expect(rainCrossPolarDb({ ...site, ...rain })).toBeCloseTo(db, 6);
  });

  test("that is absent leaves the polarisations as they are", () => {
    expect(rainCrossPolarDb({ ...site, timePercent: 1, attenuationDb: 0 })).toBe(Number.POSITIVE_INFINITY);
  });

  // 11.7 GHz, elevation 25.37°, attenuation 5.02 dB at 0.01 %: by a separate implementation that meets the rows above.
  test.each([
    { tiltDeg: 0, db: 33.1 },
    { tiltDeg: 20.7, db: 22.1 },
    { tiltDeg: 45, db: 18.9 },
  ])("mixes a wave that is tilted by $tiltDeg° more: $db dB", ({ tiltDeg, db }) => {
    const rain = { frequencyMHz: 11_700, elevationDeg: 25.37, attenuationDb: 5.02, timePercent: 0.01 };
    expect(Math.abs(rainCrossPolarDb({ ...rain, tiltDeg }) - db)).toBeLessThan(0.1);
  });
});
