/** DI: how a dish has to stand, its link budget, its rain; beside what textbooks and ITU-R texts say. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../../../src/evaluate/evaluation.ts";
import { dishOptionsOf } from "../../../../src/parts/dishBands.ts";
import { dishAim } from "../../../../src/parts/linkBudget.ts";
import {
  converted,
  rainOf,
  weakestBudget,
} from "../../../../src/ui/features/inspector/sections/dishFigures.ts";
import {
  durationWords,
  outageWords,
  tiltWords,
} from "../../../../src/ui/features/inspector/sections/dishWords.ts";
import { draw } from "../../../draw.ts";

/** The UK reference case of textbook link budgets: 0.6 m, efficiency 0.65, 51 dBW, 12.5 GHz, 27.5 MBd, NF 0.7 dB. */
const SITE = {
  diameterM: 0.6,
  efficiency: 0.65,
  eirpDbw: 51,
  orbitalPositionDegE: 28.2,
  siteLatitudeDeg: 51.507,
  siteLongitudeDeg: -0.128,
  siteHeightM: 31,
  rainHeightKm: 2.4527,
  rainRateMmPerH: 26.48,
  clearSkyLossDb: 0.3,
  pointingLossDb: 0.5,
  antennaKelvin: 35,
  transponders: [
    { frequencyMHz: 12_500, polarisation: "H", symbolRateMsps: 27.5 },
    { frequencyMHz: 12_500, polarisation: "V", symbolRateMsps: 27.5, eirpOffsetDb: 4 },
  ],
};

function dishAt(options: Record<string, unknown> = {}, wires = "dish.sky > lnb.sky, lnb.out > rx.sat") {
  const evaluation = evaluate(
    draw(
      {
        dish: ["dish", { ...SITE, ...options }],
        lnb: ["lnb-universal", { noiseFigureDb: 0.7, gainDb: 55 }],
        rx: ["receiver-sat"],
      },
      wires,
    ),
  );
  return figures(evaluation);
}

function figures(evaluation: Evaluation) {
  const record = evaluation.record("dish");
  const o = record && dishOptionsOf(record);
  const budget = record && o && weakestBudget(record, o);
  if (!record || !o || !budget) throw new Error("a dish that sees its satellite has a budget");
  return {
    budget,
    aim: dishAim(o),
    behind: converted(evaluation, record, budget),
    rain: rainOf(evaluation, record, o, budget),
  };
}

describe("the link budget of a dish", () => {
  test("DI1: a satellite to the south-east: 206.2 dB of path, 36.0 dBi of dish, 73.8 dBµV and 14.9 dB behind the LNB", () => {
    // Free-space law (4πd/λ)², η(πD/λ)², kTB; worked by hand with the assumptions named at SITE.
    const { budget, behind } = dishAt();
    expect(budget.freeSpaceLossDb).toBeCloseTo(206.22, 1);
    expect(budget.gainDbi).toBeCloseTo(36.04, 1);
    expect(budget.otherLossDb).toBeCloseTo(0.8, 9);
    expect(behind?.levelDbuv).toBeCloseTo(73.8, 0);
    expect(behind?.cnDb).toBeCloseTo(14.9, 1);
  });

  test("DI2: speaks of the transponder with least to spare, with its own EIRP", () => {
    const { budget } = dishAt();
    expect(budget.polarisation).toBe("H");
    expect(budget.eirpDbw).toBeCloseTo(51, 6);
    const weak = dishAt({
      transponders: [
        { frequencyMHz: 11_000, polarisation: "H" },
        { frequencyMHz: 11_100, polarisation: "V", eirpOffsetDb: -9 },
      ],
    });
    expect(weak.budget.carrier.airMHz).toBe(11_100);
    expect(weak.budget.eirpDbw).toBeCloseTo(42, 6);
  });

  test("DI3: the level at the feed is the sum of the lines above it", () => {
    const { budget } = dishAt({ rainLossDb: 2 });
    // dBW → dBm is 30 dB, dBm → dBµV in 75 Ω is 108.75 dB.
    const sum = budget.eirpDbw - budget.freeSpaceLossDb + budget.gainDbi - budget.otherLossDb + 30 + 108.75;
    expect(budget.feedDbuv).toBeCloseTo(sum, 2);
  });

  test("DI4: without a converter nothing is said of what lies behind it", () => {
    const { behind, rain } = dishAt({}, "");
    expect(behind).toBeNull();
    expect(rain).toBeNull();
  });
});

describe("the rain that a dish stands", () => {
  // ITU-R P.618-13 with P.838-3 for 51.5°N 0.13°W, 28.2°E, 12.5 GHz, worked by a program validated with the ITU-R examples.
  test.each([
    { polarisation: "H", percent: 1, dB: 0.41 },
    { polarisation: "H", percent: 0.1, dB: 1.84 },
    { polarisation: "H", percent: 0.01, dB: 5.8 },
    { polarisation: "V", percent: 0.01, dB: 5.33 },
    { polarisation: "V", percent: 0.3, dB: 0.85 },
  ])("DI5: $percent % of the year, $polarisation: $dB dB", ({ polarisation, percent, dB }) => {
    const { rain } = dishAt({ transponders: [{ frequencyMHz: 12_500, polarisation }] });
    expect(rain?.rows.find((r) => r.timePercent === percent)?.attenuationDb).toBeCloseTo(dB, 1);
  });

  test("DI6: antenna of 35 K and a converter of 0.7 dB make 86 K (290·(10^0.07 − 1) = 50.7 K)", () => {
    const { rain, behind, budget } = dishAt();
    expect(rain?.systemKelvin).toBeCloseTo(85.7, 1);
    // Under a clear sky the margin is what lies behind the converter above the need.
    expect(rain?.marginDb).toBeCloseTo((behind?.cnDb ?? 0) - budget.requiredDb, 1);
  });

  test("DI7: rain set on the dish itself does not lower the margin that is reckoned from a clear sky", () => {
    const margin = dishAt().rain?.marginDb ?? Number.NaN;
    expect(dishAt({ rainLossDb: 3 }).rain?.marginDb).toBeCloseTo(margin, 6);
  });

  test("DI8: a smaller dish fails for more of the year", () => {
    const outage = (diameterM: number) => dishAt({ diameterM }).rain?.outage ?? 0;
    expect(outage(0.35)).toBeGreaterThan(outage(0.8));
  });

  test.each([
    // 525 949 minutes in a mean year.
    { percent: 0.001, words: "5 minutes" },
    { percent: 0.01, words: "53 minutes" },
    { percent: 0.1, words: "8.8 hours" },
    { percent: 1, words: "3.7 days" },
  ])("DI9: $percent % of a year is $words", ({ percent, words }) => {
    expect(durationWords(percent)).toBe(words);
  });

  test("DI10: an outage lies between two shares of the year", () => {
    expect(outageWords(0.01)).toMatch(/between 0\.01 % \(53 minutes\) and 0\.03 % /);
    expect(outageWords(1)).toMatch(/more than 1 %/);
    expect(outageWords(null)).toMatch(/less than 0\.001 %/);
  });
});

/**
 * Turn of horizontal polarisation out of the local horizon, from vectors alone: horizontal waves swing along the
 * equator at the satellite. Positive: the right-hand end points up, for somebody who looks at the satellite.
 */
function tiltByVectors(latitudeDeg: number, deltaDeg: number): number {
  const rad = Math.PI / 180;
  const [lat, delta] = [latitudeDeg * rad, deltaDeg * rad];
  const up = [Math.cos(lat), 0, Math.sin(lat)];
  const satellite = [6.6107 * Math.cos(delta), 6.6107 * Math.sin(delta), 0];
  const look = unit(satellite.map((s, i) => s - (up[i] ?? 0)));
  const right = unit(cross(look, up));
  const above = cross(right, look);
  const alongEquator = [-Math.sin(delta), Math.cos(delta), 0];
  const rightwards = dot(alongEquator, right);
  const upwards = dot(alongEquator, above);
  return (Math.atan(upwards / rightwards) / Math.PI) * 180;
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);
const unit = (a: readonly number[]) => a.map((x) => x / Math.sqrt(dot(a, a)));
function cross(a: readonly number[], b: readonly number[]): number[] {
  const [a0 = 0, a1 = 0, a2 = 0] = a;
  const [b0 = 0, b1 = 0, b2 = 0] = b;
  return [a1 * b2 - a2 * b1, a2 * b0 - a0 * b2, a0 * b1 - a1 * b0];
}

describe("the turn of the converter", () => {
  test.each([
    { name: "satellite to the south-east", latitude: 52, site: 0, satellite: 29 },
    { name: "satellite a little to the west", latitude: 52, site: 13, satellite: 6 },
    { name: "southern hemisphere, satellite to the east", latitude: -34, site: 18, satellite: 35 },
  ])("DI11: $name: size and direction as the vectors have it", ({ latitude, site, satellite }) => {
    const { aim } = dishAt({
      siteLatitudeDeg: latitude,
      siteLongitudeDeg: site,
      orbitalPositionDegE: satellite,
    });
    const tilt = tiltByVectors(latitude, satellite - site);
    // The usual formula leaves out that the satellite is not infinitely far: within half a degree.
    expect(Math.abs(aim.skewDeg - tilt)).toBeLessThan(0.5);
    // The right-hand end up is a turn against the clock for whoever looks at the satellite.
    expect(tiltWords(aim.skewDeg)).toContain(tilt > 0 ? " anticlockwise" : " clockwise");
  });

  test("DI12: a satellite due south needs none", () => {
    expect(tiltWords(dishAt({ siteLongitudeDeg: 28.2 }).aim.skewDeg)).toBe("none");
  });

  test("DI13: the mount of an offset dish stands flatter than the satellite, by the offset", () => {
    // 51.5°N 0.13°W, 28.2°E: elevation 25.39° (satellite.js, WGS 84).
    const { aim } = dishAt({ offsetAngleDeg: 22 });
    expect(aim.elevationDeg).toBeCloseTo(25.39, 1);
    expect(aim.mountElevationDeg).toBeCloseTo(3.39, 1);
  });
});
