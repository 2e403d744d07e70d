import { Eye, EyeOff } from "lucide-react";
import type { Design } from "../../../design/design.ts";
import { useApp } from "../../../store/app.ts";
import "./tried.css";

type Props = {
  /** What is tried, in one line. */
  readonly title: string;
  readonly design: Design;
  /** Where there are several such buttons. */
  readonly name?: string;
};

/** Shows a change that was tried on the canvas, or puts it away again. */
export function PreviewChange({ title, design, name }: Props) {
  const isShown = useIsPreviewed(design);
  return (
    <button
      type="button"
      className="button"
      aria-pressed={isShown}
      aria-label={name}
      onClick={() => togglePreview(title, design)}
    >
      {isShown ? <EyeOff size={16} aria-hidden /> : <Eye size={16} aria-hidden />} Preview
    </button>
  );
}

/** Whether it is what the canvas shows in the place of the document. */
export function useIsPreviewed(design: Design | undefined): boolean {
  return useApp((s) => design !== undefined && s.preview?.design === design);
}

function togglePreview(title: string, design: Design): void {
  const { preview, showPreview, closePreview, frame } = useApp.getState();
  if (preview?.design === design) {
    closePreview();
    return;
  }
  showPreview({ title, design, canApply: true });
  const shown = useApp.getState().preview;
  if (shown) frame({ parts: [...shown.added, ...shown.changed] });
}
