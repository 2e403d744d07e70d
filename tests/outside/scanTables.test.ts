import { describe, expect, test } from "vitest";
import { isModeKey } from "../../src/rf/thresholds.ts";
import type { Polarisation } from "../../src/signal/carrier.ts";
import {
  AT_28_2_EAST,
  hasScanTable,
  type Listed,
  parseScanTable,
  readDistinct,
  readScanTable,
} from "./scanTables.ts";

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
  const half = (polarisation: Polarisation, band: "low" | "high") => (entry: Listed) =>
    entry.polarisation === polarisation &&
    (band === "low" ? entry.frequencyMHz < 11_700 : entry.frequencyMHz >= 11_700);

  test("has 85 entries, 83 of them distinct by frequency and polarisation", () => {
    expect(readScanTable(AT_28_2_EAST)).toHaveLength(85);
    expect(readDistinct(AT_28_2_EAST)).toHaveLength(83);
  });

  // Universal IF: RF − 9750 below 11 700 MHz, RF − 10 600 above (universal converter, EN 61319-1).
  test.each([
    { quadrant: "V low", in: half("V", "low"), count: 24, fromMHz: 979, toMHz: 1935.5, loMHz: 9750 },
    { quadrant: "H low", in: half("H", "low"), count: 26, fromMHz: 964.25, toMHz: 1921.75, loMHz: 9750 },
    { quadrant: "V high", in: half("V", "high"), count: 16, fromMHz: 1178, toMHz: 1880, loMHz: 10_600 },
    { quadrant: "H high", in: half("H", "high"), count: 17, fromMHz: 1119.5, toMHz: 1860, loMHz: 10_600 },
  ])("$quadrant: $count transponders, $fromMHz to $toMHz MHz of IF", (row) => {
    const entries = readDistinct(AT_28_2_EAST).filter(row.in);
    const ifMHz = entries.map((entry) => entry.frequencyMHz - row.loMHz);
    expect(entries).toHaveLength(row.count);
    expect(Math.min(...ifMHz)).toBeCloseTo(row.fromMHz, 6);
    expect(Math.max(...ifMHz)).toBeCloseTo(row.toMHz, 6);
  });

  // Wideband converter with one local oscillator at 10.40 GHz (from memory).
  test.each([
    { polarisation: "H", fromMHz: 314.25, toMHz: 2060 },
    { polarisation: "V", fromMHz: 329, toMHz: 2080 },
  ])(
    "a wideband converter brings $polarisation to $fromMHz to $toMHz MHz",
    ({ polarisation, fromMHz, toMHz }) => {
      const ifMHz = readDistinct(AT_28_2_EAST)
        .filter((entry) => entry.polarisation === polarisation)
        .map((entry) => entry.frequencyMHz - 10_400);
      expect(Math.min(...ifMHz)).toBeCloseTo(fromMHz, 6);
      expect(Math.max(...ifMHz)).toBeCloseTo(toMHz, 6);
    },
  );

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
