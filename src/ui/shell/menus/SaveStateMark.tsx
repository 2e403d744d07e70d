import { Check, CircleAlert, LoaderCircle } from "lucide-react";
import { useDocuments } from "../../../store/documents/documents.ts";

/** Whether the work is safe; changes with every edit, so it is there to be looked up and not read out. */
export function SaveStateMark() {
  const state = useDocuments((s) => s.state);
  const current = useDocuments((s) => s.current);
  if (state === "unavailable") {
    return (
      <span className="save-state bad" role="status" aria-live="off">
        <CircleAlert size={15} aria-hidden /> Not saved
      </span>
    );
  }
  if (state !== "saved") {
    return (
      <span className="save-state" role="status" aria-live="off">
        <LoaderCircle size={15} aria-hidden /> Saving…
      </span>
    );
  }
  return (
    <span className="save-state" role="status" aria-live="off">
      {current === null ? (
        "Not changed yet"
      ) : (
        <>
          <Check size={15} aria-hidden /> Saved
        </>
      )}
    </span>
  );
}
