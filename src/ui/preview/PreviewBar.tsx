import { Check, Eye, X } from "lucide-react";
import { useApp } from "../../store/app.ts";
import "./preview.css";

/** Over the canvas while another design than the document is shown: what it is, and the two ways on. */
export function PreviewBar() {
  const preview = useApp((s) => s.preview);
  if (!preview) return null;
  const { closePreview, applyPreview } = useApp.getState();
  return (
    <section className="preview-bar" aria-label="Preview">
      <p role="status">
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
