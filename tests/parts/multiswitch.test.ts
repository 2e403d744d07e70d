import { describe, expect, test } from "vitest";
import { LNBS } from "../../src/parts/convertLnb.ts";
import { MULTISWITCHES } from "../../src/parts/multiswitch.ts";
import { RECEIVE } from "../../src/parts/receive.ts";
import { kindNamed, liveNames, optionsOf, runPart, speaker } from "./workbench.ts";

const SWITCH = kindNamed(MULTISWITCHES, "multiswitch");
const TV = runPart({ kind: kindNamed(RECEIVE, "aerial-uhf") }).bands("out");
const VL = speaker({ polarisation: "V", half: "low" });

/** Feeds of a quattro LNB on a dish at a given position, as inputs of the n-th satellite. */
function feeds(satellite = 1, orbitalPositionDegE = 20) {
  const sky = runPart({ kind: kindNamed(RECEIVE, "dish"), options: { orbitalPositionDegE } }).bands("sky");
  const bench = runPart({
    kind: kindNamed(LNBS, "lnb-quattro"),
    inputs: { sky },
    speakers: { hl: VL },
  });
  const suffix = satellite > 1 ? String(satellite) : "";
  return Object.fromEntries(["vl", "vh", "hl", "hh"].map((port) => [`${port}${suffix}`, bench.bands(port)]));
}

describe("ports of a multiswitch", () => {
  test.each([
    { satelliteInputs: "4", outputs: 4, terrestrial: true, cascade: false, count: 4 + 1 + 4 },
    { satelliteInputs: "4", outputs: 32, terrestrial: false, cascade: false, count: 4 + 32 },
    { satelliteInputs: "8", outputs: 8, terrestrial: true, cascade: false, count: 8 + 1 + 8 },
    { satelliteInputs: "8", outputs: 8, terrestrial: true, cascade: true, count: 8 + 1 + 8 + 9 },
    { satelliteInputs: "12", outputs: 8, terrestrial: true, cascade: false, count: 12 + 1 + 8 },
    { satelliteInputs: "16", outputs: 6, terrestrial: false, cascade: true, count: 16 + 6 + 16 },
  ])("$satelliteInputs inputs, $outputs outputs, TV $terrestrial, cascade $cascade: $count", (row) => {
    const { count, ...options } = row;
    const ports = SWITCH.ports(optionsOf(SWITCH, options));
    expect(ports).toHaveLength(count);
    expect(new Set(ports.map((p) => p.id)).size).toBe(count);
    // Inputs come first, so that they stand on one side of the drawing.
    const firstOutput = ports.findIndex((p) => p.side === "out");
    expect(ports.slice(firstOutput).every((p) => p.side === "out")).toBe(true);
  });
});

describe("a multiswitch", () => {
  // 13/18 V and 22 kHz select the quadrant (public meter manual).
  test.each([
    { polarisation: "V", half: "low", airFromMHz: 10_729, airToMHz: 11_641 },
    { polarisation: "V", half: "high", airFromMHz: 11_727, airToMHz: 12_677 },
    { polarisation: "H", half: "low", airFromMHz: 10_753, airToMHz: 11_665 },
    { polarisation: "H", half: "high", airFromMHz: 11_752, airToMHz: 12_702 },
  ] as const)("gives an output $polarisation $half when its receiver asks for that", (row) => {
    const bench = runPart({ kind: SWITCH, inputs: feeds(), speakers: { out5: speaker(row), out6: VL } });
    const bands = bench.selected("out5");
    const air = bands.flatMap((b) => Array.from(b.grid.index, (p) => b.grid.plan[p]?.airMHz ?? 0));
    expect([Math.min(...air), Math.max(...air)]).toEqual([row.airFromMHz, row.airToMHz]);
    expect(liveNames(bands)).toHaveLength(20);
  });

  test("with eight inputs gives the satellite of the position asked for", () => {
    const bench = runPart({
      kind: SWITCH,
      options: { satelliteInputs: "8" },
      inputs: { ...feeds(1, 20), ...feeds(2, 5) },
      speakers: { out1: speaker({ polarisation: "H", half: "low", position: 2 }), out2: VL },
    });
    expect(bench.settings).toMatchObject({ out1: "2:HL", out2: "1:VL" });
    expect(bench.selected("out1").map((b) => b.origin.satellite)).toEqual(["5.0°E"]);
    expect(bench.selected("out2").map((b) => b.origin.satellite)).toEqual(["20.0°E"]);
  });

  test("puts terrestrial TV on every output beside the satellite quadrant, without touching it", () => {
    const bench = runPart({ kind: SWITCH, inputs: { ...feeds(), ter: TV }, speakers: { out1: VL } });
    expect(bench.selected("out1").map((b) => b.origin.service)).toEqual(["tv", "satellite"]);
    const tv = bench.selected("out1")[0];
    expect(liveNames(tv ? [tv] : [])).toEqual(liveNames(TV));
    // Passive terrestrial path of 10 to 20 dB (usual data sheets, from memory).
    const loss = (TV[0]?.level[0] ?? 0) - (tv?.level[0] ?? 0);
    expect(loss).toBeGreaterThanOrEqual(10);
    expect(loss).toBeLessThanOrEqual(20);
  });

  test("without any supply passes no satellite, and TV only as far as that path is passive", () => {
    const run = (terrestrialBuild: string) =>
      runPart({
        kind: SWITCH,
        options: { mainsOn: false, terrestrialBuild },
        inputs: { ...feeds(), ter: TV },
        speakers: { out1: VL },
      });
    expect(run("passive").bands("out1")).toHaveLength(1);
    const dead = run("active").bands("out1")[0];
    // An unpowered amplifier is a loss.
    expect((dead?.level[0] ?? 0) - (TV[0]?.level[0] ?? 0)).toBeLessThan(-20);
  });

  test("fed from its receivers works as soon as one of them is on, and hands the supply to the LNB", () => {
    const options = { supply: "receivers" };
    expect(runPart({ kind: SWITCH, options }).powered).toBe(false);
    expect(runPart({ kind: SWITCH, options, speakers: { out7: VL } }).powered).toBe(true);
    const paths = SWITCH.power(optionsOf(SWITCH, options)).paths ?? [];
    expect(paths.filter((p) => p.from === "out7").map((p) => p.to)).toEqual(["vl", "vh", "hl", "hh"]);
    expect(paths.every((p) => !p.tone)).toBe(true);
  });
});

describe("a cascade", () => {
  test("hands every input on along the trunk, with more loss the higher the frequency", () => {
    const options = { cascade: true, build: "tap", throughLossDb: 2, mainsOn: false };
    const bench = runPart({ kind: SWITCH, options, inputs: { ...feeds(), ter: TV } });
    const before = feeds().vh?.[0];
    const after = bench.bands("vh-thru")[0];
    const losses = Array.from(before?.level ?? [], (level, i) => level - (after?.level[i] ?? 0));
    expect(losses).toHaveLength(20);
    // Typical through loss of cascade units 1 to 4 dB, from memory; rising with frequency as in any coupler.
    losses.forEach((loss, i) => {
      expect(loss).toBeGreaterThan(losses[i - 1] ?? 1);
      expect(loss).toBeLessThan(4);
    });
    expect(liveNames(bench.bands("ter-thru"))).toEqual(liveNames(TV));
  });

  test("unit fed through the trunk draws from its through outputs and passes direct current on to the LNB", () => {
    const options = optionsOf(SWITCH, { cascade: true, supply: "trunk" });
    const power = SWITCH.power(options);
    expect(power.load?.ports).toEqual(["vl-thru", "vh-thru", "hl-thru", "hh-thru"]);
    expect(power.paths).toContainEqual({ from: "hl-thru", to: "hl", tone: false });
    expect(power.supplies).toBeUndefined();
  });

  test("tap takes its loss from the drop: 16 to 25 dB as usual", () => {
    // Usual data sheets, from memory.
    const bench = runPart({
      kind: SWITCH,
      options: { build: "tap" },
      inputs: feeds(),
      speakers: { out1: VL },
    });
    const before = feeds().vl?.[0]?.level[0] ?? 0;
    const loss = before - (bench.selected("out1")[0]?.level[0] ?? 0);
    expect(loss).toBeGreaterThanOrEqual(16);
    expect(loss).toBeLessThanOrEqual(25);
  });
});
