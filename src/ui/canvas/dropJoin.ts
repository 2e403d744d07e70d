/** A part let go on another, or beside a free port that fits: it is joined there and comes to stand in the lane. */
import type { Design, Part, PartId, PortRef } from "../../design/design.ts";
import { done, type Edit } from "../../design/edits/edit.ts";
import { planJoin } from "../../design/edits/join.ts";
import { addPart, moveParts } from "../../design/edits/parts.ts";
import { partById, portOf, portsOf, wireAt } from "../../design/lookup.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import { bestPair, isMeant } from "../../findings/fitting/partners.ts";
import { useApp } from "../../store/app.ts";
import { boxOf } from "./boxes.ts";
import { frameOf } from "./frames.ts";
import type { Box, Point } from "./layout.ts";
import { inLane } from "./place.ts";
import { boxIn, portIn, snapped, withRoom } from "./rooms.ts";

/** Ports nearer than this to one another belong together [px]. */
const REACH_PX = 40;

/**
 * The part with its middle at a place, joined to what it was let go on or beside; null where there is nothing for it.
 * Only a part that nothing is joined to yet is taken that way: whoever moves a joined one wants it moved.
 */
export function joinedByDrop(before: Design, part: Part, centre: Point): Edit | null {
  const known = partById(before, part.id) !== undefined;
  if (known && portsOf(part).some((port) => wireAt(before, [part.id, port.id]))) return null;
  const { width, height } = frameOf(before, part);
  const at = [snapped(centre.x - width / 2), snapped(centre.y - height / 2)] as const;
  const there = known ? moveParts(before, new Map([[part.id, at]])) : addPart(before, { ...part, at });
  if (!there.ok) return null;
  const pair = pairOn(there.design, part.id) ?? pairBeside(there.design, part.id);
  const joined = pair && planJoin(there.design, ...pair);
  if (!pair || !joined?.ok) return null;
  const [own, to] = pair;
  const placed = inLane(joined.design, { part: part.id, port: own[1], to }, new Set());
  return done(withRoom(before, placed), joined.notes);
}

/** The ports by which a part belongs to the card that its middle lies on. */
function pairOn(design: Design, id: PartId): readonly [PortRef, PortRef] | undefined {
  const box = boxIn(design, id);
  const middle = box && { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const below = middle && design.parts.find((p) => p.id !== id && contains(boxOf(design, p), middle));
  return below && bestPair(evaluationOf(design), id, below.id);
}

/** The nearest pair of free ports that may be joined, if they are near enough. */
function pairBeside(design: Design, id: PartId): readonly [PortRef, PortRef] | undefined {
  const part = partById(design, id);
  if (!part) return undefined;
  const pairs = portsOf(part).flatMap((port) => {
    const own: PortRef = [id, port.id];
    const from = portIn(design, own);
    if (!from) return [];
    return design.parts.flatMap((other) => {
      const box = boxOf(design, other);
      if (other.id === id || distanceTo(box, from) > REACH_PX) return [];
      return portsOf(other).flatMap((far) => {
        const to: PortRef = [other.id, far.id];
        const point = portIn(design, to);
        const distance = point ? Math.hypot(point.x - from.x, point.y - from.y) : Infinity;
        return portOf(other, far.id)?.side !== port.side && distance <= REACH_PX
          ? [{ own, to, distance }]
          : [];
      });
    });
  });
  const evaluation = pairs.length > 0 ? evaluationOf(design) : null;
  const [best] = pairs
    .sort((a, b) => a.distance - b.distance)
    .filter(({ own, to }) => evaluation && planJoin(design, own, to).ok && isMeant(evaluation, own, to));
  return best && [best.own, best.to];
}

function evaluationOf(design: Design) {
  return evaluate(design, useApp.getState().evaluation);
}

function contains(box: Box, { x, y }: Point): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}

function distanceTo(box: Box, { x, y }: Point): number {
  const dx = Math.max(box.x - x, 0, x - box.x - box.width);
  const dy = Math.max(box.y - y, 0, y - box.y - box.height);
  return Math.hypot(dx, dy);
}
