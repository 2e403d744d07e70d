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
