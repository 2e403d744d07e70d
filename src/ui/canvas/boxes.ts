/** The cards of a design as boxes, kept by identity so that only a move or a new part makes new ones. */
import type { Design, Part } from "../../design/design.ts";
import { portsOf } from "../../design/lookup.ts";
import { type Box, cardSize, type Point, portPlaces } from "./layout.ts";

const boxes = new WeakMap<Part, Box>();

export function boxOf(part: Part): Box {
  let box = boxes.get(part);
  if (!box) {
    box = { x: part.at[0], y: part.at[1], ...cardSize(portsOf(part)) };
    boxes.set(part, box);
  }
  return box;
}

/**
 * All cards of a design. The same array as for the design before if none was added, moved or resized,
 * so that a change of an option does not make every wire look for its way again.
 */
export function boxesOf(design: Design): readonly Box[] {
  if (last?.design === design) return last.boxes;
  const next = design.parts.map(boxOf);
  const before = last?.boxes;
  const same =
    before !== undefined && before.length === next.length && next.every((b, i) => sameBox(b, before[i]));
  last = { design, boxes: same ? before : next };
  return last.boxes;
}

let last: { design: Design; boxes: readonly Box[] } | null = null;

function sameBox(a: Box, b: Box | undefined): boolean {
  return b !== undefined && a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
}

/** Where a port of a part is on the canvas; undefined for a port it doesn't have. */
export function portPoint(part: Part, port: string): Point | undefined {
  const place = portPlaces(portsOf(part)).get(port);
  return place && { x: part.at[0] + place.x, y: part.at[1] + place.y };
}

export function overlaps(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
