/** Starts a search beside the page where the browser has workers, else in short slices between its other work. */
import type { ProgressOf, SearchEvent, SearchKind, TaskOf } from "./searchTask.ts";
import type { WorkerTask } from "./searchWorker.ts";
import { searchWorker } from "./workers.ts";

/** Short enough for the page to stay fluent [ms]. */
const SLICE_MS = 10;

export type SearchHandle = { readonly stop: () => void };

/** After `stop` nothing more is told. */
export function startSearch<S extends SearchKind>(
  sort: S,
  task: TaskOf<S>,
  tell: (event: SearchEvent<ProgressOf<S>>) => void,
): SearchHandle {
  const worker = searchWorker();
  if (!worker) return onThisThread(sort, task, tell);
  let isTold = false;
  worker.onmessage = ({ data }: MessageEvent<SearchEvent<ProgressOf<S>>>) => {
    isTold = true;
    if (data.type !== "progress") worker.terminate();
    tell(data);
  };
  let fallback: SearchHandle | null = null;
  worker.onerror = (event) => {
    // The page that looks after it is told otherwise: an error here is not also one of the page.
    event.preventDefault();
    worker.terminate();
    // A worker that could not even be loaded has done nothing yet.
    if (isTold) tell({ type: "failed", reason: event.message || "The search stopped." });
    else fallback = onThisThread(sort, task, tell);
  };
  const order: WorkerTask<S> = { sort, task };
  worker.postMessage(order);
  return {
    stop: () => {
      worker.onmessage = null;
      worker.onerror = null;
      worker.terminate();
      fallback?.stop();
    },
  };
}

function onThisThread<S extends SearchKind>(
  sort: S,
  task: TaskOf<S>,
  tell: (event: SearchEvent<ProgressOf<S>>) => void,
): SearchHandle {
  let stopped = false;
  const isStopped = () => stopped;
  // Loaded at need, since workers have their own; whoever starts a search hears of it after the start has returned.
  import("./searchTask.ts").then(
    ({ runInSlices }) => runInSlices({ sort, task, tell, sliceMs: SLICE_MS, isStopped }),
    () => {
      if (!stopped) tell({ type: "failed", reason: "The search did not load. Check the connection." });
    },
  );
  return {
    stop: () => {
      stopped = true;
    },
  };
}
