/** What the canvas knows beside the design: how near one looks, what is being dragged where. */
import { create } from "zustand";
import type { Design, PortRef } from "../../design/design.ts";
import { joinTargets } from "../../design/edits/join.ts";
import type { Detail } from "./detail.ts";
import type { StripDetail } from "./Strip.tsx";

export type CanvasDialog = "join" | "insert";

/** What stands in the pane: the drawing itself, or the whole design at a glance. */
export type Showing = "drawing" | "overview";

type CanvasState = {
  readonly showing: Showing;
  /** The thing of the overview that the Tab key stops at, by part id. */
  readonly item: string | null;
  /** The keyboard was in the drawing when the overview took its place. */
  readonly focusFollows: boolean;
  readonly detail: Detail;
  /** Wire under a part that is being dragged: letting go puts the part into it. */
  readonly dropWire: string | null;
  /** Touch: a drag draws a selection box and a tap adds to the selection. */
  readonly selecting: boolean;
  /** Part or wire under the pointer, or with the focus: its wire shows a strip where it has none docked. */
  readonly near: string | null;
  readonly mapOpen: boolean;
  readonly dialog: CanvasDialog | null;
  readonly guides: { readonly x: number | null; readonly y: number | null };
};

export const NO_GUIDES: CanvasState["guides"] = { x: null, y: null };

export const useCanvas = create<CanvasState>()(() => ({
  showing: "drawing",
  item: null,
  focusFollows: false,
  detail: "near",
  dropWire: null,
  selecting: false,
  near: null,
  mapOpen: false,
  dialog: null,
  guides: NO_GUIDES,
}));

/** What the cards that are drawn show now; over the plan there are a few, as they come back. */
export function useCardDetail(): StripDetail {
  return useCanvas((s) => (s.detail === "plan" ? "small" : s.detail));
}

export function setCanvas(change: Partial<CanvasState>): void {
  const before = useCanvas.getState();
  const keys = Object.keys(change) as (keyof CanvasState)[];
  if (keys.some((key) => before[key] !== change[key])) useCanvas.setState(change);
}

/**
 * Ports that the one being joined could go to, as "part/port". Worked out once for all cards that ask,
 * since they ask in the same breath.
 */
export function joinTargetKeys(design: Design, from: PortRef): ReadonlySet<string> {
  if (lastTargets?.design !== design || lastTargets.from !== from) {
    const targets = new Set(joinTargets(design, from).map(([part, port]) => `${part}/${port}`));
    lastTargets = { design, from, targets };
  }
  return lastTargets.targets;
}

let lastTargets: { design: Design; from: PortRef; targets: ReadonlySet<string> } | null = null;
