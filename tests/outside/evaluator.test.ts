/** The whole evaluator, from the drawing to the verdict, against what stands outside this project. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { cnDb, levelRange, liveCount } from "../../src/signal/readout.ts";
import { draw, withOptions } from "../draw.ts";
import { hasNgspice, simulate } from "./ngspice.ts";
import { AT_28_2_EAST, hasScanTable, readDistinct } from "./scanTables.ts";

function verdictOf(design: Design, part: string) {
  const verdict = report(evaluate(design)).verdicts.find((v) => v.part === part);
  if (!verdict) throw new Error(`no verdict for ${part}`);
  return verdict;
}

function bandsAt(design: Design, part: string, port: string) {
  return evaluate(design).record(part)?.outputs[port]?.bands ?? [];
}

const there = hasScanTable(AT_28_2_EAST, "what filters take from a real satellite");

// Counted in Debian's dtv-scan-tables 0+git20190925, file dvb-s/Astra-28.2E, with standard text tools.
describe.skipIf(!there)("the transponder list of 28.2° East through the evaluator", () => {
  const transponders = there ? readDistinct(AT_28_2_EAST) : [];
  const dish = ["dish", { diameterM: 0.8, orbitalPositionDegE: 28.2, transponders }] as const;

  test("a quattro converter sorts it into quadrants of 24, 26, 16 and 17", () => {
    const design = draw(
      { dish, lnb: ["lnb-quattro"], psu: ["multiswitch"] },
      "dish.sky > lnb.sky, lnb.vl > psu.vl, lnb.hl > psu.hl, lnb.vh > psu.vh, lnb.hh > psu.hh",
    );
    const count = (port: string) => bandsAt(design, "lnb", port).reduce((n, b) => n + liveCount(b), 0);
    expect(["vl", "hl", "vh", "hh"].map(count)).toEqual([24, 26, 16, 17]);
  });

  test("33 of 83 are lost when a wideband feed goes through plates of 950 to 2150 MHz", () => {
    const design = draw(
      {
        dish,
        lnb: ["lnb-wideband"],
        p1: ["outlet-diplexed"],
        p2: ["outlet-diplexed"],
        rx: ["receiver-hybrid"],
      },
      "dish.sky > lnb.sky, lnb.v > p1.in, lnb.h > p2.in, p1.sat > rx.v, p2.sat > rx.h",
    );
    const satellite = verdictOf(design, "rx").services.find((s) => s.service === "satellite");
    expect(satellite).toMatchObject({ wanted: 83, got: 83 - 33 });
    const lost = (plate: string) =>
      bandsAt(design, plate, "sat").reduce((n, b) => n + b.level.length - liveCount(b), 0);
    expect({ V: lost("p1"), H: lost("p2") }).toEqual({ V: 15, H: 18 });
  });

  test("none is lost through plain satellite plates", () => {
    const design = draw(
      { dish, lnb: ["lnb-wideband"], p1: ["outlet-sat"], p2: ["outlet-sat"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > p1.in, lnb.h > p2.in, p1.sat > rx.v, p2.sat > rx.h",
    );
    expect(verdictOf(design, "rx").services[0]).toMatchObject({ wanted: 83, got: 83 });
  });
});

// Common practice, no source.
describe("what installers know of shared and halved feeds", () => {
  test("a split universal output gives each receiver a quarter of the transponders per request", () => {
    const design = draw(
      {
        dish: ["dish"],
        lnb: ["lnb-universal"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-sat", { polarisation: "H", half: "high" }],
        r2: ["receiver-sat", { polarisation: "V", half: "low" }],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    );
    for (const rx of ["r1", "r2"])
      expect(verdictOf(design, rx).services[0]).toMatchObject({ wanted: 80, got: 20 });
  });

  test("a wideband receiver with one cable gets half of them", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-wideband"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > rx.v",
    );
    expect(verdictOf(design, "rx").services[0]).toMatchObject({ wanted: 80, got: 40 });
  });
});

// Friis' formula, computed by hand: F = F1 + (F2 − 1)/G1 + (F3 − 1)/(G1·G2).
describe("noise follows Friis without being told", () => {
  const chain = draw(
    {
      uhf: ["aerial-uhf", { levelDbuv: 50 }],
      mast: ["amp-masthead", { gainDb: 15, noiseFigureDb: 2 }],
      loss: ["attenuator", { lossDb: 10, dcPass: true }],
      psu: ["power-inserter", { lossDb: 0 }],
      tv: ["receiver-tv"],
    },
    "uhf.out > mast.in, mast.out > loss.in, loss.out > psu.in, psu.out > tv.in",
  );
  /** Noise figure from aerial to behind the tuner of 8 dB: what C/N is lost against the aerial's own. */
  function noiseFigure(design: Design): number {
    const aerial = bandsAt(design, "uhf", "out")[0];
    const cnMin = verdictOf(design, "tv").services[0]?.cnMin;
    if (!aerial || cnMin === undefined) throw new Error("no signal");
    return cnDb(aerial, 0) - cnMin;
  }

  test("masthead 2 dB / 15 dB, 10 dB of cable, tuner 8 dB: 5.50 dB", () => {
    expect(noiseFigure(chain)).toBeCloseTo(5.5, 2);
  });

  test("the same without the masthead amplifier: 18.0 dB", () => {
    const bare: Design = {
      ...chain,
      parts: chain.parts.filter((p) => p.id !== "mast"),
      wires: [{ from: ["uhf", "out"], to: ["loss", "in"] }, ...chain.wires.slice(2)],
    };
    expect(noiseFigure(bare)).toBeCloseTo(18.0, 2);
  });

  test("an unpowered masthead amplifier is a loss, and the TV goes dark", () => {
    const dark = withOptions(chain, "psu", { switchedOn: false });
    expect(verdictOf(dark, "tv").services[0]?.got).toBe(0);
    const level = (design: Design) => bandsAt(design, "mast", "out")[0]?.level[0] ?? Number.NaN;
    expect(level(dark)).toBeLessThan(50);
    expect(level(chain)).toBeCloseTo(65, 9);
  });
});

const simulated = hasNgspice("splitters on the canvas against a circuit simulator");

describe.skipIf(!simulated)("a splitter on the canvas agrees with ngspice", () => {
  /** Loss from the aerial to one leg, on the canvas. */
  function lossOnCanvas(options: Record<string, unknown>): number {
    const design = draw(
      { uhf: ["aerial-uhf", { levelDbuv: 60 }], split: ["splitter", options] },
      "uhf.out > split.in",
    );
    const band = bandsAt(design, "split", "out1")[0];
    const range = band && levelRange(band);
    if (!range) throw new Error("no signal");
    expect(range.maxDbuv - range.minDbuv).toBeCloseTo(0, 9);
    return 60 - range.maxDbuv;
  }

  test.each([2, 3, 4, 8])("resistive, %i ways", (ways) => {
    const arm = (75 * (ways - 1)) / (ways + 1);
    const legs = Array.from({ length: ways }, (_, i) => `Ra${i} hub o${i} ${arm}\nRl${i} o${i} 0 75`);
    const [leg = Number.NaN] = simulate({
      circuit: ["V1 emf 0 dc 0 ac 2", "Rs emf in 75", `Rin in hub ${arm}`, ...legs].join("\n"),
      commands: ["ac lin 1 6e8 6e8"],
      read: ["vdb(o0)"],
    });
    expect(lossOnCanvas({ ways, type: "resistive" })).toBeCloseTo(-leg, 3);
  });
});
