/** The storage of this browser, over IndexedDB. */
import {
  readTransaction,
  readValue,
  type StoreName,
  type Transaction,
  updateValue,
  writeTransaction,
} from "./database.ts";
import { rebuiltHead } from "./documentReading.ts";
import {
  type DocumentChange,
  type DocumentHead,
  type DocumentStorage,
  isHead,
  isRevisionHead,
  type RevisionHead,
  type StoredDocument,
  type StoredRevision,
} from "./documentStorage.ts";

const LAST = "last-opened";
const WHOLE: readonly StoreName[] = ["heads", "texts", "steps", "revisions", "revisionTexts"];

type AnyTransaction = Transaction | Transaction<"readonly">;

export function browserDocumentStorage(): DocumentStorage {
  return {
    heads: () =>
      readTransaction(["heads", "texts", "steps"], async (tx) => {
        const [heads, keys] = await Promise.all([
          tx.objectStore("heads").getAll(),
          tx.objectStore("texts").getAllKeys(),
        ]);
        const good = heads.filter(isHead);
        const known = new Set(good.map((head) => head.id));
        // A text without a head is a design all the same.
        const lost = new Set(keys.map(([id]) => id).filter((id) => !known.has(id)));
        const rebuilt = await Promise.all([...lost].map((id) => journalOf(tx, id)));
        return [...good, ...rebuilt.map((journal) => journal.head)];
      }),

    read: (id) => readTransaction(["heads", "texts", "steps"], (tx) => documentOf(tx, id)),

    write: (change, expected) =>
      writeTransaction(WHOLE, async (tx) => {
        const standing = await standingHead(tx, change.head.id);
        if ((standing?.revision ?? null) !== expected) return { ok: false, standing };
        await putChange(tx, change);
        return { ok: true };
      }),

    add: (document) =>
      writeTransaction(WHOLE, async (tx) => {
        if (await standingHead(tx, document.head.id)) return false;
        await putDocument(tx, document);
        return true;
      }),

    take: (id) =>
      writeTransaction(WHOLE, async (tx) => {
        const found = await documentOf(tx, id);
        const heads = await revisionsOf(tx, id);
        const texts = await Promise.all(heads.map((head) => tx.objectStore("revisionTexts").get(head.id)));
        await Promise.all([
          tx.objectStore("heads").delete(id),
          tx.objectStore("texts").delete(placesOf(id)),
          tx.objectStore("steps").delete(placesOf(id)),
          ...heads.map((head) => dropRevision(tx, head.id)),
        ]);
        const revisions = heads.map((head, i) => ({ head, text: textOf(texts[i]) }));
        return found && { ...found, revisions };
      }),

    revisions: (document) => readTransaction(["revisions"], (tx) => revisionsOf(tx, document)),

    revision: (id) =>
      readTransaction(["revisions", "revisionTexts"], async (tx) => {
        const head: unknown = await tx.objectStore("revisions").get(id);
        const text: unknown = await tx.objectStore("revisionTexts").get(id);
        return isRevisionHead(head) ? { head, text: textOf(text) } : undefined;
      }),

    putRevision: (revision) =>
      writeTransaction(["revisions", "revisionTexts"], async (tx) => putRevision(tx, revision)),

    dropRevisions: (ids) =>
      writeTransaction(["revisions", "revisionTexts"], async (tx) => {
        await Promise.all(ids.map((id) => dropRevision(tx, id)));
      }),

    lastOpened: async () => {
      const id = await readValue(LAST);
      return typeof id === "string" ? id : null;
    },

    setLastOpened: async (id) => void (await updateValue(LAST, () => id)),
  };
}

/** All places of a document: an empty list sorts after any number. */
function placesOf(id: string, from = Number.NEGATIVE_INFINITY): IDBKeyRange {
  return IDBKeyRange.bound([id, from], [id, []]);
}

async function documentOf(tx: AnyTransaction, id: string): Promise<StoredDocument | undefined> {
  const journal = await journalOf(tx, id);
  return journal.isThere ? { ...journal, revisions: [] } : undefined;
}

async function journalOf(tx: AnyTransaction, id: string) {
  const [texts, steps] = [tx.objectStore("texts"), tx.objectStore("steps")];
  const range = placesOf(id);
  const [head, textKeys, textValues, stepKeys, stepValues]: [
    unknown,
    [string, number][],
    unknown[],
    [string, number][],
    unknown[],
  ] = await Promise.all([
    tx.objectStore("heads").get(id),
    texts.getAllKeys(range),
    texts.getAll(range),
    steps.getAllKeys(range),
    steps.getAll(range),
  ]);
  const journal = {
    texts: textKeys.map(([, at], i) => ({ at, text: textOf(textValues[i]) })),
    steps: stepKeys.map(([, at], i) => ({ at, patch: stepValues[i] })),
  };
  return {
    isThere: isHead(head) || textKeys.length > 0,
    head: isHead(head) ? head : rebuiltHead(id, journal),
    ...journal,
  };
}

/** A document whose head is damaged counts as revision 0, as it does in the list. */
async function standingHead(tx: Transaction, id: string): Promise<DocumentHead | null> {
  const head: unknown = await tx.objectStore("heads").get(id);
  if (isHead(head)) return head;
  return (await documentOf(tx, id))?.head ?? null;
}

async function putChange(tx: Transaction, change: DocumentChange): Promise<void> {
  const { head, dropFrom, dropBelow, steps, text, keepTexts, revisions } = change;
  const [allTexts, allSteps] = [tx.objectStore("texts"), tx.objectStore("steps")];
  const { id } = head;
  const surplus = (await allTexts.getAllKeys(placesOf(id))).filter(([, at]) => !keepTexts.includes(at));
  await together([
    () => allSteps.delete(placesOf(id, dropFrom)),
    () => allSteps.delete(IDBKeyRange.bound([id], [id, dropBelow], false, true)),
    ...surplus.map((key) => () => allTexts.delete(key)),
    ...steps.map(
      ({ at, patch }) =>
        () =>
          allSteps.put(patch, [id, at]),
    ),
    ...(text ? [() => allTexts.put(text.text, [id, text.at])] : []),
    ...revisions.map((revision) => () => putRevision(tx, revision)),
    () => tx.objectStore("heads").put(head, id),
  ]);
}

async function putDocument(tx: Transaction, document: StoredDocument): Promise<void> {
  const { head, texts, steps, revisions } = document;
  const [allTexts, allSteps] = [tx.objectStore("texts"), tx.objectStore("steps")];
  await together([
    ...texts.map(
      ({ at, text }) =>
        () =>
          allTexts.put(text, [head.id, at]),
    ),
    ...steps.map(
      ({ at, patch }) =>
        () =>
          allSteps.put(patch, [head.id, at]),
    ),
    ...revisions.map((revision) => () => putRevision(tx, revision)),
    () => tx.objectStore("heads").put(head, head.id),
  ]);
}

/** Asks for all at once. One that throws in the asking fails like any other: none of the others is left unheard. */
async function together(requests: readonly (() => Promise<unknown>)[]): Promise<void> {
  await Promise.all(requests.map(async (request) => await request()));
}

/** Revisions of one document lie side by side: their ids begin with its own. */
async function revisionsOf(tx: AnyTransaction, document: string): Promise<readonly RevisionHead[]> {
  const range = IDBKeyRange.bound(`${document}:`, `${document}:\uffff`);
  const found: unknown[] = await tx.objectStore("revisions").getAll(range);
  return found.filter(isRevisionHead);
}

async function putRevision(tx: Transaction, { head, text }: StoredRevision): Promise<void> {
  await together([
    () => tx.objectStore("revisions").put(head, head.id),
    () => tx.objectStore("revisionTexts").put(text, head.id),
  ]);
}

async function dropRevision(tx: Transaction, id: string): Promise<void> {
  await Promise.all([tx.objectStore("revisions").delete(id), tx.objectStore("revisionTexts").delete(id)]);
}

/** A text that is none is handed out as it lies there. */
function textOf(value: unknown): string {
  return typeof value === "string" ? value : (JSON.stringify(value) ?? "");
}
