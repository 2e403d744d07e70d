/** One finding for each loss of a receiver, under the rule that speaks of such a loss, led to its culprit. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import { profileOf } from "../../src/findings/limits.ts";
import type { Missing, MissingReason, Plane } from "../../src/findings/missing.ts";
import {
  blameLoss,
  type LossDraft,
  type LossRule,
  lossDrafts,
} from "../../src/findings/receiverLossRules.ts";
import { type MissingGroup, type ReceptionResult, receive } from "../../src/findings/reception.ts";
import type { RuleView } from "../../src/findings/rule.ts";
import type { TunerReception } from "../../src/findings/tuners.ts";
import { sourcesOf } from "../../src/findings/wanted.ts";
import { draw } from "../draw.ts";
import { carrierAt } from "../signal/bands.ts";
import { recordOf } from "./byHand.ts";

type Parts = Parameters<typeof draw>[0];

const RULES: readonly LossRule[] = ["plane-missing", "wrong-feed", "receiver-misses"];

const design = (parts: Parts, wires: string) => evaluate(draw(parts, wires));

function viewOf(evaluation: Evaluation, part: string, reception?: ReceptionResult): RuleView {
  const record = recordOf(evaluation, part);
  return {
    record,
    reception: reception ?? receive(record, sourcesOf(evaluation)),
    kindAt: () => undefined,
    profile: profileOf(evaluation.design),
  };
}

/** A receiver on a lead that brings something: what it misses is said by hand. */
const sound = design(
  { z: ["receiver-sat"], a: ["lnb-universal"], d: ["dish"] },
  "d.sky > a.sky, a.out > z.sat",
);

const plane = (polarisation: "V" | "H", half: "low" | "high"): Plane => ({ source: "d", polarisation, half });
const VL = plane("V", "low");
const HH = plane("H", "high");

function group(key: string, why: Missing["why"], more: Partial<MissingGroup> = {}): MissingGroup {
  const sample = { key, source: "d", origin: "d/V", index: 0, carrier: carrierAt(11_000), sentDbuv: 60 };
  return { key, why, count: 20, reason: { kind: "does not arrive" }, planes: [], sample, ...more };
}

const missing = (
  groups: readonly MissingGroup[],
  tuners: readonly TunerReception[] = [],
): ReceptionResult => ({
  services: [{ service: "satellite", wanted: 80, got: 40, missing: groups }],
  tuners,
});

/** Rules that speak of a group, with the groups that they speak of. */
const told = (reception: ReceptionResult) =>
  RULES.flatMap((rule) => lossDrafts(viewOf(sound, "z", reception), rule).map((d) => [rule, d.at.band]));

describe("a loss is told by the rule", () => {
  test("of wrong feeds, whatever else is to be said of it", () => {
    expect(told(missing([group("k", "wrong feed", { planes: [VL] })]))).toEqual([["wrong-feed", "k"]]);
  });

  test("of planes, where whole ones are missing and others come", () => {
    expect(told(missing([group("k", "absent", { planes: [HH] })]))).toEqual([["plane-missing", "k"]]);
    expect(told(missing([group("k", "not selectable", { planes: [HH] })]))).toEqual([["plane-missing", "k"]]);
  });

  test("of receivers, where single carriers are missing", () => {
    expect(told(missing([group("k", "absent", { count: 3 })]))).toEqual([["receiver-misses", "k"]]);
  });

  test("of receivers, where all are missing for one reason", () => {
    const all = group("k", "not selectable", { count: 80, planes: [VL, HH] });
    expect(told(missing([all]))).toEqual([["receiver-misses", "k"]]);
  });

  // It arrives, too weak or disturbed, even where that befalls a whole plane.
  test("of receivers, where it does arrive", () => {
    expect(
      told(missing([group("n", "noisy", { planes: [HH] }), group("d", "disturbed", { planes: [VL] })])),
    ).toEqual([
      ["receiver-misses", "n"],
      ["receiver-misses", "d"],
    ]);
  });

  test("of receivers, where nothing arrives at all, though plane by plane", () => {
    const four = ["a", "b", "c", "d"].map((key) => group(key, "absent", { planes: [HH] }));
    expect(told(missing(four)).map(([rule]) => rule)).toEqual(Array(4).fill("receiver-misses"));
    const three = told(missing(four.slice(1)));
    expect(three.map(([rule]) => rule)).toEqual(Array(3).fill("plane-missing"));
  });

  // Sixty do not arrive and twenty cannot be asked for: the planes are told apart.
  test("of planes, where some of what is missing does come", () => {
    const groups = [
      group("a", "absent", { count: 60, planes: [VL] }),
      group("b", "not selectable", { planes: [HH] }),
    ];
    expect(told(missing(groups)).map(([rule]) => rule)).toEqual(["plane-missing", "plane-missing"]);
  });
});

describe("a loss of a single tuner", () => {
  const tuner = (number: number, groups: readonly MissingGroup[], got = 40): TunerReception => ({
    number,
    input: "sat",
    inputs: ["sat"],
    service: "satellite",
    alone: { got: 80, of: 80 },
    together: { got, of: 80 },
    missing: groups,
    follows: false,
  });

  test("is told with its number, and with what the tuner gets", () => {
    const own = group("own", "absent", { planes: [HH] });
    const [draft, ...more] = lossDrafts(
      viewOf(sound, "z", missing([], [tuner(2, [own], 60)])),
      "plane-missing",
    );
    expect(more).toEqual([]);
    expect(draft?.at).toEqual({ part: "z", service: "satellite", band: "own", tuner: 2 });
    expect([draft?.value, draft?.limit]).toEqual([60, 80]);
    expect(draft?.facts).toMatchObject({ service: "satellite", wanted: 80, got: 60 });
  });

  test("is not told again where the whole receiver has it", () => {
    const common = group("common", "not selectable", { planes: [HH] });
    const own = group("own", "not selectable", { planes: [VL] });
    const reception = missing([common], [tuner(1, [common]), tuner(2, [common, own])]);
    const drafts = lossDrafts(viewOf(sound, "z", reception), "plane-missing");
    expect(drafts.map((d) => [d.at.band, d.at.tuner])).toEqual([
      ["common", undefined],
      ["own", 2],
    ]);
  });

  test("is of the receiver as a whole where the tuner gets nothing", () => {
    const four = ["a", "b", "c", "d"].map((key) => group(key, "absent", { planes: [HH] }));
    const view = viewOf(sound, "z", missing([], [tuner(2, four, 0)]));
    expect(lossDrafts(view, "plane-missing")).toEqual([]);
    expect(lossDrafts(view, "receiver-misses").map((d) => d.at.tuner)).toEqual([2, 2, 2, 2]);
  });
});

describe("a finding on a loss", () => {
  test("is an error at the receiver, with its wires and the count of what it gets", () => {
    const lost = group("k", "absent", { planes: [HH] });
    const [draft] = lossDrafts(viewOf(sound, "z", missing([lost])), "plane-missing");
    expect(draft).toMatchObject({
      severity: "error",
      at: { part: "z", service: "satellite", band: "k" },
      parts: ["z"],
      wires: ["a.out>z.sat"],
      value: 40,
      limit: 80,
      unit: "carriers",
      facts: { service: "satellite", wanted: 80, got: 40, culprit: { part: "z" } },
    });
    expect(draft?.facts.missing).toEqual({
      why: "absent",
      count: 20,
      reason: { kind: "does not arrive" },
      planes: [HH],
    });
  });

  test("says so where it has too little", () => {
    const sides = missing([group("n", "noisy"), group("d", "disturbed"), group("a", "absent")]);
    const drafts = lossDrafts(viewOf(sound, "z", sides), "receiver-misses");
    expect(drafts.map((d) => d.at.side)).toEqual(["too little", undefined, undefined]);
  });

  test("names whom the loss names", () => {
    const lost = group("k", "not selectable", { culprit: { part: "m", port: "hh" } });
    const [draft] = lossDrafts(viewOf(sound, "z", missing([lost])), "receiver-misses");
    expect(draft?.facts.culprit).toEqual({ part: "m", port: "hh" });
  });

  test("is made for receivers in use alone", () => {
    const of = (evaluation: Evaluation, part: string) =>
      RULES.flatMap((rule) => lossDrafts(viewOf(evaluation, part), rule));
    const parts: Parts = { z: ["receiver-sat"], a: ["lnb-universal"], d: ["dish"] };
    expect(of(design(parts, "d.sky > a.sky"), "z")).toEqual([]);
    expect(of(sound, "a")).toEqual([]);
    expect(of(sound, "z")).toEqual([]);
    const off: Parts = { ...parts, z: ["receiver-sat", { state: "standby" }] };
    expect(of(design(off, "a.out > z.sat"), "z")).toEqual([]);
  });
});

/** Drafts of a rule and what is left of them when each has been led to its culprit. */
function blamed(evaluation: Evaluation, rule: LossRule): readonly (LossDraft | undefined)[] {
  return lossDrafts(viewOf(evaluation, "z"), rule).map((draft) => blameLoss(draft, evaluation));
}

describe("a loss led to its culprit", () => {
  const roof: Parts = { z: ["receiver-sat"], m: ["multiswitch"], d: ["dish"], a: ["lnb-quattro"] };

  test("an open input of a switch: the switch first, then the receiver; the plane is its name", () => {
    const wires = "m.out1 > z.sat, a.hl > m.hl, a.vl > m.vl, d.sky > a.sky, a.vh > m.vh";
    const [draft, ...more] = blamed(design(roof, wires), "plane-missing");
    expect(more).toEqual([]);
    expect(draft).toMatchObject({
      at: { part: "z", service: "satellite", band: "d/HH m hh" },
      parts: ["m", "z"],
      wires: ["m.out1>z.sat"],
      facts: { wanted: 80, got: 60, culprit: { part: "m", port: "hh" } },
    });
    expect(draft?.facts.missing.reason).toMatchObject({ kind: "open input", part: "m", port: "hh" });
  });

  test("a wrong lead: its wire comes before that of the receiver", () => {
    const parts: Parts = { ...roof, b: ["splitter", { dc: "all" }] };
    const wires =
      "m.out1 > z.sat, b.out2 > m.hh, a.vl > m.vl, b.out1 > m.vh, a.vh > b.in, a.hl > m.hl, d.sky > a.sky";
    const [draft] = blamed(design(parts, wires), "plane-missing");
    expect(draft?.wires).toEqual(["b.out2>m.hh", "m.out1>z.sat"]);
    expect(draft?.parts).toEqual(["m", "z"]);
  });

  // A quattro LNB straight into a receiver: three planes are elsewhere, for one reason.
  test("planes with one culprit are one finding, named after them in one order", () => {
    const straight = design({ z: roof.z, d: roof.d, a: roof.a } as Parts, "a.vl > z.sat, d.sky > a.sky");
    const drafts = blamed(straight, "plane-missing");
    expect(drafts.map((d) => d?.at.band)).toEqual(["d/HH+d/HL+d/VH a", undefined, undefined]);
    expect(drafts[0]?.parts).toEqual(["a", "z"]);
    expect(drafts[0]?.facts.missing.count).toBe(60);
  });

  test("without planes it is named after its kind; a receiver that is its own culprit is told once", () => {
    const far = design({ k: ["cable"], z: ["receiver-tv"], u: ["aerial-uhf"] }, "k.out > z.in");
    const [open] = blamed(far, "receiver-misses");
    expect(open?.at.band).toBe("open input k in");
    const stacked: Parts = {
      z: ["receiver-stacked", { tuners: 1, userBands: [{ number: 9, centreMHz: 1210 }] }],
      a: ["lnb-stacked"],
      d: ["dish"],
    };
    const [own] = blamed(design(stacked, "d.sky > a.sky, a.out > z.sat"), "wrong-feed");
    expect(own?.parts).toEqual(["z"]);
    // The user band stands at the end, for two tuners may each have a wrong one.
    expect(own?.at.band).toBe("d/HH+d/HL+d/VH+d/VL z 9");
  });

  test("a receiver that takes no user bands is its own culprit", () => {
    const parts: Parts = { z: ["receiver-sat"], a: ["lnb-stacked"], d: ["dish"] };
    const [own] = blamed(design(parts, "d.sky > a.sky, a.out > z.sat"), "wrong-feed");
    expect(own?.parts).toEqual(["z"]);
    expect(own?.facts.culprit).toEqual({ part: "z" });
    expect(own?.wires).toEqual(["a.out>z.sat"]);
  });

  test("stays as it is where the loss is not found again", () => {
    const reason: MissingReason = { kind: "does not arrive" };
    const facts = { service: "satellite", wanted: 80, got: 0, culprit: { part: "z" } } as const;
    const draft: LossDraft = {
      severity: "error",
      at: { part: "z", service: "satellite", band: "of another day" },
      parts: ["z"],
      wires: [],
      facts: { ...facts, missing: { why: "absent", count: 80, reason, planes: [] } },
    };
    expect(blameLoss(draft, sound)).toBe(draft);
    const gone = { ...draft, at: { ...draft.at, part: "gone" } };
    expect(blameLoss(gone, sound)).toBe(gone);
  });
});
