/** Aerials for terrestrial TV, DAB and FM: carriers at the aerial's terminals. */

import { z } from "zod";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { aerialCaption, aerialEmits, levelFields, levelOffset } from "./aerialLevel.ts";
import { AERIAL_OUT, formerOnAir, televisionAerial, televisionOptions } from "./aerialTelevision.ts";
import { define, type PartKind } from "./contract.ts";
import { choice, number, rows } from "./fields.ts";
import {
  DAB_BLOCKS_KHZ,
  type DabBlock,
  DEFAULT_DAB_ROWS,
  DEFAULT_FM_ROWS,
  DEFAULT_TV_ROWS,
  dabCarrier,
  FIRST_UHF_CHANNEL,
  fmCarrier,
  LAST_FORMER_UHF_CHANNEL,
} from "./plans.ts";
import { aimFields, transmitterRow } from "./transmitters.ts";
import { LOWEST_UHF_CHANNEL, rasterField } from "./tvRasters.ts";

export const UHF_OPTIONS = televisionOptions(
  { levelDbuv: 62, fieldDbuvPerM: 72, gainDbi: 14 },
  {
    lowest: LOWEST_UHF_CHANNEL,
    highest: LAST_FORMER_UHF_CHANNEL,
    first: FIRST_UHF_CHANNEL,
    raster: rasterField("not ours"),
    help: "What is on air here. Above 48 channels belong to mobile phones today; in rasters of 7 and 6 MHz above 51.",
    onAir: DEFAULT_TV_ROWS,
  },
).extend({ formerOnAir });

const DAB_BLOCKS = Object.keys(DAB_BLOCKS_KHZ).filter((key): key is DabBlock =>
  Object.hasOwn(DAB_BLOCKS_KHZ, key),
);

const DAB_OPTIONS = z.object({
  ...levelFields({
    levelDbuv: 55,
    fieldDbuvPerM: 66,
    gainDbi: 5,
    gainHelp: `Over an isotropic aerial; a dipole has ${numeral(2.15, 2)} dBi.`,
  }),
  ...aimFields(),
  blocks: rows({
    label: "Blocks",
    help: "DAB ensembles on air here.",
    row: z.object({
      block: choice<DabBlock>({
        label: "Block",
        choices: DAB_BLOCKS.map((block) => ({
          value: block,
          label: `${block} · ${numeral(DAB_BLOCKS_KHZ[block] / 1000, 3, 3)} MHz`,
        })),
        default: "12A",
      }),
      levelOffsetDb: levelOffset(),
      ...transmitterRow(),
    }),
    maxRows: 200,
    default: DEFAULT_DAB_ROWS,
    source: "invented list",
    onSite: "not ours",
  }),
});

const FM_OPTIONS = z.object({
  ...levelFields({
    levelDbuv: 62,
    fieldDbuvPerM: 66,
    gainDbi: 2.15,
    gainHelp: `Over an isotropic aerial; a dipole has ${numeral(2.15, 2)} dBi, a dipole bent to a ring about 0.`,
  }),
  ...aimFields(),
  stations: rows({
    label: "Stations",
    help: "FM stations on air here.",
    row: z.object({
      frequencyMHz: number({
        label: "Frequency",
        unit: "MHz",
        min: 87.5,
        max: 108,
        step: 0.05,
        default: 98,
      }),
      mode: choice({
        label: "Sound",
        choices: [
          { value: "fm-stereo", label: "Stereo" },
          { value: "fm-mono", label: "Mono" },
        ],
        default: "fm-stereo",
      }),
      levelOffsetDb: levelOffset(),
      ...transmitterRow(),
    }),
    maxRows: 200,
    default: DEFAULT_FM_ROWS,
    source: "invented list",
    onSite: "not ours",
  }),
});

const AERIAL_UHF = televisionAerial({
  kind: "aerial-uhf",
  name: "UHF aerial",
  summary: "Receives terrestrial TV; lists the channels on air and their level.",
  keywords: ["antenna", "television", "DVB-T", "DVB-T2", "DTT", "yagi", "terrestrial"],
  prefix: "aerial",
  symbol: "aerial-uhf",
  pattern: "IV/V",
  options: UHF_OPTIONS,
});

const AERIAL_DAB = define({
  kind: "aerial-dab",
  family: "receive",
  name: "DAB aerial",
  summary: "Receives digital radio in band III; lists the blocks on air and their level.",
  keywords: ["antenna", "radio", "DAB+", "VHF", "band III", "digital radio"],
  prefix: "dab",
  trade: { job: "aerial", price: 30, workMinutes: 45 },
  options: DAB_OPTIONS,
  symbol: "aerial-dab",
  caption: (o) =>
    aerialCaption(
      plural(o.blocks.length, { zero: "no block", one: (n) => `${n} block`, other: (n) => `${n} blocks` }),
      o,
    ),
  ports: () => AERIAL_OUT,
  signal: (o, { id }) => ({
    emits: aerialEmits({
      options: o,
      id,
      service: "dab",
      pattern: "III",
      plan: o.blocks,
      carrier: dabCarrier,
      entry: (row) => DAB_BLOCKS.indexOf(row.block),
    }),
  }),
  cautions: ["height", "bonding"],
});

const AERIAL_FM = define({
  kind: "aerial-fm",
  family: "receive",
  name: "FM aerial",
  summary: "Receives FM radio; lists the stations on air and their level.",
  keywords: ["antenna", "radio", "VHF", "band II", "dipole"],
  prefix: "fm",
  trade: { job: "aerial", price: 30, workMinutes: 45 },
  options: FM_OPTIONS,
  symbol: "aerial-fm",
  caption: (o) =>
    aerialCaption(
      plural(o.stations.length, {
        zero: "no station",
        one: (n) => `${n} station`,
        other: (n) => `${n} stations`,
      }),
      o,
    ),
  ports: () => AERIAL_OUT,
  signal: (o, { id }) => ({
    emits: aerialEmits({
      options: o,
      id,
      service: "fm",
      pattern: "II",
      plan: o.stations,
      carrier: fmCarrier,
      entry: (row) => Math.round(row.frequencyMHz * 20),
    }),
  }),
  cautions: ["height", "bonding"],
});

export const AERIALS: readonly PartKind[] = [AERIAL_UHF, AERIAL_DAB, AERIAL_FM];
