import { Download } from "lucide-react";
import { Accordion } from "radix-ui";
import { useState } from "react";
import type { StoredRevision } from "../../../store/documents/documentStorage.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { download, fileName } from "../../kit/download.ts";
import { NameForm } from "../../kit/NameForm.tsx";
import { downloadDesign } from "../documents/actions.ts";
import type { Unreadable } from "./actions.ts";
import { byDay } from "./days.ts";
import { RevisionItem } from "./RevisionItem.tsx";
import styles from "./Revisions.module.css";
import { useRevisions } from "./useRevisions.ts";
import "../../kit/list.css";

/** Earlier states of the open design: keep one, look at one, compare it with now, go back to it. */
export function RevisionList() {
  const isOwn = useDocuments((s) => s.current !== null);
  const isUnavailable = useDocuments((s) => s.state === "unavailable");
  return (
    <div className={styles.revisions}>
      <p className="quiet">
        Earlier states of this design. Some are kept by themselves as you work, the older the fewer. Those
        with a name stay until you delete them.
      </p>
      {isUnavailable ? <Unavailable /> : null}
      {isOwn ? (
        <Kept isUnavailable={isUnavailable} />
      ) : (
        <p className={styles.none}>
          This design is not yet one of your own. It becomes one with your first change; from then on its
          states are kept here.
        </p>
      )}
    </div>
  );
}

function Unavailable() {
  const reason = useDocuments((s) => s.reason);
  return (
    <div className={styles.warning} role="status">
      <p>{reason} Until that is repaired, no revision can be kept or restored.</p>
      <button type="button" className="button" onClick={() => downloadDesign()}>
        <Download size={16} aria-hidden /> Download the file
      </button>
    </div>
  );
}

/** What came of the last thing that was done here. */
type Outcome = { readonly words?: string; readonly removed?: StoredRevision; readonly trouble?: Unreadable };

function Kept({ isUnavailable }: { readonly isUnavailable: boolean }) {
  const { revisions, reload } = useRevisions();
  const [outcome, setOutcome] = useState<Outcome>({});
  const [kept, setKept] = useState(0);
  const [chosen, setChosen] = useState<string | null>(null);

  const keep = async (name: string) => {
    const problem = await useDocuments.getState().takeRevision(name);
    if (problem !== null) return setOutcome({ trouble: { ok: false, problem, text: null } });
    setOutcome({ words: `Kept as “${name.trim()}”.` });
    setKept(kept + 1);
    setChosen(null);
    reload();
  };
  const putBack = async (removed: StoredRevision) => {
    const problem = await useDocuments.getState().putBackRevision(removed);
    setOutcome(problem === null ? {} : { trouble: { ok: false, problem, text: null } });
    setChosen(removed.head.id);
    reload();
  };

  return (
    <>
      {isUnavailable ? null : (
        <NameForm
          key={kept}
          label="Keep this state as"
          hasFocus={kept > 0}
          start=""
          button="Keep"
          onName={(name) => void keep(name)}
        />
      )}
      <div className={styles.outcome} role="status">
        {outcome.words ? <p>{outcome.words}</p> : null}
        {outcome.removed ? <Removed removed={outcome.removed} onUndo={putBack} /> : null}
        {outcome.trouble ? <Trouble trouble={outcome.trouble} /> : null}
        {revisions === null ? <p className="quiet">Reading what was kept…</p> : null}
      </div>
      {revisions?.length === 0 && !isUnavailable ? (
        <p className={styles.none}>
          None yet. Keep one under a name, or continue: after ten minutes of work the first is kept by itself.
        </p>
      ) : null}
      <Accordion.Root
        type="single"
        collapsible
        className={styles.days}
        value={chosen ?? revisions?.[0]?.id ?? ""}
        onValueChange={setChosen}
      >
        {byDay(revisions ?? [], Date.now()).map(({ words, revisions: own }) => (
          <section key={words}>
            <h3>{words}</h3>
            <ul className="design-list">
              {own.map((head) => (
                <RevisionItem
                  key={head.id}
                  head={head}
                  onTrouble={(trouble) => setOutcome(trouble ? { trouble } : {})}
                  onRenamed={() => {
                    setOutcome({});
                    reload();
                  }}
                  onRemoved={(removed) => {
                    setOutcome(removed ? { removed } : {});
                    reload();
                  }}
                />
              ))}
            </ul>
          </section>
        ))}
      </Accordion.Root>
    </>
  );
}

type RemovedProps = {
  readonly removed: StoredRevision;
  readonly onUndo: (removed: StoredRevision) => Promise<void>;
};

function Removed({ removed, onUndo }: RemovedProps) {
  const { name } = removed.head;
  return (
    <p className="undo-bar">
      {name === undefined ? "Deleted a revision kept by itself." : `Deleted “${name}”.`}
      <button
        type="button"
        className="button"
        // biome-ignore lint/a11y/noAutofocus: the button that had the focus has gone with its row.
        autoFocus
        onClick={() => void onUndo(removed)}
      >
        Undo
      </button>
    </p>
  );
}

/** What lies there can be taken along, also where it cannot be read. */
function Trouble({ trouble: { problem, text } }: { readonly trouble: Unreadable }) {
  const { title } = useDocuments.getState().list.find(({ id }) => id === useDocuments.getState().current) ?? {
    title: "",
  };
  return (
    <>
      <p className="field-problem">{problem}</p>
      {text === null ? null : (
        <button type="button" className="button" onClick={() => download(text, `${fileName(title)}.json`)}>
          <Download size={16} aria-hidden /> Download what is there
        </button>
      )}
    </>
  );
}
