/**
 * A way from an output to an input: level stretches joined by upright ones, around all boxes. It begins and ends
 * level; nothing is said yet of other wires.
 */
import type { BoxIndex } from "./boxIndex.ts";
import type { Point } from "./layout.ts";
import { type Patience, wayAround } from "./wayAround.ts";

/** Heights of the level stretches, one more than there are upright ones between them [px]. */
export type Way = { readonly uprights: readonly number[]; readonly levels: readonly number[] };

/** How far a wire runs straight out of a port, or into one, before it bends [px]. */
export const STUB_PX = 10;
/** Room to boxes that a wire passes [px]. */
export const CLEARANCE_PX = 4;
/** In more room than this a wire bends near one end instead of half way [px]. */
const WIDE_PX = 96;
const FROM_EDGE_PX = 24;
/** How far above and below its ends a wire looks for a way round [px]. */
const DETOUR_PX = 600;

/** The simplest free way; straight through everything if there is none. */
export function freeWay(from: Point, to: Point, boxes: BoxIndex, patience: Patience): Way {
  return (
    straight(from, to, boxes) ??
    bent(from, to, boxes) ??
    byChannel(from, to, boxes) ??
    wayAround(from, to, boxes, patience) ??
    forced(from, to)
  );
}

function straight(from: Point, to: Point, boxes: BoxIndex): Way | null {
  if (Math.abs(from.y - to.y) >= 1 || from.x > to.x) return null;
  return isLevelFree(boxes, from.y, from.x, to.x) ? { uprights: [], levels: [from.y] } : null;
}

/** One upright stretch, as near to the output as there is room; none where the input lies behind the output. */
function bent(from: Point, to: Point, boxes: BoxIndex): Way | null {
  if (isBehind(from, to)) return null;
  const x = placeForUpright(boxes, { start: from, level: to.y, end: to.x - STUB_PX, until: to.x });
  return x === null ? null : { uprights: [x], levels: [from.y, to.y] };
}

/** The same as near to the input as there is room. */
export function bentNearInput(from: Point, to: Point, boxes: BoxIndex): Way | null {
  if (isBehind(from, to)) return null;
  const x = placeForUpright(boxes, { start: to, level: from.y, end: from.x + STUB_PX, until: from.x });
  return x === null ? null : { uprights: [x], levels: [from.y, to.y] };
}

/** Two upright stretches and a level one between them, in a channel between the boxes. */
function byChannel(from: Point, to: Point, boxes: BoxIndex): Way | null {
  const left = Math.min(from.x, to.x - 2 * STUB_PX);
  const right = Math.max(to.x, from.x + 2 * STUB_PX);
  const top = Math.min(from.y, to.y);
  const bottom = Math.max(from.y, to.y);
  // A wire that comes back runs above or below its ends, not over its own beginning.
  const comesBack = isBehind(from, to);
  const wanted = comesBack && bottom - top < 2 * STUB_PX ? top - 2 * STUB_PX : (top + bottom) / 2;
  const between = boxes.within({ left, right, top: top - DETOUR_PX, bottom: bottom + DETOUR_PX });
  const channels = freeSpans(
    between.map((b) => [b.y - CLEARANCE_PX, b.y + b.height + CLEARANCE_PX]),
    top - DETOUR_PX,
    bottom + DETOUR_PX,
  ).map(([low, high]) => {
    const middle = clamped(wanted, low, high);
    return high - low <= WIDE_PX
      ? (low + high) / 2
      : clamped(middle, low + CLEARANCE_PX, high - CLEARANCE_PX);
  });
  channels.sort((a, b) => detour(a) - detour(b));
  for (const y of channels) {
    if (comesBack && Math.min(Math.abs(y - from.y), Math.abs(y - to.y)) < STUB_PX) continue;
    const first = placeForUpright(boxes, { start: from, level: y, end: from.x + DETOUR_PX, until: null });
    const last = placeForUpright(boxes, { start: to, level: y, end: to.x - DETOUR_PX, until: null });
    if (first !== null && last !== null && isLevelFree(boxes, y, first, last)) {
      return { uprights: [first, last], levels: [from.y, y, to.y] };
    }
  }
  return null;

  function detour(y: number): number {
    return Math.abs(from.y - y) + Math.abs(to.y - y);
  }
}

/** No room between the ends for a stub out of the one and a stub into the other. */
function isBehind(from: Point, to: Point): boolean {
  return to.x - from.x < 2 * STUB_PX;
}

function forced(from: Point, to: Point): Way {
  const x = (from.x + to.x) / 2;
  if (!isBehind(from, to)) return { uprights: [x], levels: [from.y, to.y] };
  const middle = (from.y + to.y) / 2;
  return { uprights: [from.x + STUB_PX, to.x - STUB_PX], levels: [from.y, middle, to.y] };
}

type Upright = {
  /** The port where the stretch before it begins. */
  readonly start: Point;
  /** Height at which it ends. */
  readonly level: number;
  /** Furthest place from the port, to its left or right. */
  readonly end: number;
  /** How far the wire then runs on at that height; null where somebody else asks. */
  readonly until: number | null;
};

/** The place nearest to the port with a free way there, up or down, and on. */
function placeForUpright(boxes: BoxIndex, { start, level, end, until }: Upright): number | null {
  const ahead = Math.sign(end - start.x);
  const near = start.x + ahead * STUB_PX;
  if ((end - near) * ahead < 0) return null;
  const [left, right] = [Math.min(near, end), Math.max(near, end)];
  const [top, bottom] = [Math.min(start.y, level), Math.max(start.y, level)];
  const around = boxes.within({
    left: left - STUB_PX,
    right: right + STUB_PX,
    top: top - CLEARANCE_PX,
    bottom: bottom + CLEARANCE_PX,
  });
  const spans = freeSpans(
    around.map((b) => [b.x - CLEARANCE_PX, b.x + b.width + CLEARANCE_PX]),
    left,
    right,
  );
  if (ahead < 0) spans.reverse();
  for (const [low, high] of spans) {
    const x = inSpan(low, high, ahead);
    if (!isLevelFree(boxes, start.y, start.x, x)) return null;
    if (until === null || isLevelFree(boxes, level, x, until)) return x;
  }
  return null;
}

function inSpan(low: number, high: number, ahead: number): number {
  if (high - low <= WIDE_PX) return (low + high) / 2;
  return ahead > 0 ? low + FROM_EDGE_PX - STUB_PX : high - FROM_EDGE_PX + STUB_PX;
}

export function isLevelFree(boxes: BoxIndex, y: number, x1: number, x2: number): boolean {
  return boxes.isFree({ left: Math.min(x1, x2), right: Math.max(x1, x2), top: y - 1, bottom: y + 1 });
}

/** What of a range is left between blocked spans, from low to high. */
export function freeSpans(
  blocked: readonly (readonly [number, number])[],
  low: number,
  high: number,
): (readonly [number, number])[] {
  const free: (readonly [number, number])[] = [];
  let at = low;
  for (const [start, end] of [...blocked].sort((a, b) => a[0] - b[0])) {
    if (start > high) break;
    if (start >= at) free.push([at, start]);
    at = Math.max(at, end);
  }
  if (at <= high) free.push([at, high]);
  return free;
}

export const clamped = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value));

export function cornersOf(from: Point, to: Point, { uprights, levels }: Way): Point[] {
  const points: Point[] = [from];
  uprights.forEach((x, i) => {
    points.push({ x, y: levels[i] ?? from.y }, { x, y: levels[i + 1] ?? to.y });
  });
  points.push(to);
  return points;
}
