/**
 * BD: what a design costs to work out grows with its parts and with what is on its wires, never with the number of
 * ways through it or of settings of its switches. Counted, not timed.
 */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { fewAlternatives, MOST_ALTERNATIVES } from "../../src/evaluate/alternatives.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import { MOST_SUPPLIES } from "../../src/evaluate/power.ts";
import { report } from "../../src/findings/report.ts";
import { messageOf } from "../../src/sentences/finding.ts";
import { draw } from "../draw.ts";
import { messagesOf } from "../messages.ts";
import {
  anyStructure,
  chainOfReceivers,
  chainOfSources,
  ladder,
  STRUCTURES,
  switchLattice,
} from "../structures.ts";

type Counts = { readonly bands: number; readonly most: number; readonly work: number; readonly sent: number };

/** `sent`: bands that the sources send out. */
function countsOf(evaluation: Evaluation): Counts {
  const onWires = evaluation.design.wires.map((wire) => {
    const { bands, floors = [] } = evaluation.spectrum(wire);
    return bands.length + floors.length;
  });
  const sources = evaluation.records.filter((r) => r.kind.family === "receive");
  return {
    bands: onWires.reduce((sum, n) => sum + n, 0),
    most: Math.max(0, ...onWires),
    work: evaluation.records.reduce((sum, record) => sum + record.work, 0),
    sent: sources.flatMap((r) => Object.values(r.outputs)).reduce((sum, s) => sum + s.bands.length, 0),
  };
}

/**
 * Bands on one wire: each that is sent, in both halves of the sky band and with the floor of its converter, and the
 * alternatives, of which each setting brings one quadrant.
 */
function mostBands({ sent }: Counts): number {
  return 4 * sent + MOST_ALTERNATIVES;
}

/** Work for one band on one wire: its carriers (40 transponders, or 50 slices of floor), itself, and its meetings. */
const WORK_OF_A_BAND = 150;

function expectBounded(design: Design): Counts {
  const evaluation = evaluate(design);
  const counts = countsOf(evaluation);
  // A bound on nothing would always be kept.
  expect(counts.bands).toBeGreaterThan(0);
  expect(counts.most).toBeLessThanOrEqual(mostBands(counts));
  // Wires and unjoined outputs both bear bands.
  const outputs = evaluation.records.reduce((n, r) => n + Object.keys(r.outputs).length, 0);
  expect(counts.work).toBeLessThanOrEqual(WORK_OF_A_BAND * (counts.bands + outputs * 8));
  for (const { outputs: out } of evaluation.records)
    for (const { bands } of Object.values(out))
      for (const { level, noise, interference } of bands)
        for (let i = 0; i < level.length; i++)
          expect((level[i] ?? 0) + (noise[i] ?? 0) + (interference[i] ?? 0)).not.toBeNaN();
  return counts;
}

describe("bands and work are bounded", () => {
  test.each(Object.entries(STRUCTURES))("BD1: %s, and twice as much of it", (_, make) => {
    const [small, large] = [expectBounded(make(50)), expectBounded(make(200))];
    // Per band on a wire no more is done, however large the design is.
    expect(large.work / large.bands).toBeLessThan(2 * (small.work / small.bands) + 20);
  });

  test("BD2: any row of ladders, switches, amplifiers and further sources", () => {
    fc.assert(
      fc.property(anyStructure(30), (design) => void expectBounded(design)),
      { numRuns: 40 },
    );
  });

  test("BD3: any such row is reported on", () => {
    fc.assert(
      fc.property(anyStructure(15), (design) => {
        const evaluation = evaluate(design);
        for (const finding of report(evaluation).findings) {
          expect(evaluation.record(finding.parts[0])).toBeDefined();
          expect(messageOf(finding, evaluation)).toMatch(/\.$/);
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe("a ladder", () => {
  /**
   * By hand: each of the 40 stages halves in the splitter and adds two equal ways in the combiner. Both are said to
   * lose 4 dB at TV, so a stage changes the level by 3.01 − 2 · 4 = −4.99 dB.
   */
  test("BD4: 2 to the power of 40 ways add up by power, stage by stage", () => {
    const design = ladder({ stages: 40, ways: 2, lossDb: 4 });
    const evaluation = evaluate(design);
    const at = (wire: number) => {
      const on = design.wires[wire];
      const tv = on && evaluation.spectrum(on).bands.find((b) => b.origin.service === "tv");
      return tv?.level[0] ?? Number.NaN;
    };
    const intoFirst = design.wires.findIndex(
      ({ to }) => to[0] === design.parts.find((p) => p.kind === "splitter")?.id,
    );
    const intoLast = design.wires.findIndex(
      ({ to }) => to[0] === design.parts.find((p) => p.kind === "diplexer-split")?.id,
    );
    expect(at(intoLast) - at(intoFirst)).toBeCloseTo(40 * -4.9897, 1);
  });

  test("BD5: each stage where ways meet is reported, once", () => {
    const design = ladder({ stages: 12, ways: 2 });
    const twice = report(evaluate(design)).findings.filter((f) => f.rule === "same-signal-twice");
    expect(new Set(twice.map((f) => f.parts[0])).size).toBe(twice.length);
    expect(twice).toHaveLength(12);
  });
});

describe("switches", () => {
  test("BD6: what is set now is always worked out, and what is left out is said", () => {
    const design = switchLattice({ stages: 8 });
    const evaluation = evaluate(design);
    const last = design.wires.at(-1);
    const { bands } = last ? evaluation.spectrum(last) : { bands: [] };
    expect(bands.filter((b) => b.selected)).toHaveLength(1);
    expect(bands).toHaveLength(1 + MOST_ALTERNATIVES);
    const said = messagesOf(evaluation, "many-alternatives");
    // Four quadrants, doubled at every switch: 64 settings after four, 128 after five, of which one is the present one.
    expect(said[0]).toMatch(/^Switches offer 127 settings behind “p\d+” beside the present one; only 64/);
  });

  test("BD7: a setting is kept with all its bands, or left out with all of them", () => {
    const lattice = evaluate(switchLattice({ stages: 6 }));
    const record = lattice.records.find((r) => r.kind.kind === "position-switch");
    const { bands = [] } = record?.outputs.out ?? {};
    const many = Array.from({ length: 20 }, () => bands).flat();
    expect(fewAlternatives(many)).toEqual({ kept: many, left: 0 });
  });

  test("BD8: beyond twelve in a row a switch hands on what is set now", () => {
    const evaluation = evaluate(switchLattice({ stages: 15 }));
    const last = evaluation.design.wires.at(-1);
    const present = last && evaluation.spectrum(last).bands.filter((b) => b.selected);
    expect(present).toHaveLength(1);
    expect(present?.[0]?.conditions.length).toBe(12);
    expect(messagesOf(evaluation).join(" ")).toMatch(/More than 12 switches in a row lead to/);
  });
});

describe("supplies and loads", () => {
  test("BD9: by however many ways it is reached, a part draws once", () => {
    // 60 mA in common and 35 mA for its one output in use: 95 mA, by two, four or 2^12 ways. Each stage has a diode of
    // 0.5 V, so 7 V of 13 are left at the last.
    for (const stages of [1, 2, 12]) {
      const evaluation = evaluate(ladder({ stages, ways: 2 }));
      const first = evaluation.records.find((r) => r.kind.kind === "receiver-sat");
      expect(first?.demands.sat?.milliamps).toBeCloseTo(95, 2);
    }
  });

  test("BD10: a supply that comes by many ways is offered once, by its strongest", () => {
    const evaluation = evaluate(ladder({ stages: 6, ways: 4 }));
    const head = evaluation.records.find((r) => r.kind.kind === "lnb-universal");
    expect(head?.feeds.out).toHaveLength(1);
  });

  test("BD11: of very many supplies on one line the strongest are worked out, and that is said", () => {
    const evaluation = evaluate(chainOfReceivers({ stages: 80 }));
    const head = evaluation.records.find((r) => r.kind.kind === "lnb-universal");
    expect(head?.feeds.out?.length).toBeLessThanOrEqual(MOST_SUPPLIES);
    const said = messagesOf(evaluation, "many-alternatives");
    expect(said[0]).toMatch(/supplies meet on one line/);
  });

  test("BD14: of very many switch positions on one supply network the first are solved, and that is said", () => {
    const evaluation = evaluate(switchLattice({ stages: 100 }));
    const said = messagesOf(evaluation, "many-alternatives").filter((text) => /supply network/.test(text));
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/for \d+ of them, all receivers are taken to ask alike/);
    // Told of one part only, and found alike every time.
    const left = (of: Evaluation) => of.records.map((r) => r.omitted?.supplyStates ?? 0);
    expect(left(evaluation).filter((n) => n > 0)).toHaveLength(1);
    expect(left(evaluate(switchLattice({ stages: 100 })))).toEqual(left(evaluation));
    expect(left(evaluate(switchLattice({ stages: 10 }))).every((n) => n === 0)).toBe(true);
  });

  test("BD12: a chain of LNBs draws the sum of them", () => {
    // The first, and one at every second of the ten stages: six LNBs of 95 mA each.
    const evaluation = evaluate(chainOfSources({ stages: 10 }));
    const last = evaluation.records.find((r) => r.kind.kind === "receiver-sat");
    expect(last?.demands.sat?.milliamps).toBeCloseTo(6 * 95, 2);
  });
});

describe("an amplifier that is driven far beyond what it can give", () => {
  test("BD13: puts out no more than its saturation, however much comes in", () => {
    const design = draw(
      {
        tv: ["aerial-fm", { levelDbuv: 110, stations: [{ frequencyMHz: 98 }] }],
        a: ["amp-distribution", { gainDb: 40, outputDbuv: 100, inputs: "one" }],
        b: ["amp-distribution", { gainDb: 40, outputDbuv: 100, inputs: "one" }],
      },
      "tv.out > a.in, a.out > b.in",
    );
    const level = evaluate(design).record("b")?.outputs.out?.bands[0]?.level[0] ?? Number.NaN;
    // Rated 100 dBµV for 60 dB: the intercept lies 30 dB above that, saturation 9.64 − 1.16 dB below it (Rapp's law, p = 2).
    expect(level).toBeCloseTo(121.53, 2);
  });
});
