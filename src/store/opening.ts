/**
 * Bringing a design up without holding up the page: tried out in a worker first, then worked out in slices on the
 * page. While that takes long, and where it comes to nothing, a screen of its own stands in the place of the canvas.
 */

import { create } from "zustand";
import type { Design } from "../design/design.ts";
import type { EvaluatedDesign } from "../remedies/faults/symptoms.ts";
import { startSearch } from "./searchRun.ts";
import type { StartMark } from "./startMark.ts";
import { evaluateAndReport, evaluateAndReportNow, type TrialProgress } from "./trial.ts";

/** Why a design did not come up. */
export type OpeningFailure = "stopped" | "late" | "too large" | "failed";

/** What a person wanted opened that cannot be read. */
export type RefusedSource = "link" | "practice" | "example" | "file";

export type OpeningProblem =
  /** The design is there, but was not worked out. */
  | { readonly type: "halted"; readonly why: OpeningFailure; readonly design: Design }
  | { readonly type: "refused"; readonly what: RefusedSource; readonly reason: string }
  /** The design that was open last did not come up when the page was opened before. */
  | { readonly type: "not up"; readonly mark: StartMark }
  /** The design as a list, not worked out; and what to go back to. */
  | { readonly type: "list"; readonly design: Design; readonly before: OpeningProblem };

export type OpeningProgress = Pick<TrialProgress, "stage" | "done" | "total"> & {
  readonly title: string;
  readonly parts: number;
  /** False for the first moment: most designs are there before anybody could read a word. */
  readonly isShown: boolean;
  /** Once the worker has found that it can be done, the page only does it. */
  readonly canStop: boolean;
};

export type OpeningState = {
  readonly working: OpeningProgress | null;
  readonly problem: OpeningProblem | null;
  readonly stop: () => void;
  readonly showProblem: (problem: OpeningProblem) => void;
  readonly leaveProblem: () => void;
};

/** A design with more parts is tried beside the page, and worked out in slices. */
export const LARGE_PARTS = 300;
/** Work that the page does in one go: a tenth to a third of a second. */
export const AT_ONCE_BUDGET = { work: 200_000 };
/** A practice case is made by many evaluations, on the page. */
export const PRACTICE_BUDGET = { work: 100_000 };
export const DEADLINE_MS = 20_000;
const SHOWN_AFTER_MS = 300;
const SLICE_MS = 12;

/** Ends what is being tried out. */
let stopRunning: ((how: "stopped" | "overtaken") => void) | null = null;

export const useOpening = create<OpeningState>()((set) => ({
  working: null,
  problem: null,
  stop: () => stopRunning?.("stopped"),
  showProblem: (problem) => {
    stopRunning?.("overtaken");
    set({ problem, working: null });
  },
  leaveProblem: () => set({ problem: null }),
}));

/** "overtaken": something else was opened meanwhile. */
export type TrialOutcome = "fits" | OpeningFailure | "overtaken";

/** Tries a design out beside the page. `isShown`: with the screen from the first moment on. */
export function tryDesign(design: Design, { isShown }: { readonly isShown: boolean }): Promise<TrialOutcome> {
  stopRunning?.("overtaken");
  return new Promise((resolve) => {
    begin(design, { isShown, canStop: true });
    const reveal = setTimeout(() => update({ isShown: true }), SHOWN_AFTER_MS);
    const deadline = setTimeout(() => end("late"), DEADLINE_MS);
    const handle = startSearch("trial", { design }, (event) => {
      if (event.type === "failed") end("failed");
      else if (event.type === "progress") update(event.progress);
      else end(event.progress.isTooLarge ? "too large" : "fits");
    });
    stopRunning = end;
    function end(tried: TrialOutcome): void {
      clearTimeout(reveal);
      clearTimeout(deadline);
      handle.stop();
      if (stopRunning === end) stopRunning = null;
      useOpening.setState({ working: null });
      resolve(tried);
    }
  });
}

/** Works a design out on the page: a small one at once, a large one in slices. Null: beyond the budget. */
export async function evaluateOnPage(design: Design): Promise<EvaluatedDesign | null> {
  if (design.parts.length <= LARGE_PARTS) {
    const worked = evaluateAndReportNow(design, { budget: AT_ONCE_BUDGET });
    if (worked) return worked;
  }
  begin(design, { isShown: true, canStop: false });
  try {
    const worked = await inSlices(evaluateAndReport(design), update);
    return "isTooLarge" in worked ? null : worked;
  } finally {
    useOpening.setState({ working: null });
  }
}

async function inSlices<P, T>(steps: Generator<P, T, void>, tell: (progress: P) => void): Promise<T> {
  for (;;) {
    const end = performance.now() + SLICE_MS;
    let step = steps.next();
    while (!step.done && performance.now() < end) step = steps.next();
    if (step.done) return step.value;
    tell(step.value);
    await nextTurn();
  }
}

/** Not by a timer: a page in the background would get one slice a second. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

function begin(design: Design, how: Pick<OpeningProgress, "isShown" | "canStop">): void {
  const { title, parts } = design;
  const start = { title, parts: parts.length, stage: "signals", done: 0, total: parts.length } as const;
  useOpening.setState({ working: { ...start, ...how } });
}

function update(change: Partial<OpeningProgress>): void {
  useOpening.setState(({ working }) => ({ working: working && { ...working, ...change } }));
}
