import { createPortal } from "react-dom";
import { useAnnouncement } from "../../store/announcements.ts";

/**
 * The one place from which the page speaks of what was done. It stands beside the app from the start and never goes, so
 * that a screen reader knows it, and an open dialog does not hide it.
 */
export function Announcer() {
  const { text, number } = useAnnouncement();
  return createPortal(
    <div className="unseen" role="status" aria-live="polite" aria-label="What was done">
      {/* A new element for each: the same sentence twice is two announcements. */}
      <p key={number}>{text}</p>
    </div>,
    document.body,
  );
}
