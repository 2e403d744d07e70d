/**
 * TC: every guided case. What each fault does is common practice, no source; the evaluator must agree with it.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { bestMeasurement, consistentWith } from "../../../src/remedies/faults/bestMeasurement.ts";
import { diagnose, type Suspicion } from "../../../src/remedies/faults/diagnose.ts";
import { isAlikeInEffect } from "../../../src/remedies/faults/equivalent.ts";
import type { Fault } from "../../../src/remedies/faults/fault.ts";
import { measure } from "../../../src/remedies/faults/measure.ts";
import { askingFor } from "../../../src/remedies/faults/requestChoice.ts";
import {
  detailedSymptoms,
  type EvaluatedDesign,
  evaluated,
  type Observation,
  symptomsOf,
} from "../../../src/remedies/faults/symptoms.ts";
import { openCase } from "../../../src/remedies/training/case.ts";
import { CASES, caseOf } from "../../../src/remedies/training/cases.ts";
import { judge } from "../../../src/remedies/training/judge.ts";
import { FAULT_WORDS } from "../../../src/sentences/faults/faultWords.ts";
import { caseWords } from "../../../src/sentences/training/caseWords.ts";
import { finish } from "../faults/finish.ts";

/** What somebody who looks at every receiver and socket, plane by plane and tuner by tuner, would tick. */
function truthfully(now: EvaluatedDesign, sound: EvaluatedDesign): Observation[] {
  return detailedSymptoms(now, sound).map(({ state, ...place }) => ({
    ...place,
    works: state === "partial" ? "partial" : state === "works",
  }));
}

/** Measures as advised, with true readings, until one is left or nothing tells them apart. */
function narrowed(design: Design, faulty: Design, suspects: readonly Fault[]) {
  let left = suspects;
  let taken = 0;
  while (left.length > 1 && taken < 20) {
    const advice = finish(bestMeasurement(design, left));
    if (!advice) break;
    const shown = measure(design, evaluate(askingFor(faulty, advice.asked)), advice.at, advice.quantity);
    if (!shown) throw new Error(`no reading at ${advice.at.join(".")}`);
    taken += 1;
    left = consistentWith(design, left, { at: advice.at, reading: shown, asked: advice.asked });
  }
  return { left, taken };
}

test("TC1: at least fifteen cases, each with a name of its own, from easy to hard", () => {
  expect(CASES.length).toBeGreaterThanOrEqual(15);
  expect(new Set(CASES.map((c) => c.id)).size).toBe(CASES.length);
  expect(CASES.map((c) => c.level)).toEqual(CASES.map((c) => c.level).sort());
  expect(new Set(CASES.map((c) => c.level))).toEqual(new Set([1, 2, 3, 4, 5]));
  expect(caseOf("no-such-case")).toBeUndefined();
});

describe.each(CASES)("$id", (chosen) => {
  const opened = openCase(chosen);
  const { design, fault, faulty } = opened;
  const sound = evaluated(design);
  const truth = evaluated(faulty, sound);
  let found: readonly Suspicion[] | undefined;
  const suspicions = () => {
    found ??= finish(diagnose(design, truthfully(truth, sound)));
    return found;
  };

  test("TC2: works before the fault, fails at some receiver after it", () => {
    const receivers = (look: EvaluatedDesign) => look.report.verdicts.filter((v) => v.role === "receiver");
    expect(receivers(sound).length).toBeGreaterThan(0);
    expect(receivers(sound).filter((v) => v.state === "fails")).toEqual([]);
    expect(sound.report.findings.filter((f) => f.severity === "error")).toEqual([]);
    expect(receivers(truth).some((v) => v.state === "fails")).toBe(true);
  });

  test("TC3: the truth about what works puts the fault among the first three suspicions", () => {
    const rank = suspicions().findIndex((s) => s.faults.some((f) => f.id === fault.id));
    expect(rank).toBeGreaterThanOrEqual(0);
    expect(rank).toBeLessThan(3);
    expect(suspicions()[rank]?.match).toBe("exact");
  });

  test("TC4: measuring as advised leaves only what no meter tells from the fault", () => {
    const exact = suspicions()
      .filter((s) => s.match === "exact")
      .flatMap((s) => s.faults);
    const { left, taken } = narrowed(design, faulty, exact);
    expect(left.map((f) => f.id)).toContain(fault.id);
    for (const other of left) expect(isAlikeInEffect(design, other, fault), other.id).toBe(true);
    expect(left.length).toBeLessThanOrEqual(5);
    expect(taken).toBeLessThanOrEqual(6);
  });

  test("TC5: the first hint names neither the part nor the fault, and every text is a sentence", () => {
    const { hints, story, lesson } = caseWords(opened);
    const first = hints[0].toLowerCase();
    for (const id of fault.parts)
      expect(first).not.toContain(design.parts.find((p) => p.id === id)?.label.toLowerCase());
    for (const word of FAULT_WORDS[fault.type].name.split(" ").filter((w) => w.length > 5))
      expect(first).not.toContain(word);
    for (const text of [story, lesson, ...hints]) expect(text).toMatch(/[.?!]$/);
  });

  test("TC6: the walk leads to a receiver that the fault takes something from", () => {
    const { part, service } = chosen.walk;
    const there = symptomsOf(truth, sound).find((s) => s.part === part && s.service === service);
    expect(there?.state).toMatch(/partial|fails/);
  });

  test("TC7: naming the fault is right, naming the part is half of it", () => {
    expect(judge(opened, { part: fault.part, type: fault.type })).toBe("right");
    const farOff = design.parts.find((p) => !fault.parts.includes(p.id) && p.kind.startsWith("receiver"));
    expect(judge(opened, { part: farOff?.id ?? "", type: "filter-missing" })).toBe("wrong");
    expect(judge(opened, { part: fault.part, type: "load-missing" })).toBe("part");
  });
});
