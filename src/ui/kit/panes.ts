/** Which panes stand open: view state that belongs to this window, not to the design. */
import { create } from "zustand";
import type { ListedDialog } from "./dialogs.ts";
import { rememberOpener } from "./opener.ts";

export type SidePane = "verdict" | "part" | "chain" | "cures" | "faults";
/** What the bottom sheet of a narrow screen shows. */
export type SheetPane = "tray" | SidePane | "spectrum";

type Panes = {
  readonly side: SidePane;
  readonly trayOpen: boolean;
  readonly spectrumOpen: boolean;
  /** Height of the spectrum pane [px]. */
  readonly spectrumHeight: number;
  readonly sheet: SheetPane | null;
  readonly dialog: ListedDialog | null;
};

export const SPECTRUM_HEIGHT = { least: 180, usual: 420, most: 720 } as const;

export const usePanes = create<Panes>(() => ({
  side: "verdict",
  trayOpen: window.innerWidth > 1100,
  spectrumOpen: false,
  spectrumHeight: Math.min(SPECTRUM_HEIGHT.usual, Math.round(window.innerHeight * 0.45)),
  sheet: null,
  dialog: null,
}));

/** Brings a pane into view, whichever layout is on the screen. */
export function showPane(pane: SheetPane): void {
  if (pane === "spectrum") usePanes.setState({ spectrumOpen: true, sheet: pane });
  else if (pane === "tray") usePanes.setState({ trayOpen: true, sheet: pane });
  else usePanes.setState({ side: pane, sheet: pane });
}

export function toggleSheet(pane: SheetPane): void {
  const { sheet } = usePanes.getState();
  if (sheet === pane) usePanes.setState({ sheet: null });
  else showPane(pane);
}

export function openDialog(dialog: ListedDialog | null): void {
  if (dialog) rememberOpener();
  usePanes.setState({ dialog });
}

export function setSpectrumHeight(px: number): void {
  const { least, most } = SPECTRUM_HEIGHT;
  usePanes.setState({ spectrumHeight: Math.min(most, Math.max(least, Math.round(px))) });
}
