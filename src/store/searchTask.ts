/** What can be searched for beside the page: plain data in, plain data out, so that it passes to a worker and back. */
import type { Design } from "../design/design.ts";
import type { Finding } from "../findings/finding.ts";
import type { Aim } from "../remedies/balance/aim.ts";
import { type Balance, balance } from "../remedies/balance/balance.ts";
import type { PriceList } from "../remedies/prices.ts";
import { type SearchProgress as CureProgress, search } from "../remedies/search.ts";
import { type PathSearch, type PathTask, searchPath } from "./practicePath.ts";
import { type ConditionsSearch, type ConditionsTask, searchConditions } from "./searchConditions.ts";
import { type DiagnosisProgress, type DiagnosisTask, searchDiagnosis } from "./searchDiagnosis.ts";
import { type TrialProgress, type TrialTask, trial } from "./trial.ts";

export type CureTask = {
  readonly design: Design;
  readonly prices: PriceList;
  /** Absent: all that is wrong. */
  readonly target?: Finding;
};

export type BalanceTask = { readonly design: Design; readonly aim: Aim };

/** Every sort of search, with its question and what it tells on the way. */
export type Searches = {
  readonly cures: { readonly task: CureTask; readonly progress: CureProgress };
  readonly diagnosis: { readonly task: DiagnosisTask; readonly progress: DiagnosisProgress };
  readonly balance: { readonly task: BalanceTask; readonly progress: Balance };
  readonly conditions: { readonly task: ConditionsTask; readonly progress: ConditionsSearch };
  readonly path: { readonly task: PathTask; readonly progress: PathSearch };
  readonly trial: { readonly task: TrialTask; readonly progress: TrialProgress };
};

export type SearchKind = keyof Searches;
export type TaskOf<S extends SearchKind> = Searches[S]["task"];
export type ProgressOf<S extends SearchKind> = Searches[S]["progress"];

type Stepwise<P> = Generator<P, P, void>;

const RUNS: { readonly [S in SearchKind]: (task: TaskOf<S>) => Stepwise<ProgressOf<S>> } = {
  cures: ({ design, prices, target }) => search(design, { prices, ...(target ? { target } : {}) }),
  diagnosis: searchDiagnosis,
  balance: ({ design, aim }) => balance(design, aim),
  conditions: searchConditions,
  path: searchPath,
  trial,
};

export type SearchEvent<P> =
  | { readonly type: "progress"; readonly progress: P }
  | { readonly type: "done"; readonly progress: P }
  | { readonly type: "failed"; readonly reason: string };

type Running<S extends SearchKind> = {
  readonly sort: S;
  readonly task: TaskOf<S>;
  readonly tell: (event: SearchEvent<ProgressOf<S>>) => void;
  /** How long it works before it tells and lets others have their turn [ms]. */
  readonly sliceMs: number;
  readonly isStopped: () => boolean;
};

/** Runs a search slice by slice, until it is done or stopped. */
export async function runInSlices<S extends SearchKind>(running: Running<S>): Promise<void> {
  const { sort, task, tell, sliceMs, isStopped } = running;
  try {
    const steps = RUNS[sort](task);
    for (;;) {
      const end = performance.now() + sliceMs;
      let step = steps.next();
      while (!step.done && performance.now() < end) step = steps.next();
      if (isStopped()) return;
      tell({ type: step.done ? "done" : "progress", progress: step.value });
      if (step.done) return;
      await new Promise((turn) => setTimeout(turn, 0));
      if (isStopped()) return;
    }
  } catch (error) {
    tell({ type: "failed", reason: error instanceof Error ? error.message : String(error) });
  }
}
