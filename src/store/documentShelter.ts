/** A shelf that keeps in this window what the storage refuses, so that turning to another design loses nothing. */
import type { Shelf, StoredDocument } from "./documentShelf.ts";

type Kept = {
  readonly document: StoredDocument;
  /** Revision that stands on the real shelf; null: none. */
  readonly expected: number | null;
};

/** Refusals still come through; the document is then found under its id all the same, marked `onlyHere`. */
export function sheltered(shelf: Shelf): Shelf {
  const kept = new Map<string, Kept>();

  async function put(document: StoredDocument, expected: number | null): Promise<boolean> {
    const { onlyHere: _, ...plain } = document.head;
    const { id } = plain;
    const standing = kept.get(id)?.expected;
    const due = standing === undefined ? expected : standing;
    try {
      const isPut = await shelf.put({ head: plain, text: document.text }, due);
      if (isPut) kept.delete(id);
      return isPut;
    } catch (error) {
      kept.set(id, { document: { head: { ...plain, onlyHere: true }, text: document.text }, expected: due });
      throw error;
    }
  }

  /** Once the storage takes things again, it takes the others too. */
  async function putRest(): Promise<void> {
    for (const { document, expected } of [...kept.values()]) {
      await put(document, expected).catch(() => false);
    }
  }

  return {
    ...shelf,
    heads: async () => {
      const stored = await shelf.heads().catch((error: unknown) => {
        if (kept.size === 0) throw error;
        return [];
      });
      return [
        ...stored.filter((head) => !kept.has(head.id)),
        ...[...kept.values()].map(({ document }) => document.head),
      ];
    },
    read: async (id) => kept.get(id)?.document ?? (await shelf.read(id)),
    put: async (document, expected) => {
      const isPut = await put(document, expected);
      if (isPut) await putRest();
      return isPut;
    },
    remove: async (id) => {
      const isNowhereElse = kept.get(id)?.expected === null;
      kept.delete(id);
      if (!isNowhereElse) await shelf.remove(id);
    },
  };
}
