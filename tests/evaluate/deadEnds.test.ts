/**
 * What dead cable on a joint takes from the leg in use. Depth of a notch 20·log10(1 + 1/(2·tanh(aL))), aL the loss of the stub one
 * way: 1 dB 14.6 dB, 0.1 dB 33.0 dB (transmission line theory). A quarter of a wave at 100 MHz: c·0.83/400 = 0.62207 m.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { verdictSentence } from "../../src/sentences/verdict.ts";
import { draw, type Sketch } from "../draw.ts";

const QUARTER_M = 0.62207;

/** A length of line without loss, and a pad at its end: so a stub of a short length may lose what a test asks for. */
const dead = (lengthM: number, lossDb: number): Sketch => ({
  d: ["cable", { grade: "own", k1: 0, k2: 0, velocityFactor: 0.83, lengthM }],
  p: ["attenuator", { lossDb }],
});

const house = (levelDbuv: number, more: Sketch, wires = "") =>
  draw(
    {
      a: ["aerial-fm", { levelDbuv, stations: [{ frequencyMHz: 100 }] }],
      t: ["t-joint"],
      z: ["receiver-fm"],
      ...more,
    },
    `a.out > t.in, t.out1 > z.in, t.out2 > d.in, d.out > p.in${wires}`,
  );

const levelAt = (design: Design, before?: Design) => {
  const evaluation = evaluate(design, before && evaluate(before));
  return evaluation.record("z")?.inputs["in"]?.bands[0]?.level[0] ?? Number.NaN;
};

describe("dead cable on a T joint", () => {
  test.each([
    { lossDb: 1, depthDb: 14.6 },
    { lossDb: 3, depthDb: 8 },
    { lossDb: 0.1, depthDb: 33 },
  ])("a quarter wave that loses $lossDb dB takes $depthDb dB", ({ lossDb, depthDb }) => {
    // An FM station is 0.2 MHz wide; the notch many megahertz. The table is rounded to 0.1 dB.
    expect(Math.abs(70 - depthDb - levelAt(house(70, dead(QUARTER_M, lossDb))))).toBeLessThan(0.1);
  });

  // Half a wave looks open again: 20·log10(1 + tanh(aL)/2) = 0.48 dB for aL = 0.1151.
  test("half a wave takes hardly anything", () => {
    expect(Math.abs(70 - 0.48 - levelAt(house(70, dead(2 * QUARTER_M, 1))))).toBeLessThan(0.02);
  });

  // Shorted, half a wave is a short and a quarter is open.
  test("a short at its end changes the two about", () => {
    const short: Sketch = { s: ["bad-joint", { fault: "shorted" }], e: ["receiver-fm"] };
    const wires = ", p.out > s.in, s.out > e.in";
    expect(levelAt(house(70, { ...dead(2 * QUARTER_M, 1), ...short }, wires))).toBeCloseTo(70 - 14.6, 1);
    expect(levelAt(house(70, { ...dead(QUARTER_M, 1), ...short }, wires))).toBeCloseTo(70 - 0.48, 1);
  });

  // Three matched lines: 20·log10(3/2).
  test("terminated, the leg takes what any third line takes", () => {
    const parts: Sketch = { ...dead(QUARTER_M, 1), e: ["load"] };
    expect(levelAt(house(70, parts, ", p.out > e.in"))).toBeCloseTo(70 - 3.522, 2);
  });

  test("is found anew when its end or its length changes further down", () => {
    const open = house(70, { ...dead(QUARTER_M, 1), e: ["load"] });
    const terminated = house(70, { ...dead(QUARTER_M, 1), e: ["load"] }, ", p.out > e.in");
    const longer = {
      ...open,
      parts: open.parts.map((p) =>
        p.id === "d" ? { ...p, options: { ...p.options, lengthM: 2 * QUARTER_M } } : p,
      ),
    };
    expect(levelAt(terminated, open)).toBeCloseTo(70 - 3.522, 2);
    expect(levelAt(open, terminated)).toBeCloseTo(70 - 14.6, 1);
    expect(levelAt(longer, open)).toBeCloseTo(70 - 0.48, 1);
  });
});

describe("a verdict in a notch", () => {
  const television = (levelDbuv: number, stub: Sketch) => {
    const design = draw(
      {
        a: [
          "aerial-uhf",
          {
            levelDbuv,
            channels: [
              { channel: 30, mode: "dvbt-64qam-2/3" },
              { channel: 40, mode: "dvbt-64qam-2/3" },
            ],
          },
        ],
        t: ["t-joint"],
        ...stub,
        z: ["receiver-tv"],
      },
      "a.out > t.in, t.out1 > z.in, t.out2 > d.in, d.out > p.in",
    );
    const evaluation = evaluate(design);
    const { verdicts, causes, findings } = report(evaluation);
    const verdict = verdicts.find((v) => v.part === "z");
    if (!verdict) throw new Error("no verdict");
    return { verdict, words: verdictSentence(verdict, evaluation), causes, findings };
  };
  // A quarter wave at channel 30, 546 MHz: c·0.83/(4·546) = 0.11393 m. 0.5 dB of loss: 19.7 dB.
  const notched = dead(0.11393, 0.5);

  // 55 − 19.7 = 35 dBµV, below the 45 of EN 60728-1; noise 11.6 dBµV, so C/N is 23 dB and a picture is there.
  test("below the least level is a knife’s edge of that channel, by the dead cable", () => {
    const { verdict, causes } = television(55, notched);
    expect(verdict).toMatchObject({ state: "edge", tightest: { carrier: "C30" } });
    // And no note that an end is open: that is what the dead cable is.
    expect(causes.map(({ root, findings }) => [root.rule, ...findings.map((f) => f.rule)])).toEqual([
      ["dead-stub", "dead-stub", "level-limits"],
    ]);
    expect(causes[0]?.root).toMatchObject({ parts: ["t", "d", "p"] });
  });

  // 48 − 19.7 = 28.3 dBµV: C/N 16.7 dB where 64 QAM 2/3 needs more than 17 (EN 300 744).
  test("too deep, the channel is missing", () => {
    const { verdict, causes, words } = television(48, notched);
    expect(verdict.services[0]).toMatchObject({ wanted: 2, got: 1 });
    expect(verdict.state).toBe("fails");
    expect(words).toContain("1 of 2");
    expect(causes[0]?.root.parts[0]).toBe("t");
  });

  // 8 dB each way: 16 dB down, 0.158 of the voltage comes back, and 20·log10((3 + Γ)/(2·(1 + Γ))) is 3.5 dB by 1 dB more or less.
  test("a dead leg that swallows its own echo leaves it as it was", () => {
    expect(television(70, dead(40, 8)).verdict.state).toBe("works");
  });
});
