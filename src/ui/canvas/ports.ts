/** Ports as points: the nearest to the pointer wins, within a field that keeps its size on the screen. */
import type { Design, PortRef } from "../../design/design.ts";
import { portsOf } from "../../design/lookup.ts";
import type { Point } from "./layout.ts";
import { boxIn, portIn } from "./rooms.ts";

/** Width of the field about a port that counts as a hit [px on the screen]. */
export const FIELD_PX = { mouse: 24, touch: 44 } as const;

export type PlacedPort = Point & { readonly ref: PortRef };

const placed = new WeakMap<Design, readonly PlacedPort[]>();

function portsIn(design: Design): readonly PlacedPort[] {
  const known = placed.get(design);
  if (known) return known;
  const all = design.parts.flatMap((part) =>
    portsOf(part).flatMap((port): PlacedPort[] => {
      const ref: PortRef = [part.id, port.id];
      const at = portIn(design, ref);
      return at ? [{ ...at, ref }] : [];
    }),
  );
  placed.set(design, all);
  return all;
}

/** The port nearest to a place on the canvas, and where it lies; undefined where none is within reach. */
export function nearestPort(
  design: Design,
  at: Point,
  options: {
    readonly fieldPx: number;
    readonly zoom: number;
    /** Only these count, by "part/port". */
    readonly among?: ReadonlySet<string>;
  },
): PlacedPort | undefined {
  const reach = options.fieldPx / 2 / options.zoom;
  let best: PlacedPort | undefined;
  let least = reach;
  for (const port of portsIn(design)) {
    if (Math.abs(port.x - at.x) > reach || Math.abs(port.y - at.y) > reach) continue;
    if (options.among && !options.among.has(port.ref.join("/"))) continue;
    const distance = Math.hypot(port.x - at.x, port.y - at.y);
    if (distance > least) continue;
    least = distance;
    best = port;
  }
  return best;
}

/** The card under a place on the canvas; the one drawn last lies on top. */
export function cardAt(design: Design, { x, y }: Point): string | undefined {
  return design.parts.findLast(({ id }) => {
    const box = boxIn(design, id);
    return box && x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
  })?.id;
}
