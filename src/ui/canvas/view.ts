/**
 * What others may ask of the canvas that is on screen: commands, tray and dialogs reach it through here
 * without being its children.
 */
import type { Box, Point } from "./layout.ts";

/** What any diagram can be asked for: that of the editor, and the plan of a practice case. */
export type DiagramView = {
  readonly hasParts: () => boolean;
  readonly fit: () => void;
  readonly zoomBy: (factor: number) => void;
  /** Moves just so far that the box is in view, as near as before. */
  readonly nudge: (box: Box) => void;
  /** What is seen now. */
  readonly area: () => Box;
  /** From a place in the window to a place on the canvas. */
  readonly toCanvas: (client: Point) => Point;
  readonly toWindow: (at: Point) => Point;
  /** The place on the canvas in the middle of what is seen. */
  readonly centre: () => Point;
  /** Whether a place in the window lies over the canvas. */
  readonly covers: (client: Point) => boolean;
};

/** What the canvas of the editor can be asked for besides. */
export type CanvasView = DiagramView & {
  /** The drawing at parts of the overview, near enough to read; none: all of it, as far as cards can be read. */
  readonly enter: (parts: readonly string[]) => void;
  readonly showOverview: () => void;
  /** Out of the overview to parts that stand in the drawing alone; whoever is there already stays. */
  readonly seen: (parts: readonly string[]) => void;
  /** Takes the first look at a design that was opened. */
  readonly open: () => void;
  readonly show: (box: Box) => void;
  /** Shows the box whole, unless its parts would be too small to read then. */
  readonly showIfReadable: (box: Box) => void;
  readonly wireUnder: (client: Point) => string | null;
};

let shown: DiagramView | null = null;
let canvas: CanvasView | null = null;

/** Whichever diagram is on the screen. */
export function shownView(): DiagramView | null {
  return shown;
}

/** The canvas of the editor, while that is on the screen. */
export function canvasView(): CanvasView | null {
  return canvas;
}

export function attachDiagram(view: DiagramView): () => void {
  shown = view;
  return () => {
    if (shown === view) shown = null;
  };
}

export function attachCanvas(view: CanvasView): () => void {
  const detach = attachDiagram(view);
  canvas = view;
  return () => {
    detach();
    if (canvas === view) canvas = null;
  };
}
