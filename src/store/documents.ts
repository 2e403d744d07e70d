/**
 * The user's own designs, kept in this browser: the list, which one is open, and how its saving stands.
 * The open design itself lives in the app store; it comes in through `changed` and goes out of `open` and `incoming`.
 * Whatever happens, a text that lies in the storage is never overwritten unseen and never thrown away.
 */
import { create, type StoreApi, type UseBoundStore } from "zustand";
import { retitle } from "../design/edits/parts.ts";
import { writeDesign } from "../design/file.ts";
import {
  duplicateStored,
  everythingStored,
  GONE,
  keepRemains,
  renameStored,
  takeInDocuments,
} from "./documentCare.ts";
import { createDesk, type Found, newSession, type Surroundings } from "./documentDesk.ts";
import { revisionCommands } from "./documentHistory.ts";
import { browserParting } from "./documentParting.ts";
import { putBack } from "./documentPickUp.ts";
import { readStored } from "./documentReading.ts";
import { browserShelf, type DocumentHead, type StoredDocument } from "./documentShelf.ts";
import type { DocumentsState, Opened } from "./documentsState.ts";
import { historyOf, presentOf, withStep } from "./history.ts";
import { browserPersistence } from "./persistence.ts";

export type { DocumentsState, Opened, SaveState } from "./documentsState.ts";

export function createDocuments(around: Surroundings): UseBoundStore<StoreApi<DocumentsState>> {
  const { shelf } = around;

  return create<DocumentsState>()((set, get) => {
    const desk = createDesk(around, get, set);
    const { inTurn, refused, readList, saveAll, turnTo } = desk;

    async function openNow(id: string): Promise<Opened> {
      try {
        const stored = await desk.find(id);
        return stored ? await openFound(stored) : { ok: false, problem: GONE, text: null };
      } catch (error) {
        return { ok: false, problem: refused(error), text: null };
      }
    }

    async function openFound({ head, found, isKept }: Found): Promise<Opened> {
      const revisions = isKept ? [] : await shelf.revisions(head.id);
      if (!found.ok) {
        const problem = `“${head.title}” cannot be read: ${found.problem} Its text is kept as it is.`;
        return (await openRevision(head, revisions)) ?? { ok: false, problem, text: found.text };
      }
      if (found.isDamaged) await keepDamaged(head.id);
      const last = Math.max(...revisions.map(({ when }) => when), 0);
      // A state that a revision holds already needs no other; one that never had any counts from its last save.
      const revisedAt = last > 0 ? last : head.changed;
      desk.sit(head, found, isKept || last >= head.changed ? around.now() : revisedAt);
      const notes = found.lost === 0 ? found.notes : [...found.notes, lostSteps(head.title, found.lost)];
      return { ok: true, design: presentOf(found.history), notes, history: found.history };
    }

    /** The latest revision that can be read stands in for a text that cannot. */
    async function openRevision(
      head: DocumentHead,
      revisions: readonly { readonly id: string; readonly when: number }[],
    ): Promise<Opened | null> {
      for (const { id, when } of [...revisions].sort((a, b) => b.when - a.when)) {
        const reading = readStored((await shelf.revision(id))?.text ?? "");
        if (!reading.ok) continue;
        await keepDamaged(head.id);
        const history = historyOf(reading.design);
        const disk = { states: [], first: 0, texts: [] };
        desk.sit(head, { ...reading, history, disk, lost: 0, isDamaged: true }, around.now());
        const date = new Date(when).toLocaleString();
        const note = `“${head.title}” could not be read; this is its revision of ${date}. The damaged text is kept among its revisions.`;
        return { ok: true, design: reading.design, notes: [...reading.notes, note], history };
      }
      return null;
    }

    async function keepDamaged(id: string): Promise<void> {
      const stored = await shelf.read(id);
      if (stored) await keepRemains(around, stored);
    }

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
      ...revisionCommands(around, desk),

      refresh: () => inTurn(() => readList().catch((error: unknown) => void refused(error))),

      begin: (design) => inTurn(() => saveAll(true).then(() => turnTo(newSession(null, design)))),

      create: (design) =>
        inTurn(async () => {
          await saveAll(true);
          const session = newSession(null, null, () => historyOf(design));
          session.pending = design;
          turnTo(session);
          await saveAll(true);
        }),

      open: (id) => inTurn(() => saveAll(true).then(() => openNow(id))),

      openLast: () =>
        inTurn(async () => {
          try {
            const id = await shelf.lastOpened();
            return id !== null && (await desk.find(id)) ? await openNow(id) : null;
          } catch (error) {
            refused(error);
            return null;
          }
        }),

      cameUp: desk.cameUp,
      stay: desk.stay,
      changed: (design, history = () => historyOf(design)) => desk.changed(design, history),
      flush: () => inTurn(() => saveAll(true)),
      part: desk.part,

      pickUp: () =>
        inTurn(async () => {
          for (const { key, note } of around.parting?.left() ?? []) {
            try {
              const id = note && (await putBack(around, note));
              if (id !== null) await shelf.setLastOpened(id);
              // Only now is what it held known to lie in the storage; what is no note is nobody's.
              if (note === null || id !== null) around.parting?.remove(key);
            } catch (error) {
              refused(error);
            }
          }
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

function lostSteps(title: string, lost: number): string {
  const what = lost === 1 ? "The last change" : `The last ${lost} changes`;
  return `${what} of “${title}” could not be read. What lies in the storage is kept among its revisions.`;
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
