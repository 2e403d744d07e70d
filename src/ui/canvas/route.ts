/**
 * How a wire runs from an output to an input: level stretches joined by upright ones, and where
 * avoidable not under a card. The last stretch runs level into the input; the strip sits on it.
 */
import type { Box, Point } from "./layout.ts";

export type Route = {
  readonly points: readonly Point[];
  /** Where the last level stretch begins [px]. */
  readonly lastFromX: number;
};

/** How far a wire runs straight out of a port before it bends, and the room it keeps to cards [px]. */
const STUB_PX = 12;
const LANE_PX = 6;
const CLEARANCE_PX = 12;
/** What a bend and a card in the way cost, in pixels of detour. */
const BEND_COST = 30;
const CROSSING_COST = 5000;

/**
 * @param options.from end at the output, `to` at the input [px on the canvas]
 * @param options.lane place of the output among the outputs of its part and their number, so that wires
 *   from one part bend one after the other and don't lie on each other
 * @param options.boxes all cards
 */
export function routeWire(options: {
  readonly from: Point;
  readonly to: Point;
  readonly lane: { readonly index: number; readonly count: number };
  readonly boxes: readonly Box[];
}): Route {
  const { from, to, lane, boxes } = options;
  if (Math.abs(from.y - to.y) < 1 && from.x < to.x) {
    const straight = cleaned([from, to]);
    if (crossings(straight, boxes) === 0) return asRoute(straight);
  }
  // Going down, the topmost output bends last; going up, the lowest: so they don't cross each other.
  const place = to.y > from.y ? lane.count - 1 - lane.index : lane.index;
  const out = from.x + STUB_PX + Math.min(place * LANE_PX, 42);
  const back = to.x - STUB_PX;

  let best: { route: Point[]; cost: number } | null = null;
  const offer = (points: Point[]) => {
    const route = cleaned(points);
    const crossed = crossings(route, boxes);
    const cost = crossed * CROSSING_COST + length(route) + route.length * BEND_COST;
    if (!best || cost < best.cost) best = { route, cost };
    return crossed === 0;
  };

  const forward = back >= out;
  if (forward) {
    if (offer([from, { x: out, y: from.y }, { x: out, y: to.y }, to])) return found(best);
    if (offer([from, { x: back, y: from.y }, { x: back, y: to.y }, to])) return found(best);
  }
  for (const y of channels(from, to, boxes)) {
    offer([from, { x: out, y: from.y }, { x: out, y }, { x: back, y }, { x: back, y: to.y }, to]);
  }
  return found(best) ?? asRoute(cleaned([from, to]));
}

function found(best: { route: Point[] } | null): Route {
  return asRoute(best?.route ?? []);
}

function asRoute(points: readonly Point[]): Route {
  return { points, lastFromX: points.at(-2)?.x ?? 0 };
}

/** Heights at which a level stretch might get by: half way, and just above and below each card in between. */
function channels(from: Point, to: Point, boxes: readonly Box[]): number[] {
  const left = Math.min(from.x, to.x) - STUB_PX;
  const right = Math.max(from.x, to.x) + STUB_PX;
  const heights = [(from.y + to.y) / 2];
  for (const b of boxes) {
    if (b.x > right || b.x + b.width < left) continue;
    heights.push(b.y - CLEARANCE_PX, b.y + b.height + CLEARANCE_PX);
  }
  // The nearest few are enough; a far detour is worse than a crossing.
  const middle = (from.y + to.y) / 2;
  return heights.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle)).slice(0, 24);
}

function crossings(points: readonly Point[], boxes: readonly Box[]): number {
  let crossed = 0;
  for (const box of boxes) {
    for (let i = 1; i < points.length; i++) {
      const a = points[i - 1];
      const b = points[i];
      if (a && b && hits(a, b, box)) {
        crossed++;
        break;
      }
    }
  }
  return crossed;
}

/** Whether a level or upright stretch runs through a card; its own edge, where ports sit, doesn't count. */
function hits(a: Point, b: Point, box: Box): boolean {
  const skin = 2;
  return (
    Math.max(a.x, b.x) > box.x + skin &&
    Math.min(a.x, b.x) < box.x + box.width - skin &&
    Math.max(a.y, b.y) > box.y + skin &&
    Math.min(a.y, b.y) < box.y + box.height - skin
  );
}

function length(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a && b) sum += Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
  }
  return sum;
}

/** Without points that change nothing. */
function cleaned(points: readonly Point[]): Point[] {
  return points.filter((p, i) => {
    const before = points[i - 1];
    const after = points[i + 1];
    if (!before || !after) return true;
    const level = Math.abs(before.y - p.y) < 0.01 && Math.abs(p.y - after.y) < 0.01;
    const upright = Math.abs(before.x - p.x) < 0.01 && Math.abs(p.x - after.x) < 0.01;
    return !level && !upright;
  });
}

const CORNER_PX = 8;

/** The route as an SVG path with rounded corners. */
export function routePath(points: readonly Point[]): string {
  const [first] = points;
  if (!first) return "";
  let path = `M${first.x} ${first.y}`;
  for (let i = 1; i < points.length; i++) {
    const before = points[i - 1];
    const here = points[i];
    const after = points[i + 1];
    if (!before || !here) continue;
    if (!after) {
      path += `L${here.x} ${here.y}`;
      continue;
    }
    const radius = Math.min(CORNER_PX, distance(before, here) / 2, distance(here, after) / 2);
    const start = towards(here, before, radius);
    const end = towards(here, after, radius);
    path += `L${start.x} ${start.y}Q${here.x} ${here.y} ${end.x} ${end.y}`;
  }
  return path;
}

const distance = (a: Point, b: Point) => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

function towards(from: Point, to: Point, by: number): Point {
  const whole = distance(from, to);
  if (whole === 0) return from;
  return { x: from.x + ((to.x - from.x) * by) / whole, y: from.y + ((to.y - from.y) * by) / whole };
}
