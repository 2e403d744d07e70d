import { X } from "lucide-react";
import { useEffect, useState } from "react";
import { type Notice, useApp } from "../../../store/app.ts";
import { IconButton } from "../../kit/IconButton.tsx";

/**
 * Long enough to read a sentence and reach for its button [ms]; counted anew when pointer and focus have left it. Errors
 * stay until dismissed.
 */
const SHOWN_MS = 8000;

/** Short messages over the canvas; the announcer reads them out. */
export function Notices() {
  const notices = useApp((s) => s.notices);
  return (
    <section className="notices" aria-label="Messages">
      {notices.map((notice) => (
        <NoticeItem key={notice.id} notice={notice} />
      ))}
    </section>
  );
}

function NoticeItem({ notice }: { readonly notice: Notice }) {
  const { dismiss, undo } = useApp.getState();
  const { id, tone } = notice;
  const isLastChange = useApp((s) => s.design === notice.design);
  const takeBack = notice.takeBack ?? (notice.undoable && isLastChange ? undo : undefined);
  const [isHeld, setHeld] = useState(false);
  useEffect(() => {
    if (tone === "error" || isHeld) return;
    const timer = setTimeout(() => useApp.getState().dismiss(id), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [id, tone, isHeld]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it is watched, so that it stays while somebody reads it, not pressed.
    <div
      className={`notice ${tone}`}
      onPointerEnter={() => setHeld(true)}
      onPointerLeave={() => setHeld(false)}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      <span>{notice.text}</span>
      {takeBack ? (
        <button
          type="button"
          className="button"
          onClick={() => {
            takeBack();
            dismiss(id);
          }}
        >
          Undo
        </button>
      ) : null}
      <IconButton icon={X} name="Dismiss this message" onPress={() => dismiss(id)} />
    </div>
  );
}
