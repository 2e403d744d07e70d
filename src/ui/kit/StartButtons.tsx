import { openDialog, showPane } from "./panes.ts";

/** Where there is nothing yet: the two ways to begin. */
export function StartButtons() {
  return (
    <div className="button-row">
      <button type="button" className="button main" onClick={() => openDialog("designs")}>
        Open an example
      </button>
      <button type="button" className="button" onClick={() => showPane("tray")}>
        Show parts
      </button>
    </div>
  );
}
