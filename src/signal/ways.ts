/** One signal that reaches a point by several ways: there it is one band, whose powers add. */
import type { Band, Grid } from "./band.ts";
import { makeGrid, uncut, undisturbed } from "./grid.ts";
import { remembered } from "./remember.ts";
import { conditionsKey, pickCarriers } from "./treat.ts";

/** A band where groups come together: itself, or what its copies in several groups add up to. */
export type Arrived = {
  readonly band: Band;
  /** Numbers of the groups that it came in with, rising. */
  readonly groups: readonly number[];
  /** What came in with each of these. */
  readonly copies: readonly Band[];
};

/** A band, and the number of the group that it came in with. */
type Copy = { readonly band: Band; readonly group: number };

/**
 * Puts the copies of every signal together: bands of one origin, through the same conversions, under the same
 * settings of switches. So there are never more bands on a wire than sources, conversions and switches make,
 * however many ways lead to it. In the order in which they first appear.
 */
export function joinWays(groups: readonly (readonly Band[])[]): readonly Arrived[] {
  const bySignal = new Map<string, Copy[]>();
  groups.forEach((group, g) => {
    for (const band of group) remembered(bySignal, signalKey(band), () => []).push({ band, group: g });
  });
  return [...bySignal.values()].flatMap((copies) => {
    const grid = copies[0]?.band.grid;
    return copies.every(({ band }) => band.grid === grid) ? [arrivedOf(copies)] : byCarrier(copies);
  });
}

function arrivedOf(from: readonly Copy[]): Arrived {
  const copies = from.map(({ band }) => band);
  return {
    band: copies.length === 1 && copies[0] ? copies[0] : sumOf(copies),
    groups: [...new Set(from.map(({ group }) => group))],
    copies,
  };
}

/**
 * Aerials of one transmitter need not list the same of its channels. Carriers that come by the same ways make one
 * band: what each has met before depends on the ways it came.
 */
function byCarrier(copies: readonly Copy[]): readonly Arrived[] {
  const ways = new Map<number, number[]>();
  copies.forEach(({ band }, c) => {
    for (const entry of band.grid.index) remembered(ways, entry, () => []).push(c);
  });
  const together = new Map<string, { ways: readonly number[]; entries: number[] }>();
  for (const [entry, by] of ways)
    remembered(together, by.join(), () => ({ ways: by, entries: [] })).entries.push(entry);
  return [...together.values()].map(({ ways: by, entries }) => {
    const came = by.flatMap((c) => copies[c] ?? []);
    const grid = came[0] && gridOfEntries(came[0].band.grid, entries);
    return arrivedOf(
      grid ? came.map(({ band, group }) => ({ band: pickCarriers(band, grid), group })) : came,
    );
  });
}

/** The same grid where it holds nothing else. */
function gridOfEntries(grid: Grid, entries: readonly number[]): Grid {
  return grid.index.length === entries.length
    ? grid
    : makeGrid(
        grid.plan,
        entries.toSorted((a, b) => a - b),
      );
}

const gridNumbers = new WeakMap<Grid, number>();
let lastGridNumber = 0;

/** Bands with the same key are one signal: its ways differ in nothing but what they cost. */
function signalKey(band: Band): string {
  // Of a transmitter an entry of the plan means the same in every grid.
  const grid =
    band.origin.transmitter === undefined ? remembered(gridNumbers, band.grid, () => ++lastGridNumber) : 0;
  const kind = band.isFloor ? "floor" : (band.half ?? "");
  return `${band.origin.key}|${kind}|${grid}|${band.shifts.join()}|${conditionsKey(band)}`;
}

/**
 * Copies of one signal as one band. Levels, noise, interference and products add by power: what each did to the other's
 * carriers on its own way is in its interference already. Where they cancel is not known; that they meet is reported.
 * Every way brings the thermal noise of a matched line with it, which is there but once.
 */
function sumOf(copies: readonly Band[]): Band {
  const strongest = copies.reduce((a, b) => (meanLevel(b) > meanLevel(a) ? b : a));
  const { grid } = strongest;
  const n = grid.centre.length;
  const level = new Float64Array(n);
  const noise = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let highest = Number.NEGATIVE_INFINITY;
    for (const copy of copies) highest = Math.max(highest, copy.level[i] ?? 0);
    // Relative to the highest, so that what is far below any meter's reach stays a number.
    let power = 0;
    let excess = 0;
    let mostNoise = 0;
    const thermal = grid.ktb[i] ?? 0;
    for (const copy of copies) {
      const own = copy.noise[i] ?? 0;
      power += 10 ** (((copy.level[i] ?? 0) - highest) / 10);
      excess += own - thermal;
      mostNoise = Math.max(mostNoise, own);
    }
    level[i] = highest + 10 * Math.log10(power);
    noise[i] = Math.max(mostNoise, thermal + excess);
  }
  // Whoever wants it by one way wants it.
  const { origin } = copies.find((copy) => copy.origin.service !== "distant") ?? strongest;
  return {
    ...strongest,
    origin: strongest.origin.service === "distant" ? origin : strongest.origin,
    level,
    noise: strongest.isFloor ? undisturbed(grid) : noise,
    interference: sumOfInterference(copies),
    ...sumOfProducts(copies),
    ...sharedCuts(copies, strongest),
  };
}

function meanLevel({ level }: Band): number {
  let sum = 0;
  for (const one of level) sum += one;
  return level.length > 0 ? sum / level.length : Number.NEGATIVE_INFINITY;
}

function sumOfInterference(copies: readonly Band[]): Float64Array {
  const { grid } = copies[0] ?? { grid: undefined };
  if (!grid) return new Float64Array();
  const none = undisturbed(grid);
  const disturbed = copies.filter((copy) => copy.interference !== none);
  if (disturbed.length === 0) return none;
  const sum = new Float64Array(grid.centre.length);
  for (const { interference } of disturbed)
    for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] ?? 0) + (interference[i] ?? 0);
  return sum;
}

/** Products of independent ways have no fixed phase to each other: their powers add. */
function sumOfProducts(copies: readonly Band[]): Pick<Band, "products"> {
  let sum: Float64Array | undefined;
  for (const { products, level } of copies) {
    if (!products) continue;
    sum ??= new Float64Array(level.length);
    for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] ?? 0) + (products[i] ?? 0);
  }
  return sum ? { products: sum } : {};
}

/** A carrier is cut where every way has cut it, and then for the reason on the strongest way. */
function sharedCuts(copies: readonly Band[], strongest: Band): Pick<Band, "cut" | "cuts"> {
  const { grid, cut, cuts } = strongest;
  if (cut === uncut(grid)) return { cut, cuts };
  const isLiveElsewhere = cut.some((mark, i) => mark !== 0 && copies.some((copy) => copy.cut[i] === 0));
  if (!isLiveElsewhere) return { cut, cuts };
  const marks = cut.map((mark, i) => (copies.some((copy) => copy.cut[i] === 0) ? 0 : mark));
  return marks.some((mark) => mark !== 0) ? { cut: marks, cuts } : { cut: uncut(grid), cuts: [] };
}
