/** Where one looks: the arithmetic of fitting and of what is in view. */
import { type Design, wireId } from "../../design/design.ts";
import { boxOf, overlaps } from "./boxes.ts";
import type { Box, Size } from "./layout.ts";

/** Canvas to window: window = canvas · zoom + (x, y). */
export type Viewport = { readonly x: number; readonly y: number; readonly zoom: number };

export const LEAST_ZOOM = 0.04;
export const MOST_ZOOM = 4;

/** Shows a box in the middle, with a margin, no nearer than `mostZoom`. */
export function fittingView(box: Box, pane: Size, mostZoom = 1): Viewport {
  const margin = Math.min(64, pane.width * 0.06);
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

/** Least zoom at which a strip can be read with its tags. */
const READABLE_ZOOM = 0.5;

/**
 * The first look at a design: all of it while that can be read, otherwise its beginning on the roof side,
 * and the map for the rest. A design too large to be read part by part is shown whole.
 */
export function openingView(box: Box, pane: Size, parts: number): Viewport {
  const whole = fittingView(box, pane);
  if (whole.zoom >= READABLE_ZOOM || parts > MOST_READ) return whole;
  const zoom = READABLE_ZOOM;
  const margin = 40;
  const fitsDown = box.height * zoom <= pane.height - 2 * margin;
  return {
    x:
      box.width * zoom <= pane.width - 2 * margin
        ? (pane.width - box.width * zoom) / 2 - box.x * zoom
        : margin - box.x * zoom,
    y: fitsDown ? pane.height / 2 - (box.y + box.height / 2) * zoom : margin - box.y * zoom,
    zoom,
  };
}

const MOST_READ = 150;

export function emptyView(pane: Size): Viewport {
  return { x: pane.width / 4, y: pane.height / 4, zoom: 1 };
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
  return new Set(design.parts.filter((p) => overlaps(boxOf(p), area)).map((p) => p.id));
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
  return design.parts.filter((p) => ids.has(p.id)).map(boxOf);
}
