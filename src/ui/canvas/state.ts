/** What the canvas knows beside the design: how near one looks, what is being dragged where. */
import { create } from "zustand";
import type { Design, PortRef } from "../../design/design.ts";
import { joinTargets } from "../../design/edits/join.ts";

/**
 * How much there is to see. "plan": too many parts for cards, the whole is one drawing.
 * "far": cards with a name, wires as coloured lines. "small": the same cards, and strips as bars of colour.
 * "mid": strips with large tags. "near": everything. "close": frequencies too.
 */
export type Detail = "plan" | "far" | "small" | "mid" | "near" | "close";

/** Whether cards are shown by their names alone. */
export function isFar(detail: Detail): boolean {
  return detail === "plan" || detail === "far" || detail === "small";
}

/** More cards, or more strips, than this at once make moving about slow (measured). */
export const MOST_CARDS = 250;
export const MOST_STRIPS = 250;
/** Of strips too small to carry tags, a picture needs no more than this to be understood. */
const MOST_SMALL_STRIPS = 120;

export function detailFor(options: {
  readonly zoom: number;
  readonly partsInView: number;
  readonly wiresInView: number;
}): Detail {
  const { zoom, partsInView, wiresInView } = options;
  if (partsInView > MOST_CARDS) return "plan";
  if (wiresInView > MOST_STRIPS) return "far";
  if (zoom < 0.4) return zoom >= 0.2 && wiresInView <= MOST_SMALL_STRIPS ? "small" : "far";
  if (zoom < 0.75) return "mid";
  return zoom < 1.6 ? "near" : "close";
}

export type CanvasDialog = "join" | "insert";

type CanvasState = {
  readonly detail: Detail;
  /** Wire under a part that is being dragged: letting go puts the part into it. */
  readonly dropWire: string | null;
  /** Touch: a drag draws a selection box and a tap adds to the selection. */
  readonly selecting: boolean;
  readonly mapOpen: boolean;
  readonly dialog: CanvasDialog | null;
  readonly guides: { readonly x: number | null; readonly y: number | null };
};

export const NO_GUIDES: CanvasState["guides"] = { x: null, y: null };

export const useCanvas = create<CanvasState>()(() => ({
  detail: "near",
  dropWire: null,
  selecting: false,
  mapOpen: typeof window !== "undefined" && window.innerWidth > 900,
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
