/**
 * The user's own designs, kept in this browser: the list, which one is open, and how its saving stands.
 * The open design itself lives in the app store; it comes in through `changed` and goes out of `open`.
 * Whatever happens, a text that lies in the storage is never overwritten unseen and never thrown away.
 */
import { create, type StoreApi, type UseBoundStore } from "zustand";
import type { Design } from "../design/design.ts";
import { readDesign, writeDesign } from "../design/file.ts";
import { duplicateStored, GONE, putOpen, renameStored, type Surroundings } from "./documentCare.ts";
import { browserParting } from "./documentParting.ts";
import { browserShelf, type DocumentHead, type StoredDocument } from "./documentShelf.ts";
import { sheltered } from "./documentShelter.ts";
import { storageTrouble } from "./documentTrouble.ts";

export type SaveState =
  /** All that was changed lies in the storage (for an untouched example: nothing was changed yet). */
  | "saved"
  | "saving"
  | "unsaved"
  /** The storage refuses; `reason` says why. Every further change tries again. */
  | "unavailable";

export type Opened =
  | { readonly ok: true; readonly design: Design; readonly notes: readonly string[] }
  /** `text`: what lies in the storage, for downloading; null where nothing could be had. */
  | { readonly ok: false; readonly problem: string; readonly text: string | null };

export type DocumentsState = {
  readonly state: SaveState;
  readonly reason: string | null;
  /** Id of the open document; null while the open design is not (yet) one of the user's own. */
  readonly current: string | null;
  readonly revision: number | null;
  /** Latest first. */
  readonly list: readonly DocumentHead[];
  /** Something that happened at saving, for the user to know. */
  readonly notice: string | null;
  /** Title the open design is to take, because it goes on under another; see `attachAutosave`. */
  readonly newTitle: string | null;

  readonly refresh: () => Promise<void>;
  /** Works on a design that becomes a document only with its first change: an example, an empty canvas. */
  readonly begin: (design: Design) => Promise<void>;
  /** Works on a design as a new document, stored at once: a link, a file. */
  readonly create: (design: Design) => Promise<void>;
  /** Leaves everything as it was when the design cannot be read. */
  readonly open: (id: string) => Promise<Opened>;
  /** The document that was open last; null if there is none. */
  readonly openLast: () => Promise<Opened | null>;
  /** Told of every change of the open design; saves a moment later. */
  readonly changed: (design: Design) => void;
  /** Saves what is unsaved now. */
  readonly flush: () => Promise<void>;
  /** Told that the page goes away: puts down at once what is unsaved, for the next page to pick up. */
  readonly part: () => void;
  /** Puts on the shelf what pages had to leave unsaved. */
  readonly pickUp: () => Promise<void>;
  /** These yield null, or a sentence that says why not. */
  readonly rename: (id: string, title: string) => Promise<string | null>;
  readonly duplicate: (id: string) => Promise<string | null>;
  readonly restore: (document: StoredDocument) => Promise<string | null>;
  /** Takes a document off and hands it out, for `restore`; null if there was none. */
  readonly remove: (id: string) => Promise<StoredDocument | null>;
  /** The stored text as it is, readable or not. */
  readonly text: (id: string) => Promise<string | null>;
  /** Told that another window saved. */
  readonly heard: (id: string, revision: number) => Promise<void>;
  readonly dismissNotice: () => void;
};

export function createDocuments(around: Surroundings): UseBoundStore<StoreApi<DocumentsState>> {
  const shelf = sheltered(around.shelf);
  /** The design as it was read or last saved: the same object needs no saving. */
  let settled: Design | null = null;
  let pending: Design | null = null;
  let newId: string | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Everything that touches the shelf goes one after the other. */
  let queue: Promise<unknown> = Promise.resolve();

  return create<DocumentsState>()((set, get) => {
    function inTurn<T>(work: () => Promise<T>): Promise<T> {
      const result = queue.then(work);
      queue = result.catch(() => undefined);
      return result;
    }

    /** Id of a design that is not on the shelf yet; the same until it is, or until another one is opened. */
    function nextId(): string {
      newId ??= around.newId();
      return newId;
    }

    async function readList(): Promise<void> {
      const heads = await shelf.heads();
      set({ list: [...heads].sort((a, b) => b.changed - a.changed) });
    }

    function refused(error: unknown): string {
      const reason = storageTrouble(error);
      set({ state: "unavailable", reason });
      return reason;
    }

    async function save(): Promise<void> {
      clearTimeout(timer);
      const design = pending;
      if (!design) return;
      if (get().state !== "unavailable") set({ state: "saving" });
      const { current: id, revision } = get();
      const known = { id: id ?? nextId(), revision };
      try {
        const { head, notice, newTitle } = await putOpen({ ...around, shelf }, design, known);
        settled = design;
        if (pending === design) pending = null;
        around.parting?.drop();
        set({
          current: head.id,
          revision: head.revision,
          reason: null,
          state: pending ? "unsaved" : "saved",
          ...(notice === null ? {} : { notice }),
          ...(newTitle === null ? {} : { newTitle }),
        });
        if (head.id !== id) await shelf.setLastOpened(head.id);
        await readList();
      } catch (error) {
        set({ current: known.id });
        refused(error);
        await readList().catch(() => undefined);
      }
    }

    /** Turns to another design; the one before has been saved, or is kept by the shelter. */
    async function turnTo(design: Design | null, document: DocumentHead | null): Promise<void> {
      settled = design;
      pending = null;
      newId = null;
      const [current, revision] = document ? [document.id, document.revision] : [null, null];
      set({ current, revision, state: "saved", reason: null, newTitle: null, notice: null });
      await shelf.setLastOpened(current).catch(() => undefined);
    }

    async function openNow(id: string): Promise<Opened> {
      try {
        const stored = await shelf.read(id);
        if (!stored) return { ok: false, problem: GONE, text: null };
        const reading = readDesign(stored.text);
        if (!reading.ok) {
          const problem = `“${stored.head.title}” cannot be read: ${reading.problem} Its text is kept as it is.`;
          return { ok: false, problem, text: stored.text };
        }
        await turnTo(reading.design, stored.head);
        return reading;
      } catch (error) {
        return { ok: false, problem: refused(error), text: null };
      }
    }

    /** Changes what lies on the shelf, and shows it in the list. */
    function onShelf(work: () => Promise<string | null>): Promise<string | null> {
      return inTurn(async () => {
        try {
          const problem = await work();
          await readList();
          return problem;
        } catch (error) {
          return refused(error);
        }
      });
    }

    return {
      state: "saved",
      reason: null,
      current: null,
      revision: null,
      list: [],
      notice: null,
      newTitle: null,

      refresh: () => inTurn(() => readList().catch((error: unknown) => void refused(error))),

      begin: (design) => inTurn(() => save().then(() => turnTo(design, null))),

      create: (design) =>
        inTurn(async () => {
          await save();
          await turnTo(null, null);
          pending = design;
          await save();
        }),

      open: (id) =>
        inTurn(async () => {
          await save();
          return await openNow(id);
        }),

      openLast: () =>
        inTurn(async () => {
          try {
            const id = await shelf.lastOpened();
            return id !== null && (await shelf.read(id)) ? await openNow(id) : null;
          } catch (error) {
            refused(error);
            return null;
          }
        }),

      changed: (design) => {
        if (design === pending || (pending === null && design === settled)) return;
        pending = design;
        if (get().state !== "unavailable") set({ state: "unsaved" });
        clearTimeout(timer);
        timer = setTimeout(() => void inTurn(save), around.delayMs);
      },

      flush: () => inTurn(save),

      part: () => {
        const { current: id, revision } = get();
        if (pending) around.parting?.leave({ id: id ?? nextId(), revision, text: writeDesign(pending) });
      },

      pickUp: () =>
        inTurn(async () => {
          for (const { id, revision, text } of around.parting?.take() ?? []) {
            try {
              const reading = readDesign(text);
              // The saving that was under way may have come through after all.
              const stored = await shelf.read(id).catch(() => undefined);
              if (!reading.ok || stored?.text === text) continue;
              const { head } = await putOpen({ ...around, shelf }, reading.design, { id, revision });
              await shelf.setLastOpened(head.id);
            } catch (error) {
              refused(error);
            }
          }
        }),

      rename: (id, title) =>
        onShelf(async () => {
          await save();
          const head = await renameStored({ ...around, shelf }, id, title);
          if (typeof head === "string") return head;
          if (id === get().current) set({ revision: head.revision, newTitle: head.title });
          return null;
        }),

      duplicate: (id) => onShelf(() => save().then(() => duplicateStored({ ...around, shelf }, id))),

      restore: (document) =>
        onShelf(async () =>
          (await shelf.put(document, null)) ? null : "A design stands in its place already.",
        ),

      remove: async (id) => {
        const removed: StoredDocument[] = [];
        await onShelf(async () => {
          await save();
          const stored = await shelf.read(id);
          await shelf.remove(id);
          if (stored) removed.push(stored);
          set({ list: get().list.filter((head) => head.id !== id) });
          if (id === get().current) await turnTo(settled, null);
          return null;
        });
        return removed[0] ?? null;
      },

      text: (id) => inTurn(async () => (await shelf.read(id).catch(() => undefined))?.text ?? null),

      heard: async (id, revision) => {
        const own = get();
        if (id === own.current && revision > (own.revision ?? 0)) {
          set({
            notice: "This design was changed in another window. What you change here goes on as a copy.",
          });
        }
        await own.refresh();
      },

      dismissNotice: () => set({ notice: null }),
    };
  });
}

export const useDocuments = createDocuments({
  shelf: browserShelf(),
  parting: browserParting(),
  now: Date.now,
  // Not randomUUID: a page served by plain http within a house doesn't have it.
  newId: () => crypto.getRandomValues(new Uint32Array(3)).join("-"),
  delayMs: 500,
});
