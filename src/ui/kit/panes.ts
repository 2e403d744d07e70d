/** Which panes stand open, and how large: view state that belongs to this window, not to the design. */
import { create } from "zustand";
import { persist } from "zustand/middleware";
import type { Family } from "../../parts/contract.ts";
import type { ListedDialog } from "./dialogs.ts";
import { rememberOpener } from "./opener.ts";
import { viewStorage } from "./viewStorage.ts";

export type SidePane = "verdict" | "part" | "chain" | "cures" | "faults";
/** What the bottom sheet of a narrow screen shows. */
export type SheetPane = "tray" | SidePane | "spectrum";
/** What of the parts stands open beside their rail. */
export type TrayShown = Family | "all";

export type PhoneView = "chain" | "overview" | "drawing";

/** What is remembered on this device. Sizes [px]; null: as it is usual in a window of this size. */
type Kept = {
  readonly sideOpen: boolean;
  readonly sideWidth: number | null;
  readonly spectrumHeight: number | null;
};

type Panes = Kept & {
  readonly side: SidePane;
  readonly tray: TrayShown | null;
  readonly spectrumOpen: boolean;
  readonly sheet: SheetPane | null;
  readonly dialog: ListedDialog | null;
  /** What a phone shows in its main view. */
  readonly phoneView: PhoneView;
  /** Receiver or outlet whose chain is shown there; null: the first. */
  readonly chainOf: string | null;
  /** The sheet of a phone with what has no tab of its own. */
  readonly isMoreOpen: boolean;
};

/** A tablet held upright has room for the drawing and, below it, for the verdict. */
function startsUpright(): boolean {
  if (typeof window === "undefined") return false;
  const { innerWidth, innerHeight } = window;
  return innerWidth > 600 && innerWidth <= 900 && innerHeight >= 1000;
}

export const usePanes = create<Panes>()(
  persist(
    (): Panes => ({
      side: "verdict",
      sideOpen: true,
      sideWidth: null,
      tray: null,
      spectrumOpen: false,
      spectrumHeight: null,
      sheet: startsUpright() ? "verdict" : null,
      dialog: null,
      phoneView: "chain",
      chainOf: null,
      isMoreOpen: false,
    }),
    {
      name: "downlead.panes",
      storage: viewStorage<Kept>(),
      partialize: ({ sideOpen, sideWidth, spectrumHeight }) => ({ sideOpen, sideWidth, spectrumHeight }),
      // Whatever was written by hand or by another version counts as nothing.
      merge: (kept, usual) => ({ ...usual, ...readKept(kept) }),
    },
  ),
);

function readKept(kept: unknown): Partial<Kept> {
  if (typeof kept !== "object" || kept === null) return {};
  const { sideOpen, sideWidth, spectrumHeight } = kept as Partial<Record<keyof Kept, unknown>>;
  return {
    ...(typeof sideOpen === "boolean" ? { sideOpen } : {}),
    ...(isSize(sideWidth) ? { sideWidth } : {}),
    ...(isSize(spectrumHeight) ? { spectrumHeight } : {}),
  };
}

function isSize(value: unknown): value is number {
  return typeof value === "number" && Number.isFinite(value) && value > 0;
}

/** Brings a pane into view, whichever layout is on the screen. */
export function showPane(pane: SheetPane): void {
  if (pane === "spectrum") usePanes.setState({ spectrumOpen: true, sheet: pane });
  else if (pane === "tray") usePanes.setState({ tray: "all", sheet: pane });
  else usePanes.setState({ side: pane, sideOpen: true, sheet: pane });
}

export function toggleSheet(pane: SheetPane): void {
  const { sheet } = usePanes.getState();
  if (sheet === pane) usePanes.setState({ sheet: null });
  else showPane(pane);
}

export function showPhoneView(phoneView: PhoneView): void {
  usePanes.setState({ phoneView });
}

/** Chooses whose chain is shown, without turning to it. */
export function choosePlace(chainOf: string): void {
  usePanes.setState({ chainOf });
}

export function showChainOf(chainOf: string): void {
  usePanes.setState({ phoneView: "chain", chainOf });
}

export function openDialog(dialog: ListedDialog | null): void {
  if (dialog) rememberOpener();
  usePanes.setState({ dialog });
}
