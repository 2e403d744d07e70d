import { X } from "lucide-react";
import { useEffect } from "react";
import { type Notice, useApp } from "../../../store/app.ts";
import { IconButton } from "../../kit/IconButton.tsx";

/** Long enough to read a sentence and reach for its button [ms]; errors stay until dismissed. */
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
  const takeBack = notice.takeBack ?? (notice.undoable ? undo : undefined);
  useEffect(() => {
    if (tone === "error") return;
    const timer = setTimeout(() => useApp.getState().dismiss(id), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [id, tone]);
  return (
    <div className={`notice ${tone}`}>
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
