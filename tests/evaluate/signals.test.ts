/** The signal pass through one part, on treatments made by hand; levels by addition of decibels. */
import { describe, expect, test } from "vitest";
import { MOST_ALTERNATIVES, MOST_SWITCHES_IN_A_ROW } from "../../src/evaluate/alternatives.ts";
import { notesOf, runTreatment, type SignalResult } from "../../src/evaluate/signals.ts";
import type { Path, SignalTreatment } from "../../src/parts/contract.ts";
import { type Band, SILENCE, type Spectrum } from "../../src/signal/band.ts";
import type { Condition, SwitchState } from "../../src/signal/control.ts";
import { flat } from "../../src/signal/response.ts";
import { type BandSketch, bandOf, gridOf, switchAt } from "../signal/bands.ts";

type Inputs = Readonly<Record<string, readonly Band[] | Spectrum>>;

function run(
  treatment: SignalTreatment,
  inputs: Inputs = {},
  o: { switches?: Readonly<Record<string, SwitchState>>; before?: SignalResult } = {},
): SignalResult {
  return runTreatment({
    part: "part",
    treatment,
    inputs: (port) => {
      const on = inputs[port];
      if (!on) return SILENCE;
      return "bands" in on ? on : { bands: on };
    },
    switches: o.switches ?? {},
    amplifiers: { derating: "usual", cascade: "in step" },
    before: o.before,
  });
}

const path = (o: Partial<Path> = {}): Path => ({ from: "in", to: "out", response: flat(-4), ...o });
const sky = (polarisation: "V" | "H", o: BandSketch = {}) =>
  bandOf({
    grid: gridOf([10_729, 11_778], 29.5),
    level: 70,
    ...o,
    more: {
      origin: { key: `dish/${polarisation}`, service: "satellite", part: "dish", polarisation },
      ...o.more,
    },
  });
const bandsAt = (result: SignalResult, port = "out") => result[port]?.spectrum.bands ?? [];
const levels = (bands: readonly Band[]) => bands.map((band) => band.level[0]);
const centres = (bands: readonly Band[]) => bands.map((band) => [...band.grid.centre]);

describe("ports", () => {
  test("are served by what is emitted, led and stacked there; inner nodes are none", () => {
    const result = run({
      emits: [
        { port: "a", bands: [bandOf()] },
        { port: "a", bands: [bandOf({ from: "b", grid: gridOf([900]) })] },
      ],
      paths: [path({ to: "#inner" }), path({ from: "#inner", to: "b" }), path({ to: "c" })],
      stacks: [
        {
          from: ["#inner"],
          to: "d",
          standard: "EN 50494",
          userBands: [],
          levelDbuv: 80,
          noiseFigureDb: 8,
          leastDbuv: 40,
        },
      ],
    });
    expect(Object.keys(result)).toEqual(["a", "b", "c", "d"]);
    expect(bandsAt(result, "a").map((b) => b.origin.key)).toEqual(["aerial", "b"]);
    expect(
      bandsAt(run({ emits: [{ port: "a", bands: [bandOf()] }], paths: [path({ to: "b" })] }), "b"),
    ).toEqual([]);
    expect(run({})).toEqual({});
  });

  test("hear nothing from an input on which nothing is", () => {
    const { out } = run({ paths: [path()] });
    expect(out?.spectrum.bands).toEqual([]);
    expect(out).toMatchObject({ meetings: [], drives: [], omitted: undefined });
  });
});

describe("a path", () => {
  test("changes the level by its response, and hands on from its own input only", () => {
    const result = run(
      { paths: [path({ response: flat(-4) })] },
      { in: [bandOf()], other: [bandOf({ from: "x" })] },
    );
    expect(levels(bandsAt(result))).toEqual([56]);
  });

  // kTB in 8 MHz is 2.402 (µV)²; F = 2, 10 dB: 10·(1 + 1)·kTB = 48.04. Passive: kTB stays kTB.
  test.each([
    { name: "passive", more: {}, noise: 2.402 },
    { name: "active", more: { response: flat(10), noiseFigureDb: 3.0103 }, noise: 48.04 },
  ])("$name adds its noise", ({ more, noise }) => {
    const result = run({ paths: [path(more)] }, { in: [bandOf({ noise: 2.402 })] });
    expect(bandsAt(result)[0]?.noise[0]).toBeCloseTo(noise, 2);
  });

  test("names its part where it cuts", () => {
    const notch = { type: "notch", windows: [{ fromMHz: 400, toMHz: 500 }], rejectionDb: 30 } as const;
    const [band] = bandsAt(run({ paths: [path({ response: notch })] }, { in: [bandOf()] }));
    expect(band?.cuts).toEqual([{ part: "part", reason: "filter" }]);
  });

  // Rated 104 dBµV at 60 dB: two of 110 dBµV behind 10 dB lie 48 dB above their products.
  test("with a rating is driven, and says so for itself and its port", () => {
    const amp = path({ response: flat(10), noiseFigureDb: 5, rating: { outputDbuv: 104, ratioDb: 60 } });
    const result = run({ paths: [amp] }, { in: [bandOf({ grid: gridOf([474, 600]), level: 100 })] });
    expect(result.out?.drives).toHaveLength(1);
    expect(result.out?.drives[0]).toMatchObject({ from: "in", port: "out", rule: "beats" });
    expect(result.out?.drives[0]?.ratioDb).toBeCloseTo(48, 6);
    expect(10 * Math.log10(bandsAt(result)[0]?.products?.[0] ?? 0)).toBeCloseTo(62, 6);
    expect(run({ paths: [path({ response: flat(10) })] }, { in: [bandOf()] }).out?.drives).toEqual([]);
  });
});

/** A universal converter: 9750 below, 10 600 above 11 700 MHz; IF = RF − LO: 10 729 → 979, 11 778 → 1178 MHz. */
describe("a converter's path", () => {
  const low = { half: "low", fromMHz: 10_700, toMHz: 11_700 } as const;

  test("takes its range and moves it by its oscillator, at the gain of the frequency that leaves", () => {
    const slope = {
      type: "curve",
      points: [
        [979, 50],
        [1178, 60],
      ],
    } as const;
    const result = run({ paths: [path({ response: slope, takes: low, loMHz: 9750 })] }, { in: [sky("V")] });
    expect(centres(bandsAt(result))).toEqual([[979]]);
    expect(levels(bandsAt(result))).toEqual([120]);
    expect(bandsAt(result)[0]).toMatchObject({ half: "low", shifts: [9750] });
  });

  test.each([
    { name: "one polarisation", takes: { polarisation: "H" }, found: [[10_729, 11_778]] },
    { name: "from a frequency on", takes: { fromMHz: 11_000 }, found: [[11_778], [11_778]] },
    { name: "up to a frequency", takes: { toMHz: 11_000 }, found: [[10_729], [10_729]] },
    { name: "nothing in range", takes: { fromMHz: 13_000 }, found: [] },
    {
      name: "all",
      takes: {},
      found: [
        [10_729, 11_778],
        [10_729, 11_778],
      ],
    },
  ] as const)("takes $name", ({ takes, found }) => {
    expect(centres(bandsAt(run({ paths: [path({ takes })] }, { in: [sky("V"), sky("H")] })))).toEqual(found);
  });

  test("with an oscillator alone moves all", () => {
    const result = run({ paths: [path({ loMHz: 10_000 })] }, { in: [sky("V")] });
    expect(centres(bandsAt(result))).toEqual([[729, 1778]]);
    expect(bandsAt(result)[0]).not.toHaveProperty("half");
  });
});

describe("inner nodes", () => {
  const treatment: SignalTreatment = {
    paths: [
      path({ from: "in1", to: "#node", response: flat(-1) }),
      path({ from: "in2", to: "#node", response: flat(-1) }),
      path({ from: "#node", to: "out1", response: flat(-10) }),
      path({ from: "#node", to: "out2", response: flat(-20) }),
    ],
  };
  const inputs = { in1: [bandOf()], in2: [bandOf({ from: "other", level: 50 })] };

  test("gather what several inputs bring, for every output alike", () => {
    const result = run(treatment, inputs);
    expect(levels(bandsAt(result, "out1"))).toEqual([49, 39]);
    expect(levels(bandsAt(result, "out2"))).toEqual([39, 29]);
  });

  test("are where signals meet: said once, with the node's name, and felt at every output", () => {
    const result = run(treatment, inputs);
    const said = [...notesOf(result)].flatMap((r) => r.meetings.map((m) => [m.port, m.victim.origin.key]));
    expect(said).toEqual([
      ["#node", "aerial"],
      ["#node", "other"],
    ]);
    // 49 dBµV disturb at the node; behind 10 and 20 dB 39 and 29 dBµV.
    for (const [port, dbuv] of [
      ["out1", 39],
      ["out2", 29],
    ] as const)
      expect(10 * Math.log10(bandsAt(result, port)[0]?.interference[0] ?? 0)).toBeCloseTo(dbuv, 6);
  });

  test("hand on what was driven and left out inside, once", () => {
    const rated = path({ to: "#node", response: flat(0), rating: { outputDbuv: 104, ratioDb: 60 } });
    const result = run(
      { paths: [rated, path({ from: "#node", to: "out1" }), path({ from: "#node", to: "out2" })] },
      { in: [bandOf({ grid: gridOf([474, 600]), level: 110 })] },
    );
    expect([...notesOf(result)].flatMap((r) => r.drives.map((d) => d.port))).toEqual(["#node"]);
  });

  test("are said once too where one output alone is worked out anew", () => {
    const stack = (to: string) => ({
      from: ["#node"],
      to,
      standard: "EN 50494" as const,
      userBands: [],
      levelDbuv: 80,
      noiseFigureDb: 8,
      leastDbuv: 40,
    });
    const stacked: SignalTreatment = { ...treatment, stacks: [stack("out3"), stack("out4")] };
    const switches = { out4: switchAt("out4", "1") };
    const before = run(stacked, inputs, { switches });
    const again = run(stacked, inputs, { switches: { out4: switchAt("out4", "2") }, before });
    expect(again.out3).toBe(before.out3);
    expect(again.out4).not.toBe(before.out4);
    expect([...notesOf(again)].map((r) => [r.work, r.meetings.length])).toEqual(
      [...notesOf(before)].map((r) => [r.work, r.meetings.length]),
    );
    expect([...notesOf(again)].flatMap((r) => r.meetings.map((m) => m.port))).toEqual(["#node", "#node"]);
  });
});

describe("what meets at an output", () => {
  test("disturbs each other, and is said with the port", () => {
    const result = run(
      { paths: [path({ from: "in1" }), path({ from: "in2" })] },
      { in1: [bandOf()], in2: [bandOf({ from: "other", level: 50 })] },
    );
    expect(result.out?.meetings.map((m) => [m.port, m.victim.origin.key, m.other.origin.key])).toEqual([
      ["out", "aerial", "other"],
      ["out", "other", "aerial"],
    ]);
    // 50 − 4 and 60 − 4 dBµV.
    const found = bandsAt(result).map((b) => 10 * Math.log10(b.interference[0] ?? 0));
    expect(found[0]).toBeCloseTo(46, 6);
    expect(found[1]).toBeCloseTo(56, 6);
  });

  test("met before if it came in on one wire", () => {
    const both = [bandOf(), bandOf({ from: "other" })];
    expect(run({ paths: [path()] }, { in: both }).out?.meetings).toEqual([]);
    expect(run({ emits: [{ port: "out", bands: both }] }).out?.meetings).toEqual([]);
  });
});

describe("switched paths", () => {
  const quadrant = (setting: string, from: string): Path =>
    path({ from, response: flat(0), condition: { port: "out", setting } });
  const treatment: SignalTreatment = { paths: [quadrant("VL", "vl"), quadrant("HL", "hl")] };
  const inputs = { vl: [sky("V")], hl: [sky("H")] };

  test("hand on every setting as an alternative; only the present one is selected", () => {
    const result = run(treatment, inputs, { switches: { out: switchAt("part", "HL") } });
    expect(bandsAt(result).map((b) => [b.origin.polarisation, b.conditions[0]?.setting, b.selected])).toEqual(
      [
        ["V", "VL", false],
        ["H", "HL", true],
      ],
    );
    expect(result.out?.meetings).toEqual([]);
    expect(result.out?.gate?.setting).toBe("HL");
  });

  test("hand on nothing while no such switch is known", () => {
    expect(bandsAt(run(treatment, inputs))).toEqual([]);
    expect(bandsAt(run(treatment, inputs, { switches: { other: switchAt("part", "HL") } }))).toEqual([]);
  });

  test("of several outputs share what they do not differ in", () => {
    const response = flat(-2);
    const both = ["out1", "out2"].map((port) =>
      path({ from: "vl", to: port, response, condition: { port, setting: "VL" } }),
    );
    const result = run({ paths: both }, inputs, {
      switches: { out1: switchAt("part", "VL"), out2: switchAt("part", "HL") },
    });
    const [one, two] = [bandsAt(result, "out1")[0], bandsAt(result, "out2")[0]];
    expect(two?.level).toBe(one?.level);
    expect([one?.selected, two?.selected]).toEqual([true, false]);
  });

  test.each([
    { name: "input", changes: { from: "hl" } },
    { name: "polarisation", changes: { takes: { polarisation: "H" } } },
    { name: "half", changes: { takes: { half: "low", fromMHz: 10_700 } } },
    { name: "upper end", changes: { takes: { toMHz: 11_000 } } },
    { name: "oscillator", changes: { loMHz: 9750 } },
  ] as const)("share nothing where they differ in their $name", ({ changes }) => {
    const response = flat(-2);
    const to = (port: string, o: Partial<Path>) =>
      path({ from: "vl", to: port, response, condition: { port, setting: "VL" }, ...o });
    const together = run({ paths: [to("out1", {}), to("out2", changes)] }, inputs, {
      switches: { out1: switchAt("part", "VL"), out2: switchAt("part", "VL") },
    });
    const alone = run({ paths: [to("out2", changes)] }, inputs, {
      switches: { out2: switchAt("part", "VL") },
    });
    expect(bandsAt(together, "out2")).toEqual(bandsAt(alone, "out2"));
    expect(bandsAt(together, "out2")).not.toEqual(bandsAt(together, "out1"));
  });

  // A way of 9750 MHz and one of 10 600 MHz: 11 778 MHz come down to 2028 and to 1178 MHz.
  test("two oscillators make two signals of one input", () => {
    const response = flat(-2);
    const by = (port: string, loMHz: number) =>
      path({ from: "vl", to: port, response, loMHz, condition: { port, setting: "VL" } });
    const result = run({ paths: [by("out1", 9750), by("out2", 10_600)] }, inputs, {
      switches: { out1: switchAt("part", "VL"), out2: switchAt("part", "VL") },
    });
    expect(centres(bandsAt(result, "out1"))).toEqual([[979, 2028]]);
    expect(centres(bandsAt(result, "out2"))).toEqual([[129, 1178]]);
  });

  test("a port keeps its result while its own switch stays, and only then", () => {
    const [one, two] = [switchAt("part", "VL"), switchAt("part", "VL")];
    const paths = ["out1", "out2"].map((port) =>
      path({ from: "vl", to: port, condition: { port, setting: "VL" } }),
    );
    const before = run({ paths }, inputs, { switches: { out1: one, out2: two } });
    const after = run({ paths }, inputs, { switches: { out1: one, out2: switchAt("part", "HL") }, before });
    expect(after.out1).toBe(before.out1);
    expect(after.out2).not.toBe(before.out2);
    expect(bandsAt(after, "out2")[0]?.selected).toBe(false);
  });

  /** A band behind so many switches already. */
  const behind = (count: number, selected: boolean): Band => {
    const conditions: Condition[] = Array.from({ length: count }, (_, i) => ({
      at: switchAt(`s${i}`, "1"),
      setting: selected ? "1" : "2",
    }));
    return sky("V", { conditions });
  };

  test.each([
    {
      count: MOST_SWITCHES_IN_A_ROW - 1,
      selected: false,
      setting: "HL",
      kept: MOST_SWITCHES_IN_A_ROW,
      said: undefined,
    },
    { count: MOST_SWITCHES_IN_A_ROW, selected: true, setting: "VL", kept: MOST_SWITCHES_IN_A_ROW, said: 12 },
    { count: MOST_SWITCHES_IN_A_ROW, selected: false, setting: "VL", kept: undefined, said: 12 },
    { count: MOST_SWITCHES_IN_A_ROW, selected: true, setting: "HL", kept: undefined, said: 12 },
  ])("behind $count switches, set so $selected, this one at $setting: $kept conditions", (o) => {
    const result = run(
      { paths: [quadrant("VL", "vl")] },
      { vl: [behind(o.count, o.selected)] },
      {
        switches: { out: switchAt("part", o.setting) },
      },
    );
    expect(bandsAt(result)[0]?.conditions.length).toBe(o.kept);
    expect(result.out?.omitted?.behindSwitches).toBe(o.said);
  });

  test("settings that are too many are left out, and counted", () => {
    const many = Array.from({ length: MOST_ALTERNATIVES + 6 }, (_, i) =>
      sky("V", { conditions: [{ at: switchAt("s", "0"), setting: String(i) }] }),
    );
    const { out } = run({ paths: [path()] }, { in: many });
    // One is set now; of the 69 others 64 are kept.
    expect(out?.spectrum.bands).toHaveLength(1 + MOST_ALTERNATIVES);
    expect(out?.omitted).toEqual({ alternatives: 5 });
    expect(run({ paths: [path()] }, { in: many.slice(0, 3) }).out?.omitted).toBeUndefined();
    // Inside a part as well.
    const inside = run({ paths: [path({ to: "#a" }), path({ from: "#a" })] }, { in: many });
    expect([...notesOf(inside)].map((r) => r.omitted)).toEqual([{ alternatives: 5 }, undefined]);
  });
});

/**
 * kTB per MHz −5.22 dBµV; F = 2 and 35 K of sky: +0.495 dB; 100 MHz slices: +20 dB; so 15.27 dBµV at the input of a
 * converter, 70.27 dBµV behind 55 dB.
 */
describe("noise floors", () => {
  const floor = { fromMHz: 950, toMHz: 2150 };
  const lnb = path({ response: flat(55), noiseFigureDb: 3.0103, floor, takes: {}, loMHz: 9750 });
  const floorsAt = (result: SignalResult, port = "out") => result[port]?.spectrum.floors ?? [];

  test("leave a converter beside its carriers, apart from them", () => {
    const result = run({ paths: [lnb] }, { in: [sky("V")] });
    expect(bandsAt(result).every((b) => !b.isFloor)).toBe(true);
    expect(floorsAt(result)).toHaveLength(1);
    expect(floorsAt(result)[0]?.level[0]).toBeCloseTo(70.27, 1);
    expect(floorsAt(result)[0]?.origin.part).toBe("part");
    // Its own carriers hold that noise already: they are not disturbed by it.
    expect([...(bandsAt(result)[0]?.interference ?? [])]).toEqual([0, 0]);
    expect(run({ paths: [path()] }, { in: [sky("V")] }).out?.spectrum).not.toHaveProperty("floors");
  });

  test("come once for each stage, without the condition of its settings", () => {
    const response = flat(55);
    const switched = ["VL", "HL"].map((setting) => ({
      ...lnb,
      response,
      condition: { port: "out", setting },
    }));
    const result = run(
      { paths: switched },
      { in: [sky("V")] },
      { switches: { out: switchAt("part", "VL") } },
    );
    expect(floorsAt(result)).toHaveLength(1);
    expect(floorsAt(result)[0]?.conditions).toEqual([]);
    expect(floorsAt(run({ paths: [lnb, { ...lnb, response: flat(50) }] }, { in: [sky("V")] }))).toHaveLength(
      2,
    );
    // At another output of the same part it is not.
    expect(floorsAt(run({ paths: [lnb, path({ to: "other" })] }, {}), "other")).toEqual([]);
  });

  const [arrived] = floorsAt(run({ paths: [lnb] }, { in: [sky("V")] }));
  if (!arrived) throw new Error("no floor");
  const onWire = { bands: [bandOf({ level: 30 })], floors: [arrived] };

  test("travel on by gain alone", () => {
    const result = run({ paths: [path({ response: flat(-10), noiseFigureDb: 30 })] }, { in: onWire });
    expect(floorsAt(result)[0]?.level[0]).toBeCloseTo(60.27, 1);
    expect(levels(bandsAt(result))).toEqual([20]);
  });

  test("do not come through what converts or picks from the sky", () => {
    for (const more of [{ takes: {} }, { loMHz: 1 }])
      expect(floorsAt(run({ paths: [path(more)] }, { in: onWire }))).toEqual([]);
  });

  // 12 slices of 70.27 + 60 dBµV are 10.79 dB more in all: 141.06; rated 104 at 60 dB saturates at 134 − 9.64 + 1.16 = 125.53 dBµV.
  test("are no stronger than a rated path can put out", () => {
    const amp = path({ response: flat(60), rating: { outputDbuv: 104, ratioDb: 60 } });
    const [held] = floorsAt(run({ paths: [amp] }, { in: onWire }));
    expect(held?.level[0]).toBeCloseTo(125.53 - 10.79, 1);
  });

  test("disturb what they are brought together with", () => {
    const result = run(
      { paths: [path({ from: "in1", response: flat(0) }), path({ from: "in2", response: flat(0) })] },
      { in1: [bandOf({ grid: gridOf([1000]) })], in2: { bands: [], floors: [arrived] } },
    );
    // A slice of 100 MHz; 8 MHz of it: 70.27 − 10.97 dB.
    expect(10 * Math.log10(bandsAt(result)[0]?.interference[0] ?? 0)).toBeCloseTo(59.3, 1);
    expect(floorsAt(result)).toEqual([arrived]);
    expect(result.out?.meetings.map((m) => m.other.isFloor)).toEqual([true]);
  });

  test("of alternatives only the strongest stands for all, and unconditionally", () => {
    const louder: Band = { ...arrived, level: arrived.level.map((l) => l + 3) };
    const leads = (setting: string, from: string) =>
      path({ from, response: flat(0), condition: { port: "out", setting } });
    for (const [a, b] of [
      [arrived, louder],
      [louder, arrived],
    ] as const) {
      const result = run(
        { paths: [leads("VL", "a"), leads("HL", "b")] },
        { a: { bands: [sky("V")], floors: [a] }, b: { bands: [sky("H")], floors: [b] } },
        { switches: { out: switchAt("part", "VL") } },
      );
      expect(floorsAt(result)).toHaveLength(1);
      expect(floorsAt(result)[0]?.level[0]).toBeCloseTo(73.27, 1);
      expect(floorsAt(result)[0]).toMatchObject({ conditions: [], selected: true });
      expect(bandsAt(result).map((band) => band.conditions.length)).toEqual([1, 1]);
    }
  });
});

describe("a stacked output", () => {
  test("puts what arrives at its inner nodes onto user bands", () => {
    const result = run(
      {
        paths: [path({ from: "v", to: "#v", response: flat(10) }), path({ from: "h", to: "#h" })],
        stacks: [
          {
            from: ["#v", "#h"],
            to: "out",
            standard: "EN 50494",
            userBands: [{ number: 1, centreMHz: 1210, widthMHz: 40 }],
            levelDbuv: 83,
            noiseFigureDb: 8,
            leastDbuv: 40,
          },
        ],
      },
      { v: [sky("V")], h: [sky("H")] },
      { switches: { out: switchAt("part", "stack") } },
    );
    expect(levels(bandsAt(result))).toEqual([83]);
    expect(bandsAt(result)[0]?.stack?.holds.map((b) => [b.origin.polarisation, b.level[0]])).toEqual([
      ["V", 80],
      ["H", 66],
    ]);
    expect(Object.keys(result)).toEqual(["out"]);
  });
});

/** One unit is a carrier of one band on its way to one output, or one band held against others; a band takes 16 by itself. */
describe("work", () => {
  const workOf = (treatment: SignalTreatment, inputs: Inputs) => {
    const [first, ...others] = [...notesOf(run(treatment, inputs))].map((notes) => notes.work);
    return others.reduce((a, b) => a + b, first ?? Number.NaN);
  };

  test("counts carriers and bands that are handed on", () => {
    expect(workOf({ paths: [path()] }, {})).toBe(0);
    expect(workOf({ paths: [path()] }, { in: [sky("V")] })).toBe(2 + 16);
    expect(workOf({ paths: [path()] }, { in: [sky("V"), sky("H"), bandOf()] })).toBe(
      2 + 16 + 2 + 16 + 1 + 16,
    );
  });

  test("counts floors", () => {
    const floor = bandOf({ grid: gridOf([1000, 1100, 1200], 100), more: { isFloor: true } });
    expect(workOf({ paths: [path()] }, { in: { bands: [], floors: [floor] } })).toBe(3 + 16);
  });

  test("counts what is held against others, and what was done inside", () => {
    const meeting = { in1: [bandOf()], in2: [bandOf({ from: "b" })] };
    // Two bands of one carrier, each held against one other.
    expect(workOf({ paths: [path({ from: "in1" }), path({ from: "in2" })] }, meeting)).toBe(2 * 17 + 2);
    const inside = {
      paths: [path({ from: "in1", to: "#a" }), path({ from: "in2", to: "#a" }), path({ from: "#a" })],
    };
    expect(workOf(inside, meeting)).toBe(2 * (2 * 17) + 2);
  });
});
