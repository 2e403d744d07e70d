/** Lining parts up. */
import type { Design, Part, PartId } from "../design.ts";
import type { Edit } from "./edit.ts";
import { moveParts } from "./parts.ts";

/** Brings parts to the left edge of the leftmost, or to the top edge of the topmost. */
export function align(design: Design, ids: ReadonlySet<PartId>, edge: "left" | "top"): Edit {
  const axis = edge === "left" ? 0 : 1;
  const chosen = design.parts.filter((part) => ids.has(part.id));
  const least = chosen.reduce((value, part) => Math.min(value, part.at[axis]), Infinity);
  return moveParts(design, new Map(chosen.map((part) => [part.id, placedAt(part, axis, least)])));
}

/** Spaces three or more parts evenly between the first and the last, in the order they stand in. */
export function distribute(design: Design, ids: ReadonlySet<PartId>, way: "across" | "down"): Edit {
  const axis = way === "across" ? 0 : 1;
  const sorted = design.parts.filter((part) => ids.has(part.id)).sort((a, b) => a.at[axis] - b.at[axis]);
  const start = sorted[0]?.at[axis] ?? 0;
  const gap = ((sorted.at(-1)?.at[axis] ?? 0) - start) / Math.max(1, sorted.length - 1);
  return moveParts(
    design,
    new Map(sorted.map((part, i) => [part.id, placedAt(part, axis, start + i * gap)])),
  );
}

function placedAt(part: Part, axis: 0 | 1, value: number): readonly [number, number] {
  return axis === 0 ? [value, part.at[1]] : [part.at[0], value];
}
