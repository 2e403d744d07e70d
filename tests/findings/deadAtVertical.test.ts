/**
 * Parts on a line that are alive at 18 V and dead at 13 V. Volts by Ohm's law, beside each design; that an amplifier
 * without supply is a loss of some 25 dB is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { receiverLosses } from "../../src/findings/receiverLosses.ts";
import { report } from "../../src/findings/report.ts";
import { draw, type Sketch } from "../draw.ts";

const loop = (lengthM: number, loopOhmPerKm = 100): Sketch[string] => [
  "cable",
  { lengthM, grade: "own", loopOhmPerKm, k1: 0.6, k2: 0.0014 },
];

function judged(design: Design, receiver: string, service = "satellite") {
  const evaluation = evaluate(design);
  const { findings, verdicts } = report(evaluation);
  const verdict = verdicts.find((v) => v.part === receiver);
  const record = evaluation.record(receiver);
  return {
    verdict,
    result: verdict?.services.find((s) => s.service === service),
    unfed: findings.filter((f) => f.rule === "no-supply"),
    losses: record ? receiverLosses(evaluation, record) : [],
  };
}

/** An LNB, 60 m, an amplifier, 60 m, a receiver that asks for horizontal now. */
const lineAmplifier = (amplifier: Record<string, unknown>, more: Sketch = {}) =>
  draw(
    {
      r: ["receiver-sat", { polarisation: "H" }],
      c: loop(60, 70),
      a: ["amp-if", amplifier],
      u: ["cable", { lengthM: 60 }],
      l: ["lnb-universal", { commonMa: 105, outputMa: 35 }],
      d: ["dish"],
      ...more,
    },
    "d.sky > l.sky, l.out > u.in, u.out > a.in, a.out > c.in, c.out > r.sat",
  );

describe("a line amplifier", () => {
  // 4.2 Ω · (140 + 60) mA = 0.84 V: of 18 V 17.16 are left, of 13 V 12.16.
  test("that needs 12.5 V takes all vertical from its receiver, by the cable", () => {
    const { verdict, result, unfed, losses } = judged(lineAmplifier({ minVolts: 12.5 }), "r");
    expect(verdict?.state).toBe("fails");
    expect(result).toMatchObject({ wanted: 80, got: 40 });
    expect(losses).toHaveLength(1);
    expect(losses[0]?.missing).toMatchObject({
      count: 40,
      culprit: { part: "c" },
      reason: { kind: "dies at vertical", part: "a", leastVolts: 12.5, volts: expect.closeTo(12.16, 3) },
    });
    expect(unfed.filter((f) => f.at.part === "a")).toMatchObject([
      { severity: "error", parts: ["c", "a", "r"], facts: { kind: "too low for vertical" } },
    ]);
  });

  test("that needs 12 V does no harm", () => {
    const { verdict, result, unfed } = judged(lineAmplifier({ minVolts: 12 }), "r");
    expect(verdict?.state).not.toBe("fails");
    expect(result).toMatchObject({ got: 80 });
    expect(unfed.filter((f) => f.severity === "error")).toEqual([]);
  });

  // 5 dB of gain everywhere, or 25 dB of loss: vertical falls by 30 dB. As horizontal does not, the weakest by less.
  test("leaves a receiver near by the vertical that is strong enough without it", () => {
    const near = { u: ["cable", { lengthM: 1 }] } as const satisfies Sketch;
    const dead = judged(lineAmplifier({ minVolts: 12.5, gainDb: 5, slopeDb: 0 }, near), "r");
    const alive = judged(lineAmplifier({ minVolts: 11, gainDb: 5, slopeDb: 0 }, near), "r");
    expect(dead.result).toMatchObject({ got: 80 });
    const fall = (alive.result?.levelMin ?? 0) - (dead.result?.levelMin ?? 0);
    expect(fall).toBeGreaterThan(25);
    expect(fall).toBeLessThanOrEqual(30.01);
  });

  test("is told the same after an edit as from scratch", () => {
    const sound = lineAmplifier({ minVolts: 12 });
    const faulty = {
      ...sound,
      parts: sound.parts.map((p) => (p.id === "a" ? { ...p, options: { ...p.options, minVolts: 12.5 } } : p)),
    };
    const failing = (evaluation: ReturnType<typeof evaluate>) =>
      evaluation
        .record("r")
        ?.inputs.sat?.bands.map((band) => band.failing?.map(({ at, lossDb }) => [at.part, lossDb]));
    const fresh = failing(evaluate(faulty));
    expect(fresh?.flat().length).toBeGreaterThan(0);
    expect(failing(evaluate(faulty, evaluate(sound)))).toEqual(fresh);
    expect(failing(evaluate(sound, evaluate(faulty)))).toEqual(failing(evaluate(sound)));
  });
});

describe("a masthead amplifier fed by a satellite receiver", () => {
  const roof = (minVolts: number) =>
    draw(
      {
        tv: ["receiver-tv"],
        r: ["receiver-sat", { polarisation: "H" }],
        p: ["outlet-diplexed"],
        c: loop(20),
        x: ["diplexer-combine", { dc: "both" }],
        m: ["amp-masthead", { minVolts, milliamps: 60 }],
        u: ["aerial-uhf", { levelDbuv: 48 }],
        l: ["lnb-universal", { commonMa: 105, outputMa: 35 }],
        d: ["dish"],
      },
      "u.out > m.in, m.out > x.tv, d.sky > l.sky, l.out > x.sat, x.out > c.in, c.out > p.in, p.tv > tv.in, p.sat > r.sat",
    );

  // 2 Ω · (140 + 60) mA = 0.4 V: 12.6 V, so one from 13 V on dies whenever the receiver asks for vertical.
  test("takes television from the set in the other room", () => {
    const { verdict, unfed, losses } = judged(roof(13), "tv", "tv");
    expect(verdict?.state).toBe("fails");
    expect(losses[0]?.missing.reason).toMatchObject({
      kind: "dies at vertical",
      part: "m",
      by: { part: "r", port: "sat" },
    });
    expect(unfed).toMatchObject([{ severity: "error", at: { part: "m" } }]);
  });

  test("and takes nothing where it works from 12 V on", () => {
    const { result, unfed } = judged(roof(12), "tv", "tv");
    expect(result?.got).toBe(result?.wanted);
    expect(unfed.filter((f) => f.severity === "error")).toEqual([]);
  });
});

describe("a multiswitch that lives on its receivers", () => {
  // 8 Ω · (200 + 60) mA = 2.1 V: 10.9 V at 13 V, where the LNB behind a diode of 0.7 V needs 11.5.
  test("and its quattro LNB fail at vertical: both are errors, and vertical is lost", () => {
    const design = draw(
      {
        r: ["receiver-sat", { polarisation: "H" }],
        c: loop(80),
        s: ["multiswitch", { supply: "receivers", terrestrial: false }],
        l: ["lnb-quattro"],
        d: ["dish"],
      },
      "d.sky > l.sky, l.vl > s.vl, l.vh > s.vh, l.hl > s.hl, l.hh > s.hh, s.out1 > c.in, c.out > r.sat",
    );
    const { verdict, result, unfed } = judged(design, "r");
    expect(verdict?.state).toBe("fails");
    expect(result).toMatchObject({ wanted: 80, got: 40 });
    expect(unfed.map((f) => [f.at.part, f.severity]).sort()).toEqual([
      ["l", "error"],
      ["s", "error"],
    ]);
  });
});
