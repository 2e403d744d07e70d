/** What is done to designs that lie on the shelf, open or not. A sentence comes back where something is in the way. */
import { retitle } from "../../design/edits/parts.ts";
import { writeDesign } from "../../design/file.ts";
import type { Desk, Surroundings } from "./desk.ts";
import { presentOf, withStep } from "./history.ts";
import { restored } from "./reading.ts";
import { copyTitle, saveWork, workOn } from "./saving.ts";
import type { RevisionHead, StoredRevision } from "./shelf.ts";

/** A document on its way out of this browser or into it. */
export type KeptDocument = {
  readonly title: string;
  /** [ms since 1970] */
  readonly changed: number;
  readonly parts: number;
  /** Its file; of a document that cannot be read what lies in the storage, as it is. */
  readonly text: string;
  readonly revisions: readonly KeptRevision[];
};
export type KeptRevision = Pick<RevisionHead, "when" | "name" | "by" | "parts"> & { readonly text: string };

export const GONE = "This design is no longer in the browser's storage.";

/** Gives a document another title, as one step of its journal. */
export async function renameStored(
  around: Surroundings,
  desk: Desk,
  id: string,
  title: string,
): Promise<string | null> {
  const stored = await desk.find(id);
  if (!stored) return GONE;
  const { head, found, isKept } = stored;
  if (!found.ok) return `“${head.title}” cannot be read, so its title cannot be changed.`;
  const edit = retitle(presentOf(found.history), title);
  if (!edit.ok) return edit.reason;
  if (found.isDamaged) await keepRemains(around, id);
  const history = withStep(found.history, edit.design);
  const own = desk.kept.get(id);
  if (isKept && own) desk.kept.set(id, { ...own, history, head: { ...head, title } });
  else await saveWork(around, workOn(head, found, around.now()), history, true);
  return null;
}

/** A document that cannot be read is copied as it is. */
export async function duplicateStored(around: Surroundings, desk: Desk, id: string): Promise<string | null> {
  const stored = await desk.find(id);
  if (!stored) return GONE;
  const { head, found } = stored;
  const title = copyTitle(head.title);
  const copy = { id: around.newId(), title, changed: around.now(), parts: head.parts, revision: 1 };
  const text = found.ok ? writeDesign({ ...presentOf(found.history), title }) : found.text;
  await around.shelf.add({ head: { ...copy, at: 0 }, texts: [{ at: 0, text }], steps: [], revisions: [] });
  return null;
}

/** All that lies on the shelf, ready to be taken elsewhere. */
export async function everythingStored(around: Surroundings, desk: Desk): Promise<readonly KeptDocument[]> {
  await desk.readList();
  const documents: KeptDocument[] = [];
  for (const { id } of await around.shelf.heads()) {
    const stored = await desk.find(id);
    if (!stored) continue;
    const { head, found } = stored;
    const revisions: KeptRevision[] = [];
    for (const each of await around.shelf.revisions(id)) {
      const revision = await around.shelf.revision(each.id);
      if (revision) revisions.push(keptRevision(revision));
    }
    const text = found.ok ? writeDesign(presentOf(found.history)) : found.text;
    documents.push({ title: head.title, changed: head.changed, parts: head.parts, text, revisions });
  }
  return documents;
}

function keptRevision({ head, text }: StoredRevision): KeptRevision {
  const { when, name, by, parts } = head;
  return { when, by, parts, text, ...(name === undefined ? {} : { name }) };
}

/** Adds documents beside those that are there; each gets an id of its own. */
export async function takeInDocuments(
  around: Surroundings,
  documents: readonly KeptDocument[],
): Promise<null> {
  for (const { title, changed, parts, text, revisions } of documents) {
    const id = around.newId();
    await around.shelf.add({
      head: { id, title, changed, parts, revision: 1, at: 0 },
      texts: [{ at: 0, text }],
      steps: [],
      revisions: revisions.map(({ text: own, ...head }) => ({
        head: { ...head, id: `${id}:${around.newId()}`, document: id },
        text: own,
      })),
    });
  }
  return null;
}

/**
 * Keeps what could not be read of a document among its revisions, under ids that are the same each time: the next
 * save of the document would replace it.
 */
export async function keepRemains(around: Surroundings, document: string): Promise<void> {
  const stored = await around.shelf.read(document);
  if (!stored) return;
  const { head, texts, steps } = stored;
  const about = { document: head.id, when: head.changed, by: "user", parts: 0 } as const;
  const remains = texts
    .filter((text) => !restored({ head, texts: [text], steps: [] }).ok)
    .map(({ at, text }) => ({ id: `text-${at}`, text, name: "Damaged text, kept as it is" }));
  const [last] = texts.slice(-1);
  const journal = {
    id: `steps-${last?.at ?? 0}`,
    text: JSON.stringify({ texts, steps }),
    name: "Damaged journal, kept as it is",
  };
  for (const { id, text, name } of [...remains, journal]) {
    await around.shelf.putRevision({ head: { ...about, id: `${head.id}:${id}`, name }, text });
  }
}
