import { describe, expect, test } from "vitest";
import { LNBS } from "../../src/parts/convertLnb.ts";
import { STACKERS } from "../../src/parts/convertStack.ts";
import { RECEIVE } from "../../src/parts/receive.ts";
import type { Band } from "../../src/signal/band.ts";
import { kindNamed, liveNames, optionsOf, runPart, speaker } from "./workbench.ts";

const LNB = kindNamed(STACKERS, "lnb-stacked");
const CONVERTER = kindNamed(STACKERS, "stacking-converter");
const SKY = runPart({ kind: kindNamed(RECEIVE, "dish") }).bands("sky");
const TV = runPart({ kind: kindNamed(RECEIVE, "aerial-uhf") }).bands("out");
const MESSAGES = speaker({ polarisation: "V", half: "low", userBands: [1] });

function feedsOf(key: "lnb-quattro" | "lnb-wideband"): Record<string, readonly Band[]> {
  const kind = kindNamed(LNBS, key);
  const outputs = kind.ports(optionsOf(kind)).filter((p) => p.side === "out");
  const speakers = Object.fromEntries(outputs.map((p) => [p.id, MESSAGES]));
  const bench = runPart({ kind, inputs: { sky: SKY }, speakers });
  return Object.fromEntries(outputs.map((p) => [p.id, bench.bands(p.id)]));
}

describe("user bands", () => {
  // Usual centres [MHz] as quoted in public tables of converters.
  test.each([
    { bandSet: "four", centres: [1210, 1420, 1680, 2040] },
    { bandSet: "eight", centres: [1284, 1400, 1516, 1632, 1748, 1864, 1980, 2096] },
  ])("of the usual set of $bandSet stand where the tables say", ({ bandSet, centres }) => {
    const stacks = LNB.signal(optionsOf(LNB, { bandSet }), { id: "part", powered: true }).stacks ?? [];
    expect(stacks.map((s) => s.userBands.map((u) => u.centreMHz))).toEqual([centres]);
    expect(stacks[0]?.userBands.map((u) => u.number)).toEqual(centres.map((_, i) => i + 1));
  });

  test("of the set of 32 start with the set of four, and the last one reaches beyond 2150 MHz", () => {
    // Public tables: number 32 at 2148 MHz, whose band ends at 2166 MHz.
    const options = optionsOf(LNB, { bandSet: "thirtyTwo", standard: "EN 50607" });
    const bands = LNB.signal(options, { id: "part", powered: true }).stacks?.[0]?.userBands ?? [];
    expect(bands).toHaveLength(32);
    expect(bands.slice(0, 4).map((u) => u.centreMHz)).toEqual([1210, 1420, 1680, 2040]);
    const last = bands.find((u) => u.number === 32);
    expect((last?.centreMHz ?? 0) + (last?.widthMHz ?? 0) / 2).toBe(2166);
    expect(new Set(bands.map((u) => u.centreMHz)).size).toBe(32);
  });

  // EN 50607, scope: at most 8 in EN 50494, at most 32 in EN 50607.
  test.each([
    { standard: "EN 50494", most: 8 },
    { standard: "EN 50607", most: 32 },
  ])("are at most $most under $standard", ({ standard, most }) => {
    const options = optionsOf(LNB, { bandSet: "thirtyTwo", standard });
    const bands = LNB.signal(options, { id: "part", powered: true }).stacks?.[0]?.userBands ?? [];
    expect(bands.map((u) => u.number)).toEqual(Array.from({ length: most }, (_, i) => i + 1));
  });

  test("of an own list count once where a number is listed twice", () => {
    const ownBands = [
      { number: 2, centreMHz: 1500 },
      { number: 2, centreMHz: 1600 },
      { number: 1, centreMHz: 1300 },
    ];
    const options = optionsOf(LNB, { bandSet: "own", ownBands });
    const bands = LNB.signal(options, { id: "part", powered: true }).stacks?.[0]?.userBands;
    expect(bands?.map((u) => [u.number, u.centreMHz])).toEqual([
      [2, 1500],
      [1, 1300],
    ]);
  });
});

describe("a channel-stacking LNB", () => {
  test("puts every user band on its output at one level, and can fill it from all four quadrants", () => {
    const bench = runPart({
      kind: LNB,
      options: { stackDbuv: 82 },
      inputs: { sky: SKY },
      speakers: { out: MESSAGES },
    });
    const [band, ...more] = bench.bands("out");
    expect(more).toEqual([]);
    expect(Array.from(band?.level ?? [])).toEqual([82, 82, 82, 82]);
    expect(band?.stack?.numbers).toEqual([1, 2, 3, 4]);
    expect(liveNames(band?.stack?.holds ?? [])).toHaveLength(80);
  });

  test("has beside it a switched output for an old receiver, if wanted", () => {
    const bench = runPart({
      kind: LNB,
      options: { legacy: true, outputs: "2" },
      inputs: { sky: SKY },
      speakers: { legacy: speaker({ polarisation: "H", half: "high" }) },
    });
    expect(bench.settings).toMatchObject({ legacy: "HH" });
    expect(liveNames(bench.selected("legacy"))).toHaveLength(20);
  });

  test("draws 200 to 350 mA, from any of its outputs", () => {
    // Usual data sheets, from memory.
    const load = LNB.power(optionsOf(LNB, { outputs: "2", legacy: true })).load;
    expect(load?.milliamps).toBeGreaterThanOrEqual(200);
    expect(load?.milliamps).toBeLessThanOrEqual(350);
    expect(load?.ports).toEqual(["out1", "out2", "legacy"]);
  });
});

describe("a stacking converter", () => {
  test.each(["quattro", "wideband"] as const)(
    "fed from a %s LNB can fill its user bands with every transponder",
    (feed) => {
      const bench = runPart({
        kind: CONVERTER,
        options: { feed },
        inputs: feedsOf(`lnb-${feed}`),
        speakers: { out3: MESSAGES },
      });
      const [band] = bench.bands("out3");
      expect(band?.level).toHaveLength(32);
      expect(liveNames(band?.stack?.holds ?? [])).toHaveLength(80);
    },
  );

  test("set up for a quattro LNB but fed from a wideband one keeps only what lies in 950 to 2150 MHz", () => {
    // Satellite IF 950–2150 MHz (Spanish Royal Decree 346/2011), plus 10.4 GHz: 11.35 to 12.55 GHz.
    const { v = [] } = feedsOf("lnb-wideband");
    const bench = runPart({ kind: CONVERTER, inputs: { vl: v }, speakers: { out1: MESSAGES } });
    const names = liveNames(bench.bands("out1")[0]?.stack?.holds ?? []);
    const airMHz = names.map((name) => Number(name.replace(/\s(?=\d)/, "").split(" ")[0]));
    expect(Math.min(...airMHz)).toBeGreaterThan(11_350);
    expect(Math.max(...airMHz)).toBeLessThan(12_550);
    expect(names.length).toBeGreaterThan(20);
  });

  test("passes terrestrial TV to every output beside the user bands, even when its mains is off", () => {
    for (const mainsOn of [true, false]) {
      const bench = runPart({
        kind: CONVERTER,
        options: { mainsOn, outputs: 2 },
        inputs: { ...feedsOf("lnb-quattro"), ter: TV },
        speakers: { out2: MESSAGES },
      });
      const services = bench.bands("out2").map((b) => b.origin.service);
      expect(services).toEqual(mainsOn ? ["tv", "satellite"] : ["tv"]);
      expect(liveNames(bench.bands("out2").filter((b) => b.origin.service === "tv"))).toEqual(liveNames(TV));
    }
  });

  test("feeds its LNB with a fixed voltage on every input, unless told not to", () => {
    const supplies = (options: Record<string, unknown>) =>
      (CONVERTER.power(optionsOf(CONVERTER, options)).supplies ?? []).map((s) => [s.port, s.kind, s.volts18]);
    // 13 V on vertical, 18 V on horizontal: common practice, no source.
    expect(supplies({})).toEqual([
      ["vl", "plain", 13],
      ["vh", "plain", 13],
      ["hl", "plain", 18],
      ["hh", "plain", 18],
    ]);
    expect(supplies({ feed: "wideband" }).map(([port]) => port)).toEqual(["v", "h"]);
    expect(supplies({ feedsLnb: false })).toEqual([]);
    expect(supplies({ mainsOn: false })).toEqual([]);
  });
});
