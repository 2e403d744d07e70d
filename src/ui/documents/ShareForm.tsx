import { Check, Copy, Download } from "lucide-react";
import { useEffect, useState } from "react";
import { COMFORTABLE_LINK_LENGTH, encodeLink } from "../../design/link.ts";
import { useApp } from "../../store/app.ts";
import { linkAddress } from "../start.ts";
import { downloadDesign } from "./actions.ts";
import "./documents.css";

/** The design as a link, to copy; and as a file where the link grows too long. */
export function ShareForm() {
  const design = useApp((s) => s.design);
  const [link, setLink] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [copied, setCopied] = useState(false);
  useEffect(() => {
    let isWanted = true;
    encodeLink(design).then(
      (fragment) => {
        if (isWanted) setLink(linkAddress(window.location.href, fragment));
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
  const isLong = link !== null && link.length > COMFORTABLE_LINK_LENGTH;
  return (
    <div className="share">
      <p>
        The link holds the design itself, packed into the address. Nothing is sent to a server: whoever has
        the link has the design as it is now, and opens it as a copy of their own.
      </p>
      {isFile ? (
        <p className="long">
          This page was opened from a file. The link leads to that file on this device, and names its folders;
          on other devices it finds nothing. To pass the design on, take the file of the design. Whoever has
          Downlead at another address can also put the part from “#” behind that address.
        </p>
      ) : null}
      <label>
        <span className="unseen">Link to this design</span>
        <textarea
          className="field-input"
          readOnly
          rows={4}
          value={link ?? "Packing…"}
          onFocus={(event) => event.currentTarget.select()}
        />
      </label>
      <p className="quiet small" role="status">
        {link === null ? "" : `${link.length} characters. `}
        {copied ? "Copied." : ""}
      </p>
      {isLong ? (
        <p className="long">
          Mail and chat programs cut addresses longer than about {COMFORTABLE_LINK_LENGTH} characters. Better
          pass this design on as a file.
        </p>
      ) : null}
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      <div className="button-row">
        <button
          type="button"
          className={isLong || isFile ? "button" : "button main"}
          disabled={link === null}
          onClick={copy}
        >
          {copied ? <Check size={16} aria-hidden /> : <Copy size={16} aria-hidden />} Copy the link
        </button>
        <button
          type="button"
          className={isLong || isFile ? "button main" : "button"}
          onClick={() => downloadDesign()}
        >
          <Download size={16} aria-hidden /> Download the file
        </button>
      </div>
    </div>
  );
}
