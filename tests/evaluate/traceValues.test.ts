/** Steps of a trace, number by number: levels by addition of decibels, noise by Friis. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { findCarrier, type TraceStep, traceCarrier } from "../../src/evaluate/trace.ts";
import type { Stack } from "../../src/signal/band.ts";
import { draw, type Sketch } from "../draw.ts";
import { type BandSketch, bandOf, gridOf, IDEAL_STAGE, switchAt } from "../signal/bands.ts";

function traced(
  design: Design,
  at: string,
  carrier: { origin: string; index: number },
  userBand?: number,
): readonly TraceStep[] {
  const [part = "", port = ""] = at.split(".");
  return traceCarrier(evaluate(design), { part, port }, carrier, userBand);
}

/** FM at 100 MHz: a cable of k1 = 2 dB/100 m/√MHz loses 0.2 dB a metre there, since √100 = 10. */
const FM: Sketch[string] = [
  "aerial-fm",
  { levelDbuv: 60, stations: [{ frequencyMHz: 100 }, { frequencyMHz: 90 }] },
];
const cable = (lengthM: number): Sketch[string] => ["cable", { lengthM, grade: "own", k1: 2, k2: 0 }];
const OF_100_MHZ = { origin: "fm", index: 0 };

describe("a radio station through a cable, a pad and an amplifier", () => {
  const design = draw(
    {
      fm: FM,
      run: cable(30),
      pad: ["attenuator", { lossDb: 3 }],
      // Everything on one input; F 4 dB.
      amp: ["amp-masthead", { takes: "all", gainDb: 20, noiseFigureDb: 4 }],
      psu: ["power-inserter", { volts: 12, limitMa: 500, lossDb: 0.5 }],
      rx: ["receiver-fm"],
    },
    "fm.out > run.in, run.out > pad.in, pad.out > amp.in, amp.out > psu.in, psu.out > rx.in",
  );
  const stepsNow = () => traced(design, "psu.out", OF_100_MHZ);

  test("is followed by its ports from the aerial on", () => {
    const steps = stepsNow();
    expect(steps.map((s) => [s.part, s.from, s.to])).toEqual([
      ["fm", null, "out"],
      ["run", "in", "out"],
      ["pad", "in", "out"],
      ["amp", "in", "out"],
      ["psu", "in", "out"],
    ]);
    for (const step of steps) expect(step.centreMHz).toBe(100);
  });

  // 60, − 30·0.2, − 3, + 20, − 0.5.
  test("has these levels and gains", () => {
    const steps = stepsNow();
    for (const [i, level] of [60, 54, 51, 71, 70.5].entries())
      expect(steps[i]?.levelDbuv).toBeCloseTo(level, 9);
    expect(steps[0]?.gainDb).toBeNull();
    for (const [i, gain] of [-6, -3, 20, -0.5].entries()) expect(steps[i + 1]?.gainDb).toBeCloseTo(gain, 9);
    expect(steps[0]?.made).toEqual([]);
    expect(steps[1]?.made.map((m) => m.db)).toEqual([expect.closeTo(-6, 9)]);
    expect(steps[2]?.made.map((m) => m.db)).toEqual([-3]);
    expect(steps[3]?.made.map((m) => m.db)).toContain(20);
    // A gain is not called what a loss is called.
    const named = (i: number, db: number) => steps[i]?.made.find((m) => m.db === db)?.what;
    expect(named(3, 20)).toMatch(/\S/);
    expect(named(2, -3)).toMatch(/\S/);
    expect(named(3, 20)).not.toBe(named(2, -3));
  });

  // The aerial's own noise is kTB at 290 K in 200 kHz: −12.21 dBµV (public constant tables), C/N 72.21 dB. A passive at
  // 290 K costs its loss: 66.21, 63.21; the amplifier its noise figure: 59.21 dB; 0.5 dB behind 20 dB of gain:
  // F = 2.512 + (1.122 − 1)/100 = 2.5131, 4.002 dB: 59.209.
  test("has these C/N", () => {
    const steps = stepsNow();
    for (const [i, cn] of [72.21, 66.21, 63.21, 59.21, 59.21].entries()) {
      expect(steps[i]?.cnDb).toBeCloseTo(cn, 1);
      expect(steps[i]?.ciDb).toBe(Number.POSITIVE_INFINITY);
      expect(steps[i]?.cniDb).toBeCloseTo(cn, 1);
    }
  });

  test("is nowhere cut, converted or stacked", () => {
    const steps = stepsNow();
    for (const step of steps) {
      expect(step.cutHere).toBe(false);
      for (const key of ["loMHz", "userBand", "tuning"]) expect(step).not.toHaveProperty(key);
    }
  });

  test("begins where it is asked for", () => {
    const steps = stepsNow();
    expect(traced(design, "run.out", OF_100_MHZ)).toEqual(steps.slice(0, 2));
    // The other station is the same way with other figures: √90 · 2 · 0.3 = 5.692 dB.
    expect(traced(design, "run.out", { origin: "fm", index: 1 })[1]?.gainDb).toBeCloseTo(-5.692, 3);
    expect(traced(design, "run.out", { origin: "fm", index: 2 })).toEqual([]);
    expect(traced(design, "run.in", OF_100_MHZ)).toEqual([]);
  });
});

test("what disturbs a carrier stands in the step where it came in", () => {
  // The other aerial's station lies 20 dB below, both behind 4 dB.
  const design = draw(
    {
      fm: FM,
      other: ["aerial-fm", { levelDbuv: 40, stations: [{ frequencyMHz: 100 }] }],
      join: ["combiner", { loss: "own", ownTvDb: 4 }],
    },
    "fm.out > join.in1, other.out > join.in2",
  );
  const [source, joined] = traced(design, "join.out", OF_100_MHZ);
  expect(source?.ciDb).toBe(Number.POSITIVE_INFINITY);
  expect(joined?.ciDb).toBeCloseTo(20, 6);
  expect(joined?.gainDb).toBeCloseTo(-4, 9);
  expect(joined?.made.map((m) => m.db)).toEqual([expect.closeTo(-4, 9)]);
  expect(joined?.from).toBe("in1");
  // C/N 72.21 − 4; 20 dB of C/I make nearly all of C/(N+I).
  expect(joined?.cniDb).toBeCloseTo(20, 3);
});

// 15 dB of gain behind 3 dB of a pad; the joints inside the part take nothing and are not mentioned.
test("a part with stages inside is taken apart into them, in their order", () => {
  const design = draw(
    {
      uhf: ["aerial-uhf", { channels: [{ channel: 30 }] }],
      amp: ["amp-distribution", { gainDb: 15, padDb: 3 }],
    },
    "uhf.out > amp.in",
  );
  const [, step] = traced(design, "amp.out", { origin: "uhf", index: 0 });
  expect(step?.made.map((m) => m.db)).toEqual([-3, 15]);
  expect(step?.gainDb).toBeCloseTo(12, 9);
});

// A tap of 12 dB beside its through line, which loses less than 1 dB (data sheets, from memory).
test.each([
  { port: "tap1", least: -12.01, most: -11.99 },
  { port: "out", least: -1.0, most: -0.5 },
])("what a step is made of is of its own output: $port", ({ port, least, most }) => {
  const design = draw({ fm: FM, tap: ["tap", { tapLossDb: 12 }] }, "fm.out > tap.in");
  const [, step] = traced(design, `tap.${port}`, OF_100_MHZ);
  const made = step?.made.reduce((sum, m) => sum + m.db, 0) ?? Number.NaN;
  expect(made).toBeGreaterThan(least);
  expect(made).toBeLessThan(most);
  expect(step?.gainDb).toBeCloseTo(made, 9);
});

test.each([
  { metres: [10, 40], by: "in1" },
  { metres: [40, 10], by: "in2" },
])("of two ways the stronger is followed: cables of $metres m, by $by", ({ metres, by }) => {
  const [a = 0, b = 0] = metres;
  const design = draw(
    { fm: FM, split: ["splitter"], a: cable(a), b: cable(b), join: ["combiner"] },
    "fm.out > split.in, split.out1 > a.in, split.out2 > b.in, a.out > join.in1, b.out > join.in2",
  );
  const steps = traced(design, "join.out", OF_100_MHZ);
  expect(steps.map((s) => s.part)).toEqual(["fm", "split", by === "in1" ? "a" : "b", "join"]);
  expect(steps.at(-1)?.from).toBe(by);
});

// Both lines bear the same plane, the wet one far weaker: at a socket counts what leads to it.
test.each([
  { socket: "sat", by: "in", cables: ["lnb", "wet"] },
  { socket: "sat2", by: "in2", cables: ["lnb", "dry"] },
])("lines side by side through a plate stay apart: $socket is followed by $by", ({ socket, by, cables }) => {
  const design = draw(
    {
      dish: ["dish", { transponders: [{ frequencyMHz: 12_000, polarisation: "H" }] }],
      lnb: ["lnb-universal", { outputs: "2" }],
      wet: ["cable", { lengthM: 20, grade: "own", k1: 5, k2: 0 }],
      dry: cable(20),
      plate: ["outlet-sat-twin"],
      rx: ["receiver-sat-twin", { polarisation1: "H", half1: "high", polarisation2: "H", half2: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out1 > wet.in, lnb.out2 > dry.in, wet.out > plate.in, dry.out > plate.in2, plate.sat > rx.sat1, plate.sat2 > rx.sat2",
  );
  const steps = traced(design, `plate.${socket}`, { origin: "dish/H", index: 0 });
  expect(steps.map((s) => s.part)).toEqual(["dish", ...cables, "plate"]);
  expect(steps.at(-1)?.from).toBe(by);
  // A plate of its kind loses 1 dB (typical, from memory), whichever line.
  expect(steps.at(-1)?.gainDb).toBeCloseTo(-1, 9);
});

// A station at 100 MHz on the satellite input of a diplexer is stopped by its filter, by 20 dB and more.
test("of two ways into a part the one is followed by which more comes out", () => {
  const design = draw(
    { fm: FM, split: ["splitter"], pad: ["attenuator", { lossDb: 10 }], dip: ["diplexer-combine"] },
    "fm.out > split.in, split.out1 > dip.sat, split.out2 > pad.in, pad.out > dip.tv",
  );
  expect(traced(design, "dip.out", OF_100_MHZ).map((s) => s.part)).toEqual(["fm", "split", "pad", "dip"]);
});

test("a part that cuts a carrier is marked, and no part behind it", () => {
  const design = draw(
    {
      fm: FM,
      band: ["filter", { mode: "pass", fromMHz: 470, toMHz: 694 }],
      more: ["filter", { mode: "pass", fromMHz: 470, toMHz: 694 }],
    },
    "fm.out > band.in, band.out > more.in",
  );
  const steps = traced(design, "more.out", OF_100_MHZ);
  expect(steps.map((s) => [s.part, s.cutHere])).toEqual([
    ["fm", false],
    ["band", true],
    ["more", false],
  ]);
  // What a filter takes stands apart from its loss: 1 dB and the rejection of 40 dB.
  expect(steps[1]?.made.map((m) => m.db)).toEqual([-1, expect.closeTo(-40, 9)]);
  expect(steps[1]?.gainDb).toBeCloseTo(-41, 9);
});

/** A universal LNB: 11 778 − 10 600 = 1178 MHz, 10 729 − 9750 = 979 MHz. */
describe("a transponder", () => {
  const transponders = [
    { frequencyMHz: 11_778, polarisation: "V" },
    { frequencyMHz: 10_729, polarisation: "V" },
  ];
  const design = draw(
    {
      dish: ["dish", { transponders }],
      lnb: ["lnb-universal", { gainDb: 55, outputs: "2" }],
      rx: ["receiver-sat", { half: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out1 > rx.sat",
  );

  test.each([
    { index: 0, centre: 1178, lo: 10_600 },
    { index: 1, centre: 979, lo: 9750 },
  ])("comes down to $centre MHz by $lo MHz, whichever half is selected", ({ index, centre, lo }) => {
    const steps = traced(design, "lnb.out1", { origin: "dish/V", index });
    expect(steps.map((s) => [s.part, s.centreMHz])).toEqual([
      ["dish", transponders[index]?.frequencyMHz],
      ["lnb", centre],
    ]);
    expect(steps[1]?.loMHz).toBe(lo);
    expect(steps[1]?.gainDb).toBeCloseTo(55, 6);
    expect(steps[0]).not.toHaveProperty("loMHz");
  });

  // By EN 50494, as implemented in public receiver code: (1178 + 1210)/4 − 350 = 247; (979 + 1420)/4 = 599.75, 600 − 350 = 250,
  // and the receiver finds it at 4·600 − 979 = 1421 MHz.
  test("is put on the user band that is asked for, by this word", () => {
    const stacked = draw(
      {
        dish: ["dish", { transponders }],
        lnb: ["lnb-stacked", { standard: "EN 50494", bandSet: "four", stackDbuv: 80 }],
        drop: cable(10),
        rx: ["receiver-stacked"],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > rx.sat",
    );
    const first = traced(stacked, "drop.out", { origin: "dish/V", index: 0 });
    expect(first.map((s) => [s.part, s.userBand, s.centreMHz])).toEqual([
      ["dish", undefined, 11_778],
      ["lnb", 1, 1210],
      ["drop", 1, 1210],
    ]);
    expect(first[1]).toMatchObject({ levelDbuv: 80, made: [], tuning: { word: 247, tunesToMHz: 1210 } });
    expect(first[2]).not.toHaveProperty("tuning");
    // √1210 · 2 · 0.1 = 6.957 dB.
    expect(first[2]?.gainDb).toBeCloseTo(-6.957, 3);
    const second = traced(stacked, "drop.out", { origin: "dish/V", index: 1 }, 2);
    expect(second[1]).toMatchObject({
      userBand: 2,
      centreMHz: 1420,
      tuning: { word: 250, tunesToMHz: 1421 },
    });
    expect(traced(stacked, "drop.out", { origin: "dish/V", index: 1 }, 9)).toEqual([]);
    expect(traced(stacked, "drop.out", { origin: "dish/H", index: 0 })).toEqual([]);
  });
});

describe("a carrier among the bands of a port", () => {
  const grid = gridOf([474, 482]);
  const band = (o: BandSketch) => bandOf({ grid, ...o });
  const wanted = { origin: "aerial", index: 1 };

  test("is found by its source and its place in the plan, the strongest of several", () => {
    const [weak, strong] = [band({ level: [90, 50] }), band({ level: [40, 60] })];
    for (const bands of [
      [weak, strong],
      [strong, weak],
    ])
      expect(findCarrier(bands, wanted, undefined)).toEqual({ band: strong, i: 1 });
    expect(findCarrier([band({ from: "other" })], wanted, undefined)).toBeUndefined();
    expect(findCarrier([], wanted, undefined)).toBeUndefined();
    expect(findCarrier([weak], { ...wanted, index: 2 }, undefined)).toBeUndefined();
  });

  const stack = (held: readonly ReturnType<typeof band>[]): Stack => ({
    standard: "EN 50494",
    standards: ["EN 50494", "EN 50494"],
    part: "lnb",
    port: "out",
    numbers: [3, 5],
    holds: held,
    strays: new Set(),
    control: switchAt("lnb", "stack"),
    stage: IDEAL_STAGE,
    entryLevelDbuv: 80,
    entryNoiseRatio: 0,
    entryInterferenceRatio: 0,
  });

  test("is on any user band of a stack that holds it", () => {
    const feed = band({ from: "lnb/out", more: { stack: stack([band({ from: "x" }), band({})]) } });
    expect(findCarrier([feed], wanted, 5)?.i).toBe(1);
    expect(findCarrier([feed], wanted, 3)?.i).toBe(0);
    expect(findCarrier([feed], wanted, undefined)?.i).toBe(0);
    expect(findCarrier([feed], wanted, 4)).toBeUndefined();
    expect(findCarrier([feed], { origin: "lnb/out", index: 0 }, 3)).toBeUndefined();
    expect(findCarrier([band({ more: { stack: stack([]) } })], wanted, 3)).toBeUndefined();
  });
});
