/** Whole satellites of the public transponder lists through drawn designs: linear, circular and both. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { DISH_OPTIONS } from "../../src/parts/dishOptions.ts";
import { liveCount } from "../../src/signal/readout.ts";
import { draw } from "../draw.ts";
import { hasScanTable, type Listed, readDistinct, readScanTable, scanTableNames } from "./scanTables.ts";

const inKu = ({ frequencyMHz }: Listed) => frequencyMHz >= 10_700 && frequencyMHz <= 12_750;

/**
 * Distinct pairs of frequency and polarisation from 10.70 to 12.75 GHz, parted at 11.70 GHz; right-hand comes where V is asked
 * for, left-hand where H is. Counted in Debian's dtv-scan-tables 0+git20190925 with standard text tools.
 */
const POSITIONS = [
  { list: "Astra-28.2E", degE: 28.2, feedType: "linear", vl: 24, vh: 16, hl: 26, hh: 17 },
  { list: "Hotbird-13.0E", degE: 13, feedType: "linear", vl: 22, vh: 24, hl: 22, hh: 25 },
  // 8 right-hand and 10 left-hand ones beside the linear ones of the high band.
  { list: "Eutelsat-36B-35.9E", degE: 35.9, feedType: "linear", vl: 18, vh: 29, hl: 10, hh: 41 },
  { list: "Express-AMU1-36.1E", degE: 36.1, feedType: "circular", vl: 0, vh: 11, hl: 0, hh: 19 },
  { list: "SES-5-5.0E", degE: 5, feedType: "linear", vl: 4, vh: 9, hl: 4, hh: 13 },
  { list: "Express-AT1-56.0E", degE: 56, feedType: "circular", vl: 0, vh: 10, hl: 0, hh: 13 },
  { list: "Eutelsat-3B-3.1E", degE: 3.1, feedType: "linear", vl: 21, vh: 18, hl: 41, hh: 16 },
  { list: "NSS-12-57.0E", degE: 57, feedType: "linear", vl: 5, vh: 13, hl: 14, hh: 0 },
  { list: "SES-6-40.5W", degE: -40.5, feedType: "linear", vl: 6, vh: 16, hl: 6, hh: 8 },
  { list: "Nimiq-6-91.1W", degE: -91.1, feedType: "circular", vl: 0, vh: 16, hl: 0, hh: 16 },
] as const;

describe("a satellite of the lists, through dish and quattro LNB", () => {
  const here = POSITIONS.filter(({ list }) => hasScanTable(list, `the satellite of ${list}`));
  test.each(here)("$list: each quadrant has its transponders", ({ list, degE, feedType, ...quadrants }) => {
    const transponders = readDistinct(list).filter(inKu);
    const dish = { transponders, orbitalPositionDegE: degE, siteLongitudeDeg: degE, diameterM: 1 };
    const design = draw(
      {
        dish: ["dish", dish],
        lnb: ["lnb-quattro", { feedType }],
        switch: ["multiswitch"],
      },
      "dish.sky > lnb.sky, lnb.vl > switch.vl, lnb.vh > switch.vh, lnb.hl > switch.hl, lnb.hh > switch.hh",
    );
    const outputs = evaluate(design).record("lnb")?.outputs ?? {};
    for (const [port, count] of Object.entries(quadrants)) {
      const bands = outputs[port]?.bands ?? [];
      expect(
        bands.reduce((sum, band) => sum + liveCount(band), 0),
        port,
      ).toBe(count);
    }
  });
});

describe("all lists", () => {
  const names = scanTableNames();

  // 6,287 entries in 10.70 to 12.75 GHz, 783 of them circular; one, of 201.5 MBd, is a misprint: no transponder is so wide.
  test.skipIf(names.length === 0)("every entry of the band but one misprint can be entered", () => {
    const all = names.flatMap(readScanTable).filter(inKu);
    expect(all).toHaveLength(6287);
    expect(all.filter(({ polarisation }) => polarisation === "R" || polarisation === "L")).toHaveLength(783);
    const refused = all.filter((entry) => !DISH_OPTIONS.safeParse({ transponders: [entry] }).success);
    expect(refused.map(({ symbolRateMsps }) => symbolRateMsps)).toEqual([201.5]);
  });

  // Counted with awk: 9,498 entries, of which the known limits name those beside the band: 3,129 of C band (3.4 to 4.8 GHz), 70
  // above 12.75 GHz; 10 are of a satellite at 2.6 GHz, 2 are misprints of 4 and 12 MHz.
  test.skipIf(names.length === 0)("what is beside the band is nearly all C band, or above 12.75 GHz", () => {
    const all = names.flatMap(readScanTable);
    expect(all).toHaveLength(9498);
    expect(all.filter(({ frequencyMHz }) => frequencyMHz >= 3400 && frequencyMHz <= 4800)).toHaveLength(3129);
    expect(all.filter(({ frequencyMHz }) => frequencyMHz > 12_750)).toHaveLength(70);
  });

  // The longest list, at 10° East, has 213 entries in the band.
  test.skipIf(names.length === 0)("the longest fits into one dish", () => {
    const longest = Math.max(...names.map((name) => readScanTable(name).filter(inKu).length));
    expect(longest).toBe(213);
    const transponders = readScanTable("Eutelsat-10A-10.0E").filter(inKu);
    expect(DISH_OPTIONS.safeParse({ transponders }).success).toBe(true);
  });
});
