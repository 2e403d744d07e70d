/** The user's own designs as the page sees them. */
import type { Design } from "../../design/design.ts";
import type { ExportedDocument } from "./documentCommands.ts";
import type { DocumentHead, RevisionHead, StoredDocument, StoredRevision } from "./documentStorage.ts";
import type { History } from "./history.ts";
import type { Persisted } from "./persistence.ts";

export type SaveState =
  /** All that was changed lies in the storage (for an untouched example: nothing was changed yet). */
  | "saved"
  | "saving"
  | "unsaved"
  /** The storage refuses; `reason` says why. It is tried again with every change, and every few seconds. */
  | "unavailable";

export type Opened =
  | {
      readonly ok: true;
      readonly design: Design;
      readonly notes: readonly string[];
      /** For undo and redo; `design` is its present. */
      readonly history: History;
    }
  /** `text`: what lies in the storage, for downloading; null where nothing could be had. */
  | { readonly ok: false; readonly problem: string; readonly text: string | null };

export type DocumentsState = {
  readonly state: SaveState;
  readonly reason: string | null;
  /** Id of the open document; null while the open design is not (yet) one of the user's own. */
  readonly current: string | null;
  readonly revision: number | null;
  /** Latest first. */
  readonly list: readonly DocumentHead[];
  /** Something that happened at saving, for the user to know. */
  readonly notice: string | null;
  /** What the open design is to become, because another window had its part in it; see `attachAutosave`. */
  readonly incoming: History | null;
  /** Whether the browser promises to keep what is stored; `persistenceWords` says what that means. */
  readonly persisted: Persisted;
  /** The browser was asked for that just now, with the first design of one's own, and has answered. */
  readonly hasAnswered: boolean;

  readonly refresh: () => Promise<void>;
  /** Works on a design that becomes a document only with its first change: an example, an empty canvas. */
  readonly begin: (design: Design) => Promise<void>;
  /** Works on a design as a new document, stored at once: a link, a file. */
  readonly create: (design: Design) => Promise<void>;
  /** Leaves everything as it was when the design cannot be read. */
  readonly open: (id: string) => Promise<Opened>;
  /** The document that was open last; null if there is none. */
  readonly openLast: () => Promise<Opened | null>;
  /** Told that the design turned to stands on the canvas: from then on it counts as opened last. */
  readonly cameUp: (id: string | null) => Promise<void>;
  /** Told that the design turned to did not come up: the one before, which the canvas still shows, goes on. */
  readonly stay: () => void;
  /** Told of every change of the open design; it is on the disk a moment later. */
  readonly changed: (design: Design, history?: () => History) => void;
  /** Saves what is unsaved now. */
  readonly flush: () => Promise<void>;
  /** Told that the page goes away: puts down at once what is unsaved, for the next page to pick up. */
  readonly part: () => void;
  /** Puts in the storage what pages had to leave unsaved. */
  readonly pickUp: () => Promise<void>;
  /** These yield null, or a sentence that says why not. */
  readonly rename: (id: string, title: string) => Promise<string | null>;
  readonly duplicate: (id: string) => Promise<string | null>;
  readonly restore: (document: StoredDocument) => Promise<string | null>;
  /** Takes a document off and hands it out, for `restore`; null if there was none. */
  readonly remove: (id: string) => Promise<StoredDocument | null>;
  /** The text of a document as a file; where it cannot be read, what lies there as it is. */
  readonly text: (id: string) => Promise<string | null>;
  /** Told that another window saved. */
  readonly heard: (id: string, revision: number) => Promise<void>;
  /** Follows what other windows did to the open document while this page was asleep. */
  readonly catchUp: () => Promise<void>;
  readonly dismissNotice: () => void;

  /** Revisions of a document, latest first. */
  readonly revisions: (document: string) => Promise<readonly RevisionHead[]>;
  readonly readRevision: (id: string) => Promise<Opened>;
  /** Keeps the open design as it is now, under a name. These yield null, or a sentence that says why not. */
  readonly takeRevision: (name: string) => Promise<string | null>;
  readonly nameRevision: (id: string, name: string) => Promise<string | null>;
  /** Takes a revision off and hands it out, for `putBackRevision`; null if there was none or the storage refuses. */
  readonly removeRevision: (id: string) => Promise<StoredRevision | null>;
  readonly putBackRevision: (revision: StoredRevision) => Promise<string | null>;
  /** Makes the open design what it was, as one undo step; what it is now is kept as a revision. */
  readonly restoreRevision: (id: string) => Promise<string | null>;

  /** All documents with texts and revisions. Rejects where the storage cannot be read. */
  readonly everything: () => Promise<readonly ExportedDocument[]>;
  /** Adds documents beside those that are there. */
  readonly takeIn: (documents: readonly ExportedDocument[]) => Promise<string | null>;
};
