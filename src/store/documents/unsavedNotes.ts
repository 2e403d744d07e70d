/**
 * What a page that goes away still had to save. The large storage answers too late for that; the small one takes
 * the steps in one breath, and the next page picks them up from there. A note is removed only once what it holds is
 * confirmed to lie in the large storage; one that arrived there already does no harm.
 */
import { isObject } from "../../design/raw.ts";
import type { DocumentChange } from "./documentStorage.ts";

export type UnsavedNote = {
  /** Revision that the change is based on; null for a document that was never stored. */
  readonly expected: number | null;
  readonly change: DocumentChange;
  /** Marks of writes that were under way, whose result this change may find. */
  readonly underWay: readonly string[];
  /** The whole text, unless it is long. */
  readonly text: string | null;
};

/** A note of a former edition: the whole text, and the revision that it was based on. */
export type FormerUnsavedNote = {
  readonly id: string;
  readonly revision: number | null;
  readonly text: string;
};

export type FoundNote = { readonly key: string; readonly note: UnsavedNote | FormerUnsavedNote | null };

export type UnsavedNotes = {
  readonly leave: (note: UnsavedNote) => void;
  /** Takes back the own note: the page lives on, and has saved. */
  readonly drop: () => void;
  /** Whatever pages have left; null stands for what is no note. */
  readonly left: () => readonly FoundNote[];
  readonly remove: (key: string) => void;
  /** Which design came up last, until the large storage has confirmed it; null: none of one's own. */
  readonly leaveOpened: (id: string | null) => void;
  /** Undefined where the large storage knows. */
  readonly opened: () => string | null | undefined;
  /** Confirmed: takes it back, unless another window has put its own down since. */
  readonly dropOpened: (id: string | null) => void;
};

const OPENED = "downlead.opened";
const PREFIX = "downlead.parting.";

/** In this browser's local storage, one place for each window: two that close together overwrite nothing. */
export function browserUnsavedNotes(): UnsavedNotes {
  const own = PREFIX + crypto.getRandomValues(new Uint32Array(2)).join("-");
  const remove = (key: string) => ignoringStorageErrors(() => localStorage.removeItem(key));
  return {
    leave: (note) => ignoringStorageErrors(() => localStorage.setItem(own, JSON.stringify(note))),
    drop: () => remove(own),
    left: () => {
      const notes: FoundNote[] = [];
      ignoringStorageErrors(() => {
        for (const key of Object.keys(localStorage)) {
          if (key.startsWith(PREFIX)) notes.push({ key, note: noteOf(localStorage.getItem(key)) });
        }
      });
      return notes;
    },
    remove,
    leaveOpened: (id) => ignoringStorageErrors(() => localStorage.setItem(OPENED, id ?? "")),
    opened,
    dropOpened: (id) => void (opened() === id && remove(OPENED)),
  };
}

function opened(): string | null | undefined {
  try {
    const id = localStorage.getItem(OPENED);
    if (id === null) return undefined;
    return id === "" ? null : id;
  } catch {
    return undefined;
  }
}

/** Where nothing can be stored, this is no worse than without it; the page says so for itself. */
export function ignoringStorageErrors(work: () => void): void {
  try {
    work();
  } catch {
    // Denied or full.
  }
}

function noteOf(text: string | null): UnsavedNote | FormerUnsavedNote | null {
  let value: unknown;
  try {
    value = JSON.parse(text ?? "");
  } catch {
    return null;
  }
  if (!isObject(value)) return null;
  if (isNote(value)) return value;
  const { id, revision, text: file } = value;
  if (typeof id !== "string" || typeof file !== "string") return null;
  return { id, revision: typeof revision === "number" ? revision : null, text: file };
}

/** Only the frame is looked at: steps and texts are checked when the document is read. */
function isNote(value: Readonly<Record<string, unknown>>): value is UnsavedNote {
  const { change, underWay } = value;
  if (!isObject(change) || !isObject(change.head) || !Array.isArray(underWay)) return false;
  const { head, dropFrom, dropBelow, steps, keepTexts, revisions } = change;
  return (
    typeof head.id === "string" &&
    typeof head.title === "string" &&
    typeof head.revision === "number" &&
    typeof head.mark === "string" &&
    typeof dropFrom === "number" &&
    typeof dropBelow === "number" &&
    [steps, keepTexts, revisions].every(Array.isArray)
  );
}
