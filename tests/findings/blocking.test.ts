/** How near a tuner is to being blocked: hand-made bands, ratios as in ITU-R BT.1368, BT.2215 and BS.412, from memory. */
import { describe, expect, test } from "vitest";
import { besideHeadroomDb, blockingAt, totalHeadroomDb } from "../../src/findings/blocking.ts";
import type { FrontEnd, ReceiverInput } from "../../src/parts/contract.ts";
import type { Band } from "../../src/signal/band.ts";
import { makeGrid } from "../../src/signal/grid.ts";
import { bandOf, carrierAt, gridOf, switchAt } from "../signal/bands.ts";
import { speaker, stackOf } from "./byHand.ts";

const SILICON: FrontEnd = { noiseFigureDb: 8, overloadDbuv: 98.75, tuner: "silicon" };

const input = (more: Partial<ReceiverInput> = {}): ReceiverInput => ({
  port: "in",
  feed: "terrestrial",
  services: ["tv"],
  tunesFromMHz: 174,
  tunesToMHz: 862,
  tuners: 1,
  frontEnd: SILICON,
  ...more,
});

const SAT = input({ feed: "switched", services: ["satellite"], tunesFromMHz: 950, tunesToMHz: 2150 });

/** TV channels 7.61 MHz wide. */
const tv = (centresMHz: readonly number[], level: number | readonly number[], from = "aerial"): Band =>
  bandOf({ from, grid: gridOf(centresMHz, 7.61), level });

const totalOf = (bands: readonly Band[], at: ReceiverInput, band = bands[0] as Band) =>
  blockingAt({ bands }, at).totalDbuv(band);

describe("all power at a tuner", () => {
  test("is the sum of all carriers", () => {
    // Two of 60 dBµV are 63.01; with one of 70: 10⁷ + 2·10⁶ = 1.2·10⁷, 70.79 dBµV.
    expect(totalOf([tv([474, 482], 60)], input())).toBeCloseTo(63.01, 2);
    expect(totalOf([tv([474, 482], 60), tv([490], 70, "b")], input())).toBeCloseTo(70.79, 2);
  });

  test("leaves a tuner so much to the power that it takes", () => {
    const band = tv([474], 90);
    expect(totalHeadroomDb(blockingAt({ bands: [band] }, input()), band)).toBeCloseTo(8.75, 9);
  });

  test("counts phones beside TV, but neither FM nor satellite, which its filter keeps out", () => {
    const own = tv([474], 60);
    const phones = bandOf({ from: "p", service: "mobile", grid: gridOf([796], 9), level: 60 });
    const fm = bandOf({ from: "f", service: "fm", grid: gridOf([98], 0.2), level: 90 });
    const sat = bandOf({ from: "d", service: "satellite", grid: gridOf([1200], 30), level: 90 });
    expect(totalOf([own, phones, fm, sat], input())).toBeCloseTo(63.01, 2);
  });

  test("is that of one setting of a switch, not of all of them", () => {
    const at = switchAt("lnb", "VL");
    const of = (setting: string, level: number) =>
      bandOf({
        from: setting,
        service: "satellite",
        grid: gridOf([1200], 30),
        level,
        conditions: [{ at, setting }],
      });
    const [vl, hl] = [of("VL", 60), of("HL", 80)];
    const tvBeside = bandOf({ from: "s", service: "satellite", grid: gridOf([1800], 30), level: 60 });
    const bands = [vl, hl, tvBeside];
    expect(totalOf(bands, SAT, vl)).toBeCloseTo(63.01, 2);
    // 10⁸ + 10⁶ = 1.01·10⁸: 80.04 dBµV.
    expect(totalOf(bands, SAT, hl)).toBeCloseTo(80.04, 2);
  });

  test("counts a user band while somebody asks for it", () => {
    const stack = (userBands: readonly number[]) => {
      const request = { polarisation: "V" as const, half: "low" as const, userBands };
      return {
        ...stackOf([1, 2, 3, 4]),
        control: switchAt("lnb", null, userBands.length > 0 ? [speaker("rx", { request })] : []),
      };
    };
    const line = (userBands: readonly number[]) =>
      bandOf({
        from: "lnb",
        service: "satellite",
        grid: gridOf([1210, 1420, 1680, 2040], 46),
        level: 80,
        more: { stack: stack(userBands) },
      });
    // Two of 80 dBµV are 83.01, four are 86.02.
    expect(totalOf([line([1, 2])], SAT)).toBeCloseTo(83.01, 2);
    expect(totalOf([line([])], SAT)).toBeCloseTo(86.02, 2);
  });

  test("is told with the strongest carrier in it", () => {
    const weak = tv([474], 50);
    const bands = [weak, tv([498, 506], [60, 75], "b")];
    expect(blockingAt({ bands }, input()).loudest(weak)).toMatchObject({
      band: bands[1],
      i: 1,
      levelDbuv: 75,
    });
  });
});

describe("a neighbour", () => {
  const beside = (bands: readonly Band[], at = input(), i = 0) =>
    blockingAt({ bands }, at).beside(bands[0] as Band, i);

  test.each([
    { name: "next to it", centres: [474, 482], levels: [40, 75], above: 35, allowed: 30 },
    { name: "two channels away", centres: [474, 490], levels: [40, 75], above: 35, allowed: 40 },
    { name: "below it", centres: [482, 474], levels: [75, 40], above: -35, allowed: 30 },
    // Further away than any ratio changes.
    { name: "far away", centres: [474, 690], levels: [40, 75], above: 35, allowed: 40 },
  ])("$name: $above dB above, $allowed dB allowed", ({ centres, levels, above, allowed }) => {
    const band = bandOf({ grid: gridOf(centres, 7.61), level: levels });
    expect(blockingAt({ bands: [band] }, input()).beside(band, 0)).toMatchObject({
      aboveDb: above,
      allowedDb: allowed,
    });
  });

  test("is the worst of several, whichever source it comes from", () => {
    const bands = [tv([506], 40), tv([474, 514], [78, 60], "b"), tv([498], 72, "c")];
    // 78 − 40 − 40 = −2, 60 − 40 − 30 = −10, 72 − 40 − 30 = +2.
    expect(beside(bands)).toMatchObject({ by: { band: bands[2] }, aboveDb: 32, allowedDb: 30 });
  });

  test("is never the carrier itself, nor what lies on its own frequencies", () => {
    expect(beside([tv([474], 40)])).toBeUndefined();
    expect(beside([tv([474], 40), tv([476], 90, "b")])).toBeUndefined();
  });

  test("of many on its own frequency leaves those beside it", () => {
    const same = Array.from({ length: 4 }, (_, n) => tv([474], 90, `b${n}`));
    expect(beside([tv([474], 40), ...same, tv([690], 85, "far")])).toMatchObject({
      aboveDb: 45,
      allowedDb: 40,
    });
  });

  test("nine channels above counts for a can tuner only", () => {
    const bands = [tv([474], 40), tv([546], 75, "b")];
    const can = input({ frontEnd: { ...SILICON, tuner: "can" } });
    expect(beside(bands, can)).toMatchObject({ allowedDb: 31 });
    expect(beside(bands)).toMatchObject({ allowedDb: 40 });
  });

  // C60, 786 MHz, up to 789.805 MHz; a mast carrier of 9 MHz at 796 MHz begins at 791.5 MHz. Handsets at 837 MHz, 42.7 MHz away.
  test("may be a mast or a handset, which sends in bursts", () => {
    const mast = bandOf({ from: "m", service: "mobile", grid: gridOf([796], 9), level: 80 });
    expect(beside([tv([786], 50), mast])).toMatchObject({ aboveDb: 30, allowedDb: 33 });
    const handset = bandOf({ from: "h", service: "mobile", grid: gridOf([837], 9), level: 80 });
    expect(beside([tv([786], 50), handset])).toMatchObject({ aboveDb: 30, allowedDb: 40 });
  });

  test("in another setting of a switch is not there", () => {
    const at = switchAt("ms", "1");
    const other = bandOf({
      from: "b",
      grid: gridOf([482], 7.61),
      level: 90,
      conditions: [{ at, setting: "2" }],
    });
    expect(beside([tv([474], 40), other])).toBeUndefined();
  });

  test("of a transponder is no matter", () => {
    const band = bandOf({ service: "satellite", grid: gridOf([1200, 1240], 30), level: [40, 90] });
    expect(blockingAt({ bands: [band] }, SAT).beside(band, 0)).toBeUndefined();
  });
});

// BS.412 in mono: 6 dB at 200 kHz, −20 dB at 400 kHz, −40 dB further; heard 20 dB below that, a choice of this tool.
describe("an FM station beside another", () => {
  const FM = input({ services: ["fm"], tunesFromMHz: 87.5, tunesToMHz: 108 });
  const allowed = (centreMHz: number) => {
    const grid = makeGrid([88.3, centreMHz].map((f) => carrierAt(f, 0.2, "fm-stereo")));
    const band = bandOf({ service: "fm", grid, level: 60 });
    return blockingAt({ bands: [band] }, FM).beside(band, band.grid.centre.indexOf(88.3))?.allowedDb;
  };
  test.each([
    [88.5, 14],
    [88.7, 40],
    [89.5, 60],
    [87.9, 40],
  ])("at %f MHz may be %i dB stronger", (centreMHz, db) => {
    expect(allowed(centreMHz)).toBeCloseTo(db, 6);
  });
});

test("both distances are told", () => {
  // 60 beside 85: 30 − 25 = 5 dB, and the other way 30 + 25. All together 85.01 dBµV: 13.74 dB to 98.75.
  const band = tv([474, 482], [60, 85]);
  const blocking = blockingAt({ bands: [band] }, input());
  expect(besideHeadroomDb(blocking, band, 0)).toBeCloseTo(5, 9);
  expect(besideHeadroomDb(blocking, band, 1)).toBeCloseTo(55, 9);
  expect(totalHeadroomDb(blocking, band)).toBeCloseTo(13.74, 2);
});

test("is worked out once for an input", () => {
  const spectrum = { bands: [tv([474], 60)] };
  expect(blockingAt(spectrum, input())).toBe(blockingAt(spectrum, input()));
  const other = input({ frontEnd: { ...SILICON, overloadDbuv: 90 } });
  expect(blockingAt(spectrum, other)).not.toBe(blockingAt(spectrum, input()));
});
