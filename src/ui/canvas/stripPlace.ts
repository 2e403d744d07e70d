/**
 * Where on its wire a strip sits: on the last level stretch, which ends at an input. Inputs of one card are
 * far enough apart for strips, and cards do not overlap, so strips cannot either.
 */
import type { Route } from "./route.ts";
import { STRIP_HEIGHT_PX } from "./Strip.tsx";
import { STRIP_WIDTH_PX } from "./stripGeometry.ts";

const PLATE_WIDTH_PX = STRIP_WIDTH_PX + 8;
const LEAST_WIDTH_PX = 64;
/** Room for a port on the right, and for the wire to be seen on the left [px]. */
const PORT_ROOM_PX = 20;
const LEFT_ROOM_PX = 8;

export type StripPlace = { readonly x: number; readonly y: number; readonly width: number };

/** Top left corner and width of the plate, level with its neighbours at the right end; narrower where the stretch is short, in steps of 8 px. */
export function stripPlace(route: Route): StripPlace {
  const end = route.points.at(-1) ?? { x: 0, y: 0 };
  const stretch = end.x - route.lastFromX;
  const room = Math.floor((stretch - PORT_ROOM_PX - LEFT_ROOM_PX) / 8) * 8;
  const width = Math.max(LEAST_WIDTH_PX, Math.min(PLATE_WIDTH_PX, room));
  return { x: end.x - PORT_ROOM_PX - width, y: end.y - STRIP_HEIGHT_PX / 2, width };
}
