/** Where the user's own designs are kept: one small head and one text for each, in this browser. */
import { createStore, promisifyRequest, type UseStore } from "idb-keyval";

export type DocumentHead = {
  readonly id: string;
  readonly title: string;
  /** When it was last saved [ms since 1970]. */
  readonly changed: number;
  readonly parts: number;
  /** Counts the saves: a window that knows an older one must not overwrite. */
  readonly revision: number;
  /** The storage refuses it: it lives in this window only, and is gone when that closes. */
  readonly onlyHere?: boolean;
};

/** A stored design: its head and the text of its file. */
export type StoredDocument = { readonly head: DocumentHead; readonly text: string };

export type Shelf = {
  readonly heads: () => Promise<readonly DocumentHead[]>;
  readonly read: (id: string) => Promise<StoredDocument | undefined>;
  /**
   * Puts a document in its place in one step, unless what stands there has another revision than
   * `expected` (null: nothing should stand there). Yields whether it was put.
   */
  readonly put: (document: StoredDocument, expected: number | null) => Promise<boolean>;
  readonly remove: (id: string) => Promise<void>;
  readonly lastOpened: () => Promise<string | null>;
  readonly setLastOpened: (id: string | null) => Promise<void>;
};

const LAST = "last-opened";
const headKey = (id: string) => `head:${id}`;
const textKey = (id: string) => `text:${id}`;

/** The shelf of this browser (IndexedDB). Every call may reject: storage can be denied or full. */
export function browserShelf(): Shelf {
  let opened: UseStore | undefined;
  // Opened at the first use only: where storage is denied, the attempt itself throws.
  const use: UseStore = async (mode, work) => {
    opened ??= createStore("downlead", "designs");
    return await opened(mode, work);
  };

  return {
    heads: () =>
      use("readonly", async (store) => {
        const range = IDBKeyRange.bound(headKey(""), headKey("\uffff"));
        const found: unknown[] = await promisifyRequest(store.getAll(range));
        return found.filter(isHead);
      }),

    read: (id) =>
      use("readonly", async (store) => {
        const [head, text]: unknown[] = await Promise.all([
          promisifyRequest(store.get(headKey(id))),
          promisifyRequest(store.get(textKey(id))),
        ]);
        return isHead(head) && typeof text === "string" ? { head, text } : undefined;
      }),

    put: ({ head, text }, expected) =>
      use("readwrite", async (store) => {
        // Look and write within one transaction: no other window can come between.
        const standing: unknown = await promisifyRequest(store.get(headKey(head.id)));
        if ((isHead(standing) ? standing.revision : null) !== expected) return false;
        store.put(head, headKey(head.id));
        store.put(text, textKey(head.id));
        await promisifyRequest(store.transaction);
        return true;
      }),

    remove: (id) =>
      use("readwrite", (store) => {
        store.delete(headKey(id));
        store.delete(textKey(id));
        return promisifyRequest(store.transaction);
      }),

    lastOpened: () =>
      use("readonly", async (store) => {
        const id: unknown = await promisifyRequest(store.get(LAST));
        return typeof id === "string" ? id : null;
      }),

    setLastOpened: (id) =>
      use("readwrite", (store) => {
        store.put(id, LAST);
        return promisifyRequest(store.transaction);
      }),
  };
}

// What lies in the browser's storage may stem from any edition, or from a hand in the developer tools.
function isHead(value: unknown): value is DocumentHead {
  if (typeof value !== "object" || value === null) return false;
  const head: Partial<Record<keyof DocumentHead, unknown>> = value;
  return (
    typeof head.id === "string" &&
    typeof head.title === "string" &&
    typeof head.changed === "number" &&
    typeof head.parts === "number" &&
    typeof head.revision === "number"
  );
}
