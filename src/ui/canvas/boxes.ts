/** The parts of a design as boxes, kept by identity so that only a move or a new part makes new ones. */
import type { Design, Part } from "../../design/design.ts";
import { type Frame, frameOf } from "./frames.ts";
import type { Box, Point } from "./layout.ts";

const boxes = new WeakMap<Part, { frame: Frame; box: Box }>();

/** The box of a part of this design. */
export function boxOf(design: Design, part: Part): Box {
  const frame = frameOf(design, part);
  const last = boxes.get(part);
  if (last?.frame === frame) return last.box;
  const box = { x: part.at[0], y: part.at[1], width: frame.width, height: frame.height };
  boxes.set(part, { frame, box });
  return box;
}

/**
 * All parts of a design. The same array as for the design before if none was added, moved or resized,
 * so that a change of an option does not make every wire look for its way again.
 */
export function boxesOf(design: Design): readonly Box[] {
  if (last?.design === design) return last.boxes;
  const next = design.parts.map((part) => boxOf(design, part));
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
export function portPoint(design: Design, part: Part, port: string): Point | undefined {
  const place = frameOf(design, part).ports.get(port);
  return place && { x: part.at[0] + place.x, y: part.at[1] + place.y };
}
