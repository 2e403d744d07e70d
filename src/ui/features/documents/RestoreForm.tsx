import { FolderInput } from "lucide-react";
import { openDialog } from "../../kit/panes.ts";
import styles from "./Documents.module.css";
import { inOneLine, restoreGains, restorePending, usePendingRestore } from "./downloadEverything.ts";

/** What a download would add, before it is added. */
export function RestoreForm() {
  const offer = usePendingRestore((s) => s.offer);
  if (!offer) return null;
  const words = restoreGains(offer);
  return (
    <div className={styles.restore}>
      {offer.made > 0 ? <p>This download was made on {new Date(offer.made).toLocaleString()}.</p> : null}
      {words.length === 0 ? (
        <p>There is nothing in it that could be added.</p>
      ) : (
        <p>
          It adds: <strong>{inOneLine(words)}</strong>.
        </p>
      )}
      <p className="quiet">
        Nothing here is overwritten. Designs are added as new ones, even where one has the same title. Your
        own prices and practice stay.
      </p>
      {offer.keptOut.length > 0 ? (
        <section aria-labelledby="kept-out">
          <h3 id="kept-out">Not added, or only in part</h3>
          <ul className={`${styles.keptOut} small`}>
            {offer.keptOut.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      ) : null}
      <div className="button-row">
        <button
          type="button"
          className="button main"
          disabled={words.length === 0}
          onClick={() => void restorePending()}
        >
          <FolderInput size={16} aria-hidden /> Add to this browser
        </button>
        <button type="button" className="button" onClick={() => openDialog(null)}>
          Cancel
        </button>
      </div>
    </div>
  );
}
