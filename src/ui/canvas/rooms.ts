/**
 * Room on the canvas: who covers whom, who makes way downwards for a card that grew or came, and where cards go that were
 * moved onto others.
 */
import type { Design, PartId, PortRef } from "../../design/design.ts";
import { moveParts } from "../../design/edits/parts.ts";
import { partById } from "../../design/lookup.ts";
import { boxOf, portPoint } from "./boxes.ts";
import { type Box, GRID_PX, overlaps, type Point } from "./layout.ts";

/** Between cards of one row: room for the bends of the wires [px]. */
export const COLUMN_GAP_PX = 32;
/** Between cards of one column [px]. */
export const ROOM_GAP_PX = 2 * GRID_PX;

export const snapped = (value: number) => Math.round(value / GRID_PX) * GRID_PX;
/** On the grid, not above or left of the value. */
const after = (value: number) => Math.ceil(value / GRID_PX) * GRID_PX;

export function boxIn(design: Design, id: PartId): Box | undefined {
  const part = partById(design, id);
  return part && boxOf(design, part);
}

/** Where a port lies; undefined for a port that is not there. */
export function portIn(design: Design, [id, port]: PortRef): Point | undefined {
  const part = partById(design, id);
  return part && portPoint(design, part, port);
}

function boxesById(design: Design): Map<PartId, Box> {
  return new Map(design.parts.map((part) => [part.id, boxOf(design, part)]));
}

/** The nearest place at or below `y` where a box covers nothing and keeps the distance of a row. */
export function freeBelow(others: readonly Box[], box: Box): number {
  let y = snapped(box.y);
  for (;;) {
    const room = { x: box.x - GRID_PX, y: y - GRID_PX, width: box.width + 16, height: box.height + 16 };
    const other = others.find((each) => overlaps(each, room));
    if (!other) return y;
    y = after(other.y + other.height + ROOM_GAP_PX);
  }
}

/**
 * The design after an edit, with room for what grew, came or moved in it: cards that would be covered now make way
 * downwards, and what they meet does the same. Cards that covered each other before stay as somebody put them.
 */
export function withRoom(before: Design, after: Design): Design {
  if (before.parts === after.parts && before.wires === after.wires) return after;
  const was = boxesById(before);
  const boxes = boxesById(after);
  const firm = [...boxes].filter(([id, box]) => !isSame(was.get(id), box)).map(([id]) => id);
  const moved = makeWay(boxes, was, firm);
  const edit = moveParts(after, moved);
  return edit.ok ? edit.design : after;
}

function isSame(a: Box | undefined, b: Box): boolean {
  return a !== undefined && a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
}

/** New places of the cards that make way for those that stay firm; of two firm ones, the later for the earlier. */
function makeWay(
  boxes: Map<PartId, Box>,
  was: ReadonlyMap<PartId, Box>,
  firm: readonly PartId[],
): ReadonlyMap<PartId, readonly [number, number]> {
  const moved = new Map<PartId, readonly [number, number]>();
  const rank = new Map(firm.map((id, i) => [id, i]));
  const rankOf = (id: PartId) => rank.get(id) ?? firm.length;
  const yields = (id: PartId, to: PartId) => rankOf(id) > rankOf(to) || !rank.has(id);
  const waiting = [...firm];
  // Each push leads downwards, so that it ends; the limit only guards against a heap of thousands.
  for (let left = 20 * boxes.size; waiting.length > 0 && left > 0; left -= 1) {
    const id = waiting.shift() ?? "";
    const box = boxes.get(id);
    if (!box) continue;
    for (const [otherId, other] of boxes) {
      if (otherId === id || !overlaps(box, other) || !yields(otherId, id)) continue;
      if (covered(was, id, otherId)) continue;
      const firmer = [...boxes].filter(([each]) => each !== otherId && rankOf(each) < rankOf(otherId));
      const y = belowAll([box, ...firmer.map(([, each]) => each)], other, box);
      boxes.set(otherId, { ...other, y });
      moved.set(otherId, [other.x, y]);
      waiting.push(otherId);
    }
  }
  return moved;
}

/** The first place below `pusher` at which a box covers none of the others. */
function belowAll(others: readonly Box[], box: Box, pusher: Box): number {
  let y = after(pusher.y + pusher.height + ROOM_GAP_PX);
  for (;;) {
    const blocking = others.find((each) => overlaps(each, { ...box, y }));
    if (!blocking) return y;
    y = after(blocking.y + blocking.height + ROOM_GAP_PX);
  }
}

/** Which way a card goes on until there is room for it. */
export type MoveWay = "down" | "up" | "right" | "left";
/** Of ways that are as far, the first is taken. */
const ALL_WAYS: readonly MoveWay[] = ["down", "up", "right", "left"];

/** The way of a shift straight along one axis. */
export function moveWayOf(dx: number, dy: number): MoveWay {
  if (dx !== 0) return dx > 0 ? "right" : "left";
  return dy > 0 ? "down" : "up";
}

/**
 * Places of cards that were moved, so that they cover none of those that stay: where they were put, or else straight on
 * from there as little as will do, all of them together. By hand any way will do; by key it is the way of the key.
 */
export function movedIntoRoom(
  design: Design,
  places: ReadonlyMap<PartId, Point>,
  ways: readonly MoveWay[] = ALL_WAYS,
): ReadonlyMap<PartId, Point> {
  const moving: Box[] = [];
  const others: Box[] = [];
  for (const part of design.parts) {
    const box = boxOf(design, part);
    const place = places.get(part.id);
    if (place) moving.push({ ...box, x: place.x, y: place.y });
    else others.push(box);
  }
  if (!moving.some((box) => others.some((other) => overlaps(box, other)))) return places;
  const [least] = ways
    .map((way) => ({ way, px: wayToRoom(moving, others, way) }))
    .sort((a, b) => a.px - b.px);
  if (!least) return places;
  return new Map([...places].map(([id, at]) => [id, goneOn(at, least.way, least.px)]));
}

function goneOn<P extends Point>(at: P, way: MoveWay, px: number): P {
  const sign = way === "down" || way === "right" ? 1 : -1;
  return way === "down" || way === "up" ? { ...at, y: at.y + sign * px } : { ...at, x: at.x + sign * px };
}

/** How far boxes have to go on together until they cover none of the others, in steps of the grid. */
function wayToRoom(moving: readonly Box[], others: readonly Box[], way: MoveWay): number {
  const beyond = (box: Box, other: Box): number => {
    if (way === "down") return other.y + other.height - box.y;
    if (way === "up") return box.y + box.height - other.y;
    return way === "right" ? other.x + other.width - box.x : box.x + box.width - other.x;
  };
  let px = 0;
  for (;;) {
    const needed = moving.flatMap((box) => {
      const here = goneOn(box, way, px);
      return others.filter((other) => overlaps(here, other)).map((other) => beyond(box, other));
    });
    if (needed.length === 0) return px;
    px = after(Math.max(...needed) + GRID_PX);
  }
}

function covered(was: ReadonlyMap<PartId, Box>, a: PartId, b: PartId): boolean {
  const boxA = was.get(a);
  const boxB = was.get(b);
  return boxA !== undefined && boxB !== undefined && overlaps(boxA, boxB);
}
