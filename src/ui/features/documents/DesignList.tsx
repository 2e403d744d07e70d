import { CopyPlus, FilePlus2, FileUp, FolderDown, FolderInput, Pencil, Trash2 } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import { EXAMPLE_GROUPS } from "../../../design/examples.ts";
import { useApp } from "../../../store/app.ts";
import type { DocumentHead, StoredDocument } from "../../../store/documents/documentStorage.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { persistenceWords } from "../../../store/documents/persistence.ts";
import { counted } from "../../kit/format.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { OfflineWords } from "../../kit/told/OfflineWords.tsx";
import { chooseFile, openEmpty, openExample, openStored } from "./actions.ts";
import styles from "./Documents.module.css";
import { chooseDownload, downloadEverything } from "./downloadEverything.ts";
import "../../kit/list.css";

/** Own designs, and the examples below them. */
export function DesignList({ onDone }: { readonly onDone: () => void }) {
  const list = useDocuments((s) => s.list);
  const current = useDocuments((s) => s.current);
  const persisted = useDocuments((s) => s.persisted);
  const [removed, setRemoved] = useRemoved();
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => void useDocuments.getState().refresh(), []);

  return (
    <>
      <div className="design-actions">
        <button
          type="button"
          className="button main"
          onClick={async () => {
            await openEmpty();
            onDone();
          }}
        >
          <FilePlus2 size={16} aria-hidden /> New design
        </button>
        <button
          type="button"
          className="button"
          onClick={async () => {
            if (await chooseFile()) onDone();
          }}
        >
          <FileUp size={16} aria-hidden /> Open a file…
        </button>
      </div>
      <div role="status">
        {removed ? (
          <p className="undo-bar">
            Deleted “{removed.head.title}”.
            <button
              type="button"
              className="button"
              onClick={async () => {
                setProblem(await useDocuments.getState().restore(removed));
                setRemoved(null);
              }}
            >
              Undo
            </button>
          </p>
        ) : null}
        {problem ? <p className="field-problem">{problem}</p> : null}
      </div>
      <h3 className="design-heading">Own designs</h3>
      {list.length === 0 ? (
        <p className="quiet">None yet. An example becomes your own with the first change.</p>
      ) : (
        <ul className="design-list">
          {list.map((head) => (
            <DesignRow
              key={head.id}
              head={head}
              isCurrent={head.id === current}
              onDone={onDone}
              onRemoved={setRemoved}
              onProblem={setProblem}
            />
          ))}
        </ul>
      )}
      <div className="design-actions">
        <button type="button" className="button" onClick={() => void downloadEverything()}>
          <FolderDown size={16} aria-hidden /> Download everything
        </button>
        <button type="button" className="button" onClick={() => void chooseDownload()}>
          <FolderInput size={16} aria-hidden /> Restore from a download…
        </button>
      </div>
      <p className={`quiet small ${styles.keeping}`}>{persistenceWords(persisted)}</p>
      <h3 className={styles.heading}>Examples</h3>
      {EXAMPLE_GROUPS.map(({ teaches, examples }) => (
        <section key={teaches} aria-label={teaches}>
          <h4 className="quiet">{teaches}</h4>
          <ul className="design-list">
            {examples.map(({ key, title, lesson }) => (
              <li key={key} className="design-row">
                <button
                  type="button"
                  className="design-open"
                  onClick={async () => {
                    if (await openExample(key)) onDone();
                  }}
                >
                  <strong>{title}</strong>
                  <span className="quiet small">{lesson}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
      <p className="quiet small">
        Own designs are kept in this browser only. Download a file to keep one elsewhere or to pass it on.
      </p>
      <OfflineWords />
    </>
  );
}

type Removed = StoredDocument | null;

/** The last deletion, to be taken back here; whoever closes the list, be it before it is done, still can by a notice. */
function useRemoved(): readonly [Removed, (removed: Removed) => void] {
  const [removed, setRemoved] = useState<Removed>(null);
  const latest = useRef(removed);
  latest.current = removed;
  const isShown = useRef(false);
  useEffect(() => {
    isShown.current = true;
    return () => {
      isShown.current = false;
      offerUndo(latest.current);
    };
  }, []);
  return [removed, (gone) => (isShown.current ? setRemoved(gone) : offerUndo(gone))];
}

function offerUndo(gone: Removed): void {
  if (!gone) return;
  const { notify } = useApp.getState();
  notify(`Deleted “${gone.head.title}”.`, "info", {
    takeBack: () => {
      void useDocuments
        .getState()
        .restore(gone)
        .then((problem) => problem !== null && notify(problem, "warning"));
    },
  });
}

type RowProps = {
  readonly head: DocumentHead;
  readonly isCurrent: boolean;
  readonly onDone: () => void;
  readonly onRemoved: (document: StoredDocument | null) => void;
  readonly onProblem: (problem: string | null) => void;
};

function DesignRow({ head, isCurrent, onDone, onRemoved, onProblem }: RowProps) {
  const [isRenaming, setRenaming] = useState(false);
  const documents = useDocuments.getState();
  if (isRenaming) {
    return (
      <li className="design-row">
        <RenameForm
          title={head.title}
          onTitle={async (title) => {
            if (title !== null) onProblem(await documents.rename(head.id, title));
            setRenaming(false);
          }}
        />
      </li>
    );
  }
  return (
    <li className={isCurrent ? "design-row current" : "design-row"}>
      <button
        type="button"
        className="design-open"
        aria-current={isCurrent}
        onClick={async () => {
          if (isCurrent || (await openStored(head.id))) onDone();
        }}
      >
        <strong>{head.title}</strong>
        <span className="quiet small">
          {isCurrent ? "open now · " : ""}
          {counted(head.parts, "part")} · {new Date(head.changed).toLocaleString()}
        </span>
        {head.onlyHere ? (
          <span
            className="badge warning"
            title="The storage of this browser refused this design. It is lost when you close this window."
          >
            not saved: this window only
          </span>
        ) : null}
      </button>
      <IconButton icon={Pencil} name={`Rename “${head.title}”`} onPress={() => setRenaming(true)} />
      <IconButton
        icon={CopyPlus}
        name={`Duplicate “${head.title}”`}
        onPress={async () => onProblem(await documents.duplicate(head.id))}
      />
      <IconButton
        icon={Trash2}
        name={`Delete “${head.title}”`}
        onPress={async () => onRemoved(await documents.remove(head.id))}
      />
    </li>
  );
}

function RenameForm({
  title,
  onTitle,
}: {
  readonly title: string;
  /** null: left as it was. */
  readonly onTitle: (title: string | null) => void;
}) {
  const [draft, setDraft] = useState(title);
  return (
    <form
      data-takes-escape
      onSubmit={(event) => {
        event.preventDefault();
        onTitle(draft);
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") onTitle(null);
      }}
    >
      <input
        className="field-input"
        aria-label="New title"
        value={draft}
        // biome-ignore lint/a11y/noAutofocus: the button that had the focus has just turned into this field.
        autoFocus
        onChange={(event) => setDraft(event.target.value)}
      />
      <button type="submit" className="button main">
        Rename
      </button>
    </form>
  );
}
