/**
 * How the storage stands: what the list shows, what this window alone holds because the storage refused it, and when
 * it is asked again. Everything that touches the storage goes one after the other.
 */

import type { DocumentHead } from "./documentStorage.ts";
import type { History } from "./history.ts";
import { type DocumentWork, saveWork, type Writer } from "./saving.ts";
import type { DocumentsState } from "./state.ts";
import { isLeaving, storageTrouble } from "./storageTrouble.ts";

/** A document that the storage refused: it lives in this window until it is taken. */
export type RefusedDocument = {
  readonly work: DocumentWork;
  readonly history: History;
  readonly head: DocumentHead;
};

type Told = Partial<DocumentsState>;

const RETRY_MS = 5000;
const WORKS_AGAIN = "The browser’s storage works again. Your own designs are in the list of designs.";

export type StorageStatus = ReturnType<typeof createStorageStatus>;

/** `isPending`: whether the open design waits to be saved; `tryAgain`: called a while after a refusal. */
export function createStorageStatus(
  writer: Writer,
  get: () => DocumentsState,
  set: (told: Told) => void,
  open: { readonly isPending: () => boolean; readonly tryAgain: () => Promise<void> },
) {
  const { storage } = writer;
  const kept = new Map<string, RefusedDocument>();
  let retry: ReturnType<typeof setTimeout> | undefined;
  let queue: Promise<unknown> = Promise.resolve();

  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = queue.then(work);
    queue = result.catch(() => undefined);
    return result;
  }

  function refused(error: unknown): string {
    const reason = storageTrouble(error);
    if (retry === undefined) {
      retry = setTimeout(() => {
        retry = undefined;
        void inTurn(open.tryAgain);
      }, RETRY_MS);
    }
    if (isLeaving(error)) set({ state: open.isPending() ? "unsaved" : "saved" });
    else set({ state: "unavailable", reason });
    return reason;
  }

  function recovered(): void {
    const { state, current } = get();
    if (state !== "unavailable" || open.isPending() || kept.size > 0) return;
    set({ state: "saved", reason: null, ...(current === null ? { notice: WORKS_AGAIN } : {}) });
  }

  function list(heads: readonly DocumentHead[]): void {
    set({ list: [...heads].sort((a, b) => b.changed - a.changed) });
  }

  function listed(head: DocumentHead): void {
    list([head, ...get().list.filter((each) => each.id !== head.id)]);
  }

  async function readList(): Promise<void> {
    const heads = await storage.heads().catch((error: unknown) => {
      if (kept.size === 0) throw error;
      return [];
    });
    const own = [...kept.values()].map((each) => each.head);
    list([...heads.filter((head) => !kept.has(head.id)), ...own]);
    recovered();
  }

  return {
    kept,
    inTurn,
    refused,
    listed,
    readList,

    keep(work: DocumentWork, history: History, head: DocumentHead): void {
      const marked = { ...head, onlyHere: true };
      kept.set(work.id, { work, history, head: marked });
      listed(marked);
    },

    /** Once the storage takes things again, it takes the others too. */
    async saveKept(): Promise<void> {
      for (const [id, { work, history }] of [...kept]) {
        try {
          const saved = await saveWork(writer, work, history, true);
          kept.delete(id);
          listed(saved.head);
          if (saved.notice !== null) set({ notice: saved.notice });
        } catch {
          // It stays with this window.
        }
      }
      recovered();
    },
  };
}
