/** LNBs and dishes for C band and Ka band, from the satellite to the cable. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { bandFactsOf } from "../../src/findings/bandFacts.ts";
import { kelvinToNoiseFigureDb } from "../../src/rf/noise.ts";
import { cnDb } from "../../src/signal/readout.ts";
import { oscillatorOf } from "../../src/signal/treat.ts";
import { draw, type Sketch } from "../draw.ts";

const WIRES = "dish.sky > lnb.sky, lnb.out > rx.sat";

function behind(dish: Sketch[string], lnb: Sketch[string], rx: Sketch[string] = ["receiver-sat"]) {
  const design = draw({ dish, lnb, rx }, WIRES);
  return (evaluate(design).record("lnb")?.outputs.out?.bands ?? []).filter((b) => !b.isFloor);
}

describe("an LNB for C band", () => {
  const dish: Sketch[string] = [
    "dish-c-band",
    {
      transponders: [
        { frequencyMHz: 3_720, polarisation: "V" },
        { frequencyMHz: 4_180, polarisation: "V" },
        { frequencyMHz: 3_740, polarisation: "H" },
      ],
    },
  ];

  // Oscillator 5150 MHz above the band (LNB tables of receivers, from memory): 5150 − 3720 = 1430, 5150 − 4180 = 970 MHz.
  test("puts the highest frequency lowest", () => {
    const [vertical] = behind(dish, ["lnb-c-band"]).filter((b) => b.origin.polarisation === "V");
    expect([...(vertical?.grid.centre ?? [])]).toEqual([970, 1_430]);
    expect(vertical?.grid.plan[vertical.grid.index[0] ?? 0]?.airMHz).toBe(4_180);
    expect(vertical && oscillatorOf(vertical)).toBe(5_150);
  });

  // 18 V select horizontal; the tone of somebody who asks for "high" changes nothing (common practice, no source).
  test.each([
    { asks: { polarisation: "V", half: "low" }, gets: "V" },
    { asks: { polarisation: "V", half: "high" }, gets: "V" },
    { asks: { polarisation: "H", half: "low" }, gets: "H" },
    { asks: { polarisation: "H", half: "high" }, gets: "H" },
  ])("gives $gets to whoever asks for $asks.polarisation $asks.half", ({ asks, gets }) => {
    const selected = behind(dish, ["lnb-c-band"], ["receiver-sat", asks]).filter((b) => b.selected);
    expect(selected.map((b) => b.origin.polarisation)).toEqual([gets]);
  });

  test("is named by its polarisation alone: the band has no halves", () => {
    const [band] = behind(dish, ["lnb-c-band"]);
    expect(band && bandFactsOf(band)).not.toHaveProperty("half");
  });

  // A type for 3.7 to 4.2 GHz leaves 3.5 GHz out; one with its oscillator in the middle takes what lies above that alone.
  test("takes its own range only", () => {
    const wide: Sketch[string] = [
      "dish-c-band",
      { transponders: [3_500, 3_900].map((frequencyMHz) => ({ frequencyMHz, polarisation: "V" })) },
    ];
    const taken = (o: Record<string, unknown>) => [
      ...(behind(wide, ["lnb-c-band", o])[0]?.grid.centre ?? []),
    ];
    expect(taken({})).toEqual([1_250, 1_650]);
    expect(taken({ fromMHz: 3_700 })).toEqual([1_250]);
  });

  // 10·log10(1 + T/290): 20 K are 0.29 dB, 30 K are 0.43 dB (definition of the noise figure).
  test("has the noise of the temperature on its sheet", () => {
    expect(kelvinToNoiseFigureDb(20)).toBeCloseTo(0.29, 2);
    const cn = (noiseKelvin: number) => {
      const [band] = behind([...dish], ["lnb-c-band", { noiseKelvin }]);
      return band ? cnDb(band, 0) : Number.NaN;
    };
    // Antenna 35 K: 10·log10((35 + 65)/(35 + 15)) = 3.01 dB.
    expect(cn(15) - cn(65)).toBeCloseTo(3.01, 2);
  });
});

describe("a published budget of C band", () => {
  /**
   * Pratt, Bostian and Allnutt, Satellite Communications, 2nd ed., Table 4.4, C-band GEO link in clear air (from memory):
   * 20 W = 13.0 dBW, back-off −2.0, antenna 20.0 dB, edge of the beam −3.0, so EIRP 28.0 dBW; path −196.5, earth station
   * 49.7 dB, air −0.2, other losses −0.5 dB: −119.5 dBW. Noise of 75 K in 27 MHz: −135.5 dBW. C/N 16.0 dB.
   * Here with the dish of 3.05 m and 39.6 dBi at 4 GHz (Couch, Ex. 8-5: efficiency 0.557): 16.0 − (49.7 − 39.6) = 5.9 dB.
   * From 66° N beneath the satellite's meridian it is 39 997 km: 92.45 + 92.04 + 12.04 = 196.53 dB. An LNB of 40 K and 35 K of
   * the dish make 75 K.
   */
  test("has C/N 5.9 dB behind the LNB, within 0.1 dB", () => {
    const [band] = behind(
      [
        "dish-c-band",
        {
          eirpDbw: 28,
          diameterM: 3.05,
          efficiency: 0.557,
          siteLatitudeDeg: 66,
          siteLongitudeDeg: 20,
          siteHeightM: 0,
          orbitalPositionDegE: 20,
          clearSkyLossDb: 0.2,
          pointingLossDb: 0.5,
          antennaKelvin: 35,
          neighbours: [],
          transponders: [{ frequencyMHz: 4_000, polarisation: "V", symbolRateMsps: 27 }],
        },
      ],
      // A feed without cross-polar loss of its own: the book counts none.
      ["lnb-c-band", { noiseKelvin: 40, crossPolarDb: 60 }],
    );
    expect(band && Math.abs(cnDb(band, 0) - 5.9)).toBeLessThan(0.1);
  });
});

describe("an LNB for Ka band", () => {
  const dish: Sketch[string] = [
    "dish-ka-band",
    {
      transponders: [
        { frequencyMHz: 19_720, polarisation: "R" },
        { frequencyMHz: 20_100, polarisation: "R" },
      ],
    },
  ];

  // 19 720 − 18 250 = 1470, 20 100 − 18 250 = 1850; 21 200 − 20 100 = 1100, 21 200 − 19 720 = 1480 MHz.
  test.each([
    { loMHz: 18_250, centres: [1_470, 1_850] },
    { loMHz: 21_200, centres: [1_100, 1_480] },
  ])("with an oscillator of $loMHz MHz puts them at $centres MHz", ({ loMHz, centres }) => {
    const [right] = behind(dish, ["lnb-ka-band", { loMHz }]);
    expect([...(right?.grid.centre ?? [])]).toEqual(centres);
    expect(right?.isInverted ?? false).toBe(loMHz === 21_200);
  });
});
