/**
 * Whether the design that was open last came up at the last start. A mark is left before it is worked out and taken
 * away once it stands there; one that is found at the next start belongs to a start that did not come to its end.
 */

import { ignoringStorageErrors } from "./documents/unsavedNotes.ts";

export type StartMark = { readonly id: string; readonly title: string };

export type StartMarks = {
  /** What did not come up last time, and takes the mark away: it is said once. Null: nothing. */
  readonly takeFailed: () => Promise<StartMark | null>;
  /**
   * Marks the start of a design; the function takes the mark away again. `isFailed`: it did not come up before, so
   * that leaving the page soon is no way round it.
   */
  readonly leave: (mark: StartMark, how?: { readonly isFailed: boolean }) => () => void;
};

const PREFIX = "downlead.start.";

/** Whoever leaves a page sooner has only reloaded it or changed their mind [ms]. */
const PATIENCE_MS = 3000;

/** In which the browser frees the locks of a page that is gone [ms]. */
const RELEASE_MS = 300;

/** A start that takes longer has not come up, whatever its window is still doing [ms]. */
const LONGEST_START_MS = 60_000;

/**
 * In local storage, one place for each window. While its window lives, a mark is no failure, unless it is old:
 * each window holds a lock of the mark's name, and the browser frees it when the window goes or is killed.
 */
export function browserStartMarks(now: () => number = Date.now): StartMarks {
  const own = PREFIX + crypto.getRandomValues(new Uint32Array(2)).join("-");
  return {
    leave: (mark, { isFailed } = { isFailed: false }) => {
      ignoringStorageErrors(() => localStorage.setItem(own, JSON.stringify({ ...mark, at: now() })));
      const free = holdLock(own);
      const began = now();
      const remove = () => ignoringStorageErrors(() => localStorage.removeItem(own));
      const left = () => !isFailed && now() - began < PATIENCE_MS && remove();
      window.addEventListener("pagehide", left);
      return () => {
        window.removeEventListener("pagehide", left);
        remove();
        free();
      };
    },
    takeFailed: async () => {
      const found: [string, StartMark & { readonly at: number }][] = [];
      ignoringStorageErrors(() => {
        for (const key of Object.keys(localStorage)) {
          const mark = key.startsWith(PREFIX) ? markOf(localStorage.getItem(key)) : undefined;
          if (mark) found.push([key, mark]);
        }
      });
      let held = await heldLocks();
      // A page that is being reloaded may hold its lock for a moment longer.
      if (found.some(([key]) => held.has(key))) {
        await new Promise((resolve) => setTimeout(resolve, RELEASE_MS));
        held = await heldLocks();
      }
      const failed = found.filter(([key, mark]) => !held.has(key) || now() - mark.at > LONGEST_START_MS);
      for (const [key] of failed) ignoringStorageErrors(() => localStorage.removeItem(key));
      const [, latest] = failed.sort(([, a], [, b]) => b.at - a.at)[0] ?? [];
      return latest ? { id: latest.id, title: latest.title } : null;
    },
  };
}

function holdLock(name: string): () => void {
  let free: () => void = () => undefined;
  const held = new Promise<void>((resolve) => {
    free = resolve;
  });
  // Absent where a page is served by plain http within a house; its marks then count at once.
  navigator.locks?.request(name, () => held).catch(() => undefined);
  return free;
}

async function heldLocks(): Promise<ReadonlySet<string>> {
  const state = await navigator.locks?.query().catch(() => undefined);
  return new Set((state?.held ?? []).flatMap((lock) => lock.name ?? []));
}

function markOf(text: string | null): (StartMark & { readonly at: number }) | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text ?? "");
  } catch {
    return undefined;
  }
  if (typeof value !== "object" || value === null) return undefined;
  const mark: { id?: unknown; title?: unknown; at?: unknown } = value;
  const { id, title, at } = mark;
  if (typeof id !== "string" || typeof title !== "string") return undefined;
  return { id, title, at: typeof at === "number" ? at : 0 };
}

export const startMarks = browserStartMarks();
