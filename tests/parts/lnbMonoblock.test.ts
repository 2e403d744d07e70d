/**
 * The monoblock: two LNBs and a position switch in one housing. What it does is what the three do apart (common practice, no
 * source), without a cable between them.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { cniDb } from "../../src/signal/readout.ts";
import { draw, type Sketch } from "../draw.ts";

/** Two transponders of the first satellite, one of the second, 6° beside it. */
const TRANSPONDERS = [
  { frequencyMHz: 10_729, polarisation: "V", symbolRateMsps: 27.5, feed: "1" },
  { frequencyMHz: 12_500, polarisation: "H", symbolRateMsps: 27.5, feed: "1" },
  { frequencyMHz: 12_500, polarisation: "H", symbolRateMsps: 27.5, feed: "2" },
];
const DISH: Sketch[string] = [
  "dish",
  { diameterM: 0.8, sideFeeds: [{ orbitalPositionDegE: 26 }], neighbours: [], transponders: TRANSPONDERS },
];
const BEAMS = "dish.sky > lnb.sky, dish.sky2 > lnb.sky2";
const RUN: Sketch[string] = ["cable", { lengthM: 25 }];

const asking = (position: string): Sketch[string] => [
  "receiver-sat",
  { polarisation: "H", half: "high", position },
];

const line = (position: string, options: Record<string, unknown> = {}) =>
  draw(
    { dish: DISH, lnb: ["lnb-monoblock", options], run: RUN, rx: asking(position) },
    `${BEAMS}, lnb.out > run.in, run.out > rx.sat`,
  );

const bandAt = (design: ReturnType<typeof line>, port = "out") => {
  const band = evaluate(design)
    .record("lnb")
    ?.outputs[port]?.bands.find((b) => b.selected);
  if (!band) throw new Error("nothing selected");
  return band;
};

describe("a receiver on a monoblock", () => {
  test("gets both satellites, at the position that it asks for", () => {
    const { verdicts, findings } = report(evaluate(line("2")));
    expect(verdicts.find((v) => v.part === "rx")?.services[0]).toMatchObject({ wanted: 3, got: 3 });
    expect(findings).toEqual([]);
    // The second satellite comes in at its own feed: another origin than the first.
    expect(bandAt(line("1")).origin.key).not.toBe(bandAt(line("2")).origin.key);
  });

  test("without a position in its menu stays at the first, and is told so", () => {
    const { findings } = report(evaluate(line("none")));
    expect(findings.map((f) => f.rule)).toEqual(["command-lost"]);
  });

  test("that sends a position command is not heard by one that knows a tone burst only", () => {
    const { findings } = report(evaluate(line("2", { heeds: "burst" })));
    expect(findings.map((f) => f.rule)).toEqual(["command-lost"]);
  });

  test("loses the second satellite where that feed looks at none", () => {
    const design = draw(
      { dish: DISH, lnb: ["lnb-monoblock"], run: RUN, rx: asking("1") },
      "dish.sky > lnb.sky, lnb.out > run.in, run.out > rx.sat",
    );
    expect(report(evaluate(design)).verdicts.find((v) => v.part === "rx")?.services[0]).toMatchObject({
      got: 2,
    });
  });
});

test("two receivers on a twin one look at different satellites at once", () => {
  const design = draw(
    {
      dish: DISH,
      lnb: ["lnb-monoblock", { outputs: "2" }],
      run: RUN,
      run2: RUN,
      rx: asking("1"),
      ry: asking("2"),
    },
    `${BEAMS}, lnb.out1 > run.in, run.out > rx.sat, lnb.out2 > run2.in, run2.out > ry.sat`,
  );
  expect(report(evaluate(design)).findings).toEqual([]);
  expect(bandAt(design, "out1").origin.key).not.toBe(bandAt(design, "out2").origin.key);
});

/**
 * The other satellite on the same frequency, d weaker for its place beside the focus: with a crosstalk of 20 dB C/I is 20 + d, and
 * 10·log10(1.35) = 1.30 dB more, for with a roll-off of 0.35 its power is spread over 1.35 times the width in which it disturbs.
 * Of two ratios a and b as powers: 1/(10^(−a/10) + 10^(−b/10)).
 */
test("the switch inside lets the other satellite through, as weak as its crosstalk says", () => {
  const clean = bandAt(line("1", { crosstalkDb: 80 }));
  const other = bandAt(line("2", { crosstalkDb: 80 }));
  const leaky = bandAt(line("1", { crosstalkDb: 20 }));
  const d = (clean.level[0] ?? Number.NaN) - (other.level[0] ?? Number.NaN);
  expect(d).toBeGreaterThan(0);
  const sum = -10 * Math.log10(10 ** (-cniDb(clean, 0) / 10) + 10 ** (-(20 + d + 1.3) / 10));
  expect(Math.abs(cniDb(leaky, 0) - sum)).toBeLessThan(0.1);
});

// 110 mA and 40 mA for the one output in use: 150 mA through 25 m at 36 Ω/km (0.9 Ω): 18 − 0.135 = 17.865 V.
test("it draws what two LNBs and a switch draw, 150 mA", () => {
  const [offer] = evaluate(line("1")).record("lnb")?.feeds.out ?? [];
  expect(Math.abs((offer?.volts ?? Number.NaN) - 17.865)).toBeLessThan(0.01);
});
