/** PO: supply, commands, load and tuners as the inspector tells them. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../../src/evaluate/evaluate.ts";
import type { Evaluation, PartRecord } from "../../../../src/evaluate/evaluation.ts";
import { tunersOf } from "../../../../src/findings/tuners.ts";
import { aerialFigures } from "../../../../src/ui/features/inspector/sections/aerialFigures.ts";
import { loadLines } from "../../../../src/ui/features/inspector/sections/loads.ts";
import { loadOfSource, supplyRows } from "../../../../src/ui/features/inspector/sections/supply.ts";
import { speakersOf } from "../../../../src/ui/features/inspector/sections/switches.ts";
import { tunerLevels } from "../../../../src/ui/features/inspector/sections/tunerLevels.ts";
import { draw, type Sketch } from "../../../draw.ts";

function at(evaluation: Evaluation, id: string): PartRecord {
  const record = evaluation.record(id);
  if (!record) throw new Error(`no part ${id}`);
  return record;
}

/** A converter of 250 mA, 50 m of copper-clad steel of 130 Ω/km, a receiver of 17.0 V for horizontal. */
const LONG_STEEL = evaluate(
  draw(
    {
      dish: ["dish"],
      lnb: ["lnb-universal", { commonMa: 200, outputMa: 50 }],
      run: ["cable", { grade: "own", loopOhmPerKm: 130, lengthM: 50 }],
      rx: ["receiver-sat", { volts18: 17, polarisation: "H" }],
    },
    "dish.sky > lnb.sky, lnb.out > run.in, run.out > rx.sat",
  ),
);

/** No output at all: nobody speaks. */
const NO_SWITCH = {
  id: "",
  part: "",
  port: "",
  offers: [],
  setting: null,
  thresholdVolts: 0,
  contested: false,
};

/** Two receivers on one output behind a splitter that passes supply on all its ways. */
function pair(
  second: Record<string, unknown>,
  splitter: Record<string, unknown> = { dc: "all" },
): Evaluation {
  return evaluate(
    draw(
      {
        dish: ["dish"],
        lnb: ["lnb-universal"],
        split: ["splitter", splitter],
        r1: ["receiver-sat", { polarisation: "V", half: "low" }],
        r2: ["receiver-sat", second],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ),
  );
}

describe("commands at a switched output", () => {
  test("PO1: 250 mA over 50 m at 130 Ω/km cost 1.63 V: 15.4 of 17.0 V arrive (Ohm's law)", () => {
    const [speaker] = speakersOf(LONG_STEEL, at(LONG_STEEL, "lnb").switches.out ?? NO_SWITCH);
    expect(speaker?.offer.dropVolts).toBeCloseTo(1.63, 1);
    expect(speaker?.offer.volts18).toBeCloseTo(15.4, 1);
    expect(speaker?.tooLow).toBe(false);
    expect(speaker?.load).toEqual({ milliamps: 250, limitMa: 400 });
  });

  test("PO2: volts below the threshold of 15 V are marked as too low", () => {
    const evaluation = evaluate(
      draw(
        {
          lnb: ["lnb-universal", { commonMa: 200, outputMa: 50 }],
          run: ["cable", { grade: "own", loopOhmPerKm: 130, lengthM: 80 }],
          rx: ["receiver-sat", { volts18: 17, polarisation: "H" }],
        },
        "lnb.out > run.in, run.out > rx.sat",
      ),
    );
    // 17.0 − 0.25 · 10.4 = 14.4 V.
    const [speaker] = speakersOf(evaluation, at(evaluation, "lnb").switches.out ?? NO_SWITCH);
    expect(speaker?.tooLow).toBe(true);
  });

  test("PO16: at a position switch the voltage decides nothing, so none is too low there", () => {
    const evaluation = evaluate(
      draw(
        {
          lnb: ["lnb-universal", { commonMa: 200, outputMa: 50 }],
          sw: ["position-switch"],
          run: ["cable", { grade: "own", loopOhmPerKm: 130, lengthM: 80 }],
          rx: ["receiver-sat", { volts18: 17, polarisation: "H", position: "1" }],
        },
        "lnb.out > sw.in1, sw.out > run.in, run.out > rx.sat",
      ),
    );
    const tooLow = (id: string) =>
      Object.values(at(evaluation, id).switches).flatMap((s) =>
        speakersOf(evaluation, s).map((x) => x.tooLow),
      );
    expect(tooLow("sw")).toEqual([false]);
    expect(tooLow("lnb")).toEqual([true]);
  });

  test("PO3: of two speakers the higher voltage comes first, and each says what it asks for", () => {
    const evaluation = pair({ polarisation: "H", half: "high" });
    const { out } = at(evaluation, "lnb").switches;
    const speakers = out ? speakersOf(evaluation, out) : [];
    expect(speakers.map((s) => [s.name, s.words])).toEqual([
      ["r2", "asks for H high"],
      ["r1", "asks for V low"],
    ]);
    expect(out?.contested).toBe(true);
  });
});

describe("supply at the ports of a part", () => {
  test("PO4: the winner feeds, the weaker one does not count", () => {
    const evaluation = pair({ polarisation: "H", half: "high" });
    const rows = supplyRows(evaluation, at(evaluation, "lnb"));
    expect(rows.map((r) => [r.source, r.state])).toEqual([
      ["r2", "feeds"],
      ["r1", "weaker"],
    ]);
  });

  test("PO5: at a cable it arrives at one end and is handed on at the other, less what the cable takes", () => {
    const rows = supplyRows(LONG_STEEL, at(LONG_STEEL, "run"));
    const arriving = rows.find((r) => r.way === "arrives");
    const handedOn = rows.find((r) => r.way === "handed on");
    expect(arriving?.volts).toBeCloseTo(17, 6);
    // 0.25 A · 6.5 Ω.
    expect((arriving?.volts ?? 0) - (handedOn?.volts ?? 0)).toBeCloseTo(1.625, 3);
    expect(rows.map((r) => r.milliamps)).toEqual([250, 250]);
  });

  test("PO6: a supply behind a switch that stands otherwise is dormant", () => {
    const evaluation = evaluate(
      draw(
        {
          a: ["lnb-universal"],
          b: ["lnb-universal"],
          sw: ["position-switch"],
          rx: ["receiver-sat", { position: "2" }],
        },
        "a.out > sw.in1, b.out > sw.in2, sw.out > rx.sat",
      ),
    );
    expect(supplyRows(evaluation, at(evaluation, "a")).map((r) => r.state)).toEqual(["dormant"]);
    expect(supplyRows(evaluation, at(evaluation, "b")).map((r) => r.state)).toEqual(["feeds"]);
  });

  test("PO7: a part on no powered line has none, nor does an unloaded source deliver anything", () => {
    const evaluation = evaluate(draw({ rx: ["receiver-sat"], tv: ["receiver-tv"] }, ""));
    expect(supplyRows(evaluation, at(evaluation, "tv"))).toEqual([]);
    const [offer] = at(evaluation, "rx").offers.sat ?? [];
    expect(offer && loadOfSource(evaluation, offer)).toBeNull();
  });
});

describe("how hard an amplifier is driven", () => {
  const channels = (n: number) => Array.from({ length: n }, (_, i) => ({ channel: 21 + 3 * i }));
  const driven = (n: number): Sketch => ({
    uhf: ["aerial-uhf", { levelDbuv: 60, channels: channels(n) }],
    amp: ["amp-masthead", { gainDb: 25, outputDbuv: 100 }],
    feed: ["power-inserter"],
    tv: ["receiver-tv"],
  });

  function linesOf(n: number) {
    const evaluation = evaluate(draw(driven(n), "uhf.out > amp.in, amp.out > feed.in, feed.out > tv.in"));
    return loadLines(at(evaluation, "amp"));
  }

  test("PO8: six carriers at 85 dBµV, rated 100: limit 94.8 (7.5·log₁₀(5) = 5.24), products 60 + 2·(94.8 − 85) = 80 dB below", () => {
    const [line] = linesOf(6);
    expect(line?.words).toBe(
      "6 carriers at 85.0 dBµV; limit 94.8 dBµV (100 − 7.5·log₁₀(5)); products 80 dB below",
    );
    // Power sum of six equal carriers: 85 + 10·log₁₀(6) = 92.8 dBµV.
    expect(line?.totalDbuv).toBeCloseTo(92.78, 1);
  });

  test("PO9: two carriers are what the rating holds for: nothing is taken off", () => {
    expect(linesOf(2)[0]?.words).toContain("limit 100.0 dBµV (100, as rated)");
  });

  test("PO10: one carrier has nothing to make products with", () => {
    expect(linesOf(1)).toEqual([]);
  });
});

describe("the level from the field", () => {
  test("PO11: 60 dBµV/m, 12.15 dBi (10 dB over a dipole): 50.2 dBµV at 474 MHz (E − 9.83), 46.9 at 690 MHz (E − 13.10)", () => {
    // U = E + G − 20·log₁₀ f + 31.53, as the antenna factor of textbooks gives it for 75 Ω.
    const evaluation = evaluate(
      draw(
        {
          uhf: [
            "aerial-uhf",
            {
              levelFrom: "field",
              fieldDbuvPerM: 60,
              gainDbi: 12.15,
              channels: [{ channel: 21 }, { channel: 30 }, { channel: 48 }],
            },
          ],
        },
        "",
      ),
    );
    const found = aerialFigures(at(evaluation, "uhf"));
    expect(found?.lines.map((l) => l.frequencyMHz)).toEqual([474, 690]);
    expect(found?.lines[0]?.factorDb).toBeCloseTo(-9.83, 2);
    expect(found?.lines[1]?.levelDbuv).toBeCloseTo(46.9, 1);
  });

  test("PO12: a measured level tells the field that it would take", () => {
    const evaluation = evaluate(
      draw({ uhf: ["aerial-uhf", { levelDbuv: 50.17, gainDbi: 12.15, channels: [{ channel: 21 }] }] }, ""),
    );
    const found = aerialFigures(at(evaluation, "uhf"));
    expect(found?.fromField).toBe(false);
    expect(found?.lines[0]?.fieldDbuvPerM).toBeCloseTo(60, 1);
  });

  test("what an aerial loses by looking elsewhere stands beside each transmitter", () => {
    // Recommendation ITU-R BT.419-3, UHF: nothing within 20°, 0.4 · (45 − 20) = 10 dB at 45°.
    const channels = [
      { channel: 21, transmitter: "Hill", bearingDeg: 90 },
      { channel: 30, transmitter: "Dale", bearingDeg: 135, levelOffsetDb: 3 },
    ];
    const turned = { levelDbuv: 60, aim: "bearing", bearingDeg: 90, channels };
    const found = aerialFigures(at(evaluate(draw({ uhf: ["aerial-uhf", turned] }, "")), "uhf"));
    expect(found?.lines.map((l) => [l.band.origin.transmitter, l.aimLossDb, l.offsetDb])).toEqual([
      ["Hill", 0, 0],
      ["Dale", expect.closeTo(10, 9), expect.closeTo(3, 9)],
    ]);
  });

  test("PO13: other parts have none", () => {
    const evaluation = evaluate(draw({ dish: ["dish"], tv: ["receiver-tv"], active: ["aerial-active"] }, ""));
    expect(aerialFigures(at(evaluation, "dish"))).toBeNull();
    expect(aerialFigures(at(evaluation, "tv"))).toBeNull();
    // What it puts out is amplified: no field strength makes that level.
    expect(aerialFigures(at(evaluation, "active"))).toBeNull();
  });
});

describe("the level at a tuner", () => {
  const levelsOf = (evaluation: Evaluation, id: string) => {
    const record = at(evaluation, id);
    const sources = evaluation.records.filter((r) => r.kind.family === "receive");
    return tunersOf(record, sources).map((tuner) => tunerLevels(record, tuner));
  };

  test("PO14: on a stacked feed it is that of the tuner's own user band, as held by the converter", () => {
    const evaluation = evaluate(
      draw(
        {
          dish: ["dish"],
          lnb: ["lnb-stacked", { stackDbuv: 82 }],
          rx: ["receiver-stacked", { tuners: 3 }],
        },
        "dish.sky > lnb.sky, lnb.out > rx.sat",
      ),
    );
    const levels = levelsOf(evaluation, "rx");
    expect(levels.map((l) => l && Math.round(l.weakest.levelDbuv))).toEqual([82, 82, null]);
  });

  test("PO15: on a switched one it is that of the quarter selected now", () => {
    const rows = [
      { frequencyMHz: 10_800, polarisation: "V" },
      { frequencyMHz: 10_820, polarisation: "H", eirpOffsetDb: -5 },
    ];
    const evaluation = evaluate(
      draw(
        {
          dish: ["dish", { transponders: rows }],
          lnb: ["lnb-universal"],
          rx: ["receiver-sat", { polarisation: "H", half: "low" }],
        },
        "dish.sky > lnb.sky, lnb.out > rx.sat",
      ),
    );
    const [level] = levelsOf(evaluation, "rx");
    expect(level?.weakest.band.origin.polarisation).toBe("H");
    expect(level?.strongest).toEqual(level?.weakest);
  });
});
