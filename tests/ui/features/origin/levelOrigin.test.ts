/** OR: how a level came about, in words and figures that add up. */
import { describe, expect, test } from "vitest";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { evaluate } from "../../../../src/evaluate/evaluate.ts";
import type { Evaluation, PartRecord } from "../../../../src/evaluate/evaluation.ts";
import { report } from "../../../../src/findings/report.ts";
import { endWords } from "../../../../src/ui/features/origin/endWords.ts";
import { levelDiagramShape, noiseDbuv } from "../../../../src/ui/features/origin/levelDiagramShape.ts";
import { levelOrigin } from "../../../../src/ui/features/origin/levelOrigin.ts";
import { extremesOf, questionAt } from "../../../../src/ui/kit/asked/question.ts";
import { type VerdictFigure, verdictQuestion } from "../../../../src/ui/kit/asked/verdictQuestion.ts";
import { draw } from "../../../draw.ts";

const TV = { origin: "uhf", index: 0 };

/** One channel of 64 dBµV at 474 MHz, an attenuator, a cable, a television. */
function chain(options: { cable?: Record<string, unknown>; pad?: number } = {}): Evaluation {
  return evaluate(
    draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 64, channels: [{ channel: 21, mode: "dvbt-64qam-2/3" }] }],
        pad: ["attenuator", { lossDb: options.pad ?? 6 }],
        run: ["cable", options.cable ?? {}],
        tv: ["receiver-tv"],
      },
      "uhf.out > pad.in, pad.out > run.in, run.out > tv.in",
    ),
  );
}

function recordOf(evaluation: Evaluation, id: string): PartRecord {
  const record = evaluation.record(id);
  if (!record) throw new Error(`no part ${id}`);
  return record;
}

describe("the answer", () => {
  test("OR1: leads from the aerial to the television, and what each part did adds up", () => {
    const found = levelOrigin(chain(), { at: { part: "tv", port: "in" }, carrier: TV });
    expect(found?.steps.map((s) => s.part)).toEqual(["uhf", "pad", "run"]);
    // Source level, less the attenuator as set: arithmetic.
    expect(found?.steps.map((s) => Math.round(s.levelDbuv)).slice(0, 2)).toEqual([64, 58]);
    expect(found?.steps[0]?.did).toEqual(["starts here at 474 MHz"]);
    expect(found?.steps[1]?.did).toEqual(["loss −6.0 dB"]);
  });

  test("OR2: an attenuator costs as much level as C/N, for it makes noise of its own (passive part at 290 K: F = L, IEEE)", () => {
    const found = levelOrigin(chain({ pad: 10 }), { at: { part: "tv", port: "in" }, carrier: TV });
    const [source, pad] = found?.steps ?? [];
    // A source at 290 K has noise kTB; behind any passive part it is kTB again.
    expect((source?.cnDb ?? 0) - (pad?.cnDb ?? 0)).toBeCloseTo(10, 6);
    expect(pad && source && noiseDbuv(pad)).toBeCloseTo(source ? noiseDbuv(source) : Number.NaN, 6);
  });

  test("OR3: behind the tuner C/N is that of a receiver with 8 dB noise figure: level − kTB − 8 dB", () => {
    const found = levelOrigin(chain({ pad: 20 }), { at: { part: "tv", port: "in" }, carrier: TV });
    const level = found?.steps.at(-1)?.levelDbuv ?? Number.NaN;
    // kTB of 7.61 MHz in 75 Ω at 290 K: 3.59 dBµV (k from the SI); the network adds nothing to its own 290 K.
    expect(found?.tuner?.cniDb).toBeCloseTo(level - 3.59 - 8, 1);
  });

  test("OR4: a carrier that does not get there has no answer, nor has a port that is not there", () => {
    const evaluation = chain();
    expect(
      levelOrigin(evaluation, { at: { part: "tv", port: "in" }, carrier: { origin: "dish/V", index: 0 } }),
    ).toBeNull();
    expect(levelOrigin(evaluation, { at: { part: "tv", port: "elsewhere" }, carrier: TV })).toBeNull();
    expect(levelOrigin(evaluation, { at: { part: "nobody", port: "in" }, carrier: TV })).toBeNull();
  });

  test("OR5: conversion is said with its oscillator: 12 702 − 10 600 = 2102 MHz", () => {
    const evaluation = evaluate(
      draw(
        {
          dish: ["dish", { transponders: [{ frequencyMHz: 12_702, polarisation: "H" }] }],
          lnb: ["lnb-universal"],
          rx: ["receiver-sat", { polarisation: "H", half: "high" }],
        },
        "dish.sky > lnb.sky, lnb.out > rx.sat",
      ),
    );
    const found = levelOrigin(evaluation, {
      at: { part: "rx", port: "sat" },
      carrier: { origin: "dish/H", index: 0 },
    });
    const words = found?.steps[1]?.did[0]?.replace(/\u202f/g, " ");
    expect(words).toBe("10 600 MHz oscillator: 12 702 → 2102 MHz");
  });

  test("OR6: the end says how far the level lies from its limits", () => {
    // 64 dBµV less 30 dB: 34 dBµV; EN 60728-1 as quoted: 45 dBµV at least for 64 QAM.
    const low = levelOrigin(chain({ pad: 30, cable: { lengthM: 0.1 } }), {
      at: { part: "tv", port: "in" },
      carrier: TV,
    });
    expect(low?.limits).toMatchObject({ minDbuv: 45, maxDbuv: 74 });
    const lack = (low?.limits?.minDbuv ?? 0) - (low?.steps.at(-1)?.levelDbuv ?? 0);
    expect(lack).toBeGreaterThan(10);
    expect(low && endWords(low)[0]).toContain(`${lack.toFixed(1)} dB too little`);
    const good = levelOrigin(chain(), { at: { part: "tv", port: "in" }, carrier: TV });
    expect(good && endWords(good)[0]).toContain("within ");
  });

  test("OR7: the part that takes a carrier away says so", () => {
    const evaluation = evaluate(
      draw(
        {
          dish: ["dish", { transponders: [{ frequencyMHz: 10_800, polarisation: "V" }] }],
          lnb: ["lnb-wideband"],
          dip: ["diplexer-split"],
          rx: ["receiver-sat"],
        },
        "dish.sky > lnb.sky, lnb.v > dip.in, dip.sat > rx.sat",
      ),
    );
    // 10 800 − 10 400 = 400 MHz: below the satellite side of any diplexer.
    const found = levelOrigin(evaluation, {
      at: { part: "rx", port: "sat" },
      carrier: { origin: "dish/V", index: 0 },
    });
    expect(found?.steps.filter((s) => s.cutHere).map((s) => s.part)).toEqual(["dip"]);
    expect(found?.steps.at(-1)?.did).toContain("filtered out here");
  });
});

describe("what a step did", () => {
  test("OR13: says where interference comes in, and only there: 64 against 44 dBµV is a C/I of 20 dB", () => {
    const channels = [{ channel: 21 }];
    const evaluation = evaluate(
      draw(
        {
          uhf: ["aerial-uhf", { levelDbuv: 64, channels }],
          far: ["aerial-uhf", { levelDbuv: 44, channels }],
          both: ["combiner"],
          run: ["cable"],
          tv: ["receiver-tv"],
        },
        "uhf.out > both.in1, far.out > both.in2, both.out > run.in, run.out > tv.in",
      ),
    );
    const found = levelOrigin(evaluation, { at: { part: "tv", port: "in" }, carrier: TV });
    const told = found?.steps.filter((s) => s.did.some((w) => w.startsWith("interference")));
    expect(told?.map((s) => s.part)).toEqual(["both"]);
    expect(told?.[0]?.did).toContain("interference is added: C/I 20.0 dB");
  });
});

describe("a figure of a verdict", () => {
  const FIGURES: readonly VerdictFigure[] = ["levelMin", "levelMax", "cnMin"];

  test.each(EXAMPLES.map((e) => ({ key: e.key, load: e.load })))(
    "OR8: leads to a carrier with just that figure: every receiver and outlet of $key",
    ({ load }) => {
      const evaluation = evaluate(load());
      let asked = 0;
      const { verdicts } = report(evaluation);
      for (const verdict of verdicts)
        for (const service of verdict.services)
          for (const figure of FIGURES) {
            const shown = service[figure];
            if (shown === undefined) continue;
            const record = recordOf(evaluation, verdict.part);
            const question = verdictQuestion(record, service.service, figure);
            const found = question && levelOrigin(evaluation, question);
            const end = found?.steps.at(-1);
            // C/N of a verdict counts what disturbs as noise, at a receiver and at an outlet.
            const told = figure === "cnMin" ? (found?.tuner?.cniDb ?? end?.cniDb) : end?.levelDbuv;
            expect(told, `${verdict.part} ${service.service} ${figure}`).toBeCloseTo(shown, 6);
            asked++;
          }
      // Where nobody gets anything there is no figure.
      expect(asked > 0).toBe(verdicts.some(({ services }) => services.some(({ got }) => got > 0)));
    },
  );

  test("OR9: of nothing there is nothing to ask", () => {
    const evaluation = chain();
    expect(verdictQuestion(recordOf(evaluation, "tv"), "satellite", "cnMin")).toBeNull();
    expect(verdictQuestion(recordOf(evaluation, "tv"), "cordless", "cnMin")).toBeNull();
  });
});

describe("the ends of a band", () => {
  test("OR10: are its weakest and strongest live carrier", () => {
    const evaluation = evaluate(
      draw(
        {
          uhf: [
            "aerial-uhf",
            {
              levelDbuv: 60,
              channels: [
                { channel: 21 },
                { channel: 30, levelOffsetDb: -7 },
                { channel: 40, levelOffsetDb: 5 },
              ],
            },
          ],
        },
        "",
      ),
    );
    const band = recordOf(evaluation, "uhf").outputs.out?.bands[0];
    if (!band) throw new Error("an aerial with channels has a band");
    const ends = extremesOf(band);
    expect(ends && [band.level[ends.weakest], band.level[ends.strongest]]).toEqual([53, 65]);
    const question = questionAt({ part: "uhf", port: "out" }, band, ends?.weakest ?? 0);
    expect(question?.carrier).toEqual({ origin: "uhf", index: 1 });
  });

  test("OR11: a user band is asked about with the worst transponder that it may hold", () => {
    const rows = [
      { frequencyMHz: 10_800, polarisation: "V" },
      { frequencyMHz: 10_900, polarisation: "V", eirpOffsetDb: -6 },
    ];
    const evaluation = evaluate(
      draw(
        { dish: ["dish", { transponders: rows }], lnb: ["lnb-stacked"], rx: ["receiver-stacked"] },
        "dish.sky > lnb.sky, lnb.out > rx.sat",
      ),
    );
    const band = recordOf(evaluation, "lnb").outputs.out?.bands[0];
    const question = band && questionAt({ part: "lnb", port: "out" }, band, 0);
    expect(question?.carrier).toEqual({ origin: "dish/V", index: 1 });
    expect(question?.userBand).toBe(band?.stack?.numbers[0]);
  });
});

describe("the level diagram", () => {
  test("OR12: draws every step in its column, and higher levels higher", () => {
    const found = levelOrigin(chain(), { at: { part: "tv", port: "in" }, carrier: TV });
    if (!found) throw new Error("the chain carries its channel");
    const { x, y, curves, bounds } = levelDiagramShape(found, { width: 600, height: 200 });
    expect(
      found.steps.map((_, n) => x(n)).every((px, n, all) => n === 0 || (px ?? 0) > (all[n - 1] ?? 0)),
    ).toBe(true);
    expect(y(60)).toBeLessThan(y(40));
    expect(curves.map((c) => c.name)).toEqual(["noise", "level"]);
    // Level less what is needed: above that line noise would be too strong.
    const end = found.steps.at(-1)?.levelDbuv ?? Number.NaN;
    expect(bounds.find((b) => b.name === "noise")?.dbuv).toBeCloseTo(end - found.requiredDb, 9);
    const [low = 0, high = 0] = y.domain();
    for (const bound of bounds) {
      expect(bound.dbuv).toBeGreaterThan(low);
      expect(bound.dbuv).toBeLessThan(high);
    }
    // Return losses of aerial, cable and set are those of real parts: the level may lie higher or lower than drawn.
    const last = found.steps.at(-1)?.ripple;
    expect(last?.upDb).toBeGreaterThan(0);
    expect(last?.downDb).toBeGreaterThan(last?.upDb ?? 9);
    expect(levelDiagramShape(found, { width: 600, height: 200 }).ripple).toMatch(/^M.*Z$/);
  });
});
