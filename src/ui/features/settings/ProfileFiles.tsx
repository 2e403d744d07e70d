import { Download, FileUp } from "lucide-react";
import { useState } from "react";
import { takeProfileFile, writeProfileFile } from "../../../design/profileFile.ts";
import { settingsOf } from "../../../design/settings.ts";
import { useApp } from "../../../store/app.ts";
import { download, fileName } from "../../kit/download.ts";
import { pickTextFile } from "../../kit/pickTextFile.ts";
import styles from "./Settings.module.css";

/** Limits of one's own from a file and into one; what was read can be undone like every change. */
export function ProfileFiles() {
  const settings = useApp((s) => settingsOf(s.design));
  const [said, setSaid] = useState<{ readonly words: string; readonly isProblem: boolean } | null>(null);
  const read = async () => {
    const text = await pickTextFile();
    if (text === null) return;
    const { design, change } = useApp.getState();
    const edit = takeProfileFile(design, text);
    if (edit.ok) change(edit);
    setSaid(
      edit.ok
        ? { words: "The limits of the file are in use now; Undo brings the former back.", isProblem: false }
        : { words: edit.reason, isProblem: true },
    );
  };
  return (
    <div className={styles.files}>
      {settings.limits === "own" ? (
        <button
          type="button"
          className="button"
          onClick={() =>
            download(writeProfileFile(settings), `${fileName(settings.ownName || "my own limits")}.json`)
          }
        >
          <Download size={16} aria-hidden /> Download my limits
        </button>
      ) : null}
      <button type="button" className="button" onClick={() => void read()}>
        <FileUp size={16} aria-hidden /> Read limits from a file…
      </button>
      <div role="status">
        {said ? <p className={said.isProblem ? "field-problem" : "small"}>{said.words}</p> : null}
      </div>
    </div>
  );
}
