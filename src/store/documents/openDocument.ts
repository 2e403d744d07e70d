/**
 * The design that a window works on, on its way to the storage: when it is saved, what becomes of it where the
 * storage refuses, and how it follows another window.
 */
import { type Design, EMPTY_DESIGN } from "../../design/design.ts";
import { type DocumentReading, readDocument } from "./documentReading.ts";
import {
  adoptStored,
  type DocumentSession,
  lacksText,
  savedSession,
  unsavedNoteOf,
  unsavedSession,
  withNewestOnTop,
} from "./documentSession.ts";
import type { DocumentHead } from "./documentStorage.ts";
import { type History, historyOf, presentOf } from "./history.ts";
import type { Persistence } from "./persistence.ts";
import { surplusRevisions } from "./revisions.ts";
import { type DocumentWork, newWork, type Saved, saveWork, type Writer, workOn } from "./saving.ts";
import type { DocumentsState } from "./state.ts";
import { createStorageStatus } from "./storageStatus.ts";
import type { UnsavedNotes } from "./unsavedNotes.ts";

export type DocumentServices = Writer & {
  readonly unsavedNotes?: UnsavedNotes;
  readonly persistence?: Persistence;
  /** Writes follow each other at this distance at least [ms]; a change waits no longer for its turn. */
  readonly gapMs: number;
};

export type FoundDocument = {
  readonly head: DocumentHead;
  readonly found: DocumentReading;
  readonly isKept: boolean;
};

type Told = Partial<DocumentsState>;

export type OpenDocument = ReturnType<typeof createOpenDocument>;

export function createOpenDocument(
  around: DocumentServices,
  get: () => DocumentsState,
  set: (told: Told) => void,
) {
  const { storage } = around;
  let session: DocumentSession = {
    work: null,
    settled: null,
    pending: null,
    history: () => historyOf(EMPTY_DESIGN),
  };
  /** What the open design was until it was deleted, and as what it goes on since. */
  let deleted: { readonly id: string; readonly session: DocumentSession } | null = null;
  /** The one before, which the canvas still shows until the new one has come up. */
  let former: DocumentSession | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let lastSave = Number.NEGATIVE_INFINITY;
  let hasAsked = false;

  const status = createStorageStatus(around, get, set, {
    isPending: () => session.pending !== null,
    tryAgain: async () => {
      await saveAll(false);
      if (!session.pending && status.kept.size === 0) await status.readList().catch(status.refused);
    },
  });
  const { kept, inTurn } = status;

  function schedule(): void {
    // Never put off: a change waits for its turn, not for rest.
    const wait = Math.max(0, lastSave + around.gapMs - around.now());
    timer ??= setTimeout(() => void inTurn(() => saveAll(false)), wait);
  }

  /** `wantsText`: closes with a whole text, as on leaving. */
  async function saveAll(wantsText: boolean): Promise<void> {
    clearTimeout(timer);
    timer = undefined;
    if (former) await save(former, wantsText);
    await save(session, wantsText);
    if (kept.size > 0 && !session.pending) await status.saveKept();
    if (!session.pending && !former?.pending && kept.size === 0) around.unsavedNotes?.drop();
  }

  async function save(own: DocumentSession, wantsText: boolean): Promise<void> {
    if (!own.pending && !(wantsText && lacksText(own))) return;
    const history = own.history();
    const design = presentOf(history);
    own.pending = design;
    own.work ??= newWork(around.newId(), around.now());
    const { work } = own;
    if (own === session && get().state !== "unavailable") set({ state: "saving" });
    lastSave = around.now();
    try {
      const saved = await saveWork(around, work, history, wantsText);
      kept.delete(work.id);
      settle(own, history, saved);
      status.listed(saved.head);
      await afterwards(own, work, saved);
    } catch (error) {
      const { title, parts } = design;
      const { id, revision } = work;
      status.keep(work, history, {
        id,
        title,
        parts: parts.length,
        changed: around.now(),
        revision: revision ?? 0,
      });
      if (own === session) set({ current: id });
      status.refused(error);
    }
  }

  /** What was saved is settled; what changed meanwhile is put on top of what another window did. */
  function settle(own: DocumentSession, history: History, saved: Saved): void {
    const before = presentOf(history);
    own.work = saved.work;
    own.settled = presentOf(saved.history);
    const isNewer = own.pending !== before;
    if (!isNewer) own.pending = null;
    if (saved.history !== history) {
      const next = isNewer ? withNewestOnTop(before, own.history(), saved.history) : saved.history;
      own.history = () => next;
      own.pending = isNewer ? presentOf(next) : null;
      if (own === session && !former) set({ incoming: next });
    }
    if (own.pending) schedule();
    if (own !== session) return;
    set({
      current: saved.work.id,
      revision: saved.work.revision,
      reason: null,
      state: own.pending ? "unsaved" : "saved",
      ...(saved.notice === null ? {} : { notice: saved.notice }),
    });
  }

  async function rememberOpened(id: string | null): Promise<void> {
    around.unsavedNotes?.leaveOpened(id);
    await storage.setLastOpened(id);
    around.unsavedNotes?.dropOpened(id);
  }

  /** None of this may make a save fail that is already done. */
  async function afterwards(own: DocumentSession, before: DocumentWork, { work }: Saved): Promise<void> {
    try {
      // New in the storage: for the first time, or again after somebody cleared it.
      if (work.revision === 1) {
        if (own === session && !former) await rememberOpened(work.id);
        askToKeep();
      }
      if (work.revisedAt !== before.revisedAt) {
        await storage.dropRevisions(surplusRevisions(await storage.revisions(work.id), around.now()));
      }
    } catch {
      // It is tried again with the next document, or the next revision.
    }
  }

  /** The browser may ask the user, who may take time: nothing waits for it. */
  function askToKeep(): void {
    if (hasAsked) return;
    hasAsked = true;
    around.persistence?.ask().then(
      ({ persisted, isAnswer }) => set({ persisted, hasAnswered: isAnswer }),
      () => undefined,
    );
  }

  /** Turns to another design; until it has come up, the canvas shows the one before. */
  function turnTo(next: DocumentSession): void {
    // Of several turned to one after the other, none is on the canvas.
    former ??= session;
    session = next;
    const { work, pending } = next;
    const [current, revision] = work ? [work.id, work.revision] : [null, null];
    // Where the storage refuses, it does so for the next design too, until it is heard otherwise.
    const refusing = get().state === "unavailable";
    const state = pending ? "unsaved" : "saved";
    set({ current, revision, incoming: null, notice: null, ...(refusing ? {} : { state, reason: null }) });
  }

  return {
    ...status,
    saveAll,
    turnTo,
    session: () => session,

    changed(design: Design, history: () => History): void {
      // The canvas has the design that was turned to; until then, what changes is the one before.
      if (design === session.settled || design === session.pending) former = null;
      const own = former ?? session;
      if (design === (own.pending ?? own.settled)) return;
      own.pending = design;
      own.history = history;
      if (own === session && get().state !== "unavailable") set({ state: "unsaved" });
      schedule();
    },

    /** The design turned to stands on the canvas. */
    async cameUp(id: string | null): Promise<void> {
      former = null;
      // Now already: the page may be closed before the storage has its turn.
      around.unsavedNotes?.leaveOpened(id);
      await inTurn(() => rememberOpened(id)).catch(() => undefined);
    },

    /** The design turned to did not come up: the one before goes on. */
    stay(): void {
      if (!former) return;
      turnTo(former);
      former = null;
      // Another window may have had its part in it meanwhile.
      set({ incoming: session.history() });
    },

    async find(id: string): Promise<FoundDocument | undefined> {
      const own = kept.get(id);
      if (own) {
        const { history, head } = own;
        const disk = own.work.disk ?? { states: history.states, first: 0, texts: [] };
        return {
          head,
          found: { ok: true, history, disk, notes: [], lost: 0, isDamaged: false },
          isKept: true,
        };
      }
      const stored = await storage.read(id);
      return stored && { head: stored.head, found: readDocument(stored), isKept: false };
    },

    /** Lets a document of the storage, or one that this window kept, be the open design. */
    show(head: DocumentHead, found: DocumentReading & { ok: true }, revisedAt: number): void {
      const own = kept.get(head.id);
      // What only this window has is not saved before the storage takes it.
      turnTo(
        own
          ? unsavedSession(own.work, own.history)
          : savedSession(workOn(head, found, revisedAt), found.history),
      );
      if (own) schedule();
    },

    /** The open design is no document any more; its next change makes it a new one. */
    unsaved(): void {
      const id = session.work?.id;
      session = savedSession(null, session.history());
      if (id !== undefined) deleted = { id, session };
      set({ current: null, revision: null, ...(get().state === "unavailable" ? {} : { state: "saved" }) });
    },

    /** A deleted document stands in the storage again: the design that was it goes on as it, and as no copy. */
    async takeUp(id: string): Promise<void> {
      // Only that design: meanwhile another one may have been turned to.
      if (deleted?.id !== id || deleted.session !== session) return;
      const stored = await storage.read(id);
      const found = stored && readDocument(stored);
      if (!stored || !found?.ok || found.isDamaged) return;
      deleted = null;
      const since = session.work;
      session.work = workOn(stored.head, found, around.now());
      set({ current: id, revision: stored.head.revision });
      if (since) {
        // Changed after its deletion, it had become a document of its own: that one goes once all of it is here.
        session.pending ??= presentOf(session.history());
        await save(session, false);
        if (session.work.id !== id || kept.has(id)) return;
        kept.delete(since.id);
        await storage.take(since.id);
        await rememberOpened(id);
      }
      if (session.pending) schedule();
    },

    /** Puts another way in the place of the open design's, as a change that is to be saved. */
    put(history: History): void {
      session.history = () => history;
      session.pending = presentOf(history);
      set({ incoming: history, state: get().state === "unavailable" ? "unavailable" : "unsaved" });
      schedule();
    },

    /** Another window saved the open document: where nothing was changed here, this one follows. */
    async follow(id: string, revision: number): Promise<void> {
      const own = session;
      const isDue = () =>
        own === session &&
        own.work?.id === id &&
        !own.pending &&
        !former &&
        (own.work.revision ?? 0) < revision;
      if (!isDue()) return;
      const stored = await storage.read(id);
      if (!stored || !isDue()) return;
      const history = adoptStored(own, stored, around.now());
      if (history) set({ revision: stored.head.revision, incoming: history });
    },

    /** Told that the page goes away: puts down at once what is unsaved. */
    part(): void {
      const own = [session, former].find((each) => each?.pending);
      if (own) around.unsavedNotes?.leave(unsavedNoteOf(around, own));
    },
  };
}
