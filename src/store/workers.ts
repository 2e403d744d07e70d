/**
 * Makes the workers. The only place that knows where their code lies: beside the page, or inside it where all is one
 * file (src/build/singleFile.ts turns these two imports around).
 */
import layoutAddress from "elkjs/lib/elk-worker.min.js?url";
import SearchWorker from "./searchWorker.ts?worker";

/** For searches; null where the browser has no workers. */
export function searchWorker(): Worker | null {
  if (typeof Worker === "undefined") return null;
  try {
    return new SearchWorker();
  } catch {
    return null;
  }
}

/** For arranging: the layout library's own. */
export function layoutWorker(): Worker {
  return new Worker(layoutAddress);
}
