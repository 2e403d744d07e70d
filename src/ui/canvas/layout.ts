/** Grid, boxes and the arithmetic of boxes that the whole canvas shares. */

/**
 * Parts lie on this grid, and every port lies half a step off it, whatever the card: so two parts on the grid can
 * always be brought onto one straight wire.
 */
export const GRID_PX = 8;

export type Size = { readonly width: number; readonly height: number };
export type Point = { readonly x: number; readonly y: number };
export type Box = Point & Size;

/** The smallest box around all of them; null around nothing. */
export function boundsOf(boxes: Iterable<Box>): Box | null {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const b of boxes) {
    left = Math.min(left, b.x);
    top = Math.min(top, b.y);
    right = Math.max(right, b.x + b.width);
    bottom = Math.max(bottom, b.y + b.height);
  }
  return right < left ? null : { x: left, y: top, width: right - left, height: bottom - top };
}

/** Whether all of a box lies in another. */
export function isWithin(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

export function overlaps(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
