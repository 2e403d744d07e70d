/** What all terrestrial aerials share: how the level is stated, and the band that comes of it. */

import type { z } from "zod";
import { fieldToLevelDbuv } from "../rf/field.ts";
import { REFERENCE_KELVIN } from "../rf/noise.ts";
import type { Band, Grid } from "../signal/band.ts";
import type { Carrier, Service } from "../signal/carrier.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { sourceBand } from "../signal/treat.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { choice, number } from "./fields.ts";

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

const grids = new WeakMap<object, Grid>();

type PlanRow = { readonly levelOffsetDb: number };

/** The one band of an aerial; none while its list is empty. */
export function aerialBands<R extends PlanRow>(o: {
  options: LevelOptions;
  id: string;
  service: Service;
  plan: readonly R[];
  carrier: (row: R) => Carrier;
}): readonly Band[] {
  const { options, plan } = o;
  if (plan.length === 0) return [];
  return [
    sourceBand({
      origin: { key: o.id, service: o.service, part: o.id },
      // One grid per list: changing a level must not make every gain be worked out anew.
      grid: remembered(grids, plan, () => makeGrid(plan.map(o.carrier))),
      levelDbuv: (carrier, i) => commonLevelDbuv(options, carrier.airMHz) + (plan[i]?.levelOffsetDb ?? 0),
      noiseKelvin: options.noiseKelvin,
    }),
  ];
}

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
