/**
 * Where the user's own designs are kept, in this browser: of each document a head for the list, its journal (whole
 * texts now and then, the steps between them) and its revisions. The journal is written in one transaction with the
 * head, and only where the head is the one that the writer knows.
 */

export type DocumentHead = {
  readonly id: string;
  readonly title: string;
  /** When it was last saved [ms since 1970]. */
  readonly changed: number;
  readonly parts: number;
  /** Counts the saves: a window that knows an older one must not overwrite. */
  readonly revision: number;
  /** Place in the journal where it stands; absent: at its end. */
  readonly at?: number;
  /** Name of the write that put it there: whoever lost sight of a write finds out whether it arrived. */
  readonly mark?: string;
  /** The storage refuses it: it lives in this window only, and is gone when that closes. */
  readonly onlyHere?: boolean;
};

/** A whole text of a document, and the place in its journal where it read so. */
export type StoredText = { readonly at: number; readonly text: string };
/** How the document got from the place before to this one; a `Patch` unless it was damaged. */
export type StoredStep = { readonly at: number; readonly patch: unknown };

export type RevisionHead = {
  readonly id: string;
  readonly document: string;
  /** [ms since 1970] */
  readonly when: number;
  readonly name?: string;
  readonly by: "user" | "itself";
  readonly parts: number;
};
export type StoredRevision = { readonly head: RevisionHead; readonly text: string };

/** Texts and steps in the order of their places. */
export type StoredDocument = {
  readonly head: DocumentHead;
  readonly texts: readonly StoredText[];
  readonly steps: readonly StoredStep[];
  readonly revisions: readonly StoredRevision[];
};

/** What a save writes. */
export type DocumentChange = {
  readonly head: DocumentHead;
  /** Steps from this place on are replaced. */
  readonly dropFrom: number;
  /** Steps below this place are no longer reached by undo. */
  readonly dropBelow: number;
  readonly steps: readonly StoredStep[];
  readonly text: StoredText | null;
  /** Places of the earlier texts that stay. */
  readonly keepTexts: readonly number[];
  readonly revisions: readonly StoredRevision[];
};

export type WriteResult =
  | { readonly ok: true }
  /** The head that stands there instead of the expected one; null: none. */
  | { readonly ok: false; readonly standing: DocumentHead | null };

/** Every call may reject: storage can be denied, full, silent. */
export type DocumentStorage = {
  readonly heads: () => Promise<readonly DocumentHead[]>;
  /** Without its revisions. */
  readonly read: (id: string) => Promise<StoredDocument | undefined>;
  /** Writes unless what stands there has another revision than `expected` (null: nothing should stand there). */
  readonly write: (change: DocumentChange, expected: number | null) => Promise<WriteResult>;
  /** Puts a whole document where none stands. */
  readonly add: (document: StoredDocument) => Promise<boolean>;
  /** Takes a document off with all that belongs to it, and hands it out. */
  readonly take: (id: string) => Promise<StoredDocument | undefined>;
  readonly revisions: (document: string) => Promise<readonly RevisionHead[]>;
  readonly revision: (id: string) => Promise<StoredRevision | undefined>;
  readonly putRevision: (revision: StoredRevision) => Promise<void>;
  readonly dropRevisions: (ids: readonly string[]) => Promise<void>;
  readonly lastOpened: () => Promise<string | null>;
  readonly setLastOpened: (id: string | null) => Promise<void>;
};

// What lies in the browser's storage may stem from any edition, or from a hand in the developer tools.

export function isHead(value: unknown): value is DocumentHead {
  if (typeof value !== "object" || value === null) return false;
  const head: Partial<Record<keyof DocumentHead, unknown>> = value;
  return (
    typeof head.id === "string" &&
    typeof head.title === "string" &&
    typeof head.changed === "number" &&
    typeof head.parts === "number" &&
    typeof head.revision === "number"
  );
}

export function isRevisionHead(value: unknown): value is RevisionHead {
  if (typeof value !== "object" || value === null) return false;
  const head: Partial<Record<keyof RevisionHead, unknown>> = value;
  return (
    typeof head.id === "string" &&
    typeof head.document === "string" &&
    typeof head.when === "number" &&
    typeof head.parts === "number" &&
    (head.by === "user" || head.by === "itself")
  );
}
