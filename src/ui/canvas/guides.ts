/** Lining up while dragging: a card that comes near the edge or a port height of another snaps to it. */
import type { Box, Point } from "./layout.ts";

const REACH_PX = 6;

export type Aligned = {
  /** Where the card goes. */
  readonly at: Point;
  /** The line it lies on now, to be drawn; null where it lies on none. */
  readonly guideX: number | null;
  readonly guideY: number | null;
};

/**
 * @param options.moving the card at the pointer
 * @param options.heights heights of its ports from its top: two ports at one height make a straight wire
 * @param options.others cards in view, each with the heights of its ports
 */
export function alignTo(options: {
  readonly moving: Box;
  readonly heights: readonly number[];
  readonly others: readonly { readonly box: Box; readonly heights: readonly number[] }[];
}): Aligned {
  const { moving, heights, others } = options;
  let x: { shift: number; guide: number } | null = null;
  let y: { shift: number; guide: number } | null = null;
  for (const { box, heights: theirs } of others) {
    x = nearer(x, moving.x, box.x);
    for (const mine of heights) {
      for (const other of theirs) y = nearer(y, moving.y + mine, box.y + other);
    }
  }
  return {
    at: { x: moving.x + (x?.shift ?? 0), y: moving.y + (y?.shift ?? 0) },
    guideX: x?.guide ?? null,
    guideY: y?.guide ?? null,
  };
}

function nearer(best: { shift: number; guide: number } | null, value: number, target: number) {
  const shift = target - value;
  if (Math.abs(shift) > REACH_PX || (best && Math.abs(best.shift) <= Math.abs(shift))) return best;
  return { shift, guide: target };
}
