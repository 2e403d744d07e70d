/**
 * Sizes of part cards and places of their ports, known before anything is drawn: the canvas needs them
 * to cull, to route wires and to arrange, and measuring a thousand cards in the browser is what is slow.
 *
 * Every port lies 4 px off the 8 px grid, whatever the card, so that two parts on the grid
 * can always be brought onto one straight wire.
 */
import type { Port } from "../../parts/contract.ts";

export const GRID_PX = 8;
export const CARD_WIDTH_PX = 168;
/** Card with at most one port on each side: the port sits in the middle of its edge. */
const SLIM_HEIGHT_PX = 56;
const HEADER_PX = 48;
/** Room for one port, and with it for one strip beside it. */
export const PORT_PITCH_PX = 40;
/** From left edge to left edge of neighbouring columns: a card, a strip and the bends of a wire. */
export const COLUMN_PITCH_PX = 376;

export type Size = { readonly width: number; readonly height: number };
export type Point = { readonly x: number; readonly y: number };
export type Box = Point & Size;

const portsOn = (ports: readonly Port[], side: Port["side"]) => ports.filter((p) => p.side === side);

function rows(ports: readonly Port[]): number {
  return Math.max(portsOn(ports, "in").length, portsOn(ports, "out").length);
}

export function cardSize(ports: readonly Port[]): Size {
  const n = rows(ports);
  return { width: CARD_WIDTH_PX, height: n <= 1 ? SLIM_HEIGHT_PX : HEADER_PX + n * PORT_PITCH_PX };
}

/** True for a card that shows its ports in rows under the header rather than at its middle. */
export function hasRows(ports: readonly Port[]): boolean {
  return rows(ports) > 1;
}

/** Where each port lies, from the top left corner of the card. */
export function portPlaces(ports: readonly Port[]): ReadonlyMap<string, Point> {
  const places = new Map<string, Point>();
  const inRows = hasRows(ports);
  for (const side of ["in", "out"] as const) {
    portsOn(ports, side).forEach((port, i) => {
      places.set(port.id, {
        x: side === "in" ? 0 : CARD_WIDTH_PX,
        y: inRows ? HEADER_PX + PORT_PITCH_PX * (i + 0.5) : SLIM_HEIGHT_PX / 2,
      });
    });
  }
  return places;
}

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
