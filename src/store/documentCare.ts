/** What is done to designs that lie on the shelf, open or not. A sentence comes back where something is in the way. */
import type { Design } from "../design/design.ts";
import { retitle } from "../design/edits/parts.ts";
import { readDesign, writeDesign } from "../design/file.ts";
import { LIMITS } from "../design/limits.ts";
import type { Parting } from "./documentParting.ts";
import type { DocumentHead, Shelf, StoredDocument } from "./documentShelf.ts";

export type Surroundings = {
  readonly shelf: Shelf;
  readonly parting?: Parting;
  readonly now: () => number;
  readonly newId: () => string;
  /** From a change to its saving [ms]. */
  readonly delayMs: number;
};

export const GONE = "This design is no longer in the browser's storage.";

export function storedForm(
  around: Surroundings,
  design: Design,
  as: { readonly id: string; readonly revision: number },
): StoredDocument {
  const head = { ...as, title: design.title, changed: around.now(), parts: design.parts.length };
  return { head, text: writeDesign(design) };
}

export function copyTitle(title: string): string {
  return `${title.slice(0, LIMITS.titleLength - 7)} (copy)`;
}

/** Yields the head under the new title. */
export async function renameStored(
  around: Surroundings,
  id: string,
  title: string,
): Promise<DocumentHead | string> {
  const stored = await around.shelf.read(id);
  if (!stored) return GONE;
  const reading = readDesign(stored.text);
  if (!reading.ok) return `“${stored.head.title}” cannot be read, so its title cannot be changed.`;
  const edit = retitle(reading.design, title);
  if (!edit.ok) return edit.reason;
  const { revision } = stored.head;
  const renamed = storedForm(around, edit.design, { id, revision: revision + 1 });
  const put = await around.shelf.put(renamed, revision);
  return put ? renamed.head : "It was just changed in another window.";
}

/** A text that cannot be read is copied as it is. */
export async function duplicateStored(around: Surroundings, id: string): Promise<string | null> {
  const stored = await around.shelf.read(id);
  if (!stored) return GONE;
  const title = copyTitle(stored.head.title);
  const reading = readDesign(stored.text);
  const text = reading.ok ? writeDesign({ ...reading.design, title }) : stored.text;
  const { parts } = stored.head;
  const head = { id: around.newId(), title, changed: around.now(), parts, revision: 1 };
  await around.shelf.put({ head, text }, null);
  return null;
}

/**
 * Puts the open design on the shelf as the next revision of its document. Where another window was there
 * in between, nothing of its is overwritten: the design goes on as a copy, and `notice` says so.
 */
export async function putOpen(
  around: Surroundings,
  design: Design,
  known: { readonly id: string; readonly revision: number | null },
): Promise<{
  readonly head: DocumentHead;
  readonly notice: string | null;
  readonly newTitle: string | null;
}> {
  const { shelf, newId } = around;
  const own = storedForm(around, design, { id: known.id, revision: (known.revision ?? 0) + 1 });
  if (await shelf.put(own, known.revision)) return { head: own.head, notice: null, newTitle: null };
  if (await shelf.put(own, null)) {
    const notice = `“${design.title}” was deleted in another window; as you went on, it is kept.`;
    return { head: own.head, notice, newTitle: null };
  }
  const title = copyTitle(design.title);
  const copy = storedForm(around, { ...design, title }, { id: newId(), revision: 1 });
  await shelf.put(copy, null);
  const notice = `“${design.title}” was changed in another window too. Yours goes on as “${title}”; both are kept.`;
  return { head: copy.head, notice, newTitle: title };
}
