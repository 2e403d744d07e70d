/** Selecting from a pane: brings the thing into view on the canvas and leaves the pane as it is. */
import { type Selection, useApp } from "../../store/app.ts";
import { showPane } from "../kit/panes.ts";

/** The last selection made from inside a pane, so that the shell doesn't turn away from that pane. */
let fromPane: Selection | null = null;

export function selectFromPane(target: Partial<Selection>, options?: { readonly frame?: boolean }): void {
  const { select, frame } = useApp.getState();
  select(target);
  fromPane = useApp.getState().selection;
  if (options?.frame !== false) frame(target);
}

export function wasSelectedFromPane(selection: Selection): boolean {
  return selection === fromPane;
}

/** Opens the values of a part from a list, without moving the canvas. */
export function openPart(part: string): void {
  selectFromPane({ parts: [part] }, { frame: false });
  showPane("part");
}
