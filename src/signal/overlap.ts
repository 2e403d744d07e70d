/** How much of each carrier of one grid lies inside the carriers of another: worked out once for each pair of grids. */
import type { Grid } from "./band.ts";
import { remembered } from "./remember.ts";

/** Pairs of carriers that overlap, in the order of the victim's grid. */
type Overlap = {
  readonly victims: Uint16Array;
  readonly others: Uint16Array;
  /** Share of the other carrier's power inside the victim's noise bandwidth [0..1]. */
  readonly shares: Float64Array;
};

const overlaps = new WeakMap<Grid, WeakMap<Grid, Overlap>>();

/**
 * Power of carriers on `theirs` (each with `powers` [(µV)²]) inside each carrier of a grid [(µV)²]; null when
 * nothing overlaps.
 */
export function powerInside(grid: Grid, theirs: Grid, powers: Float64Array): Float64Array | null {
  const { victims, others, shares } = overlapOf(grid, theirs);
  if (victims.length === 0) return null;
  const power = new Float64Array(grid.centre.length);
  for (let k = 0; k < victims.length; k++) {
    const i = victims[k] ?? 0;
    power[i] = (power[i] ?? 0) + (powers[others[k] ?? 0] ?? 0) * (shares[k] ?? 0);
  }
  return power;
}

function overlapOf(grid: Grid, theirs: Grid): Overlap {
  const ofGrid = remembered(overlaps, grid, () => new WeakMap<Grid, Overlap>());
  return remembered(ofGrid, theirs, () => found(grid, theirs));
}

function found(grid: Grid, theirs: Grid): Overlap {
  const victims: number[] = [];
  const others: number[] = [];
  const shares: number[] = [];
  let start = 0;
  const widest = theirs.width.reduce((m, w) => Math.max(m, w), 0);
  for (let i = 0; i < grid.centre.length; i++) {
    const half = (grid.plan[grid.index[i] ?? 0]?.noiseMHz ?? 0) / 2;
    const from = (grid.centre[i] ?? 0) - half;
    const to = (grid.centre[i] ?? 0) + half;
    // Both grids rise in frequency: whatever ends before this carrier is of no use to the next one either.
    while (start < theirs.centre.length && (theirs.centre[start] ?? 0) + widest / 2 < from) start++;
    for (let j = start; j < theirs.centre.length; j++) {
      const f = theirs.centre[j] ?? 0;
      if (f - widest / 2 > to) break;
      const width = theirs.width[j] ?? 0;
      const inside = Math.min(to, f + width / 2) - Math.max(from, f - width / 2);
      if (inside <= 0 || width <= 0) continue;
      victims.push(i);
      others.push(j);
      shares.push(Math.min(1, inside / width));
    }
  }
  return {
    victims: Uint16Array.from(victims),
    others: Uint16Array.from(others),
    shares: Float64Array.from(shares),
  };
}

/** Powers of a band, carrier by carrier [(µV)²]. */
export function powersOfBand({ level }: { readonly level: Float64Array }): Float64Array {
  return level.map((dbuv) => 10 ** (dbuv / 10));
}
