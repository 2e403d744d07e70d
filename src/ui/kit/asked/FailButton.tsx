import { Unplug } from "lucide-react";
import { useApp } from "../../../store/app.ts";
import { askWhatFails, type Subject } from "./whatFails.ts";

/** At a part or wire: what if this one fails? Not in a preview, which may be of a fault itself. */
export function FailButton({ subject }: { readonly subject: Subject }) {
  const isPreview = useApp((s) => s.preview !== null);
  return (
    <button type="button" className="button" disabled={isPreview} onClick={() => askWhatFails(subject)}>
      <Unplug size={16} aria-hidden /> What if this one fails?
    </button>
  );
}
