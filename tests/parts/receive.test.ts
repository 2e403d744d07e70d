import { describe, expect, test } from "vitest";
import { orbitalPosition } from "../../src/parts/dish.ts";
import { DISH_OPTIONS } from "../../src/parts/dishOptions.ts";
import { dishAim, feedKelvin, feedLevelDbuv } from "../../src/parts/linkBudget.ts";
import { RECEIVE } from "../../src/parts/receive.ts";
import { cnDb } from "../../src/signal/readout.ts";
import { kindNamed, liveNames, runPart } from "./workbench.ts";

const DISH = kindNamed(RECEIVE, "dish");
const UHF = kindNamed(RECEIVE, "aerial-uhf");
const PICK_UP = kindNamed(RECEIVE, "pick-up");

describe("a dish", () => {
  test("receives −117.7 dBW in a textbook's example", () => {
    // Fischer, Digital Video and Audio Broadcasting Technology: EIRP 52 dBW, 37 938 km, 12.1 GHz,
    // losses 0.3 + 0.5 + 0.2 dB, dish gain 37 dB; the diameter is the one that has this gain.
    const wavelengthM = 299.792458 / 12_100;
    const diameterM = (wavelengthM / Math.PI) * Math.sqrt(10 ** 3.7 / 0.65);
    const level = feedLevelDbuv(
      {
        eirpDbw: 52,
        diameterM,
        efficiency: 0.65,
        clearSkyLossDb: 0.3,
        pointingLossDb: 0.5 + 0.2,
        rainLossDb: 0,
      },
      { frequencyMHz: 12_100, rangeKm: 37_938 },
    );
    // dBW to dBµV into 75 Ω: + 30 + 108.75.
    expect(Math.abs(level - (-117.7 + 30 + 108.75))).toBeLessThan(0.05);
  });

  test("under rain of 3.4 dB sees at least the 147 K that a textbook gives for a medium at 270 K", () => {
    // Pratt, Satellite Communications: 270 K · (1 − 10^−0.34) = 147 K; rain at 275 K glows a little more.
    const kelvin = feedKelvin({ antennaKelvin: 0, rainLossDb: 3.4 });
    expect(kelvin).toBeGreaterThan(147);
    expect(kelvin).toBeLessThan(147 * (275 / 270) + 0.5);
    expect(feedKelvin({ antennaKelvin: 35, rainLossDb: 0 })).toBe(35);
  });

  test("looks at a satellite as the validation examples of the ITU say, and stands lower by its offset angle", () => {
    // ITU-R Study Group 3 validation examples: 51.5°N 0.14°W, 31.4 m, satellite at 1°E: 31.077°.
    const aim = dishAim(
      DISH_OPTIONS.parse({
        siteLatitudeDeg: 51.5,
        siteLongitudeDeg: -0.14,
        siteHeightM: 31.4,
        orbitalPositionDegE: 1,
        offsetAngleDeg: 25,
      }),
    );
    expect(Math.abs(aim.elevationDeg - 31.077)).toBeLessThan(0.001);
    expect(Math.abs(aim.mountElevationDeg - 6.077)).toBeLessThan(0.001);
  });

  test("emits one band for each polarisation, named after its orbital position", () => {
    const bands = runPart({ kind: DISH, options: { orbitalPositionDegE: -5 } }).bands("sky");
    expect(bands.map((b) => b.origin)).toEqual([
      { key: "part/V", service: "satellite", part: "part", satellite: "5.0°W", polarisation: "V" },
      { key: "part/H", service: "satellite", part: "part", satellite: "5.0°W", polarisation: "H" },
    ]);
    expect(bands.map((b) => b.grid.centre.length)).toEqual([40, 40]);
  });

  test("emits nothing from a satellite below the horizon", () => {
    // Half round the Earth: no line of sight, whatever the formula for the distance says.
    const bench = runPart({ kind: DISH, options: { orbitalPositionDegE: 170, siteLongitudeDeg: 0 } });
    expect(bench.bands("sky")).toEqual([]);
  });

  test("gives a transponder with an EIRP offset that much less level", () => {
    const row = { frequencyMHz: 11_000, symbolRateMsps: 22, polarisation: "V" };
    const level = (eirpOffsetDb: number) =>
      runPart({ kind: DISH, options: { transponders: [{ ...row, eirpOffsetDb }] } }).bands("sky")[0]
        ?.level[0] ?? Number.NaN;
    expect(level(-4) - level(0)).toBeCloseTo(-4, 9);
  });

  test("writes west with a W and never minus", () => {
    expect([orbitalPosition(20.5), orbitalPosition(-0.8), orbitalPosition(0)]).toEqual([
      "20.5°E",
      "0.8°W",
      "0.0°E",
    ]);
  });
});

describe("an aerial", () => {
  // U − E of a 10 dBd aerial: 20·log10 of the antenna factor's inverse, public antenna-factor formula
  // (AF = 20·log10 f − G − 31.5 into 75 Ω): −9.83 dB at 474 MHz, −13.10 dB at 690 MHz.
  test.each([
    { channel: 21, differenceDb: -9.83 },
    { channel: 48, differenceDb: -13.1 },
  ])("of 10 dBd turns field into level on channel $channel", ({ channel, differenceDb }) => {
    const [band] = runPart({
      kind: UHF,
      options: { levelFrom: "field", fieldDbuvPerM: 60, gainDbi: 12.15, channels: [{ channel }] },
    }).bands("out");
    expect(Math.abs((band?.level[0] ?? 0) - (60 + differenceDb))).toBeLessThan(0.05);
  });

  test("has the noise of a matched source: 3.59 dBµV in 7.61 MHz", () => {
    // k·290 K·7.61 MHz into 75 Ω; C/N of 62 dBµV is then 58.4 dB.
    const [band] = runPart({ kind: UHF, options: { levelDbuv: 62, channels: [{ channel: 30 }] } }).bands(
      "out",
    );
    expect(band && Math.abs(cnDb(band, 0) - (62 - 3.59))).toBeLessThan(0.01);
  });

  test.each([
    { key: "aerial-uhf", list: "channels", service: "tv" },
    { key: "aerial-dab", list: "blocks", service: "dab" },
    { key: "aerial-fm", list: "stations", service: "fm" },
  ])("of kind $key emits its list as one band, and nothing from an empty list", ({ key, list, service }) => {
    const kind = kindNamed(RECEIVE, key);
    const [band, ...more] = runPart({ kind }).bands("out");
    expect(more).toEqual([]);
    expect(band?.origin).toEqual({ key: "part", service, part: "part" });
    expect(runPart({ kind, options: { [list]: [] } }).bands("out")).toEqual([]);
  });

  test("gives each channel its own offset, whatever the order of the list", () => {
    const channels = [
      { channel: 40, levelOffsetDb: -10 },
      { channel: 22, levelOffsetDb: 3 },
    ];
    const [band] = runPart({ kind: UHF, options: { levelDbuv: 60, channels } }).bands("out");
    expect(Array.from(band?.grid.centre ?? [])).toEqual([482, 626]);
    expect(Array.from(band?.level ?? [])).toEqual([63, 50]);
  });
});

describe("unwanted pick-up", () => {
  const tv = runPart({ kind: UHF }).bands("out");

  test("adds its signals to what is on the wire and leaves that as it was", () => {
    const bands = runPart({ kind: PICK_UP, inputs: { in: tv } }).bands("out");
    expect(bands.map((b) => b.origin.service)).toEqual(["mobile", "mobile", "tv"]);
    expect(Array.from(bands[2]?.level ?? [])).toEqual(Array.from(tv[0]?.level ?? []));
  });

  test("disturbs a TV channel of the 800 MHz band that was given to mobile phones", () => {
    // Channel 61 is 790–798 MHz; band 20 downlink starts at 791 MHz (3GPP, from memory).
    const former = runPart({ kind: UHF, options: { channels: [{ channel: 61 }, { channel: 40 }] } });
    const bands = runPart({ kind: PICK_UP, inputs: { in: former.bands("out") } }).bands("out");
    const hit = bands.find((b) => b.origin.service === "tv");
    expect(Array.from(hit?.interference ?? []).map((x) => x > 0)).toEqual([false, true]);
  });

  test("with everything off is just a piece of wire, for supply and tone too", () => {
    const options = { mast700: false, mast800: false };
    const bands = runPart({ kind: PICK_UP, options, inputs: { in: tv } }).bands("out");
    expect(liveNames(bands)).toEqual(liveNames(tv));
    expect(PICK_UP.power(PICK_UP.options.parse(options)).paths).toEqual([
      { from: "out", to: "in", tone: true },
    ]);
    expect(PICK_UP.inline).toEqual({ in: "in", out: "out" });
  });
});
