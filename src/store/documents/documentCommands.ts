/** What is done to designs that lie in the storage, open or not. A sentence comes back where something is in the way. */
import { retitle } from "../../design/edits/parts.ts";
import { writeDesign } from "../../design/file.ts";
import { readDocument } from "./documentReading.ts";
import type { RevisionHead, StoredRevision } from "./documentStorage.ts";
import { presentOf, withStep } from "./history.ts";
import type { DocumentServices, OpenDocument } from "./openDocument.ts";
import { copyTitle, saveWork, workOn } from "./saving.ts";

/** A document on its way out of this browser or into it. */
export type ExportedDocument = {
  readonly title: string;
  /** [ms since 1970] */
  readonly changed: number;
  readonly parts: number;
  /** Its file; of a document that cannot be read what lies in the storage, as it is. */
  readonly text: string;
  readonly revisions: readonly ExportedRevision[];
};
export type ExportedRevision = Pick<RevisionHead, "when" | "name" | "by" | "parts"> & {
  readonly text: string;
};

export const DOCUMENT_GONE = "This design is no longer in the browser’s storage.";

/** Gives a document another title, as one step of its journal. */
export async function renameDocument(
  around: DocumentServices,
  openDocument: OpenDocument,
  id: string,
  title: string,
): Promise<string | null> {
  const stored = await openDocument.find(id);
  if (!stored) return DOCUMENT_GONE;
  const { head, found, isKept } = stored;
  if (!found.ok) return `“${head.title}” cannot be read, so its title cannot be changed.`;
  const edit = retitle(presentOf(found.history), title);
  if (!edit.ok) return edit.reason;
  if (found.isDamaged) await keepDamagedAsRevisions(around, id);
  const history = withStep(found.history, edit.design);
  const own = openDocument.kept.get(id);
  if (isKept && own) openDocument.kept.set(id, { ...own, history, head: { ...head, title } });
  else await saveWork(around, workOn(head, found, around.now()), history, true);
  return null;
}

/** A document that cannot be read is copied as it is. */
export async function duplicateDocument(
  around: DocumentServices,
  openDocument: OpenDocument,
  id: string,
): Promise<string | null> {
  const stored = await openDocument.find(id);
  if (!stored) return DOCUMENT_GONE;
  const { head, found } = stored;
  const title = copyTitle(head.title);
  const copy = { id: around.newId(), title, changed: around.now(), parts: head.parts, revision: 1 };
  const text = found.ok ? writeDesign({ ...presentOf(found.history), title }) : found.text;
  await around.storage.add({ head: { ...copy, at: 0 }, texts: [{ at: 0, text }], steps: [], revisions: [] });
  return null;
}

/** All that lies in the storage, ready to be taken elsewhere. */
export async function exportDocuments(
  around: DocumentServices,
  openDocument: OpenDocument,
): Promise<readonly ExportedDocument[]> {
  await openDocument.readList();
  const documents: ExportedDocument[] = [];
  for (const { id } of await around.storage.heads()) {
    const stored = await openDocument.find(id);
    if (!stored) continue;
    const { head, found } = stored;
    const revisions: ExportedRevision[] = [];
    for (const each of await around.storage.revisions(id)) {
      const revision = await around.storage.revision(each.id);
      if (revision) revisions.push(keptRevision(revision));
    }
    const text = found.ok ? writeDesign(presentOf(found.history)) : found.text;
    documents.push({ title: head.title, changed: head.changed, parts: head.parts, text, revisions });
  }
  return documents;
}

function keptRevision({ head, text }: StoredRevision): ExportedRevision {
  const { when, name, by, parts } = head;
  return { when, by, parts, text, ...(name === undefined ? {} : { name }) };
}

/** Adds documents beside those that are there; each gets an id of its own. */
export async function importDocuments(
  around: DocumentServices,
  documents: readonly ExportedDocument[],
): Promise<null> {
  for (const { title, changed, parts, text, revisions } of documents) {
    const id = around.newId();
    await around.storage.add({
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
export async function keepDamagedAsRevisions(around: DocumentServices, document: string): Promise<void> {
  const stored = await around.storage.read(document);
  if (!stored) return;
  const { head, texts, steps } = stored;
  const about = { document: head.id, when: head.changed, by: "user", parts: 0 } as const;
  const remains = texts
    .filter((text) => !readDocument({ head, texts: [text], steps: [] }).ok)
    .map(({ at, text }) => ({ id: `text-${at}`, text, name: "Damaged text, kept as it is" }));
  const [last] = texts.slice(-1);
  const journal = {
    id: `steps-${last?.at ?? 0}`,
    text: JSON.stringify({ texts, steps }),
    name: "Damaged journal, kept as it is",
  };
  for (const { id, text, name } of [...remains, journal]) {
    await around.storage.putRevision({ head: { ...about, id: `${head.id}:${id}`, name }, text });
  }
}
