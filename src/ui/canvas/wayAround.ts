/**
 * A way round whatever stands between, with as many bends as it takes: the cheapest over a net of lines that run
 * beside the boxes. Asked only where no way of few bends is free.
 */
import type { BoxIndex } from "./boxIndex.ts";
import type { Point } from "./layout.ts";
import { CLEARANCE_PX, STUB_PX, type Way } from "./way.ts";

/** How far beyond its ends a wire looks for a way [px]. */
const MARGIN_PX = 240;
/** What a bend costs, as pixels of detour. */
const BEND_COST = 40;
/** After so many crossings of the net were tried for one wire, straight through is the answer. */
const MOST_TRIED = 4000;
/** Lines of the net nearer than this are one [px]. */
const MERGED_PX = 3;

/** Crossings of the net that may still be tried for all wires of a design together: a crowded one must not freeze. */
export type Patience = { left: number };
export const PATIENCE = 20_000;

export function wayAround(from: Point, to: Point, boxes: BoxIndex, patience: Patience): Way | null {
  const start: Point = { x: from.x + STUB_PX, y: from.y };
  const goal: Point = { x: to.x - STUB_PX, y: to.y };
  const area = {
    left: Math.min(start.x, goal.x) - MARGIN_PX,
    right: Math.max(start.x, goal.x) + MARGIN_PX,
    top: Math.min(start.y, goal.y) - MARGIN_PX,
    bottom: Math.max(start.y, goal.y) + MARGIN_PX,
  };
  const near = boxes.within(area);
  const room = 2 * CLEARANCE_PX;
  const xs = linesAt(
    [start.x, goal.x],
    near.flatMap((b) => [b.x - STUB_PX, b.x + b.width + STUB_PX]),
  );
  const ys = linesAt(
    [start.y, goal.y],
    near.flatMap((b) => [b.y - room, b.y + b.height + room]),
  );
  const found = cheapest({ xs, ys, start, goal, boxes }, patience);
  return found && asWay(from, to, found);
}

/** Lines through the ends, and of the others those that are not beside one already. */
function linesAt(ends: readonly number[], others: readonly number[]): number[] {
  const lines = [...ends];
  for (const value of [...new Set(others)].sort((a, b) => a - b)) {
    const last = lines.at(-1);
    const isNew = !ends.some((end) => Math.abs(end - value) < MERGED_PX);
    if (isNew && (lines.length === ends.length || value - (last ?? 0) >= MERGED_PX)) lines.push(value);
  }
  return [...new Set(lines)].sort((a, b) => a - b);
}

type Net = {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly start: Point;
  readonly goal: Point;
  readonly boxes: BoxIndex;
};

/** Corners from start to goal. A state is a crossing of the net and whether the wire came level or upright. */
function cheapest({ xs, ys, start, goal, boxes }: Net, patience: Patience): Point[] | null {
  const stateOf = (column: number, row: number, upright: number) => (row * xs.length + column) * 2 + upright;
  const columnOf = (state: number) => (state >> 1) % xs.length;
  const rowOf = (state: number) => Math.floor((state >> 1) / xs.length);
  const first = stateOf(xs.indexOf(start.x), ys.indexOf(start.y), 0);
  const last = stateOf(xs.indexOf(goal.x), ys.indexOf(goal.y), 0);
  const cost = new Map([[first, 0]]);
  const before = new Map<number, number>();
  const done = new Set<number>();
  const open = new Queue();
  open.add(first, 0);
  for (let tried = 0; tried < MOST_TRIED && patience.left > 0; tried++) {
    patience.left--;
    const state = open.take();
    if (state === null) return null;
    if (state === last) return traced(state);
    if (done.has(state)) continue;
    done.add(state);
    const [column, row, came] = [columnOf(state), rowOf(state), state & 1];
    for (const [right, down] of STEPS) {
      const x = xs[column + right];
      const y = ys[row + down];
      if (x === undefined || y === undefined) continue;
      const upright = right === 0 ? 1 : 0;
      const next = stateOf(column + right, row + down, upright);
      if (done.has(next) || !isFree(xs[column] ?? 0, ys[row] ?? 0, x, y)) continue;
      const step = Math.abs(x - (xs[column] ?? 0)) + Math.abs(y - (ys[row] ?? 0));
      const sum = (cost.get(state) ?? 0) + step + (upright === came ? 0 : BEND_COST);
      if (sum >= (cost.get(next) ?? Number.POSITIVE_INFINITY)) continue;
      cost.set(next, sum);
      before.set(next, state);
      open.add(next, sum + Math.abs(goal.x - x) + Math.abs(goal.y - y));
    }
  }
  return null;

  function isFree(x1: number, y1: number, x2: number, y2: number): boolean {
    return boxes.isFree({
      left: Math.min(x1, x2) - 1,
      right: Math.max(x1, x2) + 1,
      top: Math.min(y1, y2) - 1,
      bottom: Math.max(y1, y2) + 1,
    });
  }

  function traced(end: number): Point[] {
    const corners: Point[] = [];
    for (let state: number | undefined = end; state !== undefined; state = before.get(state)) {
      corners.unshift({ x: xs[columnOf(state)] ?? 0, y: ys[rowOf(state)] ?? 0 });
    }
    return corners;
  }
}

const STEPS = [
  [1, 0],
  [0, 1],
  [0, -1],
  [-1, 0],
] as const;

/** Level and upright stretches in turn, level ones at both ends. */
function asWay(from: Point, to: Point, corners: readonly Point[]): Way {
  const uprights: number[] = [];
  const levels: number[] = [from.y];
  for (const [i, corner] of corners.entries()) {
    const next = corners[i + 1];
    if (!next || next.x !== corner.x) continue;
    if (uprights.at(-1) === corner.x) levels[levels.length - 1] = next.y;
    else {
      uprights.push(corner.x);
      levels.push(next.y);
    }
  }
  levels[levels.length - 1] = to.y;
  return { uprights, levels };
}

/** What is cheapest comes first. */
class Queue {
  readonly #items: { state: number; cost: number }[] = [];

  add(state: number, cost: number): void {
    const items = this.#items;
    let at = items.length;
    items.push({ state, cost });
    while (at > 0) {
      const up = (at - 1) >> 1;
      const above = items[up];
      if (!above || above.cost <= cost) break;
      items[at] = above;
      at = up;
    }
    items[at] = { state, cost };
  }

  take(): number | null {
    const items = this.#items;
    const [top] = items;
    const moved = items.pop();
    if (!top || !moved) return null;
    if (items.length === 0) return top.state;
    let at = 0;
    for (;;) {
      const [a, b] = [items[2 * at + 1], items[2 * at + 2]];
      const child = a && b && b.cost < a.cost ? 2 * at + 2 : 2 * at + 1;
      const below = items[child];
      if (!below || below.cost >= moved.cost) break;
      items[at] = below;
      at = child;
    }
    items[at] = moved;
    return top.state;
  }
}
