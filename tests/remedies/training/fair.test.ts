/** Practice is fair: what counts as the same fault, what readings prove, and the best way. Effects: common practice, no source. */
import { describe, expect, test } from "vitest";
import { isAlikeInEffect, isSameFault } from "../../../src/remedies/faults/equivalent.ts";
import { faultOf } from "../../../src/remedies/faults/list.ts";
import { measurementPath } from "../../../src/remedies/faults/measurementPath.ts";
import { openCase, planValueRule } from "../../../src/remedies/training/case.ts";
import { caseOf } from "../../../src/remedies/training/cases.ts";
import { evidenceOf, judge, readingAgainst } from "../../../src/remedies/training/judge.ts";
import type { TakenMeasurement } from "../../../src/remedies/training/progress.ts";
import { finish } from "../faults/finish.ts";

function opened(id: string) {
  const chosen = caseOf(id);
  if (!chosen) throw new Error(`no case ${id}`);
  return openCase(chosen);
}

const lounge = opened("lounge-dark");
const fault = (id: string) => {
  const found = faultOf(lounge.design, id);
  if (!found) throw new Error(`no fault ${id}`);
  return found;
};
const level = (part: string, port: string): TakenMeasurement => ({
  part,
  port,
  quantity: "level",
  asked: "",
});

describe("the same fault in two descriptions", () => {
  test("is right at either end of the wire that the plug is off", () => {
    for (const part of ["split", "drop1"]) expect(judge(lounge, { part, type: "plug-off" })).toBe("right");
  });

  test("is not found where a meter tells the two apart", () => {
    const off = fault("plug-off:split.out1>drop1.in");
    // Corroded, the joint lets some level through; with the plug off none passes.
    expect(isSameFault(lounge.design, off, fault("corroded-joint:split.out1>drop1.in"))).toBe(false);
    // The next wire: between the two the level is there in one case and not in the other.
    expect(isAlikeInEffect(lounge.design, off, fault("plug-off:drop1.out>plate1.in"))).toBe(false);
    expect(isSameFault(lounge.design, off, off)).toBe(true);
  });

  test("holds both ways round, and never between parts that have nothing in common", () => {
    const some = ["mains-off:psu", "aerial-off:uhf", "plug-off:down.out>psu.in"].map(fault);
    for (const a of some)
      for (const b of some) {
        expect(isSameFault(lounge.design, a, b)).toBe(isSameFault(lounge.design, b, a));
        if (!a.parts.some((part) => b.parts.includes(part)))
          expect(isSameFault(lounge.design, a, b)).toBe(false);
      }
  });
});

describe("readings", () => {
  test("exclude a wrong name, and the first that does is told", () => {
    // Level before the splitter shows that the amplifier on the mast is fed: its inserter has mains.
    const readings = [level("tv2", "in"), level("split", "in")];
    const against = readingAgainst(lounge, { part: "psu", type: "mains-off" }, readings);
    expect(against).toEqual(readings[0]);
    expect(readingAgainst(lounge, { part: "psu", type: "mains-off" }, [])).toBeUndefined();
    expect(readingAgainst(lounge, { part: "split", type: "plug-off" }, readings)).toBeUndefined();
  });

  test("leave fewer faults the more they tell: both sides of the plug prove it", () => {
    const { suspects } = finish(measurementPath(lounge.design, lounge.fault));
    expect(suspects.length).toBeGreaterThan(2);
    const none = evidenceOf(lounge, suspects, []);
    const both = evidenceOf(lounge, suspects, [level("split", "out1"), level("drop1", "in")]);
    expect(none.left).toBeGreaterThan(both.left);
    expect(both.left).toBeLessThanOrEqual(none.suspects);
    // A reading in the other room tells nothing of this one.
    expect(evidenceOf(lounge, suspects, [level("tv2", "in")]).left).toBe(none.left);
  });
});

describe("the best way", () => {
  test.each(["lounge-dark", "dark-cupboard"])(
    "through %s ends at the fault, each step excluding something",
    (id) => {
      const { design, fault: hidden } = opened(id);
      const { suspects, steps } = finish(measurementPath(design, hidden));
      let before = suspects.length;
      for (const { excluded, left } of steps) {
        expect(excluded.length + left.length).toBe(before);
        expect(left.map((f) => f.id)).toContain(hidden.id);
        before = left.length;
      }
      const last = steps.at(-1)?.left ?? suspects;
      for (const other of last) expect(isAlikeInEffect(design, other, hidden), other.id).toBe(true);
      // No way by halves is longer than one reading for each other suspect.
      expect(steps.length).toBeLessThan(suspects.length);
    },
  );
});

test("plan values fade: beside the reading, then at a price, then none", () => {
  expect(([1, 2, 3, 4, 5] as const).map(planValueRule)).toEqual([
    "shown",
    "shown",
    "at a price",
    "none",
    "none",
  ]);
});
