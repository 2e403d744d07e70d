/**
 * Saving the open design as the next revision of its document. What another window wrote in between is never
 * overwritten: both are merged part by part, and where that cannot be, this one goes on as a document of its own.
 */
import { clashWords } from "../../design/clashWords.ts";
import type { Design } from "../../design/design.ts";
import { LIMITS } from "../../design/limits.ts";
import { mergeDesigns } from "../../design/merge.ts";
import type { MergeClash } from "../../design/mergeValues.ts";
import { type DocumentReading, readDocument } from "./documentReading.ts";
import type { DocumentChange, DocumentHead, DocumentStorage } from "./documentStorage.ts";
import { HISTORY_LIMIT, type History, presentOf } from "./history.ts";
import { journalChange, type OnDisk } from "./journal.ts";
import { BETWEEN_REVISIONS_MS, revisionOf } from "./revisions.ts";

export type Writer = {
  readonly storage: DocumentStorage;
  readonly now: () => number;
  readonly newId: () => string;
};

/** A document that a window works on. */
export type DocumentWork = {
  readonly id: string;
  /** Revision that lies in the storage; null: none. */
  readonly revision: number | null;
  /** The last state in common with the storage: what this window changed is what differs from it. */
  readonly base: Design | null;
  readonly disk: OnDisk | null;
  /** When `base` was saved. */
  readonly changed: number;
  /** When the last revision was taken by itself. */
  readonly revisedAt: number;
  /** Writes that got no answer, by their marks, with what there is to work on should they have arrived. */
  readonly unsure: Map<string, DocumentWork>;
};

export type Saved = Attempt & { readonly head: DocumentHead };

type Attempt = {
  readonly work: DocumentWork;
  /** Another one than was to be saved where another window had its part in it. */
  readonly history: History;
  readonly notice: string | null;
};

const MOST_ATTEMPTS = 5;
/** Own steps beyond this number become one when they are put on top of another window's. */
const MOST_REBASED = 30;

export function newWork(id: string, now: number): DocumentWork {
  return { id, revision: null, base: null, disk: null, changed: now, revisedAt: now, unsure: new Map() };
}

export function workOn(
  head: DocumentHead,
  found: DocumentReading & { ok: true },
  revisedAt: number,
): DocumentWork {
  const { id, revision, changed } = head;
  return {
    id,
    revision,
    base: presentOf(found.history),
    disk: found.disk,
    changed,
    revisedAt,
    unsure: new Map(),
  };
}

/** What is to be written, and what there is to work on once it is. */
export function planSave(
  { now, newId }: Pick<Writer, "now" | "newId">,
  work: DocumentWork,
  history: History,
  wantsText: boolean,
): { readonly change: DocumentChange; readonly next: DocumentWork } {
  const design = presentOf(history);
  const changed = now();
  const { change, at, disk } = journalChange(work.disk, history, wantsText);
  const mark = newMark();
  const { title, parts } = design;
  const revision = (work.revision ?? 0) + 1;
  const head = { id: work.id, title, changed, parts: parts.length, revision, at, mark };
  const isDue = work.base !== null && changed - work.revisedAt >= BETWEEN_REVISIONS_MS;
  const revisions =
    work.base !== null && isDue
      ? [revisionOf(work.base, { id: newId(), document: work.id, when: work.changed, by: "itself" })]
      : [];
  const revisedAt = isDue ? changed : work.revisedAt;
  const next: DocumentWork = { ...work, revision, base: design, disk, changed, revisedAt, unsure: new Map() };
  work.unsure.set(mark, next);
  return { change: { ...change, head, revisions }, next };
}

/** Rejects where the storage refuses; `work.unsure` then tells whether it arrived all the same. */
export async function saveWork(
  writer: Writer,
  work: DocumentWork,
  history: History,
  wantsText: boolean,
): Promise<Saved> {
  let state: Attempt = { work, history, notice: null };
  for (let attempt = 0; attempt < MOST_ATTEMPTS; attempt += 1) {
    const { change, next } = planSave(writer, state.work, state.history, wantsText);
    const written = await writer.storage.write(change, state.work.revision);
    if (written.ok) return { ...state, work: next, head: change.head };
    state = await reconciled(writer, state, written.standing);
  }
  throw new Error("Other windows kept coming in between.");
}

async function reconciled(writer: Writer, state: Attempt, standing: DocumentHead | null): Promise<Attempt> {
  const { work, history } = state;
  const { title } = presentOf(history);
  const gone = `“${title}” was no longer in the browser’s storage. Since you continued, it is stored there again.`;
  if (!standing) return { work: newWork(work.id, writer.now()), history, notice: gone };
  const arrived = work.unsure.get(standing.mark ?? "");
  if (arrived) return { ...state, work: { ...arrived, revision: standing.revision } };

  const stored = await writer.storage.read(work.id);
  if (!stored) return { work: newWork(work.id, writer.now()), history, notice: gone };
  const theirs = readDocument(stored);
  // What of theirs cannot be read is not written over.
  if (!theirs.ok || theirs.isDamaged || !work.base) return asCopy(writer, history, "");
  const own = presentOf(history);
  const merge = rebased(work.base, history, theirs.history);
  if (merge.clashes.length > 0) return asCopy(writer, history, clashWords(merge.clashes, own));
  const { id } = work;
  // What this window had before is kept as it was.
  await writer.storage.putRevision(
    revisionOf(own, { id: writer.newId(), document: id, when: writer.now(), by: "itself" }),
  );
  const notice = `“${title}” was changed in another window too. It now holds the changes of both.`;
  return { work: workOn(stored.head, theirs, writer.now()), history: merge.history, notice };
}

/** Own steps since `base`, put on top of what another window made of it. With clashes, theirs stands in the result. */
export function rebased(
  base: Design,
  history: History,
  theirs: History,
): { readonly history: History; readonly clashes: readonly MergeClash[] } {
  const others = presentOf(theirs);
  const { design, clashes } = mergeDesigns(base, presentOf(history), others);
  const since = history.states.lastIndexOf(base, history.at);
  const own = since < 0 ? [] : history.states.slice(since + 1, history.at);
  const steps = (own.length > MOST_REBASED ? [] : own).map((state) => mergeDesigns(base, state, others));
  const kept = steps.filter((step) => step.clashes.length === 0).map((step) => step.design);
  const states = [...theirs.states.slice(0, theirs.at + 1), ...kept, design].slice(-HISTORY_LIMIT - 1);
  return { history: { states, at: states.length - 1 }, clashes };
}

function asCopy(writer: Writer, history: History, differing: string): Attempt {
  const { title } = presentOf(history);
  const copied = copyTitle(title);
  const states = history.states.map((state) => (state.title === title ? { ...state, title: copied } : state));
  const where = differing === "" ? "" : ` Both changed ${differing}.`;
  return {
    work: newWork(writer.newId(), writer.now()),
    history: { states, at: history.at },
    notice: `“${title}” was changed in another window too.${where} Yours continues as “${copied}”; both are kept.`,
  };
}

export function copyTitle(title: string): string {
  return `${title.slice(0, LIMITS.titleLength - 7)} (copy)`;
}

const thisWindow = crypto.getRandomValues(new Uint32Array(2)).join("-");
let marks = 0;

function newMark(): string {
  marks += 1;
  return `${thisWindow}-${marks}`;
}
