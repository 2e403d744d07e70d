/** How a wire is drawn: level stretches joined by upright ones, with rounded corners. */
import { BoxIndex } from "./boxIndex.ts";
import type { Box, Point } from "./layout.ts";
import { cornersOf, freeWay } from "./way.ts";
import { PATIENCE } from "./wayAround.ts";

export type Route = { readonly points: readonly Point[] };

/**
 * One wire alone, as while its card is dragged; `routesOf` knows the lanes of all.
 *
 * @param options.from end at the output, `to` at the input [px on the canvas]
 * @param options.boxes all cards
 */
export function routeWire(options: {
  readonly from: Point;
  readonly to: Point;
  readonly boxes: readonly Box[];
}): Route {
  const { from, to, boxes } = options;
  return asRoute(cornersOf(from, to, freeWay(from, to, new BoxIndex(boxes), { left: PATIENCE })));
}

/** Whether it begins and ends there; the canvas library reckons ports by the edge of a pixel. */
export function isBetween({ points }: Route, from: Point, to: Point): boolean {
  const [first, last] = [points[0], points.at(-1)];
  return first !== undefined && last !== undefined && distance(first, from) <= 2 && distance(last, to) <= 2;
}

/** Without points that change nothing. */
export function asRoute(points: readonly Point[]): Route {
  const kept: Point[] = [];
  for (const p of points) {
    const [before, last] = [kept.at(-2), kept.at(-1)];
    if (last && last.x === p.x && last.y === p.y) continue;
    const isOnLine =
      before && last && ((before.x === last.x && last.x === p.x) || (before.y === last.y && last.y === p.y));
    if (isOnLine) kept.pop();
    kept.push(p);
  }
  return { points: kept };
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
