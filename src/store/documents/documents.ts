/**
 * The user's own designs, kept in this browser: the list, which one is open, and how its saving stands.
 * The open design itself lives in the app store; it comes in through `changed` and goes out of `open` and `incoming`.
 * Whatever happens, a text that lies in the storage is never overwritten unseen and never thrown away.
 */
import { create, type StoreApi, type UseBoundStore } from "zustand";
import { retitle } from "../../design/edits/parts.ts";
import { writeDesign } from "../../design/file.ts";
import { duplicateStored, everythingStored, renameStored, takeInDocuments } from "./care.ts";
import { createDesk, type Surroundings } from "./desk.ts";
import { historyOf, presentOf, withStep } from "./history.ts";
import { openLast, openStored } from "./opening.ts";
import { browserParting } from "./parting.ts";
import { browserPersistence } from "./persistence.ts";
import { putBack } from "./pickUp.ts";
import { revisionCommands } from "./revisionCommands.ts";
import { pendingSession, settledSession } from "./session.ts";
import type { DocumentHead, StoredDocument } from "./shelf.ts";
import { browserShelf } from "./shelfBrowser.ts";
import type { DocumentsState } from "./state.ts";

const LEFT_OVER =
  "The last changes of a page that was closed could not be put back. They are kept and tried again.";

export type { DocumentsState, Opened, SaveState } from "./state.ts";

export function createDocuments(around: Surroundings): UseBoundStore<StoreApi<DocumentsState>> {
  const { shelf } = around;

  return create<DocumentsState>()((set, get) => {
    const desk = createDesk(around, get, set);
    const { inTurn, refused, readList, saveAll, turnTo } = desk;

    /** Changes what lies on the shelf, and shows it in the list. */
    function onShelf(work: () => Promise<string | null>): Promise<string | null> {
      return inTurn(async () => {
        try {
          await saveAll(false);
          const problem = await work();
          await readList();
          return problem;
        } catch (error) {
          return refused(error);
        }
      });
    }

    void around.persistence?.state().then(
      (persisted) => set({ persisted }),
      () => undefined,
    );

    return {
      state: "saved",
      reason: null,
      current: null,
      revision: null,
      list: [],
      notice: null,
      incoming: null,
      persisted: "unknown",
      hasAnswered: false,
      ...revisionCommands(around, desk),

      refresh: () => inTurn(() => readList().catch((error: unknown) => void refused(error))),

      begin: (design) =>
        inTurn(() => saveAll(true).then(() => turnTo(settledSession(null, historyOf(design))))),

      create: (design) =>
        inTurn(async () => {
          await saveAll(true);
          turnTo(pendingSession(null, historyOf(design)));
          await saveAll(true);
        }),

      open: (id) => inTurn(() => saveAll(true).then(() => openStored(around, desk, id))),

      openLast: () => inTurn(() => openLast(around, desk)),

      cameUp: desk.cameUp,
      stay: desk.stay,
      changed: (design, history = () => historyOf(design)) => desk.changed(design, history),
      flush: () => inTurn(() => saveAll(true)),
      part: desk.part,

      pickUp: () =>
        inTurn(async () => {
          let hasWork = false;
          for (const { key, note } of around.parting?.left() ?? []) {
            try {
              const id = note && (await putBack(around, note));
              if (id !== null) await shelf.setLastOpened(id);
              hasWork ||= id !== null;
              // Only now is what it held known to lie in the storage; what is no note is nobody's.
              if (note === null || id !== null) around.parting?.remove(key);
              else set({ notice: LEFT_OVER });
            } catch (error) {
              refused(error);
            }
          }
          const opened = around.parting?.opened();
          if (opened === undefined) return;
          // Whoever left work behind was at that.
          const remembered = hasWork ? Promise.resolve() : shelf.setLastOpened(opened);
          await remembered.then(
            () => around.parting?.dropOpened(opened),
            () => undefined,
          );
        }),

      rename: (id, title) =>
        onShelf(async () => {
          if (id !== get().current) return await renameStored(around, desk, id, title);
          const history = desk.session().history();
          const edit = retitle(presentOf(history), title);
          if (!edit.ok) return edit.reason;
          desk.put(withStep(history, edit.design));
          await saveAll(false);
          return null;
        }),

      duplicate: (id) => onShelf(() => duplicateStored(around, desk, id)),

      restore: (document) =>
        onShelf(async () => ((await shelf.add(document)) ? null : "A design stands in its place already.")),

      remove: async (id) => {
        const removed: StoredDocument[] = [];
        await onShelf(async () => {
          const own = desk.kept.get(id);
          desk.kept.delete(id);
          const taken = own?.work.revision === null ? undefined : await shelf.take(id);
          if (own) removed.push(documentOf(own.head, writeDesign(presentOf(own.history)), taken));
          else if (taken) removed.push(taken);
          set({ list: get().list.filter((head) => head.id !== id) });
          if (id === get().current) desk.unsaved();
          return null;
        });
        return removed[0] ?? null;
      },

      text: (id) =>
        inTurn(async () => {
          const stored = await desk.find(id).catch(() => undefined);
          if (!stored) return null;
          return stored.found.ok ? writeDesign(presentOf(stored.found.history)) : stored.found.text;
        }),

      heard: async (id, revision) => {
        await inTurn(() => desk.follow(id, revision)).catch(() => undefined);
        await get().refresh();
      },

      catchUp: async () => {
        await get().refresh();
        const own = get().list.find(({ id }) => id === get().current);
        if (own) await inTurn(() => desk.follow(own.id, own.revision)).catch(() => undefined);
      },

      dismissNotice: () => set({ notice: null }),

      everything: () => inTurn(() => saveAll(true).then(() => everythingStored(around, desk))),
      takeIn: (documents) => onShelf(() => takeInDocuments(around, documents)),
    };
  });
}

/** What this window alone had of a document, with the revisions that lay on the shelf. */
function documentOf(head: DocumentHead, text: string, taken: StoredDocument | undefined): StoredDocument {
  const { onlyHere: _, ...plain } = head;
  return {
    head: { ...plain, at: 0 },
    texts: [{ at: 0, text }],
    steps: [],
    revisions: taken?.revisions ?? [],
  };
}

export const useDocuments = createDocuments({
  shelf: browserShelf(),
  parting: browserParting(),
  persistence: browserPersistence(),
  now: Date.now,
  // Not randomUUID: a page served by plain http within a house doesn't have it.
  newId: () => crypto.getRandomValues(new Uint32Array(3)).join("-"),
  gapMs: 150,
});
