/** Where lost carriers are lost: hand-drawn jobs, the culprit named beforehand. Common practice, no source. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { MissingReason } from "../../src/findings/missing.ts";
import { receiverLosses } from "../../src/findings/receiverLosses.ts";
import { report } from "../../src/findings/report.ts";
import { draw } from "../draw.ts";

type Parts = Parameters<typeof draw>[0];

/** Parts come in an order that is not that of the signal, under names that do not tell it. */
type Job = {
  readonly name: string;
  readonly parts: Parts;
  readonly wires: string;
  readonly receiver?: string;
  readonly kind: MissingReason["kind"];
  readonly culprit: { readonly part: string; readonly port?: string };
  /** Transponders or channels missing by it. */
  readonly count: number;
  readonly planes?: readonly string[];
  readonly tuner?: number;
};

const roof: Parts = { z: ["receiver-sat"], m: ["multiswitch"], d: ["dish"], a: ["lnb-quattro"] };
const allPlanes = "VH VL HH HL".split(" ");
const bands = (...numbers: readonly (readonly [number, number])[]) =>
  numbers.map(([number, centreMHz]) => ({ number, centreMHz }));

// The usual plan of a dish has 80 transponders, 20 in each quadrant.
const JOBS: readonly Job[] = [
  {
    name: "an open input of a multiswitch",
    parts: roof,
    wires: "m.out1 > z.sat, a.hl > m.hl, a.vl > m.vl, d.sky > a.sky, a.vh > m.vh",
    kind: "open input",
    culprit: { part: "m", port: "hh" },
    count: 20,
    planes: ["HH"],
  },
  {
    name: "one output of the LNB led to two inputs",
    parts: { ...roof, b: ["splitter", { dc: "all" }] },
    wires:
      "m.out1 > z.sat, b.out2 > m.hh, a.vl > m.vl, b.out1 > m.vh, a.vh > b.in, a.hl > m.hl, d.sky > a.sky",
    kind: "wrong lead",
    culprit: { part: "m", port: "hh" },
    count: 20,
    planes: ["HH"],
  },
  {
    name: "two trunks changed over",
    parts: roof,
    wires: "a.vl > m.hl, a.hl > m.vl, a.vh > m.vh, a.hh > m.hh, d.sky > a.sky, m.out1 > z.sat",
    kind: "leads changed",
    culprit: { part: "m" },
    count: 40,
    planes: ["VL", "HL"],
  },
  {
    name: "a multiswitch without mains",
    parts: { ...roof, m: ["multiswitch", { mainsOn: false }] },
    wires: "a.vl > m.vl, a.hl > m.hl, a.vh > m.vh, a.hh > m.hh, d.sky > a.sky, m.out1 > z.sat",
    kind: "no supply",
    culprit: { part: "m" },
    count: 80,
    planes: allPlanes,
  },
  {
    name: "a block of direct current below the LNB",
    parts: { z: ["receiver-sat"], b: ["dc-block"], d: ["dish"], a: ["lnb-universal"] },
    wires: "b.out > z.sat, d.sky > a.sky, a.out > b.in",
    kind: "no supply",
    culprit: { part: "b" },
    count: 80,
    planes: allPlanes,
  },
  {
    name: "an LNB on no dish",
    parts: { z: ["receiver-sat"], d: ["dish"], a: ["lnb-universal"] },
    wires: "a.out > z.sat",
    kind: "open input",
    culprit: { part: "a", port: "sky" },
    count: 80,
    planes: allPlanes,
  },
  {
    name: "a quattro LNB straight into a receiver",
    parts: { z: ["receiver-sat"], d: ["dish"], a: ["lnb-quattro"] },
    wires: "a.vl > z.sat, d.sky > a.sky",
    kind: "other output",
    culprit: { part: "a" },
    count: 60,
    planes: ["VH", "HL", "HH"],
  },
  {
    name: "one cable to a wideband receiver",
    parts: { z: ["receiver-hybrid"], d: ["dish"], a: ["lnb-wideband"] },
    wires: "a.v > z.v, d.sky > a.sky",
    kind: "open input",
    culprit: { part: "z", port: "h" },
    count: 40,
    planes: ["HL", "HH"],
  },
  {
    name: "the two cables of a wideband receiver on each other's inputs",
    parts: { z: ["receiver-hybrid"], d: ["dish"], a: ["lnb-wideband"] },
    wires: "a.v > z.h, a.h > z.v, d.sky > a.sky",
    kind: "wrong polarisation at the input",
    culprit: { part: "z" },
    count: 80,
    planes: allPlanes,
  },
  {
    name: "an open wideband input of a stacking converter",
    parts: {
      z: ["receiver-stacked"],
      s: ["stacking-converter", { feed: "wideband" }],
      d: ["dish"],
      a: ["lnb-wideband"],
    },
    wires: "a.v > s.v, s.out1 > z.sat, d.sky > a.sky",
    kind: "open input",
    culprit: { part: "s", port: "h" },
    count: 40,
    planes: ["HL", "HH"],
  },
  {
    name: "a splitter that passes supply from one output only",
    parts: {
      z: ["receiver-stacked", { tuners: 1, userBands: bands([2, 1420]) }],
      y: ["receiver-stacked", { tuners: 1, userBands: bands([1, 1210]) }],
      s: ["splitter", { dc: "one" }],
      d: ["dish"],
      a: ["lnb-stacked"],
    },
    wires: "s.out1 > y.sat, s.out2 > z.sat, a.out > s.in, d.sky > a.sky",
    kind: "no message",
    culprit: { part: "s" },
    count: 80,
    planes: allPlanes,
  },
  {
    name: "a second tuner without a lead",
    parts: { z: ["receiver-sat-twin"], d: ["dish"], a: ["lnb-universal", { outputs: "2" }] },
    wires: "a.out1 > z.sat1, d.sky > a.sky",
    kind: "no lead",
    culprit: { part: "z", port: "sat2" },
    count: 80,
    planes: allPlanes,
    tuner: 2,
  },
  {
    name: "a second tuner without a user band",
    parts: {
      z: ["receiver-stacked", { tuners: 2, userBands: bands([1, 1210]) }],
      d: ["dish"],
      a: ["lnb-stacked"],
    },
    wires: "a.out > z.sat, d.sky > a.sky",
    kind: "no user band set",
    culprit: { part: "z" },
    count: 80,
    planes: allPlanes,
    tuner: 2,
  },
  {
    name: "a user band that the LNB does not have",
    parts: {
      z: ["receiver-stacked", { tuners: 2, userBands: bands([1, 1210], [9, 1420]) }],
      d: ["dish"],
      a: ["lnb-stacked"],
    },
    wires: "a.out > z.sat, d.sky > a.sky",
    kind: "no such user band",
    culprit: { part: "z" },
    count: 80,
    planes: allPlanes,
    tuner: 2,
  },
  {
    name: "a user band on another centre",
    parts: {
      z: ["receiver-stacked", { tuners: 1, userBands: bands([1, 1284]) }],
      d: ["dish"],
      a: ["lnb-stacked"],
    },
    wires: "a.out > z.sat, d.sky > a.sky",
    kind: "other centre",
    culprit: { part: "z" },
    count: 80,
    planes: allPlanes,
  },
  {
    name: "one user band for two tuners of a receiver",
    parts: {
      z: ["receiver-stacked", { tuners: 2, userBands: bands([1, 1210], [1, 1210]) }],
      d: ["dish"],
      a: ["lnb-stacked"],
    },
    wires: "a.out > z.sat, d.sky > a.sky",
    kind: "user band used twice",
    culprit: { part: "z" },
    count: 80,
    planes: allPlanes,
  },
  {
    name: "two receivers behind a splitter on one switched output",
    parts: {
      z: ["receiver-sat", { polarisation: "V", half: "low" }],
      y: ["receiver-sat", { polarisation: "V", half: "low" }],
      s: ["splitter", { dc: "all" }],
      d: ["dish"],
      a: ["lnb-universal"],
    },
    wires: "s.out1 > y.sat, s.out2 > z.sat, a.out > s.in, d.sky > a.sky",
    kind: "set by another",
    culprit: { part: "s" },
    count: 60,
    planes: ["VH", "HL", "HH"],
  },
  {
    name: "18 V lost in the long one of two cables",
    parts: {
      z: ["receiver-sat", { polarisation: "H" }],
      k: ["cable", { grade: "copper-1.0", lengthM: 5 }],
      l: ["cable", { grade: "clad-0.8", lengthM: 60 }],
      d: ["dish"],
      a: ["lnb-universal", { commonMa: 215, outputs: "2" }],
      // Keeps the LNB alive, whose vertical would go with it otherwise.
      y: ["receiver-sat"],
    },
    wires: "k.out > z.sat, l.out > k.in, a.out1 > l.in, a.out2 > y.sat, d.sky > a.sky",
    // 60 m at 188 Ω/km and 285 mA lose 3.2 V: 14.8 V, and more than 15 V are taken for horizontal.
    kind: "too few volts",
    culprit: { part: "l" },
    count: 40,
    planes: ["HL", "HH"],
  },
  {
    name: "a filter in the way of a radio",
    parts: {
      z: ["receiver-dab"],
      f: ["filter", { mode: "pass", fromMHz: 470, toMHz: 694 }],
      a: ["aerial-dab"],
    },
    wires: "f.out > z.in, a.out > f.in",
    kind: "cut",
    culprit: { part: "f" },
    // The usual plan of a DAB aerial has three blocks.
    count: 3,
  },
];

const quadrant = ({ polarisation, half }: { polarisation: string; half: string }) =>
  `${polarisation}${half === "low" ? "L" : "H"}`;

// The receiver's own supply shuts down at a short, so nothing on the way tells; the short itself does.
test("a short on the line of a multiswitch is the culprit, no receiver", () => {
  const evaluation = evaluate(
    draw(
      {
        z: ["receiver-sat", { polarisation: "H" }],
        c: ["combiner", { dc: "all" }],
        l: ["bad-joint", { fault: "shorted" }],
        m: ["multiswitch"],
        a: ["lnb-quattro"],
        d: ["dish"],
      },
      "d.sky > a.sky, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, a.hh > m.hh, m.out1 > c.in1, l.out > c.in2, c.out > z.sat",
    ),
  );
  const record = evaluation.record("z");
  const losses = record ? receiverLosses(evaluation, record) : [];
  expect(losses.length).toBeGreaterThan(0);
  for (const { missing } of losses) expect(missing.culprit?.part).toBe("l");
});

describe("a loss leads to its culprit", () => {
  test.each(JOBS.map((job) => [job.name, job] as const))("%s", (_, job) => {
    const evaluation = evaluate(draw(job.parts, job.wires));
    const record = evaluation.record(job.receiver ?? "z");
    const losses = record ? receiverLosses(evaluation, record) : [];
    expect(losses.map((l) => [l.missing.reason.kind, l.tuner])).toEqual([[job.kind, job.tuner]]);
    const [loss] = losses;
    expect(loss?.missing.culprit).toMatchObject(job.culprit);
    expect(loss?.missing.count).toBe(job.count);
    expect((loss?.missing.planes ?? []).map(quadrant).sort()).toEqual([...(job.planes ?? [])].sort());
  });

  test.each(JOBS.map((job) => [job.name, job] as const))("and so does the finding: %s", (_, job) => {
    const { findings, verdicts } = report(evaluate(draw(job.parts, job.wires)));
    const rules = ["plane-missing", "wrong-feed", "receiver-misses"];
    const own = findings.filter((f) => rules.includes(f.rule) && f.at.part === "z");
    expect(own.map((f) => [f.parts[0], f.severity, f.at.tuner])).toEqual([
      [job.culprit.part, "error", job.tuner],
    ]);
    expect(verdicts.find((v) => v.part === "z")?.state).toBe("fails");
  });
});

test("a receiver without any lead is not connected yet, and no fault of the design", () => {
  const { findings, verdicts } = report(
    evaluate(draw({ z: ["receiver-sat"], d: ["dish"], a: ["lnb-universal"] }, "d.sky > a.sky")),
  );
  expect(findings.filter((f) => f.severity === "error" && f.at.part === "z")).toEqual([]);
  expect(verdicts.find((v) => v.part === "z")).toMatchObject({ idle: "nothing connected", state: "fails" });
});

test("the losses of two receivers behind one open input have one culprit", () => {
  const { findings } = report(
    evaluate(
      draw(
        { ...roof, y: ["receiver-sat"] },
        "m.out1 > z.sat, m.out2 > y.sat, a.hl > m.hl, a.vl > m.vl, d.sky > a.sky, a.vh > m.vh",
      ),
    ),
  );
  const culprits = findings.flatMap((f) => (f.rule === "plane-missing" ? [f.facts.culprit] : []));
  expect(culprits).toEqual([
    { part: "m", port: "hh" },
    { part: "m", port: "hh" },
  ]);
});

/** Kind, carriers, the part in hand and the tuner of each loss, in the order in which they are told. */
function losses(parts: Parts, wires: string, receiver = "z") {
  const evaluation = evaluate(draw(parts, wires));
  const record = evaluation.record(receiver);
  return (record ? receiverLosses(evaluation, record) : []).map(({ missing, tuner }) => [
    missing.reason.kind,
    missing.count,
    missing.culprit?.part,
    ...(tuner === undefined ? [] : [tuner]),
  ]);
}

const quattro = "d.sky > a.sky, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, a.hh > m.hh";

describe("a command that does not get to the switch", () => {
  test("is lost at whatever stops it, by the output at which it arrives", () => {
    const block: Parts = { ...roof, x: ["dc-block"] };
    const wires = `${quattro}, m.out1 > x.in, x.out > z.sat`;
    expect(losses(block, wires)).toEqual([["no command", 80, "x"]]);
    const evaluation = evaluate(draw(block, wires));
    const record = evaluation.record("z");
    const [loss] = record ? receiverLosses(evaluation, record) : [];
    expect(loss?.missing.culprit).toEqual({ part: "x", port: "out" });
  });

  test("is handed on by the cable below what stops it", () => {
    const block: Parts = { ...roof, k: ["cable"], x: ["dc-block"] };
    expect(losses(block, `${quattro}, m.out1 > x.in, x.out > k.in, k.out > z.sat`)).toEqual([
      ["no command", 80, "x"],
    ]);
    const message: Parts = {
      z: ["receiver-stacked", { tuners: 1, userBands: bands([2, 1420]) }],
      y: ["receiver-stacked", { tuners: 1, userBands: bands([1, 1210]) }],
      k: ["cable"],
      s: ["splitter", { dc: "one" }],
      d: ["dish"],
      a: ["lnb-stacked"],
    };
    const wires = "d.sky > a.sky, a.out > s.in, s.out1 > y.sat, s.out2 > k.in, k.out > z.sat";
    expect(losses(message, wires)).toEqual([["no message", 80, "s"]]);
  });

  // The inner conductor touches the screen: no port of it is better than the other.
  test("is lost at a short in the lead", () => {
    const short: Parts = { ...roof, k: ["cable"], x: ["bad-joint", { fault: "shorted" }] };
    const wires = `${quattro}, m.out1 > x.in, x.out > k.in, k.out > z.sat`;
    expect(losses(short, wires)).toEqual([["no command", 80, "x"]]);
  });

  // A multiswitch hands direct current on to the LNB, and no 22 kHz: the LNB stays in the low band.
  test("without its tone is lost at the unit that hands on direct current alone", () => {
    const parts: Parts = {
      z: ["receiver-sat"],
      k: ["cable"],
      m: ["multiswitch", { terrestrial: false, supply: "receivers" }],
      d: ["dish"],
      a: ["lnb-universal", { outputs: "4", commonMa: 280, outputMa: 0 }],
    };
    const wires =
      "d.sky > a.sky, a.out1 > m.vl, a.out2 > m.vh, a.out3 > m.hl, a.out4 > m.hh, m.out1 > k.in, k.out > z.sat";
    expect(losses(parts, wires)).toEqual([["no tone", 40, "m"]]);
  });
});

// 80 m of 1.0 mm steel have 10.4 Ω; this LNB draws 140 + 4 · 35 mA: 2.9 V of 13 V, and 11.5 V are needed;
// of 17.5 V 14.6 are left, and from 15 V on it turns to horizontal.
describe("volts that a long cable takes", () => {
  const line: Parts = {
    c: ["cable", { lengthM: 80, grade: "clad-1.0" }],
    m: ["lnb-universal", { outputs: "4", commonMa: 280, outputMa: 0 }],
    d: ["dish"],
  };

  test("leave too few for either polarisation: two losses, one culprit", () => {
    const parts: Parts = { z: ["receiver-sat", { polarisation: "H", volts18: 17.5 }], ...line };
    expect(losses(parts, "d.sky > m.sky, m.out1 > c.in, c.out > z.sat")).toEqual([
      ["dies at vertical", 40, "c"],
      ["too few volts", 40, "c"],
    ]);
  });

  test("are looked for on the lead that there is, not on one that is off", () => {
    const parts: Parts = { z: ["receiver-sat-twin", { polarisation2: "H", volts18: 17.5 }], ...line };
    expect(losses(parts, "d.sky > m.sky, m.out1 > c.in, c.out > z.sat2")).toEqual([
      ["dies at vertical", 40, "c"],
      ["too few volts", 40, "c"],
      ["no lead", 80, "z", 1],
    ]);
  });
});

describe("of a converter and a receiver that do not suit each other", () => {
  const wide: Parts = { d: ["dish"], a: ["lnb-wideband"], y: ["receiver-hybrid"], z: ["receiver-sat"] };
  const shared = "d.sky > a.sky, a.v > s.in, s.out1 > y.v, s.out2 > z.sat, a.h > y.h";

  test("the converter is in hand where the receiver is alone", () => {
    expect(losses(wide, "d.sky > a.sky, a.v > z.sat")).toEqual([
      ["wideband feed on a switched input", 40, "a"],
      ["other output", 40, "a"],
    ]);
  });

  // What another output would give is of no more use to it.
  test("the receiver is where another one takes what the converter gives, for all that it misses", () => {
    expect(losses({ ...wide, s: ["splitter"] }, shared)).toEqual([
      ["wideband feed on a switched input", 40, "z"],
      ["other output", 40, "z"],
    ]);
  });

  test("the converter is again where more receivers want the other sort", () => {
    const parts: Parts = { ...wide, s: ["splitter", { ways: 3 }], x: ["receiver-sat"] };
    expect(losses(parts, `${shared}, s.out3 > x.sat`)).toEqual([
      ["wideband feed on a switched input", 40, "a"],
      ["other output", 40, "a"],
    ]);
  });

  test.each([
    { receiver: "receiver-hybrid", port: "v", kind: "switched feed on a wideband input" },
    { receiver: "receiver-stacked", port: "sat", kind: "plain feed on a single-cable input" },
  ])("a $receiver on a universal LNB: $kind", ({ receiver, port, kind }) => {
    const parts: Parts = {
      z: [receiver],
      k: ["cable"],
      y: ["receiver-sat"],
      a: ["lnb-universal", { outputs: "2" }],
      d: ["dish"],
    };
    const own = `d.sky > a.sky, a.out1 > k.in, k.out > z.${port}`;
    expect(losses(parts, own)[0]).toEqual([kind, 80, "a"]);
    expect(losses(parts, `${own}, a.out2 > y.sat`)[0]).toEqual([kind, 80, "z"]);
  });
});

describe("carriers that arrive spoiled", () => {
  const aerial = (levelDbuv: number, ...channels: readonly number[]): Parts[string] => [
    "aerial-uhf",
    {
      levelDbuv,
      channels: channels.map((channel) => ({ channel, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 })),
    },
  ];
  const lossOf = (parts: Parts, wires: string) => {
    const evaluation = evaluate(draw(parts, wires));
    const record = evaluation.record("z");
    return (record ? receiverLosses(evaluation, record) : []).map((l) => l.missing);
  };

  // 20 dBµV where 45 are asked for: nothing on the way makes that good.
  test("are weak from the aerial on", () => {
    const parts: Parts = { z: ["receiver-tv"], k: ["cable", { lengthM: 1 }], a: aerial(20, 30, 33) };
    const [missing, ...more] = lossOf(parts, "a.out > k.in, k.out > z.in");
    expect(more).toEqual([]);
    expect(missing).toMatchObject({
      why: "noisy",
      count: 2,
      culprit: { part: "a", port: "out" },
      blamed: { part: "a", does: "weak source" },
      spoiler: { by: "noise" },
    });
  });

  // C33 comes by both aerials, 10 dB apart: 64 QAM 2/3 needs 18.7 dB.
  test("are disturbed where two aerials come together", () => {
    const parts: Parts = {
      z: ["receiver-tv"],
      c: ["combiner"],
      b: aerial(50, 33, 36),
      a: aerial(60, 30, 33),
    };
    const [missing, ...more] = lossOf(parts, "a.out > c.in1, b.out > c.in2, c.out > z.in");
    expect(more).toEqual([]);
    expect(missing).toMatchObject({
      why: "disturbed",
      count: 1,
      culprit: { part: "c", port: "out" },
      blamed: { part: "c", does: "brings together" },
      spoiler: { by: "foreign", signal: { service: "tv", part: "b" } },
    });
  });
});

describe("several losses of one receiver", () => {
  test("with two culprits are two", () => {
    const wires = "d.sky > a.sky, a.vl > m.vl, a.hl > m.hl, m.out1 > z.sat";
    const evaluation = evaluate(draw(roof, wires));
    const record = evaluation.record("z");
    const culprits = (record ? receiverLosses(evaluation, record) : []).map((l) => l.missing.culprit);
    expect(culprits).toEqual([
      { part: "m", port: "vh" },
      { part: "m", port: "hh" },
    ]);
  });

  // A quattro LNB straight into a receiver, three transponders on its other outputs; of the three on this one two
  // are 20 dB too weak.
  test("are told in the order of what is missing by each, all that has one culprit together", () => {
    const on = (frequencyMHz: number, polarisation: "V" | "H", eirpOffsetDb = 0) => ({
      frequencyMHz,
      polarisation,
      eirpOffsetDb,
    });
    const transponders = [
      on(10_800, "V"),
      on(10_900, "V", -20),
      on(11_000, "V", -20),
      on(12_000, "V"),
      on(11_000, "H"),
      on(12_000, "H"),
    ];
    const parts: Parts = { z: ["receiver-sat"], a: ["lnb-quattro"], d: ["dish", { transponders }] };
    const wires = "d.sky > a.sky, a.vl > z.sat";
    expect(losses(parts, wires)).toEqual([
      ["other output", 3, "a"],
      ["noisy", 2, "d"],
    ]);
    const evaluation = evaluate(draw(parts, wires));
    const record = evaluation.record("z");
    const [first] = record ? receiverLosses(evaluation, record) : [];
    expect(first?.missing.reason).toEqual({
      kind: "other output",
      part: "a",
      port: "vl",
      outputs: ["vh", "hl", "hh"],
    });
    expect(first).toMatchObject({ service: "satellite", wanted: 6, got: 1 });
  });
});

describe("the losses of tuners", () => {
  test("are followed from their own leads", () => {
    const parts: Parts = {
      z: ["receiver-sat-twin"],
      k: ["cable"],
      a: ["lnb-universal", { outputs: "2" }],
      d: ["dish"],
    };
    const wires = "d.sky > a.sky, a.out1 > z.sat1, k.out > z.sat2";
    expect(losses(parts, wires)).toEqual([["open input", 80, "k", 2]]);
  });

  test("are told of each tuner, though two lack the same", () => {
    const parts: Parts = {
      z: ["receiver-stacked", { tuners: 3, userBands: bands([1, 1210]) }],
      a: ["lnb-stacked"],
      d: ["dish"],
    };
    expect(losses(parts, "d.sky > a.sky, a.out > z.sat")).toEqual([
      ["no user band set", 80, "z", 2],
      ["no user band set", 80, "z", 3],
    ]);
  });

  test("are not told again where the receiver lacks it as a whole", () => {
    const parts: Parts = { ...roof, z: ["receiver-sat-twin"] };
    const wires = "d.sky > a.sky, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, m.out1 > z.sat1, m.out2 > z.sat2";
    expect(losses(parts, wires)).toEqual([["open input", 20, "m"]]);
  });
});

test("only a receiver has losses, and one that gets all has none", () => {
  const wires = `${quattro}, m.out1 > z.sat`;
  expect(losses(roof, wires)).toEqual([]);
  expect(losses(roof, wires, "m")).toEqual([]);
});

// An input of the switch was open, and is not any more.
test("what a receiver misses is worked out anew where the way there has changed", () => {
  const wires = "d.sky > a.sky, a.vl > m.vl, a.vh > m.vh, a.hl > m.hl, m.out1 > z.sat";
  const before = evaluate(draw(roof, wires));
  const after = evaluate(draw(roof, `${wires}, a.hh > m.hh`), before);
  const of = (evaluation: typeof before) => {
    const record = evaluation.record("z");
    return record && receiverLosses(evaluation, record);
  };
  expect(of(before)).toHaveLength(1);
  expect(of(before)).toBe(of(before));
  expect(of(after)).toEqual([]);
});
