/** A usual dish with its converter, from the satellite to the cable. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { DISH_OPTIONS } from "../../src/parts/dishOptions.ts";
import { dishAim } from "../../src/parts/linkBudget.ts";
import { cnDb } from "../../src/signal/readout.ts";
import { draw } from "../draw.ts";

/**
 * Assumptions, all from memory as typical: EIRP 51 dBW, dish 0.6 m of efficiency 0.65, clear sky 0.3 dB,
 * pointing 0.5 dB, antenna 35 K, converter 0.7 dB and 55 dB, transponder of 27.5 MBd at 12.5 GHz; a site at
 * 51.5° N 0.1° W and a satellite at 28.2° E (39 036 km by the textbook's sphere).
 */
const DISH = {
  eirpDbw: 51,
  diameterM: 0.6,
  efficiency: 0.65,
  clearSkyLossDb: 0.3,
  pointingLossDb: 0.5,
  antennaKelvin: 35,
  siteLatitudeDeg: 51.507,
  siteLongitudeDeg: -0.128,
  siteHeightM: 0,
  orbitalPositionDegE: 28.2,
  transponders: [{ frequencyMHz: 12_500, polarisation: "H" as const, symbolRateMsps: 27.5 }],
};

function behindTheConverter(options: Partial<typeof DISH> = {}) {
  const design = draw(
    {
      dish: ["dish", { ...DISH, ...options }],
      lnb: ["lnb-universal", { gainDb: 55, noiseFigureDb: 0.7 }],
      rx: ["receiver-sat", { polarisation: "H", half: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out > rx.sat",
  );
  const band = evaluate(design)
    .record("lnb")
    ?.outputs.out?.bands.find((b) => b.selected);
  const levelDbuv = band?.level[0];
  if (!band || levelDbuv === undefined) throw new Error("nothing behind the converter");
  return { levelDbuv, cnDb: cnDb(band, 0) };
}

/**
 * The budget by hand:
 *   free space 92.45 + 20·log10(39 036) + 20·log10(12.5) = 206.22 dB (ITU-R P.525)
 *   dish       10·log10(0.65·(π·0.6/0.023983)²) = 36.04 dBi
 *   at the feed 51 − 206.22 + 36.04 − 0.3 − 0.5 = −119.98 dBW = −89.98 dBm
 *   noise      35 + 290·(10^0.07 − 1) = 85.7 K; −228.60 + 19.33 + 10·log10(27.5e6) 74.39 = −134.88 dBW
 *   C/N        −119.98 + 134.88 = 14.90 dB
 *   output     −89.98 + 55 + 108.75 = 73.77 dBµV
 */
describe("a 0.6 m dish with a universal converter", () => {
  const typical = behindTheConverter();

  test("has C/N 14.9 dB, within 0.3 dB", () => {
    expect(Math.abs(typical.cnDb - 14.9)).toBeLessThan(0.3);
  });

  test("puts 73.8 dBµV per transponder onto the cable, within 0.5 dB", () => {
    expect(Math.abs(typical.levelDbuv - 73.8)).toBeLessThan(0.5);
  });

  test("is 39 036 km from the satellite, within 0.1 % (sphere, textbook formula)", () => {
    const { rangeKm } = dishAim(DISH_OPTIONS.parse(DISH));
    expect(Math.abs(rangeKm / 39_036 - 1)).toBeLessThan(0.001);
  });

  // 20·log10(1.2/0.6) = 6.02 dB: area counts, for level and for C/N alike.
  test("with twice the diameter gains 6.02 dB of level and of C/N", () => {
    const twice = behindTheConverter({ diameterM: 1.2 });
    expect(twice.levelDbuv - typical.levelDbuv).toBeCloseTo(6.02, 2);
    expect(twice.cnDb - typical.cnDb).toBeCloseTo(6.02, 2);
  });
});
