/** Which pane stands in the sheet of a phone: those of the table, and a sheet for what has no button of its own. */
import { type SheetPane, showPane, usePanes } from "../kit/panes.ts";

export type PhonePane = SheetPane | "more";

/** Panes with a button of their own. */
export const TABBED: ReadonlySet<PhonePane> = new Set<PhonePane>(["tray", "verdict", "part"]);

export function usePhonePane(): PhonePane | null {
  const pane = usePanes((s) => s.sheet);
  const isMoreOpen = usePanes((s) => s.isMoreOpen);
  return pane ?? (isMoreOpen ? "more" : null);
}

/** Opens a pane, or closes it where it is the one that is open. */
export function togglePhonePane(pane: PhonePane | null, open: PhonePane | null): void {
  const next = pane === open ? null : pane;
  if (next !== null && next !== "more") showPane(next);
  else usePanes.setState({ sheet: null });
  usePanes.setState({ isMoreOpen: next === "more" });
}

/** The focus goes to the button that opens it again. */
export function closePhonePane(): void {
  togglePhonePane(null, null);
  document.querySelector<HTMLElement>('[data-last-pane="true"]')?.focus();
}
