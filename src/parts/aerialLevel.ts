/** What all terrestrial aerials share: how the level is stated, and the band that comes of it. */

import type { z } from "zod";
import type { PatternBand } from "../rf/aerialPattern.ts";
import { fieldToLevelDbuv } from "../rf/field.ts";
import { REFERENCE_KELVIN } from "../rf/noise.ts";
import type { Band, Grid } from "../signal/band.ts";
import type { Carrier, Origin, Service } from "../signal/carrier.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { sourceBand } from "../signal/treat.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { choice, number } from "./fields.ts";
import {
  type AimOptions,
  aimLossDb,
  type TransmitterRow,
  transmitterKey,
  transmitterName,
} from "./transmitters.ts";

/** Level of all carriers; each row can lie above or below it. */
export function levelFields(o: {
  levelDbuv: number;
  fieldDbuvPerM: number;
  gainDbi: number;
  gainHelp: string;
}) {
  return {
    levelFrom: choice({
      label: "Level from",
      help: "As measured at the aerial’s terminals, or calculated from the field strength and the gain.",
      choices: [
        { value: "terminals", label: "Measured at the terminals" },
        { value: "field", label: "Field strength and gain" },
      ],
      default: "terminals",
      onSite: "not ours",
    }),
    levelDbuv: number({
      label: "Level at the terminals",
      unit: "dBµV",
      help: "Level of each carrier at the aerial’s terminals. Used when measured there.",
      min: 0,
      max: 120,
      step: 0.5,
      default: o.levelDbuv,
      source: "plausible for a good site, no source; measure yours",
      means: "source level",
      onSite: "not ours",
      onlyWhen: { levelFrom: "terminals" },
      spreadDb: 2,
      spreadSource: "meters read within about 2 dB, and levels fade as much from day to day, from memory",
    }),
    fieldDbuvPerM: number({
      label: "Field strength",
      unit: "dBµV/m",
      help: "At the height of the aerial. Used when the level comes from the field.",
      min: 0,
      max: 140,
      step: 0.5,
      default: o.fieldDbuvPerM,
      source: "plausible for a good site, no source; measure yours",
      means: "source level",
      onSite: "not ours",
      onlyWhen: { levelFrom: "field" },
      spreadDb: 5.5,
      spreadSource: "location variability of digital broadcasting, Recommendation ITU-R P.1546, from memory",
    }),
    gainDbi: number({
      label: "Gain",
      unit: "dBi",
      help: o.gainHelp,
      min: -20,
      max: 25,
      step: 0.5,
      default: o.gainDbi,
      source: "typical, from memory; a half-wave dipole has 2.15 dBi",
      onlyWhen: { levelFrom: "field" },
      spreadDb: 1,
    }),
    noiseKelvin: number({
      label: "Noise temperature",
      unit: "K",
      help: "What the aerial itself picks up as noise. 290 K is the reference; towns are noisier on FM and DAB.",
      min: 10,
      max: 100_000,
      step: 10,
      default: REFERENCE_KELVIN,
      source: "reference temperature of noise figures (IEEE)",
      onSite: "not ours",
      advanced: true,
    }),
  };
}

export type LevelOptions = z.output<z.ZodObject<ReturnType<typeof levelFields>>>;

/** Field of a row: its distance from the common level. */
export const levelOffset = () =>
  number({
    label: "Level offset",
    unit: "dB",
    help: "How far this carrier lies above or below the common level.",
    min: -60,
    max: 30,
    step: 0.5,
    default: 0,
    means: "level offset",
  });

type PlanRow = TransmitterRow & { readonly levelOffsetDb: number };

/** Rows of one transmitter that are all wanted, or all not: what comes of them is one band. */
type RowGroup<R> = { readonly transmitter: string; readonly wanted: boolean; readonly rows: readonly R[] };

/** What the rows of a list come to: worked out once per list, so that changing a level keeps every grid. */
type Sent = {
  readonly grid: Grid;
  readonly origin: Omit<Origin, "part">;
  readonly rowAt: ReadonlyMap<number, number>;
};

const sentBy = new WeakMap<object, Map<string, readonly Sent[]>>();

/**
 * The bands of an aerial, each by itself: what one transmitter sends on a channel disturbs what another sends there.
 * One band as long as no row names a transmitter and all are wanted; none while the list is empty.
 */
export function aerialEmits<R extends PlanRow>(o: {
  options: LevelOptions & AimOptions;
  id: string;
  port?: string;
  service: Service;
  pattern: PatternBand;
  plan: readonly R[];
  /** What else the carriers of the rows follow from. */
  raster?: string;
  carrier: (row: R) => Carrier;
  /** The same number for the same channel in every list; by it two aerials of one transmitter have one carrier. */
  entry: (row: R) => number;
}): readonly { readonly port: string; readonly bands: readonly Band[] }[] {
  const { options, plan, id } = o;
  const byId = remembered(sentBy, plan, () => new Map<string, readonly Sent[]>());
  const sent = remembered(byId, `${id} ${o.raster ?? ""}`, () =>
    groupsOf(plan).map((group) => sentOf(group, o)),
  );
  const port = o.port ?? "out";
  if (sent.length === 0) return [{ port, bands: [] }];
  return sent.map(({ grid, origin, rowAt }) => ({
    port,
    bands: [
      sourceBand({
        origin: { ...origin, part: id },
        grid,
        levelDbuv: (carrier, entry) => {
          const row = plan[rowAt.get(entry) ?? -1];
          const common = commonLevelDbuv(options, carrier.airMHz);
          return row ? common + row.levelOffsetDb - aimLossDb(options, row, o.pattern) : common;
        },
        noiseKelvin: options.noiseKelvin,
      }),
    ],
  }));
}

function groupsOf<R extends PlanRow>(plan: readonly R[]): readonly RowGroup<R>[] {
  const groups = new Map<string, { transmitter: string; wanted: boolean; rows: R[] }>();
  for (const row of plan) {
    const { transmitter, wanted } = row;
    const key = `${wanted} ${transmitterKey(transmitter)}`;
    remembered(groups, key, () => ({
      transmitter: transmitterName(transmitter),
      wanted,
      rows: [],
    })).rows.push(row);
  }
  return [...groups.values()];
}

function sentOf<R extends PlanRow>(
  { transmitter, wanted, rows }: RowGroup<R>,
  o: {
    id: string;
    service: Service;
    plan: readonly R[];
    carrier: (row: R) => Carrier;
    entry: (row: R) => number;
  },
): Sent {
  const service = wanted ? o.service : "distant";
  if (transmitter === "") {
    const numbers = rows.map((row) => o.plan.indexOf(row));
    const isWhole = rows.length === o.plan.length;
    return {
      grid: makeGrid(o.plan.map(o.carrier), isWhole ? undefined : numbers),
      origin: { key: wanted ? o.id : `${o.id}/distant`, service },
      rowAt: new Map(numbers.map((n) => [n, n])),
    };
  }
  // A row that names a channel again says nothing new.
  const rowAt = new Map<number, number>();
  for (const row of rows) if (!rowAt.has(o.entry(row))) rowAt.set(o.entry(row), o.plan.indexOf(row));
  const all = Array.from({ length: Math.max(...rowAt.keys()) + 1 }, (_, entry) => {
    const row = o.plan[rowAt.get(entry) ?? -1];
    return row ? o.carrier(row) : NOT_ON_AIR;
  });
  return {
    grid: makeGrid(all, [...rowAt.keys()]),
    origin: { key: `transmitter/${o.service}/${transmitterKey(transmitter)}`, service, transmitter },
    rowAt,
  };
}

/** Stands in a transmitter's plan for a channel that it does not send. */
const NOT_ON_AIR: Carrier = { name: "", airMHz: 0, widthMHz: 0, noiseMHz: 0, mode: "" };

function commonLevelDbuv(options: LevelOptions, frequencyMHz: number): number {
  if (options.levelFrom === "terminals") return options.levelDbuv;
  const { fieldDbuvPerM, gainDbi } = options;
  return fieldToLevelDbuv({ fieldDbuvPerM, gainDbi, frequencyMHz });
}

/** "6 channels · 62 dBµV"; `what` is the count in words. */
export function aerialCaption(what: string, options: LevelOptions): string {
  const level =
    options.levelFrom === "terminals"
      ? `${numeralAsSet(options.levelDbuv)} dBµV`
      : `${numeralAsSet(options.fieldDbuvPerM)} dBµV/m`;
  return `${what} · ${level}`;
}
