/**
 * The user's own designs, kept in this browser: the list, which one is open, and how its saving stands.
 * The open design itself lives in the app store; it comes in through `changed` and goes out of `open` and `incoming`.
 * Whatever happens, a text that lies in the storage is never overwritten unseen and never thrown away.
 */
import { create, type StoreApi, type UseBoundStore } from "zustand";
import { retitle } from "../../design/edits/parts.ts";
import { writeDesign } from "../../design/file.ts";
import { duplicateDocument, exportDocuments, importDocuments, renameDocument } from "./documentCommands.ts";
import { savedSession, unsavedSession } from "./documentSession.ts";
import type { DocumentHead, StoredDocument } from "./documentStorage.ts";
import { browserDocumentStorage } from "./documentStorageBrowser.ts";
import { historyOf, presentOf, withStep } from "./history.ts";
import { createOpenDocument, type DocumentServices } from "./openDocument.ts";
import { openLastDocument, openStoredDocument } from "./opening.ts";
import { browserPersistence } from "./persistence.ts";
import { revisionCommands } from "./revisionCommands.ts";
import type { DocumentsState } from "./state.ts";
import { browserUnsavedNotes } from "./unsavedNotes.ts";
import { recoverUnsaved } from "./unsavedRecovery.ts";

const LEFT_OVER =
  "The last changes of a page that was closed could not be put back. They are kept and tried again.";

export type { DocumentsState, Opened, SaveState } from "./state.ts";

export function createDocuments(around: DocumentServices): UseBoundStore<StoreApi<DocumentsState>> {
  const { storage } = around;

  return create<DocumentsState>()((set, get) => {
    const openDocument = createOpenDocument(around, get, set);
    const { inTurn, refused, readList, saveAll, turnTo } = openDocument;

    /** Changes what lies in the storage, and shows it in the list. */
    function inStorage(work: () => Promise<string | null>): Promise<string | null> {
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
      ...revisionCommands(around, openDocument),

      refresh: () => inTurn(() => readList().catch((error: unknown) => void refused(error))),

      begin: (design) =>
        inTurn(() => saveAll(true).then(() => turnTo(savedSession(null, historyOf(design))))),

      create: (design) =>
        inTurn(async () => {
          await saveAll(true);
          turnTo(unsavedSession(null, historyOf(design)));
          await saveAll(true);
        }),

      open: (id) => inTurn(() => saveAll(true).then(() => openStoredDocument(around, openDocument, id))),

      openLast: () => inTurn(() => openLastDocument(around, openDocument)),

      cameUp: openDocument.cameUp,
      stay: openDocument.stay,
      changed: (design, history = () => historyOf(design)) => openDocument.changed(design, history),
      flush: () => inTurn(() => saveAll(true)),
      part: openDocument.part,

      pickUp: () =>
        inTurn(async () => {
          let hasWork = false;
          for (const { key, note } of around.unsavedNotes?.left() ?? []) {
            try {
              const id = note && (await recoverUnsaved(around, note));
              if (id !== null) await storage.setLastOpened(id);
              hasWork ||= id !== null;
              // Only now is what it held known to lie in the storage; what is no note is nobody's.
              if (note === null || id !== null) around.unsavedNotes?.remove(key);
              else set({ notice: LEFT_OVER });
            } catch (error) {
              refused(error);
            }
          }
          const opened = around.unsavedNotes?.opened();
          if (opened === undefined) return;
          // Whoever left work behind was at that.
          const remembered = hasWork ? Promise.resolve() : storage.setLastOpened(opened);
          await remembered.then(
            () => around.unsavedNotes?.dropOpened(opened),
            () => undefined,
          );
        }),

      rename: (id, title) =>
        inStorage(async () => {
          if (id !== get().current) return await renameDocument(around, openDocument, id, title);
          const history = openDocument.session().history();
          const edit = retitle(presentOf(history), title);
          if (!edit.ok) return edit.reason;
          openDocument.put(withStep(history, edit.design));
          await saveAll(false);
          return null;
        }),

      duplicate: (id) => inStorage(() => duplicateDocument(around, openDocument, id)),

      restore: (document) =>
        inStorage(async () => {
          if (!(await storage.add(document))) return "A design stands in its place already.";
          await openDocument.takeUp(document.head.id);
          return null;
        }),

      remove: async (id) => {
        const removed: StoredDocument[] = [];
        await inStorage(async () => {
          const own = openDocument.kept.get(id);
          openDocument.kept.delete(id);
          const taken = own?.work.revision === null ? undefined : await storage.take(id);
          if (own) removed.push(documentOf(own.head, writeDesign(presentOf(own.history)), taken));
          else if (taken) removed.push(taken);
          set({ list: get().list.filter((head) => head.id !== id) });
          if (id === get().current) openDocument.unsaved();
          return null;
        });
        return removed[0] ?? null;
      },

      text: (id) =>
        inTurn(async () => {
          const stored = await openDocument.find(id).catch(() => undefined);
          if (!stored) return null;
          return stored.found.ok ? writeDesign(presentOf(stored.found.history)) : stored.found.text;
        }),

      heard: async (id, revision) => {
        await inTurn(() => openDocument.follow(id, revision)).catch(() => undefined);
        await get().refresh();
      },

      catchUp: async () => {
        await get().refresh();
        const own = get().list.find(({ id }) => id === get().current);
        if (own) await inTurn(() => openDocument.follow(own.id, own.revision)).catch(() => undefined);
      },

      dismissNotice: () => set({ notice: null }),

      everything: () => inTurn(() => saveAll(true).then(() => exportDocuments(around, openDocument))),
      takeIn: (documents) => inStorage(() => importDocuments(around, documents)),
    };
  });
}

/** What this window alone had of a document, with the revisions that lay in the storage. */
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
  storage: browserDocumentStorage(),
  unsavedNotes: browserUnsavedNotes(),
  persistence: browserPersistence(),
  now: Date.now,
  // Not randomUUID: a page served by plain http within a house doesn't have it.
  newId: () => crypto.getRandomValues(new Uint32Array(3)).join("-"),
  gapMs: 150,
});
