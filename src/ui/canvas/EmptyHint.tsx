/** What an empty canvas says. */
import { useApp } from "../../store/app.ts";
import { openDialog } from "../kit/panes.ts";

export function EmptyHint() {
  const isEmpty = useApp((s) => s.evaluation.design.parts.length === 0);
  if (!isEmpty) return null;
  return (
    <div className="empty-hint">
      <h2>Nothing here yet</h2>
      <p>
        Drag a dish or an aerial from the parts onto this canvas, or press one to add it. Then join ports:
        drag from one to the other, or tap both. Every wire shows at once what is on it.
      </p>
      <button type="button" className="button main" onClick={() => openDialog("designs")}>
        Start from an example
      </button>
    </div>
  );
}
