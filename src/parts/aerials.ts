/** Aerials for terrestrial TV, DAB and FM: carriers at the aerial's terminals. */
import { z } from "zod";
import { fieldToLevelDbuv } from "../rf/field.ts";
import { MODE_KEYS, MODES } from "../rf/thresholds.ts";
import type { Band, Grid } from "../signal/band.ts";
import type { Carrier, Service } from "../signal/carrier.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { sourceBand } from "../signal/treat.ts";
import { define, type PartKind, type Port } from "./contract.ts";
import { choice, number, rows, whole } from "./fields.ts";
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
  tvCarrier,
} from "./plans.ts";

const OUT: readonly Port[] = [{ id: "out", side: "out", medium: "coax", label: "out" }];

/** Level of all carriers; each row can lie above or below it. */
function levelFields(o: { levelDbuv: number; fieldDbuvPerM: number; gainDbi: number; gainHelp: string }) {
  return {
    levelFrom: choice({
      label: "Level from",
      help: "As measured at the aerial's terminals, or worked out from the field strength and the gain.",
      choices: [
        { value: "terminals", label: "Measured at the terminals" },
        { value: "field", label: "Field strength and gain" },
      ],
      default: "terminals",
    }),
    levelDbuv: number({
      label: "Level at the terminals",
      unit: "dBµV",
      help: "Level of each carrier at the aerial's terminals. Used when measured there.",
      min: 0,
      max: 120,
      step: 0.5,
      default: o.levelDbuv,
      source: "plausible for a good site, no source; measure yours",
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
    }),
    noiseKelvin: number({
      label: "Noise temperature",
      unit: "K",
      help: "What the aerial itself picks up as noise. 290 K is the reference; towns are noisier on FM and DAB.",
      min: 10,
      max: 100_000,
      step: 10,
      default: 290,
      source: "reference temperature of noise figures (IEEE)",
      advanced: true,
    }),
  };
}

type LevelOptions = z.output<z.ZodObject<ReturnType<typeof levelFields>>>;

const levelOffset = () =>
  number({
    label: "Level offset",
    unit: "dB",
    help: "How far this carrier lies above or below the common level.",
    min: -60,
    max: 30,
    step: 0.5,
    default: 0,
  });

const grids = new WeakMap<object, Grid>();

type PlanRow = { readonly levelOffsetDb: number };

/** The one band of an aerial; none while its list is empty. */
function aerialBands<R extends PlanRow>(o: {
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

function captionOf(count: number, one: string, many: string, options: LevelOptions): string {
  const level =
    options.levelFrom === "terminals" ? `${options.levelDbuv} dBµV` : `${options.fieldDbuvPerM} dBµV/m`;
  return `${count} ${count === 1 ? one : many} · ${level}`;
}

/** Modes of one system as choices, in the order of the table of thresholds. */
export function modeChoices(...systems: readonly string[]): { value: string; label: string }[] {
  return MODE_KEYS.filter((key) => systems.some((system) => key.startsWith(system))).map((key) => ({
    value: key,
    label: MODES[key].name,
  }));
}

const UHF_OPTIONS = z.object({
  ...levelFields({
    levelDbuv: 62,
    fieldDbuvPerM: 72,
    gainDbi: 14,
    gainHelp: "Over an isotropic aerial; add 2.15 dB to a gain stated over a dipole (dBd).",
  }),
  channels: rows({
    label: "Channels",
    help: "What is on air here. Channels above 48 belong to mobile phones today.",
    row: z.object({
      channel: whole({
        label: "Channel",
        min: FIRST_UHF_CHANNEL,
        max: LAST_FORMER_UHF_CHANNEL,
        default: FIRST_UHF_CHANNEL,
      }),
      mode: choice({
        label: "Modulation",
        help: "Decides the C/N that the channel needs.",
        choices: modeChoices("dvbt-", "dvbt2-"),
        default: "dvbt-64qam-2/3",
      }),
      levelOffsetDb: levelOffset(),
    }),
    maxRows: 200,
    default: DEFAULT_TV_ROWS,
    source: "invented list",
  }),
});

const DAB_OPTIONS = z.object({
  ...levelFields({
    levelDbuv: 55,
    fieldDbuvPerM: 66,
    gainDbi: 5,
    gainHelp: "Over an isotropic aerial; a dipole has 2.15 dBi.",
  }),
  blocks: rows({
    label: "Blocks",
    help: "DAB ensembles on air here.",
    row: z.object({
      block: choice<DabBlock>({
        label: "Block",
        choices: dabBlocks().map((block) => ({
          value: block,
          label: `${block} · ${(DAB_BLOCKS_KHZ[block] / 1000).toFixed(3)} MHz`,
        })),
        default: "12A",
      }),
      levelOffsetDb: levelOffset(),
    }),
    maxRows: 200,
    default: DEFAULT_DAB_ROWS,
    source: "invented list",
  }),
});

function dabBlocks(): DabBlock[] {
  return Object.keys(DAB_BLOCKS_KHZ).filter((key): key is DabBlock => Object.hasOwn(DAB_BLOCKS_KHZ, key));
}

const FM_OPTIONS = z.object({
  ...levelFields({
    levelDbuv: 62,
    fieldDbuvPerM: 66,
    gainDbi: 2.15,
    gainHelp: "Over an isotropic aerial; a dipole has 2.15 dBi, a dipole bent to a ring about 0.",
  }),
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
    }),
    maxRows: 200,
    default: DEFAULT_FM_ROWS,
    source: "invented list",
  }),
});

const AERIAL_UHF = define({
  kind: "aerial-uhf",
  family: "receive",
  name: "UHF aerial",
  summary: "Receives terrestrial TV; lists the channels on air and their level.",
  keywords: ["antenna", "television", "DVB-T", "DVB-T2", "DTT", "yagi", "terrestrial"],
  prefix: "aerial",
  options: UHF_OPTIONS,
  symbol: "aerial-uhf",
  caption: (o) => captionOf(o.channels.length, "channel", "channels", o),
  ports: () => OUT,
  signal: (o, { id }) => ({
    emits: [
      {
        port: "out",
        bands: aerialBands({ options: o, id, service: "tv", plan: o.channels, carrier: tvCarrier }),
      },
    ],
  }),
  cautions: ["height", "bonding"],
});

const AERIAL_DAB = define({
  kind: "aerial-dab",
  family: "receive",
  name: "DAB aerial",
  summary: "Receives digital radio in band III; lists the blocks on air and their level.",
  keywords: ["antenna", "radio", "DAB+", "VHF", "band III", "digital radio"],
  prefix: "dab",
  options: DAB_OPTIONS,
  symbol: "aerial-dab",
  caption: (o) => captionOf(o.blocks.length, "block", "blocks", o),
  ports: () => OUT,
  signal: (o, { id }) => ({
    emits: [
      {
        port: "out",
        bands: aerialBands({ options: o, id, service: "dab", plan: o.blocks, carrier: dabCarrier }),
      },
    ],
  }),
  cautions: ["height", "bonding"],
});

const AERIAL_FM = define({
  kind: "aerial-fm",
  family: "receive",
  name: "FM aerial",
  summary: "Receives FM radio; lists the stations on air and their level.",
  keywords: ["antenna", "radio", "VHF", "UKW", "band II", "dipole"],
  prefix: "fm",
  options: FM_OPTIONS,
  symbol: "aerial-fm",
  caption: (o) => captionOf(o.stations.length, "station", "stations", o),
  ports: () => OUT,
  signal: (o, { id }) => ({
    emits: [
      {
        port: "out",
        bands: aerialBands({ options: o, id, service: "fm", plan: o.stations, carrier: fmCarrier }),
      },
    ],
  }),
  cautions: ["height", "bonding"],
});

export const AERIALS: readonly PartKind[] = [AERIAL_UHF, AERIAL_DAB, AERIAL_FM];
