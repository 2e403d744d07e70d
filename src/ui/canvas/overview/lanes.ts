/** Upright stretches of lines between two columns, side by side so that none lies on another. */
import type { Segment } from "./columns.ts";
import { END_GAP_PX, STRAIGHT_PX } from "./sizes.ts";

export type Lanes = { readonly lanes: ReadonlyMap<Segment, number>; readonly count: number };

/** Lines that rise turn off the sooner the higher they begin, lines that fall the lower: so they do not cross. */
export function laneOrder(segments: readonly Segment[]): Lanes {
  const bent = segments.filter((s) => Math.abs(s.from - s.to) > STRAIGHT_PX);
  const rising = bent.filter((s) => s.to < s.from).sort((a, b) => a.from - b.from);
  const falling = bent.filter((s) => s.to > s.from).sort((a, b) => b.from - a.from);
  const lanes = new Map<Segment, number>();
  const taken: (readonly [number, number])[][] = [];
  for (const set of [rising, falling]) {
    let least = 0;
    for (const segment of set) {
      const span = [Math.min(segment.from, segment.to), Math.max(segment.from, segment.to)] as const;
      let lane = least;
      while (taken[lane]?.some(([a, b]) => span[0] < b + END_GAP_PX && a < span[1] + END_GAP_PX)) lane++;
      taken[lane] = [...(taken[lane] ?? []), span];
      lanes.set(segment, lane);
      least = lane;
    }
  }
  return { lanes, count: taken.length };
}
