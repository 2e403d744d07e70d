import { describe, expect, test } from "vitest";
import { LNBS } from "../../src/parts/convertLnb.ts";
import { MULTISWITCHES } from "../../src/parts/multiswitch.ts";
import { outputFeed } from "../../src/parts/outputFeed.ts";
import { RECEIVE } from "../../src/parts/receive.ts";
import type { Band } from "../../src/signal/band.ts";
import { kindNamed, optionsOf, runPart, speaker } from "./workbench.ts";

const SWITCH = kindNamed(MULTISWITCHES, "multiswitch");
const WIDEBAND = kindNamed(LNBS, "lnb-wideband");
const VL = speaker({ polarisation: "V", half: "low" });
const SKY = runPart({ kind: kindNamed(RECEIVE, "dish") }).bands("sky");

/** Air frequency and frequency now of every carrier of some bands [MHz]. */
function placed(bands: readonly Band[]): readonly { readonly airMHz: number; readonly nowMHz: number }[] {
  return bands.flatMap((band) =>
    Array.from(band.grid.index, (p, i) => ({
      airMHz: band.grid.plan[p]?.airMHz ?? 0,
      nowMHz: band.grid.centre[i] ?? 0,
    })),
  );
}

describe("a wideband LNB with switched outputs", () => {
  const bench = runPart({
    kind: WIDEBAND,
    options: { switchedOutputs: "4" },
    inputs: { sky: SKY },
    speakers: { sw3: speaker({ polarisation: "H", half: "high" }), sw1: VL },
  });

  test("gives a whole polarisation at V and H, moved by 10.4 GHz", () => {
    const carriers = placed(bench.bands("v"));
    expect(carriers).toHaveLength(40);
    // IF = RF − LO, exact (EN 61319-1); a wideband LNB has its oscillator at 10.40 GHz (facts from memory).
    for (const { airMHz, nowMHz } of carriers) expect(nowMHz).toBeCloseTo(airMHz - 10_400, 9);
  });

  test.each([
    // 13/18 V and 22 kHz choose the quadrant (public meter manual); 9.75 and 10.6 GHz are a universal LNB's oscillators.
    { port: "sw1", setting: "VL", loMHz: 9_750 },
    { port: "sw3", setting: "HH", loMHz: 10_600 },
  ])("gives at $port the quadrant $setting that its line asks for", ({ port, setting, loMHz }) => {
    expect(bench.settings[port]).toBe(setting);
    const carriers = placed(bench.selected(port));
    expect(carriers).toHaveLength(20);
    for (const { airMHz, nowMHz } of carriers) expect(nowMHz).toBeCloseTo(airMHz - loMHz, 9);
  });

  test("tells which of its outputs gives which feed", () => {
    const power = WIDEBAND.power(optionsOf(WIDEBAND, { switchedOutputs: "2" }));
    expect(["v", "h", "sw1", "sw2"].map((port) => outputFeed(WIDEBAND, power, port))).toEqual([
      "wideband",
      "wideband",
      "switched",
      "switched",
    ]);
  });
});

describe("a multiswitch for a wideband LNB", () => {
  const lnb = runPart({ kind: WIDEBAND, inputs: { sky: SKY }, speakers: { v: VL } });
  const options = { feed: "wideband", singleCable: [{ standard: "EN 50607", bandSet: "thirtyTwo" }] };
  const bench = runPart({
    kind: SWITCH,
    options,
    inputs: { v: lnb.bands("v"), h: lnb.bands("h") },
    speakers: {
      out1: VL,
      out2: speaker({ polarisation: "H", half: "high" }),
      sc1: speaker({ polarisation: "V", half: "low", userBands: [1] }),
    },
  });

  test("has two inputs for each satellite instead of four", () => {
    const inputs = (satelliteInputs: string) =>
      SWITCH.ports(optionsOf(SWITCH, { ...options, satelliteInputs, terrestrial: false }))
        .filter((p) => p.side === "in")
        .map((p) => p.id);
    expect(inputs("4")).toEqual(["v", "h"]);
    expect(inputs("8")).toEqual(["v", "h", "v2", "h2"]);
  });

  test.each([
    // 10 729 V lies at 10729 − 10400 = 329 MHz on the trunk; a receiver looks for it at 10729 − 9750 = 979 MHz.
    { port: "out1", airMHz: 10_729, nowMHz: 979 },
    // 12 702 H lies at 12702 − 10400 = 2302 MHz; a receiver looks for it at 12702 − 10600 = 2102 MHz.
    { port: "out2", airMHz: 12_702, nowMHz: 2_102 },
  ])("puts $airMHz MHz where a universal receiver looks for it", ({ port, airMHz, nowMHz }) => {
    const found = placed(bench.selected(port)).find((c) => c.airMHz === airMHz);
    expect(found?.nowMHz).toBeCloseTo(nowMHz, 9);
  });

  test("holds both polarisations for its single-cable output", () => {
    const [band] = bench.bands("sc1");
    expect(band?.stack?.holds.flatMap((b) => Array.from(b.level))).toHaveLength(80);
    expect(band?.stack?.strays.size).toBe(0);
  });
});

describe("a multiswitch for quad LNBs", () => {
  const supplies = (more: Record<string, unknown> = {}) =>
    SWITCH.power(optionsOf(SWITCH, { feed: "quad", ...more })).supplies ?? [];

  test.each([
    // 13 V: vertical, 18 V: horizontal; no tone: low, 22 kHz: high band (public meter manual).
    { port: "vl", volts: 13, half: "low" },
    { port: "vh", volts: 13, half: "high" },
    { port: "hl", volts: 18, half: "low" },
    { port: "hh", volts: 18, half: "high" },
  ])("asks for its quadrant at $port by $volts V, $half", ({ port, volts, half }) => {
    const supply = supplies().find((s) => s.port === port);
    expect([supply?.volts13, supply?.volts18, supply?.request?.half]).toEqual([volts, volts, half]);
  });

  test("asks for nothing without mains, nor where it does not feed the LNB", () => {
    expect(supplies({ mainsOn: false })).toEqual([]);
    expect(supplies({ feedsLnb: false })).toEqual([]);
  });
});
