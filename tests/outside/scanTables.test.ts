import { describe, expect, test } from "vitest";
import { transponder } from "../../src/parts/planSatellite.ts";
import { UNIVERSAL_HIGH_LO_MHZ, UNIVERSAL_LOW_LO_MHZ } from "../../src/parts/quadrants.ts";
import { isModeKey } from "../../src/rf/thresholds.ts";
import type { Polarisation } from "../../src/signal/carrier.ts";
import { makeGrid, pickFromGrid } from "../../src/signal/grid.ts";
import { AT_28_2_EAST, hasScanTable, parseScanTable, readDistinct, readScanTable } from "./scanTables.ts";

test("an entry is read with comments, order and spacing as they come", () => {
  const text = [
    "# a comment with KEY = value",
    "[CHANNEL]",
    "\tDELIVERY_SYSTEM = DVBS2 # the newer one",
    "\tPOLARIZATION=VERTICAL",
    "\tFREQUENCY = 10714250",
    "\tSYMBOL_RATE = 22000000",
    "\tMODULATION = PSK/8",
    "\tINNER_FEC = 3/4",
  ].join("\n");
  expect(parseScanTable(text)).toEqual([
    {
      frequencyMHz: 10_714.25,
      polarisation: "V",
      symbolRateMsps: 22,
      mode: "dvbs2-8psk-3/4",
      rollOff: "0.25",
    },
  ]);
});

const there = hasScanTable(AT_28_2_EAST, "quadrants and IF ranges of a real satellite");

// All numbers: counted in Debian's dtv-scan-tables 0+git20190925, file dvb-s/Astra-28.2E, with standard text tools.
describe.skipIf(!there)("the transponder list of 28.2° East", () => {
  const distinct = there ? readDistinct(AT_28_2_EAST) : [];
  const gridOf = (polarisation: Polarisation) =>
    makeGrid(distinct.filter((entry) => entry.polarisation === polarisation).map(transponder));

  test("has 85 entries, 83 of them distinct by frequency and polarisation", () => {
    expect(readScanTable(AT_28_2_EAST)).toHaveLength(85);
    expect(distinct).toHaveLength(83);
  });

  // Universal converter, EN 61319-1: 10.70–11.70 GHz less 9.75 GHz, 11.70–12.75 GHz less 10.60 GHz.
  const LOW = { fromMHz: 10_700, toMHz: 11_700, loMHz: UNIVERSAL_LOW_LO_MHZ };
  const HIGH = { fromMHz: 11_700, toMHz: 12_750, loMHz: UNIVERSAL_HIGH_LO_MHZ };
  test.each([
    { quadrant: "V low", polarisation: "V", take: LOW, count: 24, lowestMHz: 979, highestMHz: 1935.5 },
    { quadrant: "H low", polarisation: "H", take: LOW, count: 26, lowestMHz: 964.25, highestMHz: 1921.75 },
    { quadrant: "V high", polarisation: "V", take: HIGH, count: 16, lowestMHz: 1178, highestMHz: 1880 },
    { quadrant: "H high", polarisation: "H", take: HIGH, count: 17, lowestMHz: 1119.5, highestMHz: 1860 },
  ] as const)("$quadrant: a universal converter brings $count to $lowestMHz–$highestMHz MHz", (row) => {
    const { centre } = pickFromGrid(gridOf(row.polarisation), row.take).grid;
    expect(centre).toHaveLength(row.count);
    expect(centre[0]).toBeCloseTo(row.lowestMHz, 6);
    expect(centre.at(-1)).toBeCloseTo(row.highestMHz, 6);
  });

  // Wideband converter with one local oscillator at 10.40 GHz (from memory).
  test.each([
    { polarisation: "H", count: 43, lowestMHz: 314.25, highestMHz: 2060 },
    { polarisation: "V", count: 40, lowestMHz: 329, highestMHz: 2080 },
  ] as const)("a wideband converter brings $count $polarisation to $lowestMHz–$highestMHz MHz", (row) => {
    const whole = { fromMHz: 10_700, toMHz: 12_750, loMHz: 10_400 };
    const { centre } = pickFromGrid(gridOf(row.polarisation), whole).grid;
    expect(centre).toHaveLength(row.count);
    expect(centre[0]).toBeCloseTo(row.lowestMHz, 6);
    expect(centre.at(-1)).toBeCloseTo(row.highestMHz, 6);
  });

  test("uses symbol rates of 27.5, 22, 29.5 and 23 MS/s, 30, 29, 15 and 11 times", () => {
    const rates = readScanTable(AT_28_2_EAST).map((entry) => entry.symbolRateMsps);
    const times = (rate: number): number => rates.filter((one) => one === rate).length;
    expect([27.5, 22, 29.5, 23].map(times)).toEqual([30, 29, 15, 11]);
  });

  test("names only modes whose required C/N is known", () => {
    const unknown = readScanTable(AT_28_2_EAST).filter((entry) => !isModeKey(entry.mode));
    expect(unknown).toEqual([]);
  });
});
