/** A design on the desk of a window, on its way to the storage. */
import type { Design } from "../../design/design.ts";
import { writeDesign } from "../../design/file.ts";
import { applyPatch, difference } from "../../design/patch.ts";
import { heldCount } from "../../design/variants.ts";
import { type History, presentOf, withPresent, withStep } from "./history.ts";
import type { PartingNote } from "./parting.ts";
import { restored } from "./reading.ts";
import { newWork, planSave, rebased, type Work, type Writer, workOn } from "./saving.ts";
import type { StoredDocument } from "./shelf.ts";

/** A document, or a design that becomes one with its first change. */
export type Session = {
  work: Work | null;
  /** As it was read or last saved: the same object needs no saving. */
  settled: Design | null;
  pending: Design | null;
  /** The way of the design as it is at the moment of asking. */
  history: () => History;
};

/** A design of so many parts goes into a parting note as a whole text too: the place for notes is small. */
const MOST_PARTS_AS_TEXT = 400;

export function settledSession(work: Work | null, history: History): Session {
  return { work, settled: presentOf(history), pending: null, history: () => history };
}

export function pendingSession(work: Work | null, history: History): Session {
  return { work, settled: null, pending: presentOf(history), history: () => history };
}

/** Whether no whole text of its present state lies in the storage. */
export function lacksText({ work, settled, history }: Session): boolean {
  if (!work?.disk || !settled) return false;
  const { states, at } = history();
  return (
    states[at] === settled && work.disk.texts.at(-1) !== work.disk.first + work.disk.states.indexOf(settled)
  );
}

/** Becomes what another window stored; yields the way that the canvas is to take over, null where it cannot be read. */
export function followed(session: Session, stored: StoredDocument, now: number): History | null {
  const found = restored(stored);
  if (!found.ok || found.isDamaged || !session.settled) return null;
  // What is the same stays the same object, so that only what changed is worked out and drawn.
  const patch = difference(session.settled, presentOf(found.history));
  const present = patch ? applyPatch(patch, session.settled) : session.settled;
  const history = present ? withPresent(found.history, present) : found.history;
  const disk = { ...found.disk, states: history.states };
  session.work = workOn(stored.head, { ...found, history, disk }, session.work?.revisedAt ?? now);
  session.settled = presentOf(history);
  session.history = () => history;
  return history;
}

/** What was changed while another window's part came in, on top of it; where both meet, the hand at work wins. */
export function onTop(before: Design, newest: History, merged: History): History {
  const { history, clashes } = rebased(before, newest, merged);
  if (clashes.length === 0) return history;
  const turned = rebased(before, merged, newest);
  return withStep(merged, presentOf(turned.history));
}

/** What is left to be saved of it, in a form that the next page can put into the storage. */
export function partingNote(writer: Omit<Writer, "shelf">, session: Session): PartingNote {
  session.work ??= newWork(writer.newId(), writer.now());
  const history = session.history();
  const { work } = session;
  const underWay = [...work.unsure.keys()];
  const { change } = planSave(writer, work, history, false);
  const isShort = change.text === null && heldCount(presentOf(history)).parts <= MOST_PARTS_AS_TEXT;
  const text = isShort ? writeDesign(presentOf(history)) : null;
  return { change: { ...change, revisions: [] }, expected: work.revision, underWay, text };
}
