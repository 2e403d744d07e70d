/** Edits that also care for room on the canvas: where a new part goes, and who moves aside for it. */
import type { Design, Part } from "../../design/design.ts";
import { wireId } from "../../design/design.ts";
import { done, type Edit } from "../../design/edits/edit.ts";
import { insertIntoWire } from "../../design/edits/insert.ts";
import { moveParts } from "../../design/edits/parts.ts";
import { partById } from "../../design/lookup.ts";
import { boxesOf, boxOf, portPoint } from "./boxes.ts";
import { frameOf } from "./frames.ts";
import { GRID_PX, overlaps, type Point } from "./layout.ts";

/** Room between two neighbouring columns, for the bends of wires [px]. */
export const COLUMN_GAP_PX = 32;

export const snapped = (value: number) => Math.round(value / GRID_PX) * GRID_PX;

/** A free place for a card whose middle should be at `centre`: there, or as little below as possible. */
export function freePlace(design: Design, part: Part, centre: Point): readonly [number, number] {
  const size = frameOf(design, part);
  const x = snapped(centre.x - size.width / 2);
  let y = snapped(centre.y - size.height / 2);
  const boxes = boxesOf(design);
  for (;;) {
    const box = { x: x - GRID_PX, y: y - GRID_PX, width: size.width + 16, height: size.height + 16 };
    const other = boxes.find((b) => overlaps(b, box));
    if (!other) return [x, y];
    y = snapped(other.y + other.height + 2 * GRID_PX);
  }
}

/**
 * Puts a part into a wire. It comes to lie on the wire, half-way; where the gap is too narrow for a card and
 * two strips, everything from the far end onwards moves to the right.
 */
export function insertWithRoom(design: Design, part: Part, wire: string): Edit {
  const inserted = insertIntoWire(design, part, wire);
  if (!inserted.ok) return inserted;
  const joint = design.wires.find((w) => wireId(w) === wire);
  const before = joint && partById(design, joint.from[0]);
  const after = joint && partById(design, joint.to[0]);
  const end = joint && after && portPoint(design, after, joint.to[1]);
  if (!before || !after || !end) return inserted;

  const frame = frameOf(inserted.design, part);
  const fromX = before.at[0] + boxOf(design, before).width;
  const needed = frame.width + 2 * COLUMN_GAP_PX;
  const gap = after.at[0] - fromX;
  const shift = gap > 0 ? snapped(Math.max(0, needed - gap)) : 0;
  const positions = new Map<string, readonly [number, number]>();
  if (shift > 0) {
    for (const each of design.parts) {
      if (each.id !== part.id && each.at[0] >= after.at[0]) {
        positions.set(each.id, [each.at[0] + shift, each.at[1]]);
      }
    }
  }
  const middle = (fromX + after.at[0] + shift - frame.width) / 2;
  const inside = Math.min(...[...frame.ports.values()].map((p) => p.y));
  const roomy = moveParts(inserted.design, positions);
  if (!roomy.ok) return roomy;
  const at = clear(roomy.design, part, snapped(middle), snapped(end.y - inside));
  const placed = moveParts(roomy.design, new Map([[part.id, at]]));
  return placed.ok ? done(placed.design, inserted.notes) : placed;
}

/** The place, or just below whatever stands there already. */
function clear(design: Design, part: Part, x: number, y: number): readonly [number, number] {
  const others: Design = { ...design, parts: design.parts.filter((p) => p.id !== part.id) };
  const size = boxOf(design, part);
  const blocked = boxesOf(others).some((b) => overlaps(b, { ...size, x, y }));
  return blocked ? freePlace(others, part, { x: x + size.width / 2, y: y + size.height / 2 }) : [x, y];
}
