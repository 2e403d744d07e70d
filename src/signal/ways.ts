/** One signal that reaches a point by several ways: there it is one band, whose powers add. */
import type { Band } from "./band.ts";
import { uncut, undisturbed } from "./grid.ts";
import { remembered } from "./remember.ts";
import { conditionsKey } from "./treat.ts";

/** A band where groups come together: itself, or what its copies in several groups add up to. */
export type Arrived = {
  readonly band: Band;
  /** Numbers of the groups that it came in with, rising. */
  readonly groups: readonly number[];
  /** What came in with each of these. */
  readonly copies: readonly Band[];
};

/**
 * Puts the copies of every signal together: bands of one origin, through the same conversions, under the same
 * settings of switches. So there are never more bands on a wire than sources, conversions and switches make,
 * however many ways lead to it. In the order in which they first appear.
 */
export function joinWays(groups: readonly (readonly Band[])[]): readonly Arrived[] {
  const bySignal = new Map<string, { groups: number[]; copies: Band[] }>();
  groups.forEach((group, g) => {
    for (const band of group) {
      const found = remembered(bySignal, signalKey(band), () => ({ groups: [], copies: [] }));
      if (found.groups.at(-1) !== g) found.groups.push(g);
      found.copies.push(band);
    }
  });
  return [...bySignal.values()].map(({ groups: from, copies }) => ({
    band: copies.length === 1 && copies[0] ? copies[0] : sumOf(copies),
    groups: from,
    copies,
  }));
}

const gridNumbers = new WeakMap<Band["grid"], number>();
let lastGridNumber = 0;

/** Bands with the same key are one signal: its ways differ in nothing but what they cost. */
function signalKey(band: Band): string {
  const grid = remembered(gridNumbers, band.grid, () => ++lastGridNumber);
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
  return {
    ...strongest,
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
