/** Grids: the frequencies of a band, made once and shared. */
import { thermalNoiseUv2 } from "../rf/noise.ts";
import { requiredCnDb } from "../rf/thresholds.ts";
import type { Grid } from "./band.ts";
import type { Carrier } from "./carrier.ts";
import { remembered } from "./remember.ts";

/**
 * Grids by what their plan says: dishes and aerials with the same plan share one, and with it all gain tables. Whether two
 * bands are one signal is asked by their grids, so a grid that anything still holds is never made again; every value
 * that is typed into a plan makes another, and those that nothing holds any more are given up.
 */
const grids = new Map<string, WeakRef<Grid>>();
/** With so many entries the memory is looked through for grids that are gone. */
const FIRST_CLEARED_AT = 256;
let clearedAt = FIRST_CLEARED_AT;

/**
 * Grid of a plan as it is on air, carriers in rising frequency; the same object for an equal plan.
 * `entries`: those of the plan that are on air; absent, all.
 */
export function makeGrid(plan: readonly Carrier[], entries?: readonly number[]): Grid {
  const key = JSON.stringify(entries ? [entries, plan] : plan);
  const known = grids.get(key)?.deref();
  if (known) return known;
  if (grids.size >= clearedAt) giveUpUnused();
  const made = newGrid(plan, entries ?? [...plan.keys()]);
  grids.set(key, new WeakRef(made));
  return made;
}

function giveUpUnused(): void {
  for (const [key, grid] of grids) if (!grid.deref()) grids.delete(key);
  // Where most are in use, not before as many more have come.
  clearedAt = Math.max(FIRST_CLEARED_AT, 2 * grids.size);
}

function newGrid(plan: readonly Carrier[], entries: readonly number[]): Grid {
  const order = [...entries].sort((a, b) => (plan[a]?.airMHz ?? 0) - (plan[b]?.airMHz ?? 0));
  const centres = order.map((i) => plan[i]?.airMHz ?? 0);
  return gridOf(plan, Uint16Array.from(order), Float64Array.from(centres));
}

/** Part of a grid, and where each of its carriers stood in the original. */
export type Pick = { readonly grid: Grid; readonly positions: Uint16Array };

/** Picks are remembered per grid, so that every output of a converter shares one grid. */
const picks = new WeakMap<Grid, Map<string, Pick>>();

/**
 * The carriers centred in fromMHz (included) to toMHz (excluded), moved down by a local oscillator.
 * IF = RF − LO, no inversion, oscillator below the signal; a negative one moves them up. `isInverted`: IF = LO − RF,
 * oscillator above the signal: what was highest comes out lowest.
 */
export function pickFromGrid(
  grid: Grid,
  o: { fromMHz: number; toMHz: number; loMHz: number; isInverted?: boolean },
): Pick {
  const key = `${o.fromMHz}|${o.toMHz}|${o.loMHz}|${o.isInverted ? "inverted" : ""}`;
  const known = remembered(picks, grid, () => new Map<string, Pick>());
  const found = known.get(key);
  if (found) return found;

  const kept: number[] = [];
  grid.centre.forEach((f, i) => {
    if (f >= o.fromMHz && f < o.toMHz && (o.isInverted ? f < o.loMHz : f > o.loMHz)) kept.push(i);
  });
  if (o.isInverted) kept.reverse();
  const positions = Uint16Array.from(kept);
  const whole = kept.length === grid.centre.length && o.loMHz === 0;
  const pick = whole
    ? { grid, positions }
    : {
        grid: gridOf(
          grid.plan,
          Uint16Array.from(kept, (i) => grid.index[i] ?? 0),
          Float64Array.from(kept, (i) => convertedMHz(grid.centre[i] ?? 0, o)),
        ),
        positions,
      };
  known.set(key, pick);
  return pick;
}

/** Where a frequency comes to lie [MHz]: below it by the oscillator, or where that stands above it, below the oscillator by it. */
export function convertedMHz(
  frequencyMHz: number,
  { loMHz, isInverted }: { readonly loMHz: number; readonly isInverted?: boolean },
): number {
  return isInverted ? loMHz - frequencyMHz : frequencyMHz - loMHz;
}

const zeros = new WeakMap<Grid, Float64Array>();
const noCuts = new WeakMap<Grid, Uint16Array>();

/** The shared "no interference" array of a grid: by its identity a band is known to be undisturbed. */
export function undisturbed(grid: Grid): Float64Array {
  return remembered(zeros, grid, () => new Float64Array(grid.centre.length));
}

/** The shared "nothing cut" array of a grid. */
export function uncut(grid: Grid): Uint16Array {
  return remembered(noCuts, grid, () => new Uint16Array(grid.centre.length));
}

function gridOf(plan: readonly Carrier[], index: Uint16Array, centre: Float64Array): Grid {
  const carrier = (i: number) => plan[index[i] ?? 0];
  const width = centre.map((_, i) => carrier(i)?.widthMHz ?? 0);
  let fromMHz = Number.POSITIVE_INFINITY;
  let toMHz = Number.NEGATIVE_INFINITY;
  centre.forEach((f, i) => {
    fromMHz = Math.min(fromMHz, f - (width[i] ?? 0) / 2);
    toMHz = Math.max(toMHz, f + (width[i] ?? 0) / 2);
  });
  return {
    plan,
    index,
    centre,
    width,
    ktb: centre.map((_, i) => thermalNoiseUv2(carrier(i)?.noiseMHz ?? 0)),
    required: centre.map((_, i) => requiredCnDb(carrier(i)?.mode ?? "")),
    fromMHz: centre.length > 0 ? fromMHz : 0,
    toMHz: centre.length > 0 ? toMHz : 0,
  };
}
