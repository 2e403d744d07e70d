/**
 * The design that a window works on, on its way to the storage: when it is saved, what becomes of it where the
 * storage refuses, and how it follows another window. Everything that touches the shelf goes one after the other.
 */
import type { Design } from "../design/design.ts";
import { writeDesign } from "../design/file.ts";
import { applyPatch, difference } from "../design/patch.ts";
import { heldCount } from "../design/variants.ts";
import type { Parting } from "./documentParting.ts";
import { type Restored, restored } from "./documentReading.ts";
import { surplusRevisions } from "./documentRevisions.ts";
import {
  newWork,
  planSave,
  rebased,
  type Saved,
  saveWork,
  type Work,
  type Writer,
  workOn,
} from "./documentSaving.ts";
import type { DocumentHead } from "./documentShelf.ts";
import type { DocumentsState } from "./documentsState.ts";
import { isLeaving, storageTrouble } from "./documentTrouble.ts";
import { type History, historyOf, presentOf, withPresent, withStep } from "./history.ts";
import type { Persistence } from "./persistence.ts";

export type Surroundings = Writer & {
  readonly parting?: Parting;
  readonly persistence?: Persistence;
  /** Writes follow each other at this distance at least [ms]; a change waits no longer for its turn. */
  readonly gapMs: number;
};

/** A design on the desk: a document, or one that becomes one with its first change. */
type Session = {
  work: Work | null;
  /** As it was read or last saved: the same object needs no saving. */
  settled: Design | null;
  pending: Design | null;
  /** The way of the design as it is at the moment of asking. */
  history: () => History;
};

/** A document that the storage refused: it lives in this window until it is taken. */
type Kept = { readonly work: Work; readonly history: History; readonly head: DocumentHead };

export type Found = { readonly head: DocumentHead; readonly found: Restored; readonly isKept: boolean };

type Told = Partial<DocumentsState>;

const RETRY_MS = 5000;
/** A design of so many parts goes into a parting note as a whole text too: the place for notes is small. */
const MOST_PARTS_AS_TEXT = 400;

export type Desk = ReturnType<typeof createDesk>;

export function createDesk(around: Surroundings, get: () => DocumentsState, set: (told: Told) => void) {
  const { shelf } = around;
  const kept = new Map<string, Kept>();
  let session: Session = newSession(null, null);
  /** The one before, which the canvas still shows until the new one has come up. */
  let former: Session | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let retry: ReturnType<typeof setTimeout> | undefined;
  let lastSave = Number.NEGATIVE_INFINITY;
  let hasAsked = false;
  let queue: Promise<unknown> = Promise.resolve();

  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = queue.then(work);
    queue = result.catch(() => undefined);
    return result;
  }

  function refused(error: unknown): string {
    const reason = storageTrouble(error);
    if (retry === undefined)
      retry = setTimeout(() => {
        retry = undefined;
        void inTurn(tryAgain);
      }, RETRY_MS);
    if (isLeaving(error)) set({ state: session.pending ? "unsaved" : "saved" });
    else set({ state: "unavailable", reason });
    return reason;
  }

  async function tryAgain(): Promise<void> {
    await saveAll(false);
    if (session.pending || kept.size > 0) return;
    await readList().catch(refused);
  }

  async function readList(): Promise<void> {
    const heads = await shelf.heads().catch((error: unknown) => {
      if (kept.size === 0) throw error;
      return [];
    });
    const own = [...kept.values()].map((each) => each.head);
    list([...heads.filter((head) => !kept.has(head.id)), ...own]);
    if (get().state === "unavailable" && !session.pending && kept.size === 0)
      set({ state: "saved", reason: null });
  }

  function list(heads: readonly DocumentHead[]): void {
    set({ list: [...heads].sort((a, b) => b.changed - a.changed) });
  }

  function listed(head: DocumentHead): void {
    list([head, ...get().list.filter((each) => each.id !== head.id)]);
  }

  function schedule(): void {
    // Never put off: a change waits for its turn, not for rest.
    timer ??= setTimeout(
      () => void inTurn(() => saveAll(false)),
      Math.max(0, lastSave + around.gapMs - around.now()),
    );
  }

  /** `wantsText`: closes with a whole text, as on leaving. */
  async function saveAll(wantsText: boolean): Promise<void> {
    clearTimeout(timer);
    timer = undefined;
    if (former) await save(former, wantsText);
    await save(session, wantsText);
    if (kept.size > 0 && !session.pending) await saveKept();
  }

  async function save(own: Session, wantsText: boolean): Promise<void> {
    if (!own.pending && !(wantsText && lacksText(own))) return;
    const history = own.history();
    const design = presentOf(history);
    own.pending = design;
    own.work ??= newWork(around.newId(), around.now());
    const { work } = own;
    const isNew = work.base === null;
    if (own === session && get().state !== "unavailable") set({ state: "saving" });
    lastSave = around.now();
    try {
      const saved = await saveWork(around, work, history, wantsText);
      kept.delete(work.id);
      settle(own, history, saved);
      listed(saved.head);
      await afterwards(own, isNew, work, saved);
    } catch (error) {
      const { title, parts } = design;
      const head = {
        id: work.id,
        title,
        parts: parts.length,
        changed: around.now(),
        revision: work.revision ?? 0,
      };
      kept.set(work.id, { work, history, head: { ...head, onlyHere: true } });
      if (own === session) set({ current: work.id });
      listed({ ...head, onlyHere: true });
      refused(error);
    }
  }

  /** What was saved is settled; what changed meanwhile is put on top of what another window did. */
  function settle(own: Session, history: History, saved: Saved): void {
    const before = presentOf(history);
    own.work = saved.work;
    own.settled = presentOf(saved.history);
    const isNewer = own.pending !== before;
    if (!isNewer) own.pending = null;
    if (saved.history !== history) {
      const next = isNewer ? onTop(before, own.history(), saved.history) : saved.history;
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

  /** None of this may make a save fail that is already done. */
  async function afterwards(own: Session, isNew: boolean, before: Work, { work }: Saved): Promise<void> {
    if (!session.pending && !former?.pending && kept.size === 0) around.parting?.drop();
    try {
      if (work.id !== before.id || isNew) {
        if (own === session && !former) await shelf.setLastOpened(work.id);
        if (!hasAsked && around.persistence) {
          hasAsked = true;
          // The browser may ask the user, who may take time: nothing waits for it.
          around.persistence.ask().then(
            (persisted) => set({ persisted }),
            () => undefined,
          );
        }
      }
      if (work.revisedAt !== before.revisedAt) {
        await shelf.dropRevisions(surplusRevisions(await shelf.revisions(work.id), around.now()));
      }
    } catch {
      // It is tried again with the next document, or the next revision.
    }
  }

  async function saveKept(): Promise<void> {
    for (const [id, { work, history }] of [...kept]) {
      try {
        const saved = await saveWork(around, work, history, true);
        kept.delete(id);
        listed(saved.head);
        if (saved.notice !== null) set({ notice: saved.notice });
      } catch {
        // It stays with this window.
      }
    }
    if (kept.size > 0) return;
    around.parting?.drop();
    if (get().state === "unavailable") set({ state: "saved", reason: null });
  }

  /** Turns to another design; until it has come up, the canvas shows the one before. */
  function turnTo(next: Session): void {
    former = session;
    session = next;
    const { work, pending } = next;
    const [current, revision] = work ? [work.id, work.revision] : [null, null];
    set({
      current,
      revision,
      state: pending ? "unsaved" : "saved",
      reason: null,
      incoming: null,
      notice: null,
    });
  }

  return {
    inTurn,
    refused,
    readList,
    saveAll,
    turnTo,
    kept,
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
      await inTurn(() => shelf.setLastOpened(id)).catch(() => undefined);
    },

    /** The design turned to did not come up: the one before goes on. */
    stay(): void {
      if (former) turnTo(former);
      former = null;
    },

    /** The open design is no document any more; its next change makes it a new one. */
    unsaved(): void {
      session = newSession(null, session.pending ?? session.settled, session.history);
      set({ current: null, revision: null, state: "saved", reason: null });
    },

    async find(id: string): Promise<Found | undefined> {
      const own = kept.get(id);
      if (own) {
        const disk = own.work.disk ?? { states: own.history.states, first: 0, texts: [] };
        const found: Restored = {
          ok: true,
          history: own.history,
          disk,
          notes: [],
          lost: 0,
          isDamaged: false,
        };
        return { head: own.head, found, isKept: true };
      }
      const stored = await shelf.read(id);
      return stored && { head: stored.head, found: restored(stored), isKept: false };
    },

    /** Lets a document of the shelf, or one that this window kept, be the design on the desk. */
    sit(head: DocumentHead, found: Restored & { ok: true }, revisedAt: number): void {
      const own = kept.get(head.id);
      const { history } = found;
      const next = newSession(own?.work ?? workOn(head, found, revisedAt), presentOf(history), () => history);
      // Only this window has it: it is not saved before the storage takes it.
      if (own) next.pending = presentOf(history);
      turnTo(next);
      if (own) schedule();
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
      const isDue = () =>
        session.work?.id === id && !session.pending && !former && (session.work.revision ?? 0) < revision;
      if (!isDue()) return;
      const stored = await shelf.read(id);
      const found = stored && restored(stored);
      if (!stored || !found?.ok || !isDue() || !session.settled) return;
      // What is the same stays the same object, so that only what changed is worked out and drawn.
      const patch = difference(session.settled, presentOf(found.history));
      const present = patch ? applyPatch(patch, session.settled) : session.settled;
      const history = present ? withPresent(found.history, present) : found.history;
      session.work = workOn(
        stored.head,
        { ...found, history, disk: { ...found.disk, states: history.states } },
        session.work?.revisedAt ?? around.now(),
      );
      session.settled = presentOf(history);
      session.history = () => history;
      set({ revision: stored.head.revision, incoming: history });
    },

    /** Told that the page goes away: puts down at once what is unsaved. */
    part(): void {
      const own = [session, former].find((each) => each?.pending);
      if (!own) return;
      own.work ??= newWork(around.newId(), around.now());
      const history = own.history();
      const { work } = own;
      const underWay = [...work.unsure.keys()];
      const { change } = planSave(around, work, history, false);
      const isShort = change.text === null && heldCount(presentOf(history)).parts <= MOST_PARTS_AS_TEXT;
      const text = isShort ? writeDesign(presentOf(history)) : null;
      around.parting?.leave({
        change: { ...change, revisions: [] },
        expected: work.revision,
        underWay,
        text,
      });
    },
  };
}

export function newSession(
  work: Work | null,
  settled: Design | null,
  history: () => History = () => historyOf(settled ?? presentOf({ states: [], at: 0 })),
): Session {
  return { work, settled, pending: null, history };
}

function lacksText({ work, settled, history }: Session): boolean {
  if (!work?.disk || !settled) return false;
  const { states, at } = history();
  return (
    states[at] === settled && work.disk.texts.at(-1) !== work.disk.first + work.disk.states.indexOf(settled)
  );
}

/** What was changed while another window's part came in, on top of it; where both meet, the hand at work wins. */
function onTop(before: Design, newest: History, merged: History): History {
  const { history, clashes } = rebased(before, newest, merged);
  if (clashes.length === 0) return history;
  const turned = rebased(before, merged, newest);
  return withStep(merged, presentOf(turned.history));
}
