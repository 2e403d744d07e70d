/** Amplifiers: under the aerial, in the distribution, and for satellite IF on the line. */

import { z } from "zod";
import { curve, flat, series } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { CHANNEL_AMPLIFIER } from "./amplifierChannel.ts";
import { distribution } from "./amplifierDistribution.ts";
import {
  cableFed,
  cableFedFields,
  gainDb,
  IF_RATIO_DB,
  noiseFigureDb,
  OUT_OF_BAND_DB,
  outputDbuv,
  RADIO,
  slopeDb,
  TV_RATIO_DB,
  UNPOWERED_GAIN,
  uhfTo,
  WIDER_UHF,
} from "./amplifierFields.ts";
import { AMPLIFIERS_OF_INPUTS } from "./amplifierInputs.ts";
import { define, type PartKind, type Path } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { dB, INLINE, LINE_POWER, MEMORY, passing, THROUGH_PORTS } from "./passive.ts";
import { equipmentScreening, screened } from "./screening.ts";

const masthead = define({
  kind: "amp-masthead",
  family: "lift",
  name: "Masthead amplifier",
  summary:
    "Amplifies weak aerial signals at the mast, before the cable adds its noise; fed through the cable.",
  keywords: ["preamplifier", "booster", "aerial amplifier", "mast"],
  prefix: "masthead",
  trade: {
    job: "mast amplifier",
    price: 30,
    workMinutes: 40,
    inItsPlace: "coupler",
    fedWithVolts: 12,
    widerTypes: [...WIDER_UHF, { name: "a type for FM, DAB and UHF", options: { takes: "all" } }],
  },
  options: z.object({
    takes: choice({
      label: "Amplifies",
      choices: [
        { value: "uhf", label: "UHF" },
        { value: "all", label: "FM, DAB and UHF" },
      ],
      default: "uhf",
    }),
    uhfTo,
    gainDb: gainDb(40, 16),
    noiseFigureDb: noiseFigureDb(2),
    outputDbuv: outputDbuv(104, TV_RATIO_DB),
    ...cableFedFields({ milliamps: 40, minVolts: 10 }),
    screening: equipmentScreening(),
  }),
  symbol: "masthead",
  caption: (o) => `${dB(o.gainDb)} · noise figure ${dB(o.noiseFigureDb)}`,
  ports: () => THROUGH_PORTS,
  signal: (o, context) => {
    const uhf = { fromMHz: 470, toMHz: Number(o.uhfTo) };
    const band = passing(o.takes === "uhf" ? [uhf] : [RADIO, uhf], OUT_OF_BAND_DB);
    const way = { from: "in", to: "out" };
    if (!context.powered)
      return screened(context, o, { paths: [{ ...way, response: series(UNPOWERED_GAIN, band) }] });
    const rating = { outputDbuv: o.outputDbuv, ratioDb: TV_RATIO_DB };
    const response = series(flat(o.gainDb), band);
    return screened(context, o, { paths: [{ ...way, response, noiseFigureDb: o.noiseFigureDb, rating }] });
  },
  power: cableFed,
  inline: INLINE,
  cautions: ["height", "bonding"],
});

/** What passes by beside an amplifier for satellite goes through two filters. Typical, from memory. [dB] */
const BESIDE_DB = -1.5;

const lineAmplifier = define({
  kind: "amp-if",
  family: "lift",
  name: "In-line IF amplifier",
  firstName: "Satellite line amplifier",
  summary: "Amplifies satellite IF on a long cable, fed by the receiver’s own voltage, which it passes on.",
  keywords: ["line amplifier", "satellite booster", "950–2150"],
  prefix: "lineamp",
  trade: {
    job: "amplifier",
    price: 25,
    workMinutes: 20,
    inItsPlace: "coupler",
    fedWithVolts: 14,
    madeFor: "satellite",
    widerTypes: [
      { name: "a type for the whole satellite IF", options: { fromMHz: 950, toMHz: 2150 } },
      { name: "a type for wideband feeds, 290 to 2350 MHz", options: { fromMHz: 290, toMHz: 2350 } },
      { name: "a type that lets TV and radio pass by", options: { below: "passed" } },
    ],
  },
  options: z.object({
    fromMHz: number({
      label: "Amplifies from",
      unit: "MHz",
      help: "A type for wideband feeds starts at about 290 MHz.",
      min: 200,
      max: 1200,
      default: 950,
      source: "satellite IF 950–2150 MHz, Spanish Royal Decree 346/2011",
    }),
    toMHz: number({
      label: "up to",
      unit: "MHz",
      help: "1750 or 2050 MHz on older types.",
      min: 1700,
      max: 3000,
      default: 2150,
      source: MEMORY,
    }),
    gainDb: gainDb(40, 20),
    slopeDb: slopeDb({
      help: "How much less is amplified at the low end than at the top.",
      max: 12,
      default: 6,
    }),
    noiseFigureDb: noiseFigureDb(6),
    outputDbuv: outputDbuv(112, IF_RATIO_DB),
    below: choice({
      label: "TV and radio below that",
      choices: [
        { value: "stopped", label: "are stopped" },
        { value: "passed", label: "pass by, unamplified" },
        { value: "amplified", label: "are amplified as well" },
      ],
      default: "stopped",
      source: MEMORY,
    }),
    tvGainDb: number({
      label: "Gain for TV and radio",
      unit: "dB",
      help: "Of a type that amplifies the whole cable, 47 to 2150 MHz and more.",
      min: 0,
      max: 40,
      step: 0.5,
      default: 15,
      source: MEMORY,
      means: "terrestrial gain",
      onSite: "setting",
      turnsBy: 1,
      spreadDb: 1.5,
      onlyWhen: { below: "amplified" },
    }),
    ...cableFedFields({ milliamps: 60, minVolts: 11 }),
    screening: equipmentScreening(),
  }),
  symbol: "amplifier-if",
  caption: (o) => `${dB(o.gainDb)} at ${numeralAsSet(o.toMHz)} MHz`,
  ports: () => THROUGH_PORTS,
  signal: (o, context) => {
    const { powered } = context;
    const band = passing([{ fromMHz: o.fromMHz, toMHz: o.toMHz }], OUT_OF_BAND_DB);
    const gain = powered ? curve([o.fromMHz, o.gainDb - o.slopeDb], [o.toMHz, o.gainDb]) : UNPOWERED_GAIN;
    const active = powered
      ? { noiseFigureDb: o.noiseFigureDb, rating: { outputDbuv: o.outputDbuv, ratioDb: IF_RATIO_DB } }
      : {};
    const amplified: Path = { from: "in", to: "out", response: series(gain, band), ...active };
    if (o.below === "stopped") return screened(context, o, { paths: [amplified] });
    // A carrier takes one of the two ways, so that it doesn't meet itself at the output.
    const beside = passing([{ fromMHz: 5, toMHz: o.fromMHz * 0.9 }], OUT_OF_BAND_DB);
    const middle = o.fromMHz * 0.95;
    const lower =
      o.below === "passed"
        ? { response: series(flat(BESIDE_DB), beside) }
        : { response: series(powered ? flat(o.tvGainDb) : UNPOWERED_GAIN, beside), ...active };
    return screened(context, o, {
      paths: [
        { ...amplified, takes: { fromMHz: middle } },
        { from: "in", to: "out", ...lower, takes: { toMHz: middle } },
      ],
    });
  },
  power: (o) => ({ paths: [LINE_POWER], ...cableFed(o) }),
  inline: INLINE,
});

export const AMPLIFIERS: readonly PartKind[] = [
  masthead,
  distribution,
  lineAmplifier,
  ...AMPLIFIERS_OF_INPUTS,
  CHANNEL_AMPLIFIER,
];
