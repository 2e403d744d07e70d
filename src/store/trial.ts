/**
 * A design tried out before it is shown: evaluated and reported on step by step, within the budget. It runs beside
 * the page (`searchTask.ts`), so that no design from outside can hold the page up, or in slices on it.
 */

import type { Design } from "../design/design.ts";
import { evaluateInSteps } from "../evaluate/evaluate.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import {
  BUDGET,
  type EvaluationBudget,
  type EvaluationProgress,
  type Steps,
  withinBudget,
} from "../evaluate/steps.ts";
import { reportInSteps } from "../findings/report.ts";
import type { EvaluatedDesign } from "../remedies/faults/symptoms.ts";

export type TrialTask = { readonly design: Design };

export type TrialProgress = {
  readonly stage: "signals" | "findings";
  readonly done: number;
  readonly total: number;
  /** True: it goes beyond the budget, and was given up here. */
  readonly isTooLarge: boolean;
};

/** Plain data only, for it comes out of a worker. */
export function* trial({ design }: TrialTask): Generator<TrialProgress, TrialProgress, void> {
  const working = evaluateAndReport(design);
  for (;;) {
    const step = working.next();
    if (!step.done) yield step.value;
    else if ("isTooLarge" in step.value) return step.value;
    else return { stage: "findings", done: 1, total: 1, isTooLarge: false };
  }
}

/** Everything that is shown of a design; how far it came where that goes beyond the budget. */
export function* evaluateAndReport(
  design: Design,
  { former, budget = BUDGET }: { readonly former?: Evaluation; readonly budget?: EvaluationBudget } = {},
): Generator<TrialProgress, EvaluatedDesign | TrialProgress, void> {
  const evaluating = yield* told("signals", withinBudget(evaluateInSteps(design, former), budget));
  if (!evaluating.ok) return tooLarge("signals", evaluating.reached);
  const evaluation = evaluating.value;
  const reporting = yield* told("findings", withinBudget(reportInSteps(evaluation), budget));
  return reporting.ok ? { evaluation, report: reporting.value } : tooLarge("findings", reporting.reached);
}

function* told<T>(stage: TrialProgress["stage"], steps: Steps<T>): Generator<TrialProgress, T, void> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { stage, done: step.value.done, total: step.value.total, isTooLarge: false };
  }
}

function tooLarge(stage: TrialProgress["stage"], { done, total }: EvaluationProgress): TrialProgress {
  return { stage, done, total, isTooLarge: true };
}

/** All at once: for an edit, which changes little, and for a small design. Null: beyond the budget. */
export function evaluateAndReportNow(
  design: Design,
  options?: Parameters<typeof evaluateAndReport>[1],
): EvaluatedDesign | null {
  const working = evaluateAndReport(design, options);
  let step = working.next();
  while (!step.done) step = working.next();
  return "isTooLarge" in step.value ? null : step.value;
}
