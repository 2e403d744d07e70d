/** Bringing bands together on one wire: they pass through each other, and may disturb each other. */
import type { Band, Grid } from "./band.ts";
import { undisturbed } from "./grid.ts";
import { carrierToDb } from "./readout.ts";
import { remembered } from "./remember.ts";
import { exclusive, worldOf } from "./treat.ts";

/** A live carrier is worth a word when the interferer is less than this much below what would be harmless. [dB] */
const NEGLIGIBLE_DB = 20;

/** One band disturbed by another where they first meet. */
export type Clash = {
  readonly victim: Band;
  readonly other: Band;
  /** The same signal by two ways. */
  readonly echo: boolean;
  /** Positions of live victim carriers whose C/I is within 20 dB of the C/N they need. */
  readonly carriers: readonly number[];
  /** C/I of each of these against this other band alone [dB]. */
  readonly ciDb: readonly number[];
  readonly fromMHz: number;
  readonly toMHz: number;
};

export type Combined = { readonly bands: readonly Band[]; readonly clashes: readonly Clash[] };

/**
 * Puts groups of bands onto one wire. Bands of one group came in together and have met before;
 * bands of different groups add interference to each other, by the share of the other's power
 * that lies inside a carrier's noise bandwidth. Alternatives of one switch never disturb each other,
 * and a victim suffers from the worst setting of any other switch. Noise floors disturb, but nothing disturbs them.
 */
export function combine(groups: readonly (readonly Band[])[]): Combined {
  const filled = groups.filter((g) => g.length > 0);
  const only = filled[0];
  if (filled.length <= 1) return { bands: only ?? [], clashes: [] };

  const clashes: Clash[] = [];
  const bands: Band[] = [];
  for (const group of filled) {
    const foreign = filled.filter((g) => g !== group).flat();
    for (const victim of group) bands.push(victim.isFloor ? victim : disturbed(victim, foreign, clashes));
  }
  return { bands, clashes };
}

function disturbed(victim: Band, foreign: readonly Band[], clashes: Clash[]): Band {
  const near = foreign.filter((other) => touches(victim.grid, other.grid) && !exclusive(victim, other));
  if (near.length === 0) return victim;

  const always = new Float64Array(victim.grid.centre.length);
  // For every switch, the interference of each of its settings; only one of them can be there at a time.
  const bySwitch = new Map<string, Map<string, Float64Array>>();
  const found: { other: Band; echo: boolean; power: Float64Array }[] = [];
  for (const other of near) {
    const power = powerInside(victim.grid, other);
    if (!power) continue;
    const echo = other.origin.key === victim.origin.key && sameShifts(victim, other);
    found.push({ other, echo, power });
    // Echoes are reported, not added: what they do depends on their delay, which the model does not know.
    if (!echo) add(settingSlot(other, bySwitch, always), power);
  }
  if (found.length === 0) return victim;

  for (const settings of bySwitch.values()) add(always, worst([...settings.values()]));
  const interference = always.some((x) => x > 0)
    ? victim.interference.map((x, i) => x + (always[i] ?? 0))
    : victim.interference;
  const band = interference === victim.interference ? victim : { ...victim, interference };
  for (const hit of found) {
    const clash = asClash(band, hit);
    if (clash) clashes.push(clash);
  }
  return band;
}

function touches(a: Grid, b: Grid): boolean {
  return a.fromMHz < b.toMHz && b.fromMHz < a.toMHz;
}

function sameShifts(a: Band, b: Band): boolean {
  return a.shifts.length === b.shifts.length && a.shifts.every((lo, i) => lo === b.shifts[i]);
}

/** Power of `other` inside each carrier of a grid [(µV)²]; null when nothing overlaps. */
function powerInside(grid: Grid, other: Band): Float64Array | null {
  const theirs = other.grid;
  let power: Float64Array | null = null;
  let start = 0;
  const widest = theirs.width.reduce((m, w) => Math.max(m, w), 0);
  for (let i = 0; i < grid.centre.length; i++) {
    const half = noiseMHz(grid, i) / 2;
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
      power ??= new Float64Array(grid.centre.length);
      power[i] = (power[i] ?? 0) + 10 ** ((other.level[j] ?? 0) / 10) * Math.min(1, inside / width);
    }
  }
  return power;
}

function settingSlot(
  other: Band,
  bySwitch: Map<string, Map<string, Float64Array>>,
  always: Float64Array,
): Float64Array {
  const first = other.conditions[0];
  if (!first) return always;
  const settings = remembered(bySwitch, first.at.id, () => new Map<string, Float64Array>());
  return remembered(settings, worldOf(other), () => new Float64Array(always.length));
}

function add(to: Float64Array, what: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = (to[i] ?? 0) + (what[i] ?? 0);
}

function worst(settings: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(settings[0]?.length ?? 0);
  for (const s of settings) for (let i = 0; i < out.length; i++) out[i] = Math.max(out[i] ?? 0, s[i] ?? 0);
  return out;
}

function asClash(victim: Band, hit: { other: Band; echo: boolean; power: Float64Array }): Clash | null {
  const { grid } = victim;
  const carriers: number[] = [];
  const ciDb: number[] = [];
  let fromMHz = Number.POSITIVE_INFINITY;
  let toMHz = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < grid.centre.length; i++) {
    const power = hit.power[i] ?? 0;
    if (power <= 0 || victim.cut[i]) continue;
    const carrierToInterferer = carrierToDb(victim.level[i] ?? 0, power);
    if (carrierToInterferer > (grid.required[i] ?? 0) + NEGLIGIBLE_DB) continue;
    carriers.push(i);
    ciDb.push(carrierToInterferer);
    fromMHz = Math.min(fromMHz, (grid.centre[i] ?? 0) - (grid.width[i] ?? 0) / 2);
    toMHz = Math.max(toMHz, (grid.centre[i] ?? 0) + (grid.width[i] ?? 0) / 2);
  }
  if (carriers.length === 0) return null;
  return { victim, other: hit.other, echo: hit.echo, carriers, ciDb, fromMHz, toMHz };
}

function noiseMHz(grid: Grid, i: number): number {
  return grid.plan[grid.index[i] ?? 0]?.noiseMHz ?? 0;
}

/** True for a band that something disturbs. */
export function isDisturbed(band: Band): boolean {
  return band.interference !== undisturbed(band.grid);
}
