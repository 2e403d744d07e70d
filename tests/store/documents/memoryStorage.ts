/** A storage in memory that can be made to refuse, as a browser does. */

import { readDocument } from "../../../src/store/documents/documentReading.ts";
import type {
  DocumentChange,
  DocumentStorage,
  RevisionHead,
  StoredDocument,
  StoredRevision,
} from "../../../src/store/documents/documentStorage.ts";
import { presentOf } from "../../../src/store/documents/history.ts";

export type MemoryStorage = DocumentStorage & {
  readonly documents: Map<string, StoredDocument>;
  readonly kept: Map<string, StoredRevision>;
  /** Every call rejects with this while it is set. */
  refusal: Error | null;
  /** Every call waits for this. */
  delay: Promise<unknown>;
  /** The changes that were written, in their order. */
  readonly writes: DocumentChange[];
};

export function memoryStorage(): MemoryStorage {
  const documents = new Map<string, StoredDocument>();
  const kept = new Map<string, StoredRevision>();
  let last: string | null = null;
  const answer = async <T>(work: () => T): Promise<T> => {
    await storage.delay;
    if (storage.refusal) throw storage.refusal;
    return work();
  };
  const revisionsOf = (id: string) => [...kept.values()].filter(({ head }) => head.document === id);
  const storage: MemoryStorage = {
    documents,
    kept,
    refusal: null,
    delay: Promise.resolve(),
    writes: [],
    heads: () => answer(() => [...documents.values()].map((each) => each.head)),
    read: (id) => answer(() => documents.get(id)),
    write: (change, expected) =>
      answer(() => {
        const standing = documents.get(change.head.id);
        if ((standing?.head.revision ?? null) !== expected)
          return { ok: false, standing: standing?.head ?? null };
        documents.set(change.head.id, changedDocument(standing, change));
        for (const revision of change.revisions) kept.set(revision.head.id, revision);
        storage.writes.push(change);
        return { ok: true };
      }),
    add: (document) =>
      answer(() => {
        if (documents.has(document.head.id)) return false;
        documents.set(document.head.id, { ...document, revisions: [] });
        for (const revision of document.revisions) kept.set(revision.head.id, revision);
        return true;
      }),
    take: (id) =>
      answer(() => {
        const found = documents.get(id);
        const revisions = revisionsOf(id);
        documents.delete(id);
        for (const { head } of revisions) kept.delete(head.id);
        return found && { ...found, revisions };
      }),
    revisions: (id) => answer((): RevisionHead[] => revisionsOf(id).map(({ head }) => head)),
    revision: (id) => answer(() => kept.get(id)),
    putRevision: (revision) => answer(() => void kept.set(revision.head.id, revision)),
    dropRevisions: (ids) =>
      answer(() => {
        for (const id of ids) kept.delete(id);
      }),
    lastOpened: () => answer(() => last),
    setLastOpened: (id) =>
      answer(() => {
        last = id;
      }),
  };
  return storage;
}

function changedDocument(standing: StoredDocument | undefined, change: DocumentChange): StoredDocument {
  const { head, dropFrom, dropBelow, steps, text, keepTexts } = change;
  const place = <T extends { readonly at: number }>(list: readonly T[]) =>
    [...list].sort((a, b) => a.at - b.at);
  const keptSteps = (standing?.steps ?? []).filter(({ at }) => at >= dropBelow && at < dropFrom);
  const texts = (standing?.texts ?? []).filter(({ at }) => keepTexts.includes(at));
  return {
    head,
    steps: place([...keptSteps, ...steps]),
    texts: place([...texts, ...(text ? [text] : [])]),
    revisions: [],
  };
}

/** Titles of the designs that a page would read from the storage. */
export function storedTitles(storage: MemoryStorage): string[] {
  return [...storage.documents.values()].map((stored) => {
    const found = readDocument(stored);
    return found.ok ? presentOf(found.history).title : found.problem;
  });
}
