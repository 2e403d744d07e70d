/** Work that is done step by step: whoever runs it can show how far it is, stop it, and set it a limit. */

/** Told at each step: what is done, and how much work it was. */
export type EvaluationProgress = {
  /** Parts done, of so many. */
  readonly done: number;
  readonly total: number;
  /** A count of carriers and the like, see `work.ts`; never a time, so that it is the same on any machine. */
  readonly work: number;
};

export type Steps<T> = Generator<EvaluationProgress, T, void>;

/** How much work an evaluation or a report may be. */
export type EvaluationBudget = { readonly work: number };

/**
 * What the page and the command line take on. A unit of work takes a microsecond or two and holds some 40 bytes: about
 * ten seconds, and a third of a gigabyte. Multiswitch blocks are at 200 per part; the largest design that a file may hold
 * is then at 1 000 000.
 */
export const BUDGET: EvaluationBudget = { work: 8_000_000 };

export type BudgetOutcome<T> =
  | { readonly ok: true; readonly value: T }
  /** How far it came before the budget was used up. */
  | { readonly ok: false; readonly reached: EvaluationProgress };

/** The same steps, up to the one that would go beyond the budget. */
export function* withinBudget<T>(steps: Steps<T>, budget: EvaluationBudget): Steps<BudgetOutcome<T>> {
  for (;;) {
    const step = steps.next();
    if (step.done) return { ok: true, value: step.value };
    if (step.value.work > budget.work) return { ok: false, reached: step.value };
    yield step.value;
  }
}

/** Runs all steps at once. */
export function finished<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
