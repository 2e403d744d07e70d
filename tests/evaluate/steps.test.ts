/** Evaluation and report step by step, and what stops them: counts of work, never the clock. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate, evaluateInSteps } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import {
  BUDGET,
  type EvaluationProgress,
  finished,
  type Steps,
  withinBudget,
} from "../../src/evaluate/steps.ts";
import { report, reportInSteps } from "../../src/findings/report.ts";
import { anyDesign } from "../arbitraries.ts";
import { largeDesign } from "../bench/largeDesign.ts";
import { withOptions } from "../draw.ts";
import { aerialLadder, star } from "../structures.ts";

function walked<T>(steps: Steps<T>): { readonly value: T; readonly told: readonly EvaluationProgress[] } {
  const told: EvaluationProgress[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done) return { value: step.value, told };
    told.push(step.value);
  }
}

function plain(evaluation: Evaluation): unknown {
  return evaluation.records.map((r) => ({ ...r, kind: r.kind.kind }));
}

/** Counted from the outside: what a part hands on is the least that it can have cost. */
function carriersAtOutputs(evaluation: Evaluation): number {
  return evaluation.records
    .flatMap((r) => Object.values(r.outputs))
    .flatMap((s) => s.bands)
    .reduce((sum, band) => sum + band.level.length, 0);
}

function expectSteadyProgress(told: readonly EvaluationProgress[]): void {
  for (const [n, { done, total, work }] of told.entries()) {
    expect(done).toBeGreaterThanOrEqual(told[n - 1]?.done ?? 0);
    expect(done).toBeLessThanOrEqual(total);
    expect(Number.isFinite(work)).toBe(true);
  }
}

describe("in steps", () => {
  test.each(EXAMPLES)(
    "$key comes to the same as in one go, with at least a step for each part",
    (example) => {
      const design = example.load();
      const { value, told } = walked(evaluateInSteps(design));
      expect(plain(value)).toEqual(plain(evaluate(example.load())));
      expect(told.length).toBeGreaterThanOrEqual(design.parts.length);
      expectSteadyProgress(told);
      const reported = walked(reportInSteps(value));
      expect(reported.value).toEqual(report(evaluate(example.load())));
      expect(reported.told.length).toBeGreaterThanOrEqual(design.parts.length);
      expectSteadyProgress(reported.told);
    },
  );

  test("no design is handed on more carriers than were counted as work", () => {
    let carriers = 0;
    fc.assert(
      fc.property(anyDesign({ maxParts: 14, loops: true }), (design) => {
        const { value, told } = walked(evaluateInSteps(design));
        expect(plain(value)).toEqual(plain(evaluate(design)));
        expectSteadyProgress(told);
        expect(told.at(-1)?.work ?? 0).toBeGreaterThanOrEqual(carriersAtOutputs(value));
        carriers += carriersAtOutputs(value);
      }),
      { numRuns: 60 },
    );
    expect(carriers).toBeGreaterThan(0);
  });

  test("the work of a design is the same whether it was evaluated from scratch or after an edit", () => {
    const before = largeDesign(100);
    const cable = before.parts.find((p) => p.kind === "cable")?.id ?? "";
    const after = withOptions(before, cable, { lengthM: 33 });
    const scratch = walked(evaluateInSteps(after));
    const edited = walked(evaluateInSteps(after, evaluate(before)));
    expect(edited.told.at(-1)?.work).toBe(scratch.told.at(-1)?.work);
    expect(edited.told.length).toBeLessThan(scratch.told.length);
  });
});

describe("within the budget", () => {
  const tried = (design: Design, budget = BUDGET) => walked(withinBudget(evaluateInSteps(design), budget));

  test("every example and a block of 1 000 parts fit many times over", () => {
    for (const design of [...EXAMPLES.map((e) => e.load()), largeDesign(1000)]) {
      const { value, told } = tried(design);
      expect(value.ok).toBe(true);
      expect(told.at(-1)?.work).toBeLessThan(BUDGET.work / 10);
    }
  });

  test.each([
    { stages: 12, ways: 2 },
    { stages: 40, ways: 2 },
    { stages: 12, ways: 8 },
  ])("$stages stages of $ways-way splitters on combiners fit, for the ways of a signal are one band", (o) => {
    expect(tried(aerialLadder(o.stages, o.ways), { work: 30_000 }).value.ok).toBe(true);
  });

  test("hundreds of sources on every wire do not", () => {
    // 256 aerials at each of 85 outputs or more, each with two carriers: over 40,000 carriers on wires.
    const design = star({ sources: 256 });
    const { value, told } = tried(design, { work: 40_000 });
    for (const { work } of told) expect(work).toBeLessThanOrEqual(40_000);
    if (value.ok) throw new Error("it was not given up");
    expect(value.reached.work).toBeGreaterThan(40_000);
    expect(value.reached.done).toBeLessThan(value.reached.total);
    expect(value.reached.total).toBe(design.parts.length);
  });

  test("it stops at the part that goes beyond it, and says where", () => {
    const design = largeDesign(100);
    const whole = walked(evaluateInSteps(design)).told;
    const half = (whole.at(-1)?.work ?? 0) / 2;
    const { value, told } = tried(design, { work: half });
    const first = whole.findIndex(({ work }) => work > half);
    expect(value).toEqual({ ok: false, reached: whole[first] });
    expect(told).toEqual(whole.slice(0, first));
  });

  test("a report has its budget too", () => {
    const evaluation = evaluate(largeDesign(100));
    const { value } = walked(withinBudget(reportInSteps(evaluation), { work: 500 }));
    expect(value).toMatchObject({ ok: false, reached: { work: expect.any(Number) } });
  });

  test("what is finished is the value itself", () => {
    const design = aerialLadder(2);
    expect(plain(finished(evaluateInSteps(design)))).toEqual(plain(evaluate(design)));
  });
});
