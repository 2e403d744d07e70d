import { Check, CircleAlert, LoaderCircle } from "lucide-react";
import { useDocuments } from "../../../store/documents/documents.ts";

/** Whether the work is safe. */
export function SaveStateMark() {
  const state = useDocuments((s) => s.state);
  const current = useDocuments((s) => s.current);
  if (state === "unavailable") {
    return (
      <span className="save-state bad" role="status">
        <CircleAlert size={15} aria-hidden /> Not saved
      </span>
    );
  }
  if (state !== "saved") {
    return (
      <span className="save-state" role="status">
        <LoaderCircle size={15} aria-hidden /> Saving…
      </span>
    );
  }
  return (
    <span className="save-state" role="status">
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
