/** A usual dish with its converter, from the satellite to the cable. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { DISH_OPTIONS } from "../../src/parts/dishOptions.ts";
import { dishAim } from "../../src/parts/linkBudget.ts";
import { cnDb, cniDb } from "../../src/signal/readout.ts";
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

/**
 * Fischer, Digital Video and Audio Broadcasting Technology, satellite link at 12.1 GHz: EIRP 52 dBW, 37 938 km, losses 0.3 + 0.5 +
 * 0.2 dB, dish of 37 dBi, noise of 293 K (24.7 dBK) with a figure of 1 dB added, symbol rate 27.5 MBd: C −117.7 dBW,
 * N −128.5 dBW, C/N 10.8 dB. His noise is 293 K · 10^0.1 = 368.9 K: with an LNB of 1 dB (75.1 K) the antenna has 290 K, the most that
 * can be set, 365.1 K in all: 0.05 dB less noise. Ideal isolation and an empty sky, as in the book.
 */
test("Fischer's downlink as a drawn design has C/N 10.8 dB", () => {
  const transponders = [{ frequencyMHz: 12_100, polarisation: "V" as const, symbolRateMsps: 27.5 }];
  // 10·log10(0.65·(π·D·12.1 GHz/c)²) = 37 dBi at D = 0.692 m. On the satellite's meridian 37 938 km are met at 45.2° of latitude:
  // cos γ = (42 164² + 6378² − 37 938²) / (2 · 42 164 · 6378) = 0.705.
  const design = draw(
    {
      dish: [
        "dish",
        {
          eirpDbw: 52,
          diameterM: 0.6922,
          efficiency: 0.65,
          clearSkyLossDb: 0.3,
          pointingLossDb: 0.7,
          antennaKelvin: 290,
          siteLatitudeDeg: 45.2,
          siteLongitudeDeg: 19.2,
          siteHeightM: 0,
          orbitalPositionDegE: 19.2,
          neighbours: [],
          transponders,
        },
      ],
      lnb: ["lnb-universal", { noiseFigureDb: 1, crossPolarDb: 60 }],
      rx: ["receiver-sat", { polarisation: "V", half: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out > rx.sat",
  );
  const band = evaluate(design)
    .record("lnb")
    ?.outputs.out?.bands.find((b) => b.selected);
  if (!band) throw new Error("nothing behind the converter");
  expect(Math.abs(cniDb(band, 0) - 10.8)).toBeLessThan(0.15);
});
