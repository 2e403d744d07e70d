import { Info } from "lucide-react";
import { Popover } from "radix-ui";
import { useApp } from "../../../store/app.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import styles from "./TopBar.module.css";

/**
 * The one line that an example teaches, as long as there is room, and in full at a press. Once the example is
 * changed it may no longer be true.
 */
export function Lesson({ hasWords }: { readonly hasWords: boolean }) {
  const lesson = useApp((s) => s.design.lesson);
  const isOwn = useDocuments((s) => s.current !== null);
  if (!lesson || isOwn) return <span className="spring" />;
  return (
    <Popover.Root>
      {hasWords ? null : <span className="spring" />}
      <Popover.Trigger asChild>
        <button
          type="button"
          className={hasWords ? styles.lesson : "button icon bare"}
          aria-label={hasWords ? undefined : "What this example shows"}
          title={lesson}
        >
          <Info size={16} aria-hidden />
          {hasWords ? <span>{lesson}</span> : null}
        </button>
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          className={`menu ${styles.lessonFull}`}
          sideOffset={4}
          collisionPadding={8}
          aria-label="What this example shows"
        >
          {lesson}
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
