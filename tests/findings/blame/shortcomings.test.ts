/** What a part falls short of a sound one by, or gives too much: one part at a time, its excess worked by hand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { exceeding, lacking, type Shortcoming, wayGainDb } from "../../../src/findings/blame/shortcomings.ts";
import { stagesTo } from "../../../src/findings/blame/stages.ts";
import { carriersGot } from "../../../src/findings/reception.ts";
import type { Path } from "../../../src/parts/contract.ts";
import { flat } from "../../../src/signal/response.ts";
import { draw } from "../../draw.ts";
import { NOTHING, type Said, said } from "./said.ts";

type Parts = Parameters<typeof draw>[0];

/** Channel 30 at 546 MHz, strong enough to come through whatever is in the way. */
const AERIAL: Parts[string] = [
  "aerial-uhf",
  { levelDbuv: 95, channels: [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }] },
];

/** A TV set that no level blocks: what a part gives too much is asked here, and not what a tuner bears. */
const UNBLOCKED: Parts[string] = ["receiver-tv", { overloadDbuv: 130 }];

/** What is said of part x on the way of the first carrier to the set z. */
function asked(x: Parts[string], o: { readonly wires?: string; readonly more?: Parts } = {}): Said {
  const wires = o.wires ?? "a.out > x.in, x.out > z.in";
  const evaluation = evaluate(draw({ z: UNBLOCKED, a: AERIAL, x, ...o.more }, wires));
  const record = evaluation.record("z");
  const [carrier] = record ? carriersGot(record, "tv") : [];
  if (!carrier) throw new Error("nothing is received");
  const stage = stagesTo(evaluation, { part: "z", port: "in" }, carrier).find((s) => s.step.part === "x");
  if (!stage) throw new Error("it does not come by there");
  return { lacking: lacking(stage), exceeding: exceeding(stage) };
}

function expectShort(
  found: Shortcoming | undefined,
  does: Shortcoming["does"],
  excessDb: number,
  digits = 2,
) {
  expect(found?.does).toBe(does);
  expect(found?.excessDb).toBeCloseTo(excessDb, digits);
}

describe("a passive part lacks", () => {
  test("all that a pad takes, for a line needs none", () => {
    const { lacking: found, exceeding: more } = asked(["attenuator", { lossDb: 20 }]);
    expectShort(found, "attenuates", 20);
    expect(found?.amount).toBeCloseTo(-20, 6);
    expect(more).toBeUndefined();
  });

  // 6 dB at 5 MHz, 12 dB at 862 MHz, in between by the megahertz: 6 + 6·541/857 = 9.788 dB at 546 MHz.
  test("all that a bad joint takes", () => {
    const { lacking: found, exceeding: more } = asked(["bad-joint", { lossDb: 12 }]);
    expectShort(found, "bad joint", 9.788);
    expect(more).toBeUndefined();
  });

  // Copper of 1.0 mm, k1 = 0.585 and k2 = 0.00167: 13.669 + 0.912 = 14.581 dB/100 m at 546 MHz.
  test("of a long cable what is beyond a usual run, of a poor one what the sound grade loses less", () => {
    const { lacking: found } = asked(["cable", { lengthM: 100 }]);
    // 70 m beyond the usual 30.
    expectShort(found, "long cable", 10.207);
    expect(found?.lengthM).toBe(100);
    expect(asked(["cable", { lengthM: 30 }]).lacking).toBeUndefined();
    // 20 m of old cable, 1.0496·√546 + 0.00575·546 = 27.665 dB/100 m: 0.2·(27.665 − 14.581) = 2.617 dB.
    const old = asked(["cable", { grade: "old-solid", lengthM: 20 }]).lacking;
    expectShort(old, "poor cable", 2.617);
    expect(old?.lengthM).toBeUndefined();
  });

  // At 474 MHz (channel 21) 12.736 + 0.792 = 13.528 dB/100 m, at 690 MHz (channel 48) 15.367 + 1.152 = 16.519 dB/100 m:
  // 70 m beyond the usual run lose 9.470 and 11.563 dB.
  test("of a long cable more at a higher channel", () => {
    const channels = [21, 48].map((channel) => ({ channel, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }));
    const run = evaluate(
      draw(
        { z: ["receiver-tv"], x: ["cable", { lengthM: 100 }], a: ["aerial-uhf", { channels }] },
        "a.out > x.in, x.out > z.in",
      ),
    );
    expectShort(said(run, "x.out", { index: 0 }).lacking, "long cable", 9.47);
    expectShort(said(run, "x.out", { index: 1 }).lacking, "long cable", 11.563);
    expect(said(run, "x.out", { index: 1 }).exceeding).toBeUndefined();
  });

  // 100 m of old cable lose 27.665 dB and 30 m of a sound one 4.374 dB: 23.291 dB, of which 13.084 are the grade's.
  // 100 m of copper-clad steel, 0.645·√546 + 0.00062·546 = 15.410 dB: 11.036 dB, of which 0.829 are the grade's.
  test("of a long run of poor cable both, named after the greater", () => {
    const old = asked(["cable", { grade: "old-solid", lengthM: 100 }]).lacking;
    expectShort(old, "poor cable", 23.291);
    expect(old?.lengthM).toBeUndefined();
    const clad = asked(["cable", { grade: "clad-1.0", lengthM: 100 }]).lacking;
    expectShort(clad, "long cable", 11.036);
    expect(clad?.lengthM).toBe(100);
  });

  // The grade's 0.829 dB for 100 m are 0.041 dB for 5 m and 0.083 dB for 10 m.
  test("nothing where it is too little to be read on a meter", () => {
    expect(asked(["cable", { grade: "clad-1.0", lengthM: 5 }]).lacking).toBeUndefined();
    expectShort(asked(["cable", { grade: "clad-1.0", lengthM: 10 }]).lacking, "poor cable", 0.083, 3);
  });

  test("nothing of a cable for lying in a hot loft", () => {
    expect(asked(["cable", { temperatureC: 60 }])).toEqual(NOTHING);
  });

  // √546 = 23.367. Twice the conductor term of a sound cable is a poor one, 0.7 an ordinary thin one.
  test("of a cable by its data sheet what it loses beyond a usual one", () => {
    const own = (k1: number) => asked(["cable", { grade: "own", k1, lengthM: 20 }]).lacking;
    expectShort(own(1.17), "poor cable", 2.734);
    expectShort(own(0.7), "loses", 0.537);
  });

  test("what it loses beyond a usual one of its kind", () => {
    const { lacking: found, exceeding: more } = asked(["dc-block", { lossDb: 3 }]);
    expectShort(found, "loses", 2.5);
    expect(more).toBeUndefined();
  });

  // A star of resistors loses 20·log10 2 = 6.021 dB; a hybrid 3.010 and about 0.66 dB at 546 MHz.
  test("of a resistive splitter what a hybrid loses less", () => {
    const wires = "a.out > x.in, x.out1 > z.in, x.out2 > y.in";
    const more: Parts = { y: ["receiver-tv"] };
    expectShort(asked(["splitter", { type: "resistive" }], { wires, more }).lacking, "resistive", 2.35, 1);
    expect(asked(["splitter"], { wires, more }).lacking).toBeUndefined();
  });

  // Eight ways lose 10·log10 8 = 9.03 dB and three stages, two 3.01 dB and one stage of about 0.66 dB: 7.34 dB less.
  test("of a splitter what the ways lose that nobody uses", () => {
    const wires = "a.out > x.in, x.out1 > z.in, x.out5 > y.in";
    const { lacking: found } = asked(["splitter", { ways: 8 }], { wires, more: { y: ["receiver-tv"] } });
    expectShort(found, "spare ways", 7.34, 1);
    expect(found?.ways).toEqual({ of: 8, used: 2, side: "out" });
  });

  test("nothing where all ways of a splitter are used, or where one of two is not", () => {
    const wires = "a.out > x.in, x.out1 > z.in";
    expect(asked(["splitter"], { wires }).lacking).toBeUndefined();
  });

  test("of a combiner what the inputs lose that nobody uses", () => {
    const { lacking: found } = asked(["combiner", { ways: 4 }], { wires: "a.out > x.in2, x.out > z.in" });
    // Four ways 6.02 dB and two stages, two ways 3.01 dB and one.
    expectShort(found, "spare ways", 3.67, 1);
    expect(found?.ways).toEqual({ of: 4, used: 1, side: "in" });
  });
});

describe("an amplifier", () => {
  const wires = "a.out > x.in, x.out > psu.in, psu.out > z.in";
  const fed: Parts = { psu: ["power-inserter"] };
  const masthead = (o: Record<string, unknown>) =>
    asked(["amp-masthead", { outputDbuv: 125, ...o }], { wires, more: fed });

  // A usual one of its kind has 16 dB.
  test("lacks what it is turned down by, and gives too much by what it is turned up", () => {
    expectShort(masthead({ gainDb: 10 }).lacking, "low gain", 6);
    expect(masthead({ gainDb: 10 }).exceeding).toBeUndefined();
    expectShort(masthead({ gainDb: 22 }).exceeding, "high gain", 6);
    expect(masthead({ gainDb: 22 }).lacking).toBeUndefined();
    expect(masthead({ gainDb: 16 })).toEqual({ lacking: undefined, exceeding: undefined });
  });

  // Without supply it loses 25 dB instead of giving 16: 41 dB.
  test("that nobody feeds lacks what it would give", () => {
    expectShort(asked(["amp-masthead"]).lacking, "unfed", 41);
  });

  // Fed again it gives the 12 dB that it is set to, after a loss of 25.
  test("that is turned down and not fed is named after the greater of the two", () => {
    expectShort(asked(["amp-masthead", { gainDb: 12 }]).lacking, "unfed", 37);
  });

  // Off it loses 25 dB instead of giving the usual 15.
  test("whose mains is off is said to be off", () => {
    const { lacking: found } = asked(["amp-distribution", { switchedOn: false }]);
    expectShort(found, "switched off", 40);
    expect(found?.amount).toBeCloseTo(-25, 6);
  });

  test("turned down to nothing has too low a gain, and is not taken for a loss", () => {
    expectShort(masthead({ gainDb: 0 }).lacking, "low gain", 16);
  });

  // Gain of the radio inputs is 10 dB as usual, for FM with DAB an input of its own.
  test("turned down at its radio input lacks that for radio alone", () => {
    const amplifier = evaluate(
      draw(
        {
          z: ["receiver-fm"],
          x: ["amp-distribution", { inputs: "two", radioGainDb: -5 }],
          a: AERIAL,
          b: ["aerial-fm"],
        },
        "a.out > x.in, b.out > x.radio, x.out > z.in",
      ),
    );
    expectShort(said(amplifier, "x.out", { origin: "b" }).lacking, "low gain", 15);
    expect(said(amplifier, "x.out")).toEqual(NOTHING);
  });

  test("lacks what the attenuator at its input takes", () => {
    const { lacking: found, exceeding: more } = asked(["amp-distribution", { padDb: 12 }]);
    expectShort(found, "input attenuator", 12);
    expect(more).toBeUndefined();
  });
});

describe("a single-cable unit", () => {
  const unit = (o: Record<string, unknown>) =>
    asked(["stacking-converter", { terrestrialBuild: "active", terrestrialRatedDbuv: 120, ...o }], {
      wires: "a.out > x.ter, x.out1 > z.in",
    });

  // TV goes beside the user bands: its own gain, 2 dB as usual, decides, and not the level of the user bands.
  test("gives TV as much less or more as its own gain is turned", () => {
    expect(unit({})).toEqual({ lacking: undefined, exceeding: undefined });
    expect(unit({ terrestrialGainDb: -8 }).lacking?.excessDb).toBeCloseTo(10, 2);
    expect(unit({ terrestrialGainDb: 12 }).exceeding?.excessDb).toBeCloseTo(10, 2);
  });

  test("is no matter for TV by the level of its user bands", () => {
    expect(unit({ stackDbuv: 60 }).lacking).toBeUndefined();
    expect(unit({ stackDbuv: 95 }).exceeding).toBeUndefined();
  });
});

describe("a source", () => {
  const source = (o: Record<string, unknown>, wires = "x.out > z.in") =>
    asked(["aerial-uhf", { ...(AERIAL[1] ?? {}), ...o }], { wires });

  // Not every place is a good one: an aerial is weak only where it gives 10 dB less than in one.
  test("gives too much by what is above the usual level, too little by what is below that and 10 dB more", () => {
    const { lacking: none, exceeding: strong } = source({ levelDbuv: 95 });
    expect(none).toBeUndefined();
    expect(strong?.does).toBe("strong source");
    expect(strong?.amount).toBeCloseTo(95, 6);
    const { lacking: weak, exceeding: nothing } = source({ levelDbuv: 45 });
    expect(nothing).toBeUndefined();
    expect(weak?.does).toBe("weak source");
    expect((strong?.excessDb ?? 0) + (weak?.excessDb ?? 0)).toBeCloseTo(95 - 45 - 10, 6);
    const usual = 95 - (strong?.excessDb ?? 0);
    expect(source({ levelDbuv: usual - 9 })).toEqual({ lacking: undefined, exceeding: undefined });
  });

  test("lacks what a transmitter lies below the others of it", () => {
    const usual = source({}).exceeding?.excessDb ?? 0;
    const channels = [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: -10 }];
    const low = source({ channels });
    expectShort(low.lacking, "weak source", 10);
    expect(low.exceeding?.excessDb).toBeCloseTo(usual, 6);
    const high = source({ channels: [{ ...channels[0], levelOffsetDb: 5 }] });
    expectShort(high.exceeding, "strong source", usual + 5);
  });
});

describe("a plate on a riser", () => {
  const riser = (o: Record<string, unknown>, wires: string) =>
    asked(["outlet-through", o], { wires, more: { y: ["outlet-through"], u: ["receiver-tv"] } });
  const middle = "a.out > x.in, x.tv > z.in, x.out > y.in, y.tv > u.in";

  test("as usual lacks nothing at its socket", () => {
    expect(riser({}, middle).lacking).toBeUndefined();
  });

  // The usual one takes 14 dB.
  test("with a greater tap loss than usual lacks the difference at its socket", () => {
    expectShort(riser({ tapLossDb: 26 }, middle).lacking, "high tap loss", 12);
    expect(riser({ tapLossDb: 26 }, middle).exceeding).toBeUndefined();
  });

  test("with a smaller one gives too much there by the difference", () => {
    expectShort(riser({ tapLossDb: 8 }, middle).exceeding, "low tap loss", 6);
    expect(riser({ tapLossDb: 8 }, middle).lacking).toBeUndefined();
  });

  test("where the riser ends is a through plate too much", () => {
    expect(riser({}, "a.out > x.in, x.tv > z.in").lacking?.does).toBe("through at end");
  });
});

describe("the gain of a part from an input to an output", () => {
  const path = (from: string, to: string, db: number): Path => ({ from, to, response: flat(db) });
  const at = { from: "in", to: "out", centreMHz: 600 };

  test("is that of its one way", () => {
    expect(wayGainDb([path("in", "out", -4)], at)).toBeCloseTo(-4, 9);
  });

  test("is the sum along a way with nodes inside", () => {
    const paths = [path("in", "#a", -1), path("#a", "#b", 20), path("#b", "out", -3.5)];
    expect(wayGainDb(paths, at)).toBeCloseTo(15.5, 9);
  });

  test("is that of the strongest of several, in any order", () => {
    const paths = [path("in", "out", -9), path("in", "#a", -1), path("#a", "out", -2)];
    expect(wayGainDb(paths, at)).toBeCloseTo(-3, 9);
    expect(wayGainDb(paths.toReversed(), at)).toBeCloseTo(-3, 9);
  });

  test("is that of the strongest to its very end, however little its first part loses", () => {
    const paths = [path("in", "out", -3), path("in", "#a", -1), path("#a", "out", -20)];
    expect(wayGainDb(paths, at)).toBeCloseTo(-3, 9);
    expect(wayGainDb(paths.toReversed(), at)).toBeCloseTo(-3, 9);
  });

  test("ends at an output: no way leads on from there", () => {
    expect(wayGainDb([path("in", "out2", -1), path("out2", "out", -1)], at)).toBeUndefined();
  });

  test("is none where no way leads there", () => {
    expect(wayGainDb([path("in", "out2", -4), path("in2", "out", -4)], at)).toBeUndefined();
    expect(wayGainDb([path("in", "#a", -4), path("#a", "out2", -4)], at)).toBeUndefined();
    expect(wayGainDb([], at)).toBeUndefined();
  });
});
