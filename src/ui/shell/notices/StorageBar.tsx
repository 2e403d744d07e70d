import { Download, X } from "lucide-react";
import { useEffect } from "react";
import { announce } from "../../../store/announcements.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { downloadDesign } from "../../features/documents/actions.ts";
import { IconButton } from "../../kit/IconButton.tsx";

/** Says when nothing can be stored, or what happened at storing, and offers the file. */
export function StorageBar() {
  const state = useDocuments((s) => s.state);
  const reason = useDocuments((s) => s.reason);
  const notice = useDocuments((s) => s.notice);
  useEffect(() => announce(state === "unavailable" ? (reason ?? "") : ""), [state, reason]);
  useEffect(() => announce(notice ?? ""), [notice]);
  return (
    <div>
      {state === "unavailable" ? (
        <div className="message-bar">
          <span>{reason}</span>
          <button type="button" className="button" onClick={() => downloadDesign()}>
            <Download size={16} aria-hidden /> Download the file
          </button>
        </div>
      ) : null}
      {notice ? (
        <div className="message-bar">
          <span>{notice}</span>
          <IconButton
            icon={X}
            name="Dismiss this message"
            onPress={() => useDocuments.getState().dismissNotice()}
          />
        </div>
      ) : null}
    </div>
  );
}
