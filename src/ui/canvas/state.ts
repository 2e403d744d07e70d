/** What the canvas knows beside the design: how near one looks, what is being dragged where. */
import { create } from "zustand";
import type { Design, PortRef } from "../../design/design.ts";
import { joinTargets } from "../../design/edits/join.ts";

/**
 * How much there is to see. "plan": too many parts for cards, the whole is one drawing.
 * "small": cards with a large name, and strips as shapes alone. "mid": large names and tags.
 * "near": everything. "close": frequencies too, and a strip behind each run of cable.
 */
export type Detail = "plan" | "small" | "mid" | "near" | "close";

/** More cards, or more strips, than this at once make moving about slow (measured). */
export const MOST_CARDS = 250;
export const MOST_STRIPS = 250;
/** Least zoom of each level: its type is never below 10 px on the screen. */
const ZOOMS = { small: 0.42, mid: 0.66, near: 0.88, close: 1.6 } as const;

export function detailFor(options: {
  readonly zoom: number;
  readonly partsInView: number;
  readonly wiresInView: number;
}): Detail {
  const { zoom, partsInView, wiresInView } = options;
  if (partsInView > MOST_CARDS || wiresInView > MOST_STRIPS || zoom < ZOOMS.small) return "plan";
  return detailAt(zoom);
}

/** What cards show at a zoom, if there are to be cards. */
export function detailAt(zoom: number): Exclude<Detail, "plan"> {
  if (zoom < ZOOMS.mid) return "small";
  if (zoom < ZOOMS.near) return "mid";
  return zoom < ZOOMS.close ? "near" : "close";
}

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
