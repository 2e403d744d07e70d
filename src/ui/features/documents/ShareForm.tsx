import { Check, Copy, Download } from "lucide-react";
import { useEffect, useState } from "react";
import { COMFORTABLE_LINK_LENGTH, shareLink } from "../../../design/link.ts";
import { useApp } from "../../../store/app.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { linkAddress } from "../../kit/addressRequest.ts";
import { downloadDesign } from "./actions.ts";
import styles from "./Documents.module.css";

/** The design as a link, to copy; and as a file where the link grows too long. */
export function ShareForm() {
  const design = useApp((s) => s.design);
  const [link, setLink] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [copied, setCopied] = useState(false);
  const [isFull, setFull] = useState(false);
  useEffect(() => {
    let isWanted = true;
    setLink(null);
    setProblem(null);
    shareLink(design).then(
      (packed) => {
        if (!isWanted) return;
        if (packed.ok) setLink(linkAddress(window.location.href, packed.fragment));
        else setProblem(packed.problem);
      },
      () => setProblem("This browser cannot pack the design into a link. Download the file instead."),
    );
    return () => {
      isWanted = false;
    };
  }, [design]);

  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link ?? "");
      setCopied(true);
    } catch {
      setProblem(
        "The browser did not allow copying. Select the address in the field and copy it from there.",
      );
    }
  };
  const isFile = window.location.protocol === "file:";
  // Where no link can be had, or it leads to a file on this disk, the file is the way.
  const isFileBetter = isFile || (link === null ? problem !== null : link.length > COMFORTABLE_LINK_LENGTH);
  const isLong = link !== null && link.length > COMFORTABLE_LINK_LENGTH;
  return (
    <div className={styles.share}>
      <p>
        The link holds the design itself, packed into the address. Nothing is sent to a server. Whoever has
        the link opens the design, as it is now, as a copy of their own.
      </p>
      {isFile ? (
        <p className={styles.long}>
          This page was opened from a file. The link leads to that file on this device and names its folders,
          so on other devices it finds nothing. To pass the design on, download its file. Whoever has Downlead
          at another address can also put the part from “#” behind that address.
        </p>
      ) : null}
      <label>
        <span className="unseen">Link to this design</span>
        <textarea
          className="field-input"
          readOnly
          rows={4}
          value={link ?? (problem === null ? "Packing…" : "No link")}
          onFocus={(event) => event.currentTarget.select()}
        />
      </label>
      <p className="quiet small" role="status">
        {link === null ? "" : `${numeralAsSet(link.length)} characters. `}
        {copied ? "Copied." : ""}
      </p>
      {isLong ? (
        <p className={styles.long}>
          Mail and chat programs cut addresses longer than about {numeralAsSet(COMFORTABLE_LINK_LENGTH)}{" "}
          characters. It is better to pass this design on as a file.
        </p>
      ) : null}
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      <label className={styles.fullFile}>
        <input type="checkbox" checked={isFull} onChange={(event) => setFull(event.target.checked)} />
        <span>
          Write every value, also typical ones
          <span className="quiet small"> (a longer file, which every edition reads)</span>
        </span>
      </label>
      <div className="button-row">
        <button
          type="button"
          className={isFileBetter ? "button" : "button main"}
          disabled={link === null}
          onClick={copy}
        >
          {copied ? <Check size={16} aria-hidden /> : <Copy size={16} aria-hidden />} Copy the link
        </button>
        <button
          type="button"
          className={isFileBetter ? "button main" : "button"}
          onClick={() => downloadDesign(design, { full: isFull })}
        >
          <Download size={16} aria-hidden /> Download the file
        </button>
      </div>
    </div>
  );
}
