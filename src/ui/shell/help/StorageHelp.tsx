import { useDocuments } from "../../../store/documents/documents.ts";
import { persistenceWords } from "../../../store/documents/persistence.ts";
import { openDialog } from "../../kit/panes.ts";

/** Where a design lies while one works on it, what can be had back, and what can be lost. */
export function StorageHelp() {
  const persisted = useDocuments((s) => s.persisted);
  return (
    <section>
      <h3>Where your work is kept</h3>
      <ul>
        <li>
          Every change is stored in this browser at once. There is nothing to press, and nothing leaves your
          device.
        </li>
        <li>Undo and redo lead back and forth through your changes, even after the page was closed.</li>
        <li>
          Revisions are earlier states of a design. Keep one under a name before a large change; others are
          kept by themselves. You can look at each, compare it with now, and restore it.
        </li>
        <li>
          Changes made to one design in two windows are combined, part by part. Where both change the same
          value, one of them continues as a copy.
        </li>
        <li>{persistenceWords(persisted)}</li>
        <li>
          Clearing the browser’s data for this page deletes the designs too. A private window forgets them
          when it is closed.
        </li>
        <li>
          “Download as a file” in the design menu gives you a copy that no browser can clear. “Download
          everything” holds all designs with their revisions, prices and practice. “Restore from a download…”
          brings them back.
        </li>
      </ul>
      <p>
        <button type="button" className="button" onClick={() => openDialog("revisions")}>
          Show the revisions of this design
        </button>
      </p>
    </section>
  );
}
