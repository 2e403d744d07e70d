/** A design that a window works on, on its way to the storage. */
import type { Design } from "../../design/design.ts";
import { writeDesign } from "../../design/file.ts";
import { applyPatch, patchBetween } from "../../design/patch.ts";
import { heldCount } from "../../design/variants.ts";
import { readDocument } from "./documentReading.ts";
import type { StoredDocument } from "./documentStorage.ts";
import { type History, presentOf, withPresent, withStep } from "./history.ts";
import { type DocumentWork, newWork, planSave, rebased, type Writer, workOn } from "./saving.ts";
import type { UnsavedNote } from "./unsavedNotes.ts";

/** A document, or a design that becomes one with its first change. */
export type DocumentSession = {
  work: DocumentWork | null;
  /** As it was read or last saved: the same object needs no saving. */
  settled: Design | null;
  pending: Design | null;
  /** The way of the design as it is at the moment of asking. */
  history: () => History;
};

/** A design of so many parts goes into an unsaved note as a whole text too: the place for notes is small. */
const MOST_PARTS_AS_TEXT = 400;

export function savedSession(work: DocumentWork | null, history: History): DocumentSession {
  return { work, settled: presentOf(history), pending: null, history: () => history };
}

export function unsavedSession(work: DocumentWork | null, history: History): DocumentSession {
  return { work, settled: null, pending: presentOf(history), history: () => history };
}

/** Whether no whole text of its present state lies in the storage. */
export function lacksText({ work, settled, history }: DocumentSession): boolean {
  if (!work?.disk || !settled) return false;
  const { states, at } = history();
  return (
    states[at] === settled && work.disk.texts.at(-1) !== work.disk.first + work.disk.states.indexOf(settled)
  );
}

/** Becomes what another window stored; yields the way that the canvas is to take over, null where it cannot be read. */
export function adoptStored(session: DocumentSession, stored: StoredDocument, now: number): History | null {
  const found = readDocument(stored);
  if (!found.ok || found.isDamaged || !session.settled) return null;
  // What is the same stays the same object, so that only what changed is worked out and drawn.
  const patch = patchBetween(session.settled, presentOf(found.history));
  const present = patch ? applyPatch(patch, session.settled) : session.settled;
  const history = present ? withPresent(found.history, present) : found.history;
  const disk = { ...found.disk, states: history.states };
  session.work = workOn(stored.head, { ...found, history, disk }, session.work?.revisedAt ?? now);
  session.settled = presentOf(history);
  session.history = () => history;
  return history;
}

/** What was changed while another window's part came in, on top of it; where both meet, the hand at work wins. */
export function withNewestOnTop(before: Design, newest: History, merged: History): History {
  const { history, clashes } = rebased(before, newest, merged);
  if (clashes.length === 0) return history;
  const turned = rebased(before, merged, newest);
  return withStep(merged, presentOf(turned.history));
}

/** What is left to be saved of it, in a form that the next page can put into the storage. */
export function unsavedNoteOf(writer: Omit<Writer, "storage">, session: DocumentSession): UnsavedNote {
  session.work ??= newWork(writer.newId(), writer.now());
  const history = session.history();
  const { work } = session;
  const underWay = [...work.unsure.keys()];
  const { change } = planSave(writer, work, history, false);
  const isShort = change.text === null && heldCount(presentOf(history)).parts <= MOST_PARTS_AS_TEXT;
  const text = isShort ? writeDesign(presentOf(history)) : null;
  return { change: { ...change, revisions: [] }, expected: work.revision, underWay, text };
}
