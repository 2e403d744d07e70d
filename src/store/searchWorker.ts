/** A search on a thread of its own: the page stays free. Stopping it means ending the worker. */
import "../parts/schemasWithoutEval.ts";
import { runInSlices, type SearchKind, type TaskOf } from "./searchTask.ts";

/** Often enough for a bar that moves, seldom enough not to be busy with telling [ms]. */
const SLICE_MS = 80;

export type WorkerTask<S extends SearchKind = SearchKind> = { readonly sort: S; readonly task: TaskOf<S> };

globalThis.addEventListener("message", ({ data }: MessageEvent<WorkerTask>) => {
  void runInSlices({
    ...data,
    sliceMs: SLICE_MS,
    isStopped: () => false,
    tell: (event) => globalThis.postMessage(event),
  });
});
