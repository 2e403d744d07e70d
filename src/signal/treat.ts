/** What happens to one band on its way through a part. */
import { noiseFactor } from "../rf/noise.ts";
import type { Band, Cut, Grid } from "./band.ts";
import type { Carrier, Origin } from "./carrier.ts";
import type { Condition } from "./control.ts";
import { zeros } from "./floats.ts";
import { gainTable } from "./gain.ts";
import { makeGrid, pickFromGrid, uncut, undisturbed } from "./grid.ts";
import { remembered } from "./remember.ts";
import type { Response } from "./response.ts";

/** A band as its source puts it on the wire. `noiseKelvin`: noise temperature of the source [K], where it is not the same for all by carrier. */
export function sourceBand(o: {
  origin: Origin;
  grid: Grid;
  /** Level of a carrier [dBµV into 75 Ω]. */
  levelDbuv: (carrier: Carrier, planIndex: number) => number;
  noiseKelvin: number | ((carrier: Carrier) => number);
}): Band {
  const { grid, origin, noiseKelvin } = o;
  const kelvinAt = (i: number) => {
    if (typeof noiseKelvin === "number") return noiseKelvin;
    const carrier = grid.plan[grid.index[i] ?? 0];
    return carrier ? noiseKelvin(carrier) : 0;
  };
  const level = grid.centre.map((_, i) => {
    const planIndex = grid.index[i] ?? 0;
    const carrier = grid.plan[planIndex];
    return carrier ? o.levelDbuv(carrier, planIndex) : 0;
  });
  return {
    origin,
    grid,
    level,
    noise: grid.ktb.map((ktb, i) => (ktb * kelvinAt(i)) / 290),
    interference: undisturbed(grid),
    cut: uncut(grid),
    cuts: [],
    shifts: [],
    conditions: [],
    selected: true,
  };
}

/**
 * Takes the carriers centred in a range, moves them down by a local oscillator, or up where `loMHz` is negative; null
 * when none is left. `isInverted`: the oscillator stands above them.
 */
export function convertBand(
  band: Band,
  o: { fromMHz: number; toMHz: number; loMHz: number; half?: "low" | "high"; isInverted?: boolean },
): Band | null {
  const { grid, positions } = pickFromGrid(band.grid, o);
  if (positions.length === 0) return null;
  const moved = o.loMHz !== 0 ? [...band.shifts, o.loMHz] : band.shifts;
  const half = o.half ? { half: o.half } : {};
  if (grid === band.grid) return { ...band, ...half };
  const inverted = o.isInverted ? { isInverted: true as const } : {};
  return { ...onGrid(band, grid, positions), ...half, ...inverted, shifts: moved };
}

/** A band with some of its carriers, on the grid of these. */
function onGrid(band: Band, grid: Grid, positions: Uint16Array): Band {
  return {
    ...band,
    ...(band.products ? { products: taken(band.products, positions) } : {}),
    ...(band.leakShare ? { leakShare: taken(band.leakShare, positions) } : {}),
    grid,
    level: taken(band.level, positions),
    noise: taken(band.noise, positions),
    interference:
      band.interference === undisturbed(band.grid) ? undisturbed(grid) : taken(band.interference, positions),
    cut: band.cut === uncut(band.grid) ? uncut(grid) : Uint16Array.from(positions, (p) => band.cut[p] ?? 0),
  };
}

/** The carriers of a band whose entries of the plan are in a grid, in its order. */
export function pickCarriers(band: Band, grid: Grid): Band {
  if (grid === band.grid) return band;
  return onGrid(
    band,
    grid,
    Uint16Array.from(grid.index, (entry) => band.grid.index.indexOf(entry)),
  );
}

function taken(values: Float64Array, positions: Uint16Array): Float64Array {
  return Float64Array.from(positions, (p) => values[p] ?? 0);
}

/**
 * Gain, loss and noise on one path.
 * Passive (no noise figure), at 290 K: N' = kTB + g·(N − kTB). Active: N' = g·(N + kTB·(F − 1)).
 * Friis' formula follows from doing this stage by stage; it is coded nowhere.
 */
export function amplifyBand(
  band: Band,
  response: Response,
  o: { part: string; noiseFigureDb?: number },
): Band {
  const { grid } = band;
  const table = gainTable(response, grid);
  const n = grid.centre.length;
  const level = zeros(n);
  const noise = zeros(n);
  const { db, ratio } = table;
  const { ktb } = grid;
  if (o.noiseFigureDb === undefined) {
    for (let i = 0; i < n; i++) {
      const g = ratio[i] ?? 0;
      const own = ktb[i] ?? 0;
      level[i] = (band.level[i] ?? 0) + (db[i] ?? 0);
      noise[i] = g < 1 ? own + g * ((band.noise[i] ?? 0) - own) : g * (band.noise[i] ?? 0);
    }
  } else {
    const added = noiseFactor(o.noiseFigureDb) - 1;
    for (let i = 0; i < n; i++) {
      level[i] = (band.level[i] ?? 0) + (db[i] ?? 0);
      noise[i] = (ratio[i] ?? 0) * ((band.noise[i] ?? 0) + added * (ktb[i] ?? 0));
    }
  }
  const interference =
    band.interference === undisturbed(grid) ? band.interference : weighted(band.interference, ratio);
  // Most bands have no products: for them nothing is made.
  const from = band.products ? { ...band, products: weighted(band.products, ratio) } : band;
  if (!table.cut) return { ...from, level, noise, interference };
  return {
    ...from,
    level,
    noise,
    interference,
    ...cutCarriers(band, table.cut, { part: o.part, reason: "filter" }),
  };
}

function weighted(powers: Float64Array, ratio: Float64Array): Float64Array {
  const out = new Float64Array(powers.length);
  for (let i = 0; i < out.length; i++) out[i] = (powers[i] ?? 0) * (ratio[i] ?? 0);
  return out;
}

/** Marks carriers as cut that were live before; keeps the first reason, and no reason that takes nothing away. */
function cutCarriers(band: Band, cut: Uint8Array, why: Cut): Pick<Band, "cut" | "cuts"> {
  if (!cut.some((now, i) => now !== 0 && band.cut[i] === 0)) return { cut: band.cut, cuts: band.cuts };
  const cuts = [...band.cuts, why];
  const marks = band.cut.map((before, i) => (before !== 0 ? before : cut[i] ? cuts.length : 0));
  return { cut: marks, cuts };
}

/** The same band, present only under a further condition. */
export function underCondition(band: Band, condition: Condition): Band {
  return {
    ...band,
    conditions: [...band.conditions, condition],
    selected: band.selected && condition.at.setting === condition.setting,
  };
}

const worlds = new WeakMap<Band["conditions"], string>();

/** How the switches must stand for a band to be there, as a key; bands with the same key come and go together. */
export function conditionsKey({ conditions }: Band): string {
  if (conditions.length === 0) return "";
  return remembered(worlds, conditions, () => conditions.map((c) => `${c.at.id}=${c.setting}`).join());
}

/** True when two bands can never be on the wire together, because they ask the same switch for different settings. */
export function exclusive(a: Band, b: Band): boolean {
  for (const x of a.conditions)
    for (const y of b.conditions) if (x.at.id === y.at.id && x.setting !== y.setting) return true;
  return false;
}

/**
 * The one oscillator that would put a band where it lies now [MHz], whatever it went through: IF = RF − LO, or of an
 * inverted band LO − RF.
 */
export function oscillatorOf({ shifts, isInverted }: Pick<Band, "shifts" | "isInverted">): number {
  const [first = 0, ...after] = shifts;
  const rest = after.reduce((sum, shift) => sum + shift, 0);
  return isInverted ? first - rest : first + rest;
}

/**
 * Whether a band comes from an output that switches the polarisation alone, and only a fixed voltage of this part reaches
 * that output: so 13 V at VL and 18 V at HL hold an LNB for C band, and nobody can set it otherwise.
 */
export function isSetByVoltsOf(part: string, { conditions }: Band): boolean {
  return (
    conditions.length > 0 &&
    conditions.every(
      ({ setting, at: { offers } }) =>
        /^[VH]$/.test(setting) &&
        offers.length > 0 &&
        offers.every((offer) => offer.kind === "plain" && offer.part === part),
    )
  );
}

/** Of one origin: the same signal if it was converted alike, though other switches may have to stand otherwise. */
export function isSameWay(a: Band, b: Band): boolean {
  return a.shifts.length === b.shifts.length && a.shifts.every((lo, i) => lo === b.shifts[i]);
}

/** Width of the slices that a noise floor is cut into [MHz]. */
const SLICE_MHZ = 100;
/** Noise that a dish picks up from the sky beside the carriers [K]; typical, from memory. */
const SKY_KELVIN = 35;

/** The finer slices below a converter's band, where its noise falls steeply [MHz]. */
const SKIRT_SLICE_MHZ = 20;
/** At this share of the lower edge the noise has fallen by the roll-off: 850 of 950 MHz. */
const ROLL_OFF_AT = 850 / 950;
/** So far the skirt is followed; below it nothing is left of the noise. */
const SKIRT_TO = 0.75;

const floorGrids = new Map<string, Grid>();

/**
 * Noise of a converter and of the sky, referred to its input, in the slices of its IF: a band without carriers.
 * Below its IF it falls by `rollOffDb` [dB] until 0.895 of the edge, and goes on falling as steeply; absent: it ends.
 */
export function noiseFloor(o: {
  part: string;
  fromMHz: number;
  toMHz: number;
  rollOffDb?: number;
  noiseFigureDb: number;
}): Band {
  const hasSkirt = o.rollOffDb !== undefined;
  const grid = remembered(floorGrids, `${o.fromMHz}-${o.toMHz}${hasSkirt ? " and below" : ""}`, () =>
    makeGrid([
      ...(hasSkirt ? slices({ ...skirt(o), sliceMHz: SKIRT_SLICE_MHZ }) : []),
      ...slices({ ...o, sliceMHz: SLICE_MHZ }),
    ]),
  );
  const factor = noiseFactor(o.noiseFigureDb) - 1 + SKY_KELVIN / 290;
  const origin: Origin = { key: `${o.part}/noise`, service: "satellite", part: o.part };
  return floorOn(
    grid,
    origin,
    grid.ktb.map((ktb, i) => 10 * Math.log10(ktb * factor) - fallenDb(o, grid.centre[i] ?? 0)),
  );
}

function floorOn(grid: Grid, origin: Origin, level: Float64Array): Band {
  return {
    origin,
    grid,
    level,
    noise: undisturbed(grid),
    interference: undisturbed(grid),
    cut: uncut(grid),
    cuts: [],
    shifts: [],
    conditions: [],
    selected: true,
    isFloor: true,
  };
}

/** What a source puts out beside its carrier: noise of one level in every slice of a range [dBµV]. */
export function noiseBeside(o: {
  readonly origin: Origin;
  readonly fromMHz: number;
  readonly toMHz: number;
  readonly sliceMHz: number;
  readonly sliceDbuv: number;
}): Band {
  const { fromMHz, toMHz, sliceMHz } = o;
  const grid = remembered(floorGrids, `${fromMHz}-${toMHz}/${sliceMHz}`, () => makeGrid(slices(o)));
  return floorOn(
    grid,
    o.origin,
    grid.centre.map(() => o.sliceDbuv),
  );
}

function skirt({ fromMHz }: { fromMHz: number }): { fromMHz: number; toMHz: number } {
  return { fromMHz: fromMHz * SKIRT_TO, toMHz: fromMHz };
}

/** How much weaker the noise is at a frequency than in the band [dB]. */
function fallenDb(
  { fromMHz, rollOffDb = 0 }: { fromMHz: number; rollOffDb?: number },
  atMHz: number,
): number {
  return Math.max(0, (rollOffDb * (1 - atMHz / fromMHz)) / (1 - ROLL_OFF_AT));
}

function slices(o: { fromMHz: number; toMHz: number; sliceMHz: number }): Carrier[] {
  const { fromMHz, toMHz } = o;
  const count = Math.max(1, Math.round((toMHz - fromMHz) / o.sliceMHz));
  const widthMHz = (toMHz - fromMHz) / count;
  return Array.from({ length: count }, (_, i) => ({
    name: "noise",
    airMHz: fromMHz + widthMHz * (i + 0.5),
    widthMHz,
    noiseMHz: widthMHz,
    mode: "",
  }));
}

/**
 * A floor on its way through a part: gain and loss alone. Noise that the part adds is counted in whatever
 * carriers pass it, so a floor must not bring it along again.
 */
export function passFloor(floor: Band, response: Response): Band {
  const { db } = gainTable(response, floor.grid);
  const level = new Float64Array(db.length);
  for (let i = 0; i < level.length; i++) level[i] = (floor.level[i] ?? 0) + (db[i] ?? 0);
  return { ...floor, level };
}
