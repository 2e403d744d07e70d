import { describe, expect, test } from "vitest";
import { LNBS } from "../../src/parts/convertLnb.ts";
import { RECEIVE } from "../../src/parts/receive.ts";
import { dbuvToDbm } from "../../src/rf/decibel.ts";
import { cnDb } from "../../src/signal/readout.ts";
import { kindNamed, liveNames, optionsOf, runPart, speaker } from "./workbench.ts";

const DISH = kindNamed(RECEIVE, "dish");
const UNIVERSAL = kindNamed(LNBS, "lnb-universal");
const QUATTRO = kindNamed(LNBS, "lnb-quattro");
const WIDEBAND = kindNamed(LNBS, "lnb-wideband");

type Row = { frequencyMHz: number; polarisation: "V" | "H"; symbolRateMsps?: number };

function sky(transponders: readonly Row[], dish: Record<string, unknown> = {}) {
  return runPart({ kind: DISH, options: { ...dish, transponders } }).bands("sky");
}

const DEFAULT_SKY = runPart({ kind: DISH }).bands("sky");
const SPEAKER = speaker({ polarisation: "V", half: "low" });

describe("conversion", () => {
  // IF = RF − LO, LO 9.75 and 10.6 GHz (EN 61319-1; public converter tables). Frequencies of real
  // transponders at 28.2°E from the Debian package dtv-scan-tables.
  test.each([
    { name: "lowest horizontal", rfMHz: 10_714.25, polarisation: "H", port: "hl", ifMHz: 964.25 },
    { name: "lowest vertical", rfMHz: 10_729, polarisation: "V", port: "vl", ifMHz: 979 },
    { name: "highest of the low band", rfMHz: 11_685.5, polarisation: "V", port: "vl", ifMHz: 1935.5 },
    { name: "lowest of the high band", rfMHz: 11_719.5, polarisation: "H", port: "hh", ifMHz: 1119.5 },
    { name: "vertical, high", rfMHz: 11_778, polarisation: "V", port: "vh", ifMHz: 1178 },
    { name: "near the top", rfMHz: 12_692, polarisation: "V", port: "vh", ifMHz: 2092 },
  ] as const)("a quattro LNB brings $name, $rfMHz MHz, to $ifMHz MHz on $port alone", (row) => {
    const bench = runPart({
      kind: QUATTRO,
      inputs: { sky: sky([{ frequencyMHz: row.rfMHz, polarisation: row.polarisation, symbolRateMsps: 22 }]) },
      speakers: { hl: SPEAKER },
    });
    const found = ["vl", "vh", "hl", "hh"].flatMap((port) =>
      bench.bands(port).flatMap((band) => Array.from(band.grid.centre, (mhz) => ({ port, mhz }))),
    );
    expect(found).toEqual([{ port: row.port, mhz: row.ifMHz }]);
  });

  // One oscillator at 10.4 GHz: range of 28.2°E from 314.25 to 2080 MHz (computed from dtv-scan-tables).
  test.each([
    { rfMHz: 10_714.25, polarisation: "H", port: "h", ifMHz: 314.25 },
    { rfMHz: 10_729, polarisation: "V", port: "v", ifMHz: 329 },
    { rfMHz: 12_480, polarisation: "V", port: "v", ifMHz: 2080 },
  ] as const)("a wideband LNB brings $rfMHz MHz to $ifMHz MHz on $port", (row) => {
    const bench = runPart({
      kind: WIDEBAND,
      inputs: { sky: sky([{ frequencyMHz: row.rfMHz, polarisation: row.polarisation, symbolRateMsps: 22 }]) },
      speakers: { v: SPEAKER },
    });
    const [band] = bench.bands(row.port);
    expect(Array.from(band?.grid.centre ?? [])).toEqual([row.ifMHz]);
    expect(band?.shifts).toEqual([10_400]);
    expect(bench.bands(row.port === "v" ? "h" : "v")).toEqual([]);
  });

  test("a wideband LNB loses nothing of the whole band, with its oscillator at 10.40 or 10.41 GHz", () => {
    // 10.70–12.75 GHz must come out at 300–2350 or 290–2340 MHz; usual ranges, from memory.
    for (const loMHz of [10_400, 10_410]) {
      const bench = runPart({
        kind: WIDEBAND,
        options: { loMHz },
        inputs: { sky: DEFAULT_SKY },
        speakers: { h: SPEAKER },
      });
      expect(liveNames([...bench.bands("v"), ...bench.bands("h")])).toHaveLength(80);
    }
  });
});

describe("a universal LNB", () => {
  // 13 V: vertical, 18 V: horizontal, 22 kHz: high band (public meter manual).
  test.each([
    { request: { polarisation: "V", half: "low" }, quadrant: "VL", lo: 9_750 },
    { request: { polarisation: "H", half: "low" }, quadrant: "HL", lo: 9_750 },
    { request: { polarisation: "V", half: "high" }, quadrant: "VH", lo: 10_600 },
    { request: { polarisation: "H", half: "high" }, quadrant: "HH", lo: 10_600 },
  ] as const)("offers four quadrants and gives $quadrant when asked for it", ({ request, quadrant, lo }) => {
    const bench = runPart({
      kind: UNIVERSAL,
      inputs: { sky: DEFAULT_SKY },
      speakers: { out: speaker(request) },
    });
    expect(bench.settings).toEqual({ out: quadrant });
    expect(bench.bands("out")).toHaveLength(4);
    const [band, ...more] = bench.selected("out");
    expect(more).toEqual([]);
    expect(band?.shifts).toEqual([lo]);
    // A quarter of the transponders for each request (common practice, no source).
    expect(liveNames(bench.selected("out"))).toHaveLength(80 / 4);
  });

  test("serves two receivers on two outputs, each as it asks", () => {
    const bench = runPart({
      kind: UNIVERSAL,
      options: { outputs: "2" },
      inputs: { sky: DEFAULT_SKY },
      speakers: {
        out1: speaker({ polarisation: "V", half: "low" }),
        out2: speaker({ polarisation: "H", half: "high" }),
      },
    });
    expect(bench.settings).toEqual({ out1: "VL", out2: "HH" });
  });

  test.each(LNBS.map((kind) => ({ name: kind.name, kind })))(
    "$name: without supply nothing is converted",
    ({ kind }) => {
      const bench = runPart({ kind, inputs: { sky: DEFAULT_SKY } });
      expect(bench.powered).toBe(false);
      const outputs = kind.ports(optionsOf(kind)).filter((p) => p.side === "out");
      expect(outputs.flatMap((p) => [...bench.bands(p.id)])).toEqual([]);
    },
  );

  // Ranges of usual data sheets, from memory.
  test.each([
    { outputs: "1", from: 60, to: 120 },
    { outputs: "2", from: 120, to: 200 },
    { outputs: "4", from: 180, to: 280 },
    { outputs: "8", from: 250, to: 400 },
  ])("with all of $outputs outputs in use draws between $from and $to mA", ({ outputs, from, to }) => {
    const load = UNIVERSAL.power(optionsOf(UNIVERSAL, { outputs })).load;
    const milliamps = (load?.milliamps ?? 0) + (load?.perFedPort?.milliamps ?? 0) * Number(outputs);
    expect(milliamps).toBeGreaterThanOrEqual(from);
    expect(milliamps).toBeLessThanOrEqual(to);
    expect(load?.ports).toHaveLength(Number(outputs));
  });
});

describe("level and noise at the LNB", () => {
  // A worked link: 51.5°N 0.13°W, satellite at 28.2°E with 51 dBW at 12.5 GHz, 0.6 m dish of 65 %, losses
  // 0.3 + 0.5 dB, 35 K, LNB of 0.7 dB and 55 dB, 27.5 MBd. By hand: free space 206.22 dB (39 036 km),
  // dish 36.04 dBi, so −90.0 dBm at the feed and 73.8 dBµV at the output; system 85.7 K, C/N 14.9 dB.
  const atFeed = sky([{ frequencyMHz: 12_500, polarisation: "V", symbolRateMsps: 27.5 }], {
    orbitalPositionDegE: 28.2,
    siteLatitudeDeg: 51.507,
    siteLongitudeDeg: -0.128,
    siteHeightM: 0,
  });
  const [out] = runPart({ kind: QUATTRO, inputs: { sky: atFeed }, speakers: { vh: SPEAKER } }).bands("vh");

  test("the feed gets −90.0 dBm", () => {
    expect(Math.abs(dbuvToDbm(atFeed[0]?.level[0] ?? 0) - -90.0)).toBeLessThan(0.05);
  });

  test("the output has 73.8 dBµV", () => {
    expect(Math.abs((out?.level[0] ?? 0) - 73.8)).toBeLessThan(0.1);
  });

  test("the C/N is 14.9 dB", () => {
    expect(out && Math.abs(cnDb(out, 0) - 14.9)).toBeLessThan(0.05);
  });
});
