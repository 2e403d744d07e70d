import { describe, expect, test } from "vitest";
import { idealThroughDb } from "../../src/parts/splitters.ts";
import { gainBetween, kindNamed, optionsOf, signalOf } from "./walk.ts";

const legLoss = (options: Record<string, unknown>, f: number) =>
  -gainBetween(signalOf("splitter", options), "in", "out1", f);

describe("a ferrite splitter", () => {
  // Ideal 10·log10(N): conservation of energy. The TV figures of 2, 4 and 8 ways (3.5, 7, 10.5 dB) are quoted in a
  // public table of splitters; the other ends of the ranges are common practice, from memory.
  test.each([
    { ways: 2, ideal: 3.01, tv: [3.5, 4.0], sat: [4.0, 5.5] },
    { ways: 3, ideal: 4.77, tv: [5.5, 6.5], sat: [6.5, 8] },
    { ways: 4, ideal: 6.02, tv: [7.0, 7.5], sat: [8, 10] },
    { ways: 6, ideal: 7.78, tv: [9, 10.5], sat: [11, 13] },
    { ways: 8, ideal: 9.03, tv: [10.5, 11.5], sat: [12.5, 15] },
  ])(
    "of $ways ways loses what the trade expects, and never less than $ideal dB",
    ({ ways, ideal, tv, sat }) => {
      for (const f of [5, 98, 474, 862, 950, 1550, 2150]) expect(legLoss({ ways }, f)).toBeGreaterThan(ideal);
      for (const [f, range] of [
        [5, tv],
        [474, tv],
        [862, tv],
        [950, sat],
        [2150, sat],
      ] as const) {
        // A tenth of a decibel is the rounding of such tables.
        expect(legLoss({ ways }, f)).toBeGreaterThanOrEqual((range[0] ?? 0) - 0.1);
        expect(legLoss({ ways }, f)).toBeLessThanOrEqual((range[1] ?? 0) + 0.1);
      }
    },
  );

  test("from a data sheet that promises less than the ideal loss loses the ideal (conservation of energy)", () => {
    const loss = legLoss({ ways: 4, loss: "own", ownTvDb: 1, ownSatDb: 9 }, 474);
    expect(loss).toBeCloseTo(10 * Math.log10(4), 6);
    expect(legLoss({ ways: 4, loss: "own", ownTvDb: 7.4, ownSatDb: 9 }, 474)).toBeCloseTo(7.4, 6);
  });

  test("made for TV takes satellite IF away; made for satellite passes a wideband feed up to 2350 MHz", () => {
    // Range of a wideband IF: 12.75 GHz − 10.40 GHz = 2350 MHz.
    expect(legLoss({ range: "tv" }, 2350)).toBeGreaterThan(20);
    expect(legLoss({ range: "sat" }, 2350)).toBeLessThan(7);
  });

  test("decouples its outputs by the 20 dB that satellite IF needs between users (Spanish RD 346/2011, 4.4)", () => {
    expect(signalOf("splitter").isolationDb).toBeGreaterThanOrEqual(20);
  });

  test.each([
    { dc: "none", from: [] },
    { dc: "one", from: ["out1"] },
    { dc: "all", from: ["out1", "out2", "out3", "out4"] },
  ])("with supply passing $dc lets it in from $from", ({ dc, from }) => {
    const { paths = [] } = kindNamed("splitter").power(optionsOf("splitter", { ways: 4, dc }));
    expect(paths.map((p) => p.from)).toEqual(from);
    expect(paths.every((p) => p.tone && p.to === "in")).toBe(true);
    // Only where several receivers meet do diodes keep them apart.
    expect(paths.every((p) => (p.dropVolts ?? 0) > 0 === (dc === "all"))).toBe(true);
  });
});

describe("a resistive splitter", () => {
  // 20·log10(N), the star of N+1 resistors Z0·(N−1)/(N+1); ngspice gives −6.0206 dB for N = 2.
  test.each([
    { ways: 2, loss: 6.0206 },
    { ways: 3, loss: 9.5424 },
    { ways: 4, loss: 12.0412 },
  ])("of $ways ways loses $loss dB, and decouples its legs by no more", ({ ways, loss }) => {
    const options = { ways, type: "resistive" };
    expect(legLoss(options, 474)).toBeCloseTo(loss, 3);
    expect(legLoss(options, 1550)).toBeCloseTo(loss, 3);
    expect(signalOf("splitter", options).isolationDb).toBeCloseTo(loss, 3);
  });
});

/** Older parts end at 1750 or 2050 MHz (common practice, no source): there a transponder above is lost, one below is not. */
describe("an older part", () => {
  test.each([
    { kind: "splitter", key: "range", values: ["sat", "sat-2050", "sat-1750"], to: "out1" },
    { kind: "tap", key: "upTo", values: ["2400", "2050", "1750"], to: "out" },
    { kind: "tap", key: "upTo", values: ["2400", "2050", "1750"], to: "tap1" },
    { kind: "outlet-sat", key: "upTo", values: ["2400", "2050", "1750"], to: "sat" },
  ])("$kind to $to", ({ kind, key, values, to }) => {
    const loss = (n: number, f: number) => -gainBetween(signalOf(kind, { [key]: values[n] }), "in", to, f);
    for (const f of [1700, 1740]) expect(loss(2, f)).toBeCloseTo(loss(0, f), 6);
    expect(loss(1, 2000)).toBeCloseTo(loss(0, 2000), 6);
    expect(loss(2, 1800) - loss(0, 1800)).toBeGreaterThanOrEqual(15);
    expect(loss(1, 2100) - loss(0, 2100)).toBeGreaterThanOrEqual(15);
  });
});

describe("a tap", () => {
  // Ideal: −10·log10(1 − 10^(−C/10)), what the branch takes is gone. Typical at TV: common practice, from memory.
  test.each([
    { branch: 6, ideal: 1.26, typical: [2.0, 2.5] },
    { branch: 8, ideal: 0.75, typical: [1.5, 1.5] },
    { branch: 10, ideal: 0.46, typical: [1.0, 1.3] },
    { branch: 12, ideal: 0.28, typical: [0.8, 1.0] },
    { branch: 16, ideal: 0.11, typical: [0.7, 0.7] },
    { branch: 20, ideal: 0.04, typical: [0.5, 0.5] },
  ])("of $branch dB costs the through line a typical loss above $ideal dB", ({ branch, ideal, typical }) => {
    expect(idealThroughDb(branch, 1)).toBeCloseTo(ideal, 2);
    const treatment = signalOf("tap", { tapLossDb: branch });
    const through = -gainBetween(treatment, "in", "out", 474);
    expect(through).toBeGreaterThan(ideal);
    expect(through).toBeGreaterThanOrEqual((typical[0] ?? 0) - 0.1);
    expect(through).toBeLessThanOrEqual((typical[1] ?? 0) + 0.1);
    expect(-gainBetween(treatment, "in", "tap1", 474)).toBeCloseTo(branch, 6);
    // Satellite IF adds 0.7 to 1.5 dB (from memory).
    const added = -gainBetween(treatment, "in", "out", 1550) - through;
    expect(added).toBeGreaterThanOrEqual(0.7);
    expect(added).toBeLessThanOrEqual(1.5);
  });

  // Ideal −10·log10(1 − n·10^(−C/10)) (any RF textbook): what the branches get is gone. Real parts 0.5 to 2 dB more, the
  // inner splitter's loss included (orders of magnitude, from memory); lower values lose more.
  test.each([
    { taps: "2", branch: 12, ideal: 0.59 },
    { taps: "3", branch: 14, ideal: 0.55 },
    { taps: "4", branch: 12, ideal: 1.26 },
    { taps: "4", branch: 16, ideal: 0.46 },
    { taps: "8", branch: 17, ideal: 0.76 },
    { taps: "8", branch: 20, ideal: 0.36 },
  ])("of $taps branches of $branch dB costs more than the ideal $ideal dB", ({ taps, branch, ideal }) => {
    expect(idealThroughDb(branch, Number(taps))).toBeCloseTo(ideal, 2);
    const treatment = signalOf("tap", { taps, tapLossDb: branch });
    const through = -gainBetween(treatment, "in", "out", 474);
    expect(through).toBeGreaterThan(ideal + 0.5);
    expect(through).toBeLessThan(ideal + 2);
    for (let n = 1; n <= Number(taps); n++)
      expect(-gainBetween(treatment, "in", `tap${n}`, 474)).toBeCloseTo(branch, 6);
  });

  test("loses more at the line the more branches it has", () => {
    const through = (taps: string) =>
      -gainBetween(signalOf("tap", { taps, tapLossDb: 16 }), "in", "out", 474);
    const losses = ["1", "2", "3", "4", "8"].map(through);
    expect(losses).toEqual([...losses].sort((a, b) => a - b));
    expect(new Set(losses).size).toBe(5);
  });

  test("with more branches than its value allows still leaves something for the line", () => {
    // Eight branches of 6 dB would take twice what there is.
    const treatment = signalOf("tap", { taps: "8", tapLossDb: 6 });
    const share = (port: string) => 10 ** (gainBetween(treatment, "in", port, 474) / 10);
    const branches = [1, 2, 3, 4, 5, 6, 7, 8].reduce((sum, n) => sum + share(`tap${n}`), 0);
    expect(branches + share("out")).toBeLessThanOrEqual(1);
    expect(share("out")).toBeGreaterThan(0);
  });

  test("passes supply along the trunk, and from branches only by diodes", () => {
    const power = (dc: string) => kindNamed("tap").power(optionsOf("tap", { taps: "2", dc })).paths ?? [];
    expect(power("none")).toEqual([]);
    expect(power("through").map((p) => p.from)).toEqual(["out"]);
    expect(power("all").map((p) => p.from)).toEqual(["out", "tap1", "tap2"]);
    expect(power("all").map((p) => (p.dropVolts ?? 0) > 0)).toEqual([false, true, true]);
  });
});
