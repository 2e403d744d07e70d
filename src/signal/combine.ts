/** Bringing bands together on one wire: they pass through each other, and may disturb each other. */
import type { Band, Grid } from "./band.ts";
import { undisturbed } from "./grid.ts";
import { powerInside } from "./overlap.ts";
import { carrierToDb } from "./readout.ts";
import { remembered } from "./remember.ts";
import { conditionsKey, exclusive, isSameWay } from "./treat.ts";
import { type Arrived, joinWays } from "./ways.ts";

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

export type Combined = {
  readonly bands: readonly Band[];
  readonly clashes: readonly Clash[];
  /** What it took: how many times a band was held against others with the same carriers. */
  readonly work: number;
};

/**
 * Of bands with the same carriers under the same settings, at most so many are named as disturbers of one victim:
 * the strongest. What the others do is in the interference all the same.
 */
const MOST_NAMED = 4;

/**
 * Puts groups of bands onto one wire. Copies of one signal become one band (`joinWays`), and that they meet is noted.
 * Bands of one group came in together and have met before; bands of different groups add interference to each
 * other, by the share of the other's power that lies inside a carrier's noise bandwidth. Alternatives of one switch
 * never disturb each other, and a victim suffers from the worst setting of any other switch. Noise floors
 * disturb, but nothing disturbs them.
 */
export function combine(groups: readonly (readonly Band[])[]): Combined {
  const filled = groups.filter((g) => g.length > 0);
  const only = filled[0];
  if (filled.length <= 1) return { bands: only ?? [], clashes: [], work: 0 };

  // What stands side by side and comes from different sources, as terrestrial and satellite do, has nothing to meet.
  if (standApart(filled) && !shareSources(filled)) return { bands: filled.flat(), clashes: [], work: 0 };

  const clashes: Clash[] = [];
  const byGroup = filled.map(disturbersOf);
  let work = 0;
  const bands = joinWays(filled).map((arrived) => {
    if (arrived.band.isFloor) return arrived.band;
    for (const clash of echoesOf(arrived)) clashes.push(clash);
    const foreign = byGroup.flatMap((disturbers, g) => (arrived.groups.includes(g) ? [] : disturbers));
    work += foreign.length;
    return disturbed(arrived.band, foreign, clashes);
  });
  return { bands, clashes, work };
}

/** Whether no group reaches into the range of another. */
function standApart(groups: readonly (readonly Band[])[]): boolean {
  const ranges = groups.map((group) => {
    let fromMHz = Number.POSITIVE_INFINITY;
    let toMHz = Number.NEGATIVE_INFINITY;
    for (const { grid } of group) {
      fromMHz = Math.min(fromMHz, grid.fromMHz);
      toMHz = Math.max(toMHz, grid.toMHz);
    }
    return { fromMHz, toMHz };
  });
  return ranges.every((a, i) => ranges.every((b, j) => j <= i || !touches(a, b)));
}

/** Whether bands of one origin came in with several groups. */
function shareSources(groups: readonly (readonly Band[])[]): boolean {
  const seen = new Map<string, readonly Band[]>();
  for (const group of groups)
    for (const { origin } of group) {
      const other = seen.get(origin.key);
      if (other && other !== group) return true;
      seen.set(origin.key, group);
    }
  return false;
}

/** The copies of one signal beside its strongest, where they are strong enough to be worth a word. */
function echoesOf({ copies }: Arrived): readonly Clash[] {
  if (copies.length < 2) return [];
  const [strongest, ...others] = [...copies].sort((a, b) => totalPower(b) - totalPower(a));
  if (!strongest) return [];
  return others.flatMap((other) => {
    const power = powerInside(strongest.grid, other.grid, powersOf([other]));
    return (power && asClash(strongest, { other, echo: true, power })) ?? [];
  });
}

/** Bands of one group with the same carriers under the same settings: what they do to others is worked out once. */
type Disturber = {
  /** Strongest first. */
  readonly members: readonly Band[];
  readonly byOrigin: ReadonlyMap<string, readonly Band[]>;
  /** Stands for all of them in what they have in common. */
  readonly example: Band;
  /** Their powers together [(µV)²], carrier by carrier. */
  readonly power: Float64Array;
  /** The same inside the carriers of a victim's grid. */
  readonly inside: Map<Grid, Float64Array | null>;
};

function disturbersOf(group: readonly Band[]): readonly Disturber[] {
  const byGrid = new Map<Grid, Map<string, Band[]>>();
  for (const band of group) {
    const worlds = remembered(byGrid, band.grid, () => new Map<string, Band[]>());
    remembered(worlds, `${band.isFloor ?? ""}${conditionsKey(band)}`, () => []).push(band);
  }
  const disturbers: Disturber[] = [];
  for (const worlds of byGrid.values())
    for (const members of worlds.values()) {
      const [example] = members;
      if (!example) continue;
      members.sort((a, b) => totalPower(b) - totalPower(a));
      const byOrigin = new Map<string, Band[]>();
      for (const band of members) remembered(byOrigin, band.origin.key, () => []).push(band);
      disturbers.push({ members, byOrigin, example, power: powersOf(members), inside: new Map() });
    }
  return disturbers;
}

/** Powers of bands on one grid, carrier by carrier [(µV)²]. */
function powersOf(bands: readonly Band[]): Float64Array {
  const sum = new Float64Array(bands[0]?.level.length ?? 0);
  for (const { level } of bands)
    for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] ?? 0) + 10 ** ((level[i] ?? 0) / 10);
  return sum;
}

function totalPower({ level }: Band): number {
  let sum = 0;
  for (const one of level) sum += 10 ** (one / 10);
  return sum;
}

function disturbed(victim: Band, foreign: readonly Disturber[], clashes: Clash[]): Band {
  const near = foreign.filter(
    ({ example }) => touches(victim.grid, example.grid) && !exclusive(victim, example),
  );
  if (near.length === 0) return victim;

  const always = new Float64Array(victim.grid.centre.length);
  // For every switch, the interference of each of its settings; only one of them can be there at a time.
  const bySwitch = new Map<string, Map<string, Float64Array>>();
  const found: Hit[] = [];
  for (const disturber of near) {
    const { example, members, byOrigin } = disturber;
    const echoes = (byOrigin.get(victim.origin.key) ?? []).filter((other) => isSameWay(victim, other));
    const others = echoes.length > 0 ? members.filter((other) => !echoes.includes(other)) : members;
    const inside = (bands: readonly Band[]) => powerInside(victim.grid, example.grid, powersOf(bands));
    // Of the same signal under other settings it is only said that they meet.
    const power =
      echoes.length > 0
        ? inside(others)
        : remembered(disturber.inside, victim.grid, () =>
            powerInside(victim.grid, example.grid, disturber.power),
          );
    if (power) add(settingSlot(example, bySwitch, always), power);
    for (const [list, echo] of [
      [others, false],
      [echoes, true],
    ] as const)
      for (const other of list.slice(0, MOST_NAMED)) {
        const own = power && !echo && others.length === 1 ? power : inside([other]);
        if (own) found.push({ other, echo, power: own });
      }
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

function touches(a: Pick<Grid, "fromMHz" | "toMHz">, b: Pick<Grid, "fromMHz" | "toMHz">): boolean {
  return a.fromMHz < b.toMHz && b.fromMHz < a.toMHz;
}

function settingSlot(
  other: Band,
  bySwitch: Map<string, Map<string, Float64Array>>,
  always: Float64Array,
): Float64Array {
  const first = other.conditions[0];
  if (!first) return always;
  const settings = remembered(bySwitch, first.at.id, () => new Map<string, Float64Array>());
  return remembered(settings, conditionsKey(other), () => new Float64Array(always.length));
}

function add(to: Float64Array, what: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = (to[i] ?? 0) + (what[i] ?? 0);
}

function worst(settings: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(settings[0]?.length ?? 0);
  for (const s of settings) for (let i = 0; i < out.length; i++) out[i] = Math.max(out[i] ?? 0, s[i] ?? 0);
  return out;
}

type Hit = { readonly other: Band; readonly echo: boolean; readonly power: Float64Array };

function asClash(victim: Band, hit: Hit): Clash | null {
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

/** True for a band that something disturbs. */
export function isDisturbed(band: Band): boolean {
  return band.interference !== undisturbed(band.grid);
}
