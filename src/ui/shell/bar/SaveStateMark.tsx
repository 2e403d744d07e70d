import { Check, CircleAlert, CircleDashed, LoaderCircle, type LucideIcon } from "lucide-react";
import { useDocuments } from "../../../store/documents/documents.ts";

type Look = { readonly icon: LucideIcon | null; readonly words: string; readonly isBad?: boolean };

/** Whether the work is safe; in words where there is room for them, and always for a screen reader. */
export function SaveStateMark({ hasWords }: { readonly hasWords: boolean }) {
  const state = useDocuments((s) => s.state);
  const isOwn = useDocuments((s) => s.current !== null);
  const { icon, words, isBad } = look(state, isOwn);
  const Icon = icon ?? (hasWords ? null : CircleDashed);
  return (
    <span
      className={isBad ? "save-state bad" : "save-state"}
      role="status"
      aria-live="off"
      title={hasWords ? undefined : words}
    >
      {Icon ? <Icon size={15} aria-hidden /> : null}
      <span className={hasWords ? undefined : "unseen"}>{words}</span>
    </span>
  );
}

function look(state: ReturnType<typeof useDocuments.getState>["state"], isOwn: boolean): Look {
  if (state === "unavailable") return { icon: CircleAlert, words: "Not saved", isBad: true };
  if (state !== "saved") return { icon: LoaderCircle, words: "Saving…" };
  return isOwn ? { icon: Check, words: "Saved" } : { icon: null, words: "Not changed yet" };
}
