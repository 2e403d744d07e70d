/** Where one looks: the arithmetic of fitting and of what is in view. */
import { type Design, wireId } from "../../design/design.ts";
import { boxesOf, boxOf } from "./boxes.ts";
import { LEVEL_ZOOMS } from "./detail.ts";
import { type Box, boundsOf, overlaps, type Size } from "./layout.ts";
import { LEAST_PANE } from "./overview/sizes.ts";

/** Canvas to window: window = canvas · zoom + (x, y). */
export type Viewport = { readonly x: number; readonly y: number; readonly zoom: number };

export const LEAST_ZOOM = 0.04;
export const MOST_ZOOM = 4;

/** A small design is not blown up beyond this. */
const MOST_FIT_ZOOM = 1.6;

/** Shows a box in the middle, with a margin, no nearer than `mostZoom`. */
export function fittingView(box: Box, pane: Size, mostZoom = MOST_FIT_ZOOM): Viewport {
  const margin = FIT_MARGIN_PX;
  const zoom = Math.min(
    mostZoom,
    Math.max(
      LEAST_ZOOM,
      Math.min(
        (pane.width - 2 * margin) / Math.max(box.width, 1),
        (pane.height - 2 * margin) / Math.max(box.height, 1),
      ),
    ),
  );
  return {
    x: pane.width / 2 - (box.x + box.width / 2) * zoom,
    y: pane.height / 2 - (box.y + box.height / 2) * zoom,
    zoom,
  };
}

/** Room for the marks on the corners of cards, around what is shown whole [px]. */
const FIT_MARGIN_PX = 14;

/** Larger designs open whole: nobody reads them card by card. */
const MOST_READ_PARTS = 250;

/** The first look at a drawing: all of it while that can be read, else its beginning on the roof side. */
function openingView(box: Box, pane: Size, parts: number): Viewport {
  const whole = fittingView(box, pane);
  // Nearer by no more than it takes to read the strips.
  const zoom = LEVEL_ZOOMS.mid;
  if (whole.zoom >= zoom || parts > MOST_READ_PARTS) return whole;
  const start = (from: number, length: number, room: number) =>
    length * zoom <= room - 2 * FIT_MARGIN_PX
      ? room / 2 - (from + length / 2) * zoom
      : FIT_MARGIN_PX - from * zoom;
  return { x: start(box.x, box.width, pane.width), y: start(box.y, box.height, pane.height), zoom };
}

function emptyView(pane: Size): Viewport {
  return { x: pane.width / 4, y: pane.height / 4, zoom: 1 };
}

/** The first look at a design, drawn or still empty. */
export function firstView(design: Design, pane: Size): Viewport {
  const bounds = boundsOf(boxesOf(design));
  return bounds ? openingView(bounds, pane, design.parts.length) : emptyView(pane);
}

/**
 * The first look of the editor. A phone shows all: its chain has what is to be read, and in the drawing one looks for
 * where the red begins and where it ends.
 */
export function editorFirstView(design: Design, pane: Size): Viewport {
  const bounds = boundsOf(boxesOf(design));
  const isPhone = pane.width < LEAST_PANE.width || pane.height < LEAST_PANE.height;
  return bounds && isPhone ? wholeView(bounds, pane) : firstView(design, pane);
}

/** All of a design, clear of the bar that lies over a narrow drawing. */
export function wholeView(box: Box, pane: Size): Viewport {
  const hasBar = pane.width < LEAST_PANE.width;
  return fittingView(box, hasBar ? { ...pane, height: Math.max(1, pane.height - NARROW_BAR_PX) } : pane);
}

/** The bar over the drawing of a phone, and the gap below it. */
const NARROW_BAR_PX = 64;

/** Nearer or farther, with the middle of the pane staying the middle. */
export function zoomedBy({ x, y, zoom }: Viewport, { width, height }: Size, factor: number): Viewport {
  const next = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, zoom * factor));
  const k = next / zoom;
  return { x: width / 2 - (width / 2 - x) * k, y: height / 2 - (height / 2 - y) * k, zoom: next };
}

/** The same view, moved just so far that a box is seen with some room around it; what is too large stays put. */
export function nudgedIntoView(view: Viewport, box: Box, pane: Size, roomPx = 70): Viewport {
  const nudge = (offset: number, from: number, length: number, paneLength: number) => {
    const start = from * view.zoom + offset;
    const end = start + length * view.zoom;
    if (end - start > paneLength - 2 * roomPx) return offset;
    if (start < roomPx) return offset + roomPx - start;
    if (end > paneLength - roomPx) return offset + paneLength - roomPx - end;
    return offset;
  };
  return {
    x: nudge(view.x, box.x, box.width, pane.width),
    y: nudge(view.y, box.y, box.height, pane.height),
    zoom: view.zoom,
  };
}

export function areaInView(view: Viewport, pane: Size): Box {
  return {
    x: -view.x / view.zoom,
    y: -view.y / view.zoom,
    width: pane.width / view.zoom,
    height: pane.height / view.zoom,
  };
}

export function partsInView(design: Design, area: Box): ReadonlySet<string> {
  const boxes = boxesOf(design);
  const seen = (i: number) => {
    const box = boxes[i];
    return box !== undefined && overlaps(box, area);
  };
  return new Set(design.parts.filter((_, i) => seen(i)).map((p) => p.id));
}

export function wiresAt(design: Design, parts: ReadonlySet<string>): number {
  return design.wires.filter((w) => parts.has(w.from[0]) || parts.has(w.to[0])).length;
}

/** What parts and wires cover together; null for nothing. */
export function boxesAround(design: Design, parts: readonly string[], wires: readonly string[]): Box[] {
  const ids = new Set(parts);
  const wanted = new Set(wires);
  for (const wire of design.wires) {
    if (wanted.has(wireId(wire))) ids.add(wire.from[0]).add(wire.to[0]);
  }
  return design.parts.filter((p) => ids.has(p.id)).map((p) => boxOf(design, p));
}
