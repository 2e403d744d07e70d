import { Check, Eye, X } from "lucide-react";
import { type FocusEvent, useEffect, useRef } from "react";
import { useApp } from "../../../store/app.ts";
import type { Preview } from "../../../store/preview.ts";
import { isElsewhere } from "../../kit/isElsewhere.ts";
import "./preview.css";

/** Over the canvas while another design than the document is shown: what it is, and the two ways on. */
export function PreviewBar() {
  const preview = useApp((s) => s.preview);
  return preview ? <Bar preview={preview} /> : null;
}

function Bar({ preview }: { readonly preview: Preview }) {
  const { closePreview, applyPreview } = useApp.getState();
  const takeFocus = useFocusBack();
  useEscape(closePreview);
  return (
    <section className="preview-bar" aria-label="Preview" tabIndex={-1} onFocus={takeFocus}>
      <p>
        <strong>
          <Eye size={16} aria-hidden /> Preview: nothing is changed yet
        </strong>
        <span>{preview.title}</span>
        {preview.about ? <span className="quiet small">{preview.about}</span> : null}
      </p>
      <div className="button-row">
        {preview.canApply ? (
          <button type="button" className="button main" onClick={applyPreview}>
            <Check size={16} aria-hidden /> Apply
          </button>
        ) : null}
        <button type="button" className="button" onClick={closePreview}>
          <X size={16} aria-hidden /> Close
          <kbd className="preview-key">Esc</kbd>
        </button>
      </div>
    </section>
  );
}

/** As the bar goes, the focus that it had returns to where it came from. */
function useFocusBack(): (event: FocusEvent<HTMLElement>) => void {
  const from = useRef<HTMLElement | null>(null);
  useEffect(
    () => () => {
      if (document.activeElement === document.body) from.current?.focus();
    },
    [],
  );
  return ({ currentTarget, relatedTarget }) => {
    if (relatedTarget instanceof HTMLElement && !currentTarget.contains(relatedTarget))
      from.current = relatedTarget;
  };
}

/** From anywhere on the page: mostly it is a pane that has the focus while one looks at the canvas. */
function useEscape(close: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const target = event.target instanceof Element ? event.target : null;
      if (event.key !== "Escape" || event.defaultPrevented || isElsewhere(target)) return;
      event.preventDefault();
      close();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [close]);
}
