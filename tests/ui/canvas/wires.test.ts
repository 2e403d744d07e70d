/** How wires run and where their strips sit. Geometry of our own; checked against plain arithmetic. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CATALOGUE, defaultOptions } from "../../../src/parts/catalogue.ts";
import type { Port } from "../../../src/parts/contract.ts";
import {
  type Box,
  cardSize,
  GRID_PX,
  PORT_PITCH_PX,
  type Point,
  portPlaces,
} from "../../../src/ui/canvas/layout.ts";
import { routePath, routeWire } from "../../../src/ui/canvas/route.ts";
import { STRIP_HEIGHT_PX } from "../../../src/ui/canvas/Strip.tsx";
import { stripPlace } from "../../../src/ui/canvas/stripPlace.ts";

const alone = { index: 0, count: 1 };
const box = (x: number, y: number, width = 168, height = 56): Box => ({ x, y, width, height });

/** Whether any stretch of a route runs through the inside of a box; written apart from the router's own test. */
function runsThrough(points: readonly Point[], b: Box): boolean {
  return points.some((to, i) => {
    const from = points[i - 1];
    if (!from) return false;
    for (let k = 0; k <= 200; k++) {
      const x = from.x + ((to.x - from.x) * k) / 200;
      const y = from.y + ((to.y - from.y) * k) / 200;
      if (x > b.x + 3 && x < b.x + b.width - 3 && y > b.y + 3 && y < b.y + b.height - 3) return true;
    }
    return false;
  });
}

describe("a wire", () => {
  test("between ports at one height is one straight line", () => {
    const route = routeWire({ from: { x: 0, y: 28 }, to: { x: 200, y: 28 }, lane: alone, boxes: [] });
    expect(route.points).toEqual([
      { x: 0, y: 28 },
      { x: 200, y: 28 },
    ]);
  });

  test("goes around a card that stands between", () => {
    const between = box(300, 0);
    const route = routeWire({
      from: { x: 168, y: 28 },
      to: { x: 700, y: 28 },
      lane: alone,
      boxes: [box(0, 0), between, box(700, 0)],
    });
    expect(runsThrough(route.points, between)).toBe(false);
  });

  test("to a card on the left runs around both ends rather than under them", () => {
    const [a, b] = [box(400, 0), box(0, 0)];
    const route = routeWire({ from: { x: 568, y: 28 }, to: { x: 0, y: 28 }, lane: alone, boxes: [a, b] });
    expect([a, b].filter((each) => runsThrough(route.points, each))).toEqual([]);
  });

  test("begins at the output, ends level at the input, and only ever runs level or upright", () => {
    const place = fc.record({
      x: fc.integer({ min: -900, max: 900 }),
      y: fc.integer({ min: -900, max: 900 }),
    });
    fc.assert(
      fc.property(place, place, fc.array(place, { maxLength: 6 }), (from, to, at) => {
        const { points, lastFromX } = routeWire({
          from,
          to,
          lane: alone,
          boxes: at.map(({ x, y }) => box(x, y)),
        });
        expect(points[0]).toEqual(from);
        expect(points.at(-1)).toEqual(to);
        for (let i = 1; i < points.length; i++) {
          const [a, b] = [points[i - 1], points[i]];
          expect(a?.x === b?.x || a?.y === b?.y).toBe(true);
        }
        if (points.length > 1) expect(lastFromX).toBe(points.at(-2)?.x);
        expect(routePath(points)).not.toMatch(/NaN|undefined/);
      }),
    );
  });

  test("from one part does not lie on its neighbour's: each output bends in a lane of its own", () => {
    const lanes = [0, 1, 2, 3].map(
      (index) =>
        routeWire({
          from: { x: 168, y: 68 + 40 * index },
          to: { x: 544, y: 400 + 88 * index },
          lane: { index, count: 4 },
          boxes: [],
        }).points[1]?.x,
    );
    expect(new Set(lanes).size).toBe(4);
  });
});

describe("strips", () => {
  test("of neighbouring inputs have room above each other", () => {
    expect(PORT_PITCH_PX).toBeGreaterThan(STRIP_HEIGHT_PX);
  });

  test("lie on the last level stretch, before the input", () => {
    const route = routeWire({ from: { x: 168, y: 28 }, to: { x: 376, y: 108 }, lane: alone, boxes: [] });
    const place = stripPlace(route);
    expect(place.y + STRIP_HEIGHT_PX / 2).toBe(108);
    expect(place.x).toBeGreaterThanOrEqual(route.lastFromX);
    expect(place.x + place.width).toBeLessThan(376);
  });

  test("of equal wires into one card are level with each other, straight or bent", () => {
    const places = [28, 68, 108].map((y) =>
      stripPlace(routeWire({ from: { x: 168, y: 68 }, to: { x: 376, y }, lane: alone, boxes: [] })),
    );
    expect(new Set(places.map((p) => p.x + p.width)).size).toBe(1);
  });
});

describe("cards", () => {
  const kinds = CATALOGUE.map((kind) => ({ name: kind.kind, ports: kind.ports(defaultOptions(kind)) }));

  test.each(kinds)("$name: every port lies on its edge, a strip apart from the next", ({ ports }) => {
    const size = cardSize(ports);
    const places = portPlaces(ports);
    const heights: Record<Port["side"], number[]> = { in: [], out: [] };
    for (const port of ports) {
      const at = places.get(port.id);
      expect(at?.x).toBe(port.side === "in" ? 0 : size.width);
      expect(at?.y).toBeGreaterThan(0);
      expect(at?.y).toBeLessThan(size.height);
      heights[port.side].push(at?.y ?? 0);
    }
    for (const side of Object.values(heights)) {
      for (let i = 1; i < side.length; i++) {
        expect((side[i] ?? 0) - (side[i - 1] ?? 0)).toBeGreaterThanOrEqual(STRIP_HEIGHT_PX);
      }
    }
  });

  test("any two can be brought onto one straight wire on the grid", () => {
    const offsets = kinds.flatMap(({ ports }) => [...portPlaces(ports).values()].map((p) => p.y % GRID_PX));
    expect(new Set(offsets).size).toBe(1);
  });
});
