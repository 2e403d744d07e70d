import { ChevronDown, Eye, GitCompareArrows, History, Pencil, Trash2 } from "lucide-react";
import { Accordion } from "radix-ui";
import { useRef, useState } from "react";
import type { RevisionHead, StoredRevision } from "../../../store/documents/documentStorage.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { counted } from "../../kit/format.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { NameForm } from "../../kit/NameForm.tsx";
import { compareRevision, lookAtRevision, restoreRevision, type Unreadable } from "./actions.ts";
import { clockWords, revisionName } from "./days.ts";
import styles from "./Revisions.module.css";

type Props = {
  readonly head: RevisionHead;
  /** null: what was wrong before is over. */
  readonly onTrouble: (trouble: Unreadable | null) => void;
  readonly onRenamed: () => void;
  readonly onRemoved: (removed: StoredRevision | null) => void;
};

/** One revision: its name and time, and, folded out, what can be done with it. */
export function RevisionItem({ head, onTrouble, onRenamed, onRemoved }: Props) {
  const [isRenaming, setRenaming] = useState(false);
  const title = useRef<HTMLButtonElement>(null);
  const name = revisionName(head);
  const sentence = (problem: string | null) =>
    onTrouble(problem === null ? null : { ok: false, problem, text: null });
  const endRenaming = () => {
    setRenaming(false);
    title.current?.focus();
  };
  return (
    <Accordion.Item value={head.id} asChild>
      <li className={styles.revision}>
        <Accordion.Header asChild>
          <h4>
            <Accordion.Trigger ref={title} className="design-open">
              <strong>{name}</strong>
              <span className="quiet small">
                {clockWords(head.when)} · {counted(head.parts, "part")}
              </span>
              <ChevronDown size={16} aria-hidden />
            </Accordion.Trigger>
          </h4>
        </Accordion.Header>
        <Accordion.Content className={styles.actions}>
          {isRenaming ? (
            <NameForm
              label={`New name of “${name}”`}
              isUnseen
              hasFocus
              start={head.name ?? ""}
              button="Rename"
              onName={async (next) => {
                const problem = await useDocuments.getState().nameRevision(head.id, next);
                if (problem !== null) return sentence(problem);
                endRenaming();
                onRenamed();
              }}
              onGiveUp={endRenaming}
            />
          ) : (
            <>
              <button
                type="button"
                className="button"
                onClick={async () => onTrouble(await lookAtRevision(head))}
              >
                <Eye size={16} aria-hidden /> Look at it
              </button>
              <button
                type="button"
                className="button"
                onClick={async () => onTrouble(await compareRevision(head))}
              >
                <GitCompareArrows size={16} aria-hidden /> Compare with now
              </button>
              <button
                type="button"
                className="button"
                onClick={async () => sentence(await restoreRevision(head))}
              >
                <History size={16} aria-hidden /> Restore
              </button>
              <span className="spring" />
              <IconButton icon={Pencil} name={`Rename “${name}”`} onPress={() => setRenaming(true)} />
              <IconButton
                icon={Trash2}
                name={`Delete “${name}”`}
                onPress={async () => onRemoved(await useDocuments.getState().removeRevision(head.id))}
              />
            </>
          )}
        </Accordion.Content>
      </li>
    </Accordion.Item>
  );
}
