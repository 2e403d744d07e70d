/**
 * What others may ask of the canvas that is on screen: commands, tray and dialogs reach it through here
 * without being its children.
 */
import type { Box, Point } from "./layout.ts";

export type CanvasView = {
  readonly fit: () => void;
  readonly zoomBy: (factor: number) => void;
  /** The drawing at parts of the overview, near enough to read; none: all of it, as far as cards can be read. */
  readonly enter: (parts: readonly string[]) => void;
  readonly showOverview: () => void;
  /** Out of the overview to parts that stand in the drawing alone; whoever is there already stays. */
  readonly seen: (parts: readonly string[]) => void;
  /** Takes the first look at a design that covers this box; null: at an empty one. */
  readonly open: (box: Box | null) => void;
  readonly show: (box: Box) => void;
  /** Shows the box whole, unless its parts would be too small to read then. */
  readonly showIfReadable: (box: Box) => void;
  /** Moves just so far that the box is in view, as near as before. */
  readonly nudge: (box: Box) => void;
  /** From a place in the window to a place on the canvas. */
  readonly toCanvas: (client: Point) => Point;
  readonly toWindow: (at: Point) => Point;
  /** The place on the canvas in the middle of what is seen. */
  readonly centre: () => Point;
  /** Whether a place in the window lies over the canvas. */
  readonly covers: (client: Point) => boolean;
  readonly wireUnder: (client: Point) => string | null;
};

let current: CanvasView | null = null;

export function canvasView(): CanvasView | null {
  return current;
}

export function attachView(view: CanvasView): () => void {
  current = view;
  return () => {
    if (current === view) current = null;
  };
}
