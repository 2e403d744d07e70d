/**
 * Level plans as they are calculated on paper, against the evaluator. All at 100 MHz (one FM station), with a
 * cable of 20 dB/100 m there: k1 = 2 dB/100 m/√MHz, since √100 = 10. So one metre is 0.2 dB.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { draw, type Sketch } from "../draw.ts";

const LAUNCH_DBUV = 95;
const HEAD: Sketch[string] = [
  "aerial-fm",
  { levelFrom: "terminals", levelDbuv: LAUNCH_DBUV, stations: [{ frequencyMHz: 100 }] },
];
const PLATE: Sketch[string] = ["outlet-tv"];

/** Cable at 0.2 dB/m. */
function metres(lengthM: number): Sketch[string] {
  return ["cable", { lengthM, grade: "own", k1: 2, k2: 0 }];
}

/** A two-way splitter whose data sheet says 4 dB per leg. */
const SPLIT_4: Sketch[string] = ["splitter", { ways: 2, loss: "own", ownTvDb: 4, ownSatDb: 4 }];

function tap(tapLossDb: number): Sketch[string] {
  return ["tap", { tapLossDb }];
}

/** Loss from the head to the input of each plate [dB]. */
function lossTo(design: Design, plates: readonly string[]): number[] {
  const evaluation = evaluate(design);
  return plates.map((plate) => {
    const levels = (evaluation.record(plate)?.inputs.in?.bands ?? []).flatMap((b) => Array.from(b.level));
    const [level] = levels;
    if (level === undefined || levels.length !== 1) throw new Error(`no one carrier at ${plate}`);
    return LAUNCH_DBUV - level;
  });
}

// Worked by hand, as in any planning exercise of the trade; lengths invented.
describe("splitter −4/−8 dB, cable 0.2 dB/m, taps −10/−12/−18: 34 dB from the head to every outlet", () => {
  // A splitter behind one leg of another: that leg has 4 dB, each of the two behind it 4 + 4 = 8 dB.
  //   A:  4 + 45 m · 0.2 (9) + tap 18 + 15 m · 0.2 (3) = 34 dB
  //   B:  8 + 60 m · 0.2 (12) + tap 12 + 10 m · 0.2 (2) = 34 dB
  //   C:  8 + 72 m · 0.2 (14.4) + tap 10 + 8 m · 0.2 (1.6) = 34 dB
  const design = draw(
    {
      head: HEAD,
      split1: SPLIT_4,
      split2: SPLIT_4,
      runA: metres(45),
      tapA: tap(18),
      dropA: metres(15),
      plateA: PLATE,
      runB: metres(60),
      tapB: tap(12),
      dropB: metres(10),
      plateB: PLATE,
      runC: metres(72),
      tapC: tap(10),
      dropC: metres(8),
      plateC: PLATE,
      endA: ["load"],
      endB: ["load"],
      endC: ["load"],
    },
    `head.out > split1.in, split1.out1 > runA.in, split1.out2 > split2.in,
     split2.out1 > runB.in, split2.out2 > runC.in,
     runA.out > tapA.in, tapA.tap1 > dropA.in, dropA.out > plateA.in, tapA.out > endA.in,
     runB.out > tapB.in, tapB.tap1 > dropB.in, dropB.out > plateB.in, tapB.out > endB.in,
     runC.out > tapC.in, tapC.tap1 > dropC.in, dropC.out > plateC.in, tapC.out > endC.in`,
  );

  test.each([
    { plate: "plateA", sum: 4 + 9 + 18 + 3 },
    { plate: "plateB", sum: 8 + 12 + 12 + 2 },
    { plate: "plateC", sum: 8 + 14.4 + 10 + 1.6 },
  ])("$plate", ({ plate, sum }) => {
    expect(sum).toBeCloseTo(34, 9);
    const [loss = Number.NaN] = lossTo(design, [plate]);
    expect(Math.abs(loss - sum)).toBeLessThan(0.05);
  });
});

/**
 * Through loss of taps at TV frequencies as the trade's data sheets have it (from memory), to the tenth that
 * they are printed to: from … to.
 */
const THROUGH: Readonly<Record<8 | 10 | 12 | 16, readonly [number, number]>> = {
  8: [1.4, 1.6],
  10: [1.0, 1.3],
  12: [0.8, 1.0],
  16: [0.6, 0.8],
};

describe("two risers of unequal length from one splitter, balanced by their taps", () => {
  // Near riser, 10 m away: strong taps first to hold back what the short run leaves over.
  //   N1: 4 + 10 m (2)                                 + tap 16 + 10 m (2) = 24
  //   N2: 4 + 2 + through 16 + 5 m (1)                 + tap 12 + 22 m (4.4) = 23.4 + through
  //   N3: 4 + 2 + through 16 + 1 + through 12 + 5 m (1) + tap 10 + 22 m (4.4) = 22.4 + throughs
  // Far riser, 40 m away: weaker taps, and what is left over at its end goes into a pad.
  //   F1: 4 + 40 m (8)                                 + tap 10 + 10 m (2) = 24
  //   F2: 4 + 8 + through 10 + 5 m (1)                 + tap 8 + 9 m (1.8) = 22.8 + through
  //   F3: 4 + 8 + through 10 + 1 + through 8 + 5 m (1) + pad 6 + 6 m (1.2) = 21.2 + throughs
  const design = draw(
    {
      head: HEAD,
      split: SPLIT_4,
      near: metres(10),
      tapN1: tap(16),
      dropN1: metres(10),
      N1: PLATE,
      riseN2: metres(5),
      tapN2: tap(12),
      dropN2: metres(22),
      N2: PLATE,
      riseN3: metres(5),
      tapN3: tap(10),
      dropN3: metres(22),
      N3: PLATE,
      endN: ["load"],
      far: metres(40),
      tapF1: tap(10),
      dropF1: metres(10),
      F1: PLATE,
      riseF2: metres(5),
      tapF2: tap(8),
      dropF2: metres(9),
      F2: PLATE,
      riseF3: metres(5),
      padF3: ["attenuator", { lossDb: 6 }],
      dropF3: metres(6),
      F3: PLATE,
    },
    `head.out > split.in, split.out1 > near.in, split.out2 > far.in,
     near.out > tapN1.in, tapN1.tap1 > dropN1.in, dropN1.out > N1.in,
     tapN1.out > riseN2.in, riseN2.out > tapN2.in, tapN2.tap1 > dropN2.in, dropN2.out > N2.in,
     tapN2.out > riseN3.in, riseN3.out > tapN3.in, tapN3.tap1 > dropN3.in, dropN3.out > N3.in,
     tapN3.out > endN.in,
     far.out > tapF1.in, tapF1.tap1 > dropF1.in, dropF1.out > F1.in,
     tapF1.out > riseF2.in, riseF2.out > tapF2.in, tapF2.tap1 > dropF2.in, dropF2.out > F2.in,
     tapF2.out > riseF3.in, riseF3.out > padF3.in, padF3.out > dropF3.in, dropF3.out > F3.in`,
  );

  const rows: { plate: string; sum: number; through: readonly (keyof typeof THROUGH)[] }[] = [
    { plate: "N1", sum: 4 + 2 + 16 + 2, through: [] },
    { plate: "N2", sum: 4 + 2 + 1 + 12 + 4.4, through: [16] },
    { plate: "N3", sum: 4 + 2 + 1 + 1 + 10 + 4.4, through: [16, 12] },
    { plate: "F1", sum: 4 + 8 + 10 + 2, through: [] },
    { plate: "F2", sum: 4 + 8 + 1 + 8 + 1.8, through: [10] },
    { plate: "F3", sum: 4 + 8 + 1 + 1 + 6 + 1.2, through: [10, 8] },
  ];

  test.each(rows)(
    "$plate loses its sum, and what data sheets give for the taps that it lies behind",
    (row) => {
      const [loss = Number.NaN] = lossTo(design, [row.plate]);
      const least = row.through.reduce((db, t) => db + THROUGH[t][0], row.sum);
      const most = row.through.reduce((db, t) => db + THROUGH[t][1], row.sum);
      expect(loss).toBeGreaterThan(least - 0.05);
      expect(loss).toBeLessThan(most + 0.05);
    },
  );

  test("all six plates lie at 24 dB, within half a decibel", () => {
    const losses = lossTo(
      design,
      rows.map((r) => r.plate),
    );
    for (const loss of losses) expect(Math.abs(loss - 24)).toBeLessThan(0.5);
  });
});
