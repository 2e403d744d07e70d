/** A shelf in memory that can be made to refuse, as a browser does. */
import type { DocumentHead, Shelf, StoredDocument } from "../../src/store/documentShelf.ts";

export type MemoryShelf = Shelf & {
  readonly documents: Map<string, StoredDocument>;
  /** Every call rejects with this while it is set. */
  refusal: Error | null;
  puts: number;
};

export function memoryShelf(): MemoryShelf {
  const documents = new Map<string, StoredDocument>();
  let last: string | null = null;
  const answer = async <T>(work: () => T): Promise<T> => {
    await Promise.resolve();
    if (shelf.refusal) throw shelf.refusal;
    return work();
  };
  const shelf: MemoryShelf = {
    documents,
    refusal: null,
    puts: 0,
    heads: () => answer((): DocumentHead[] => [...documents.values()].map((each) => each.head)),
    read: (id) => answer(() => documents.get(id)),
    put: (document, expected) =>
      answer(() => {
        if ((documents.get(document.head.id)?.head.revision ?? null) !== expected) return false;
        documents.set(document.head.id, document);
        shelf.puts += 1;
        return true;
      }),
    remove: (id) => answer(() => void documents.delete(id)),
    lastOpened: () => answer(() => last),
    setLastOpened: (id) =>
      answer(() => {
        last = id;
      }),
  };
  return shelf;
}
