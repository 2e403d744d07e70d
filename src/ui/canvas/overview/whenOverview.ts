/** When the overview takes the place of the drawing, and when it does not. */
import type { Design } from "../../../design/design.ts";
import { boxesOf } from "../boxes.ts";
import { boundsOf, type Size } from "../layout.ts";
import { fittingView } from "../viewMath.ts";
import { LEAST_DRAWING_ZOOM, LEAST_PANE, LEAST_SCALE } from "./sizes.ts";
import { placesIn, skeletonOf } from "./skeleton.ts";

/** Whether there is anything to give an overview of, and room for it. */
export function hasOverview(design: Design, pane: Size): boolean {
  const hasRoom = pane.width >= LEAST_PANE.width && pane.height >= LEAST_PANE.height;
  return hasRoom && placesIn(skeletonOf(design)).length > 0;
}

/** The whole of a design is better seen in the overview than as cards, where these could not be read. */
export function opensAsOverview(design: Design, pane: Size): boolean {
  return wholeZoom(design, pane) < LEAST_SCALE && hasOverview(design, pane);
}

/** Whether zooming out to here leads from the drawing to the overview. */
export function leavesDrawing(design: Design, pane: Size, zoom: number): boolean {
  const whole = wholeZoom(design, pane);
  const least = whole < LEAST_SCALE ? Math.max(whole, LEAST_DRAWING_ZOOM) : LEAST_DRAWING_ZOOM;
  return zoom < least && hasOverview(design, pane);
}

function wholeZoom(design: Design, pane: Size): number {
  const bounds = boundsOf(boxesOf(design));
  return bounds ? fittingView(bounds, pane).zoom : 1;
}
