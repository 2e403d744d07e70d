/** From what a converter could choose to the user bands that it sends; ratios and noise by hand. */
import { describe, expect, test } from "vitest";
import { stackBands } from "../../src/evaluate/stacking.ts";
import type { StackPath } from "../../src/parts/contract.ts";
import type { Band } from "../../src/signal/band.ts";
import { makeGrid, uncut, undisturbed } from "../../src/signal/grid.ts";
import { type BandSketch, bandOf, carrierAt, gridOf, switchAt } from "../signal/bands.ts";

/** Two user bands, out of order, 30 MHz wide; noiseless, and holding its level whatever comes in. */
const STACK: StackPath = {
  from: ["#v", "#h"],
  to: "out",
  standard: "EN 50607",
  userBands: [
    { number: 7, centreMHz: 1420, widthMHz: 30 },
    { number: 2, centreMHz: 1210, widthMHz: 30 },
  ],
  levelDbuv: 80,
  noiseFigureDb: 0,
  leastDbuv: 0,
};
/** kTB in the 8 MHz of a carrier: −5.225 + 9.031 = 3.806 dBµV, 2.402 (µV)². */
const KTB = 2.402;

const control = switchAt("lnb", "stack");
const sat = (o: BandSketch = {}) => bandOf({ from: "dish/V", service: "satellite", level: 60, ...o });
const stacked = (arrived: readonly Band[], o: { stack?: StackPath; setting?: string | null } = {}) =>
  stackBands("lnb", o.stack ?? STACK, {
    arrived: [{ node: "#vl", bands: arrived }],
    control: { ...control, setting: o.setting === undefined ? "stack" : o.setting },
  });

describe("a stacked output", () => {
  // At 60 dBµV (10^6) products of 9 · 10^3 beside interference of 10^3: a hundredth; of 80 dBµV 10^6 (µV)².
  test("takes products from before as interference: they are in step with none that come after", () => {
    const [band] = stacked([sat({ interference: 1e3, more: { products: Float64Array.of(9e3) } })]);
    for (const power of band?.interference ?? []) expect(power).toBeCloseTo(1e6, 3);
    expect(band?.products).toBeUndefined();
  });

  test("sends one carrier per user band at the level of the gain control, in rising frequency", () => {
    const [band, ...more] = stacked([sat({ level: 37 })]);
    expect(more).toEqual([]);
    expect([...(band?.grid.centre ?? [])]).toEqual([1210, 1420]);
    expect([...(band?.grid.width ?? [])]).toEqual([30, 30]);
    expect([...(band?.level ?? [])]).toEqual([80, 80]);
    expect(band?.stack?.numbers).toEqual([2, 7]);
    expect(band?.grid.plan.map((c) => c.name)).toEqual(["UB7", "UB2"]);
    expect(band).toMatchObject({
      origin: { key: "lnb/out", service: "satellite", part: "lnb" },
      cuts: [],
      shifts: [],
      conditions: [],
      selected: true,
      stack: { standard: "EN 50607", part: "lnb", port: "out" },
    });
    expect(band?.cut).toBe(band && uncut(band.grid));
  });

  // 60 dBµV are 10^6 (µV)²: noise of 10^3 is a thousandth, and at 80 dBµV (10^8) 10^5. A stage with F = 2 (3.0103 dB)
  // adds kTB at its input: 2.402, and with the 20 dB that it amplifies 240.2 (µV)².
  test("has the noise of what it could choose, scaled to its level, and its own", () => {
    const [band] = stacked([sat({ noise: 1e3 })]);
    expect(band?.stack?.entryNoiseRatio).toBeCloseTo(1e-3, 12);
    for (const noise of band?.noise ?? []) expect(noise).toBeCloseTo(1e5, 1);
    const [noisy] = stacked([sat({ noise: 1e3 })], { stack: { ...STACK, noiseFigureDb: 3.0103 } });
    for (const noise of noisy?.noise ?? []) expect(noise).toBeCloseTo(1e5 + 100 * KTB, 0);
    const [clean] = stacked([sat()]);
    for (const noise of clean?.noise ?? []) expect(noise).toBeCloseTo(0, 2);
    expect(clean?.interference).toBe(clean && undisturbed(clean.grid));
    expect(clean?.stack?.entryInterferenceRatio).toBe(0);
  });

  /**
   * Input window 60 to 90 dBµV, output held at 83 (a trade forum on one unit): at most 23 dB of gain. By hand: 70 leaves
   * at 83; 60 at 83; 50 at 73, 10 dB too little. Noise of F = 2 in 8 MHz, 3.8 dBµV at the input, lies 46.2 dB below 50.
   */
  test.each([
    { levelDbuv: 70, leaves: 83, cnDb: 66.2 },
    { levelDbuv: 60, leaves: 83, cnDb: 56.2 },
    { levelDbuv: 50, leaves: 73, cnDb: 46.2 },
  ])("brings a transponder of $levelDbuv dBµV to $leaves dBµV with a C/N of $cnDb dB", (row) => {
    const stack = { ...STACK, levelDbuv: 83, leastDbuv: 60, noiseFigureDb: 3.0103 };
    const [band] = stacked([sat({ level: row.levelDbuv })], { stack });
    if (!band) throw new Error("no user bands");
    for (const level of band.level) expect(level).toBeCloseTo(row.leaves, 9);
    expect(row.leaves - 10 * Math.log10(band.noise[0] ?? 0)).toBeCloseTo(row.cnDb, 1);
  });

  test("has the level of the weakest that it could choose", () => {
    const [band] = stacked([sat({ level: 70 }), sat({ level: 52 })], {
      stack: { ...STACK, levelDbuv: 83, leastDbuv: 60 },
    });
    // 8 dB below the window: 83 − 8.
    expect(band?.level[0]).toBeCloseTo(75, 9);
  });

  // Of 10^4 in 10^6 a hundredth; at 10^8 10^6.
  test("has the interference of what it could choose", () => {
    const [band] = stacked([sat({ interference: 1e4 })]);
    expect([...(band?.interference ?? [])].map(Math.round)).toEqual([1e6, 1e6]);
    expect(band?.stack?.entryInterferenceRatio).toBeCloseTo(0.01, 9);
  });

  test("takes the worst of all carriers: in noise, in interference and in what they need", () => {
    const demanding = makeGrid([carrierAt(1000, 8, "dvbs2-8psk-3/4"), carrierAt(1100, 8, "dvbs-qpsk-1/2")]);
    const bands = [
      // 60 and 50 dBµV with 10^3 each: a thousandth and a hundredth.
      sat({ grid: gridOf([1000, 1100]), level: [60, 50], noise: 1e3, interference: [5e3, 0] }),
      sat({ grid: demanding, level: 60, noise: 1, interference: [0, 1e3] }),
    ];
    for (const order of [bands, bands.toReversed()]) {
      const [band] = stacked(order);
      expect(band?.stack?.entryNoiseRatio).toBeCloseTo(1e-2, 9);
      expect(band?.stack?.entryInterferenceRatio).toBeCloseTo(5e-3, 9);
      // DVB-T 64QAM 2/3 18.7 dB, 8PSK 3/4 7.91 + 1 dB (public tables).
      expect([...(band?.grid.required ?? [])]).toEqual([18.7, 18.7]);
      expect(band?.stack?.holds).toEqual(order);
    }
    const [easy] = stacked(bands.slice(1));
    expect(easy?.grid.required[0]).toBeCloseTo(8.91, 9);
  });

  test("does not count carriers that are cut, nor services that it cannot stack", () => {
    const cut = sat({
      grid: gridOf([1000, 1100]),
      level: [60, 20],
      noise: 1,
      more: { cut: Uint16Array.from([0, 1]), cuts: [{ part: "x", reason: "filter" }] },
    });
    const tv = bandOf({ level: 0, noise: 1e6 });
    const [band] = stacked([cut, tv]);
    expect(band?.stack?.entryNoiseRatio).toBeCloseTo(1e-6, 12);
    expect(band?.stack?.holds).toEqual([cut]);
  });

  test("knows what came in where another plane belongs, or brought down in another way", () => {
    const planes = { "#vl": { polarisation: "V", half: "low" }, "#v": { polarisation: "V" } } as const;
    const plane = (polarisation: "V" | "H", half?: "low" | "high"): Band => {
      const band = sat();
      return { ...band, origin: { ...band.origin, polarisation }, ...(half ? { half } : {}) };
    };
    const [low, high] = [plane("V", "low"), plane("V", "high")];
    const [whole, other] = [plane("V"), plane("H", "low")];
    const strays = (node: "#vl" | "#v" | "#hl", bands: readonly Band[]) => [
      ...(stackBands("u", { ...STACK, planes }, { arrived: [{ node, bands }], control })[0]?.stack?.strays ??
        []),
    ];
    expect(strays("#vl", [low, high, whole, other])).toEqual([high, whole, other]);
    expect(strays("#v", [low, whole])).toEqual([low]);
    // An LNB with the stacking stage in its own housing is wired in the factory.
    expect(strays("#hl", [low])).toEqual([]);
  });

  test("is silent without anything live, and where nothing commands it", () => {
    expect(stacked([])).toEqual([]);
    expect(stacked([bandOf()])).toEqual([]);
    const dead = { cut: Uint16Array.of(1), cuts: [{ part: "x", reason: "filter" } as const] };
    expect(stacked([sat({ more: dead })])).toEqual([]);
    expect(
      stackBands("lnb", STACK, { arrived: [{ node: "#vl", bands: [sat()] }], control: undefined }),
    ).toEqual([]);
  });

  test("is there now while somebody speaks to it", () => {
    expect(stacked([sat()], { setting: null })[0]?.selected).toBe(false);
    expect(stacked([sat()])[0]?.stack?.control.setting).toBe("stack");
  });

  test("shares one grid for the same user bands and need, and no other", () => {
    const [a, b] = [stacked([sat()])[0], stacked([sat({ level: 40 })])[0]];
    expect(b?.grid).toBe(a?.grid);
    const easy = sat({ grid: makeGrid([carrierAt(1000, 8, "dvbs-qpsk-1/2")]) });
    const c = stacked([easy])[0];
    expect(c?.grid).not.toBe(a?.grid);
    // DVB-S QPSK 1/2: 3.8 dB (NorDig Unified 2.2, as quoted in a public table).
    expect([...(c?.grid.required ?? [])]).toEqual([3.8, 3.8]);
    expect([...(a?.grid.required ?? [])]).toEqual([18.7, 18.7]);
    const other = { ...STACK, userBands: STACK.userBands.slice(1) };
    expect([...(stacked([sat()], { stack: other })[0]?.grid.centre ?? [])]).toEqual([1210]);
  });
});
