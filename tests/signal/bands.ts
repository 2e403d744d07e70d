/** Bands made by hand, for tests of what happens to them: carriers as wide as their noise bandwidth, in one mode. */
import type { Band, Grid } from "../../src/signal/band.ts";
import type { Carrier, Service } from "../../src/signal/carrier.ts";
import type { Condition, Feed, SwitchState } from "../../src/signal/control.ts";
import { makeGrid, uncut, undisturbed } from "../../src/signal/grid.ts";

/** Needs 18.7 dB (NorDig Unified 2.2, as quoted in a public table). */
export const MODE = "dvbt-64qam-2/3";

export function carrierAt(airMHz: number, widthMHz = 8, mode = MODE): Carrier {
  return { name: String(airMHz), airMHz, widthMHz, noiseMHz: widthMHz, mode };
}

export function gridOf(centresMHz: readonly number[], widthMHz = 8): Grid {
  return makeGrid(centresMHz.map((f) => carrierAt(f, widthMHz)));
}

export type BandSketch = {
  /** Part and key of the origin. */
  readonly from?: string;
  readonly service?: Service;
  readonly grid?: Grid;
  /** Level of each carrier, or of all of them [dBµV]. */
  readonly level?: number | readonly number[];
  /** Noise and interference of each carrier, or of all of them [(µV)²]. */
  readonly noise?: number | readonly number[];
  readonly interference?: number | readonly number[];
  readonly conditions?: readonly Condition[];
  readonly more?: Partial<Band>;
};

export function bandOf(sketch: BandSketch = {}): Band {
  const { from = "aerial", service = "tv", grid = gridOf([474]), level = 60, noise = 0 } = sketch;
  const each = (values: number | readonly number[]) =>
    Float64Array.from(grid.centre, (_, i) => (typeof values === "number" ? values : (values[i] ?? 0)));
  const { conditions = [] } = sketch;
  return {
    origin: { key: from, service, part: from },
    grid,
    level: each(level),
    noise: each(noise),
    interference: sketch.interference === undefined ? undisturbed(grid) : each(sketch.interference),
    cut: uncut(grid),
    cuts: [],
    shifts: [],
    conditions,
    selected: conditions.every((c) => c.at.setting === c.setting),
    ...sketch.more,
  };
}

/** A switched output "part/out" and how it stands. */
export function switchAt(part: string, setting: string | null, offers: Feed = []): SwitchState {
  return {
    id: `${part}/out`,
    part,
    port: "out",
    offers,
    setting,
    thresholdVolts: 15,
    contested: false,
  };
}

/** A stacking stage that adds no noise and holds its level whatever comes in. */
export const IDEAL_STAGE = { levelDbuv: 80, leastDbuv: -100, noiseFigureDb: 0 };
