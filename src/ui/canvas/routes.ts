/** The ways of all wires of a design, worked out together since each must know the lanes of the others. */
import { type Design, wireId } from "../../design/design.ts";
import { boxesOf, portPoint } from "./boxes.ts";
import { BoxIndex } from "./boxIndex.ts";
import { avoidLyingOn } from "./crosswise.ts";
import { inLanes, type LaneStretch, type StretchEnd } from "./lanes.ts";
import type { Box, Point } from "./layout.ts";
import { asRoute, type Route } from "./route.ts";
import { CLEARANCE_PX, clamped, cornersOf, freeWay, STUB_PX, type Way } from "./way.ts";
import { PATIENCE } from "./wayAround.ts";

/** By wire id. Routes that did not change are the same objects as before. */
export function routesOf(design: Design): ReadonlyMap<string, Route> {
  const boxes = boxesOf(design);
  if (last?.boxes === boxes && last.wires === design.wires) return last.routes;
  const before = last?.routes;
  const routes = new Map<string, Route>();
  for (const { id, from, to, way } of settled(linesOf(design), boxes)) {
    const route = asRoute(cornersOf(from, to, way));
    const old = before?.get(id);
    routes.set(id, old && isSame(old, route) ? old : route);
  }
  last = { boxes, wires: design.wires, routes };
  return routes;
}

let last: { boxes: readonly Box[]; wires: Design["wires"]; routes: ReadonlyMap<string, Route> } | null = null;

function isSame(a: Route, b: Route): boolean {
  return (
    a.points.length === b.points.length &&
    a.points.every((p, i) => p.x === b.points[i]?.x && p.y === b.points[i]?.y)
  );
}

type Line = { readonly id: string; readonly from: Point; readonly to: Point };
type Routed = Line & { way: Way };

function linesOf(design: Design): Line[] {
  const parts = new Map(design.parts.map((p) => [p.id, p]));
  return design.wires.flatMap((wire) => {
    const source = parts.get(wire.from[0]);
    const target = parts.get(wire.to[0]);
    const from = source && portPoint(design, source, wire.from[1]);
    const to = target && portPoint(design, target, wire.to[1]);
    return from && to ? [{ id: wireId(wire), from, to }] : [];
  });
}

function settled(lines: readonly Line[], boxes: readonly Box[]): readonly Routed[] {
  const index = new BoxIndex(boxes);
  const patience = { left: PATIENCE };
  const routed: Routed[] = lines.map((line) => ({
    ...line,
    way: freeWay(line.from, line.to, index, patience),
  }));
  avoidLyingOn(routed, index);
  separateLevels(routed, index);
  separateUprights(routed, index);
  return routed;
}

/** Where a stretch stands in its wire. */
type Place = { readonly wire: Routed; readonly n: number };

/** How far to either side a stretch looks for room [px]. */
const REACH_PX = 120;
const WIDE_PX = 96;

function separateUprights(routed: readonly Routed[], index: BoxIndex): void {
  const places: Place[] = [];
  const stretches: LaneStretch[] = [];
  for (const wire of routed) {
    const { uprights, levels } = wire.way;
    uprights.forEach((x, n) => {
      const [y1, y2] = [levels[n] ?? 0, levels[n + 1] ?? 0];
      if (y1 === y2) return;
      const before = uprights[n - 1] ?? wire.from.x;
      const after = uprights[n + 1] ?? wire.to.x;
      const room = roomAcross(index, x, y1, y2);
      const limits = kept(
        x,
        room,
        [n === 0 ? before : null, n === uprights.length - 1 ? after : null],
        [before, after],
      );
      places.push({ wire, n });
      stretches.push({ wire: wire.id, ...limits, ends: [end(y1, before - x), end(y2, after - x)] });
    });
  }
  inLanes(stretches).forEach((x, i) => {
    const { wire, n } = places[i] as Place;
    wire.way = { ...wire.way, uprights: wire.way.uprights.with(n, x) };
  });
}

function separateLevels(routed: readonly Routed[], index: BoxIndex): void {
  const places: (Place | null)[] = [];
  const stretches: LaneStretch[] = [];
  for (const wire of routed) {
    const { uprights, levels } = wire.way;
    levels.forEach((y, n) => {
      const x1 = uprights[n - 1] ?? wire.from.x;
      const x2 = uprights[n] ?? wire.to.x;
      const isInner = n > 0 && n < levels.length - 1;
      const ends = [
        end(x1, n === 0 ? 0 : (levels[n - 1] ?? y) - y),
        end(x2, (levels[n + 1] ?? y) - y),
      ] as const;
      if (!isInner) {
        places.push(null);
        stretches.push({ wire: wire.id, wanted: y, min: y, max: y, ends });
        return;
      }
      const room = roomDown(index, y, x1, x2);
      places.push({ wire, n });
      stretches.push({ wire: wire.id, ...wantedIn(y, room), ends });
    });
  }
  inLanes(stretches).forEach((y, i) => {
    const place = places[i];
    if (!place) return;
    const { wire, n } = place;
    wire.way = { ...wire.way, levels: wire.way.levels.with(n, y) };
  });
}

function end(at: number, ahead: number): StretchEnd {
  return { at, side: ahead > 0 ? 1 : ahead < 0 ? -1 : 0 };
}

type Room = readonly [low: number, high: number];

/** Free space to the left and right of an upright stretch. */
function roomAcross(index: BoxIndex, x: number, y1: number, y2: number): Room {
  const [top, bottom] = [Math.min(y1, y2) - CLEARANCE_PX, Math.max(y1, y2) + CLEARANCE_PX];
  let [low, high] = [x - REACH_PX, x + REACH_PX];
  for (const b of index.within({ left: low, right: high, top, bottom })) {
    if (b.x + b.width <= x) low = Math.max(low, b.x + b.width + CLEARANCE_PX);
    if (b.x >= x) high = Math.min(high, b.x - CLEARANCE_PX);
  }
  return [low, high];
}

function roomDown(index: BoxIndex, y: number, x1: number, x2: number): Room {
  const [left, right] = [Math.min(x1, x2) - CLEARANCE_PX, Math.max(x1, x2) + CLEARANCE_PX];
  let [low, high] = [y - REACH_PX, y + REACH_PX];
  for (const b of index.within({ left, right, top: low, bottom: high })) {
    if (b.y + b.height <= y) low = Math.max(low, b.y + b.height + CLEARANCE_PX);
    if (b.y >= y) high = Math.min(high, b.y - CLEARANCE_PX);
  }
  return [low, high];
}

/** Within its room, and never so far that the stretches before and after it would turn back. */
function kept(
  x: number,
  [low, high]: Room,
  ports: readonly [number | null, number | null],
  beside: readonly [number, number],
): Omit<LaneStretch, "ends" | "wire"> {
  let [min, max] = [low, high];
  if (ports[0] !== null) min = Math.max(min, ports[0] + STUB_PX);
  if (ports[1] !== null) max = Math.min(max, ports[1] - STUB_PX);
  beside.forEach((other, side) => {
    if (ports[side] !== null) return;
    const half = (x + other) / 2;
    if (other > x) max = Math.min(max, half);
    else min = Math.max(min, half);
  });
  return wantedIn(x, min > max ? [x, x] : [min, max]);
}

/** In the middle of a narrow gap, and where it is in wide room. */
function wantedIn(at: number, [min, max]: Room): Omit<LaneStretch, "ends" | "wire"> {
  return { min, max, wanted: max - min <= WIDE_PX ? (min + max) / 2 : clamped(at, min, max) };
}
