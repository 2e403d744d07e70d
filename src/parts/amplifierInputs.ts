/** Amplifiers with an input for each aerial, each with a gain of its own: at the mast, and at the head of a network. */
import { z } from "zod";
import { curve, flat, type Response, series } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import {
  aerialSupplyFields,
  cableFed,
  cableFedFields,
  gainDb,
  noiseFigureDb,
  OUT_OF_BAND_DB,
  outputDbuv,
  RADIO,
  slopeDb,
  TV_RATIO_DB,
  UNPOWERED_GAIN,
} from "./amplifierFields.ts";
import { define, type PartKind, type Path, type Port } from "./contract.ts";
import { number, wholeNumber } from "./fields.ts";
import { coaxIn, coaxOut, dB, MAINS_ON, MEMORY, passing, type Range } from "./passive.ts";
import { FIRST_UHF_CHANNEL, LAST_FORMER_UHF_CHANNEL, tvChannelEdges } from "./plans.ts";
import { equipmentScreening, screened } from "./screening.ts";
import { LOWEST_UHF_CHANNEL, rasterField, rasterOf, type TvRaster, type UhfRaster } from "./tvRasters.ts";

/** Top of the UHF band today: channel 48, 694 MHz. */
const LAST_UHF_CHANNEL = 48;

const channelField = (label: string, value: number) =>
  wholeNumber({
    label,
    help: "Aerials of two transmitters share the band: give each input the channels of its own.",
    min: LOWEST_UHF_CHANNEL,
    max: LAST_FORMER_UHF_CHANNEL,
    default: value,
    onSite: "setting",
  });

const radioGainDb = (o: { readonly most: number; readonly default: number }) =>
  number({
    label: "Gain of the radio and Band III input",
    unit: "dB",
    min: -20,
    max: o.most,
    step: 1,
    default: o.default,
    source: MEMORY,
    means: "radio gain",
    onSite: "setting",
    turnsBy: 1,
    spreadDb: 1.5,
  });

const UHF_1 = { port: "uhf1", label: "UHF 1" } as const;
const UHF_2 = { port: "uhf2", label: "UHF 2" } as const;

const uhfFields = (o: { readonly most: number; readonly gainDb: number }) => ({
  uhf1GainDb: gainDb(o.most, o.gainDb, UHF_1),
  uhf1From: channelField("UHF 1 from channel", FIRST_UHF_CHANNEL),
  uhf1To: channelField("UHF 1 to channel", LAST_UHF_CHANNEL),
  uhf2GainDb: gainDb(o.most, o.gainDb, UHF_2),
  uhf2From: channelField("UHF 2 from channel", FIRST_UHF_CHANNEL),
  uhf2To: channelField("UHF 2 to channel", LAST_UHF_CHANNEL),
  raster: rasterField("setting"),
});

const PORTS: readonly Port[] = [
  coaxIn(UHF_1.port, UHF_1.label),
  coaxIn(UHF_2.port, UHF_2.label),
  coaxIn("vhf", "VHF", "band"),
  coaxOut("out"),
];

type Inputs = {
  readonly uhf1GainDb: number;
  readonly uhf1From: number;
  readonly uhf1To: number;
  readonly uhf2GainDb: number;
  readonly uhf2From: number;
  readonly uhf2To: number;
  readonly raster: UhfRaster;
  readonly radioGainDb: number;
  readonly noiseFigureDb: number;
  readonly outputDbuv: number;
};

/** Channels of an input, whatever order they were typed in. */
function channelRange(a: number, b: number, raster: TvRaster): Range {
  return {
    fromMHz: tvChannelEdges(Math.min(a, b), raster).fromMHz,
    toMHz: tvChannelEdges(Math.max(a, b), raster).toMHz,
  };
}

/** Each input with its filter and its gain; one output stage for all, which is what is rated. */
function pathsOf(o: Inputs, powered: boolean, tilt: Response): readonly Path[] {
  const raster = rasterOf(o.raster);
  const inputs = [
    { from: UHF_1.port, range: channelRange(o.uhf1From, o.uhf1To, raster), db: o.uhf1GainDb },
    { from: UHF_2.port, range: channelRange(o.uhf2From, o.uhf2To, raster), db: o.uhf2GainDb },
    { from: "vhf", range: RADIO, db: o.radioGainDb },
  ];
  const active = powered ? { noiseFigureDb: o.noiseFigureDb } : {};
  const rating = powered ? { rating: { outputDbuv: o.outputDbuv, ratioDb: TV_RATIO_DB } } : {};
  return [
    ...inputs.map(({ from, range, db }): Path => {
      const gain = powered ? series(flat(db), tilt) : UNPOWERED_GAIN;
      return { from, to: "#sum", response: series(gain, passing([range], OUT_OF_BAND_DB)), ...active };
    }),
    { from: "#sum", to: "out", response: flat(0), ...rating },
  ];
}

const mastheadInputs = define({
  kind: "amp-masthead-inputs",
  family: "lift",
  name: "Masthead amplifier, several inputs",
  summary: "Amplifies two UHF aerials and one for radio or Band III at the mast, each with its own gain.",
  keywords: ["preamplifier", "booster", "mast", "mixer", "two aerials", "multiband"],
  prefix: "mixamp",
  trade: {
    job: "mast amplifier",
    price: 45,
    workMinutes: 50,
    fedWithVolts: 12,
    isRare: true,
  },
  options: z.object({
    ...uhfFields({ most: 40, gainDb: 20 }),
    radioGainDb: radioGainDb({ most: 30, default: 0 }),
    noiseFigureDb: noiseFigureDb(2.5),
    outputDbuv: outputDbuv(106, TV_RATIO_DB),
    ...cableFedFields({ milliamps: 60, minVolts: 10 }),
    screening: equipmentScreening(),
  }),
  symbol: "amplifier-inputs",
  caption: (o) => `${numeralAsSet(o.uhf1GainDb)} / ${dB(o.uhf2GainDb)} · VHF ${dB(o.radioGainDb)}`,
  ports: () => PORTS,
  signal: (o, context) => screened(context, o, { paths: pathsOf(o, context.powered, flat(0)) }),
  power: cableFed,
  cautions: ["height", "bonding"],
});

/** Where slope is stated [MHz]: 47–862 MHz as in Spanish Royal Decree 346/2011. */
const LOW_END_MHZ = 47;
const TOP_MHZ = 862;

const launch = define({
  kind: "amp-launch",
  family: "lift",
  name: "Launch amplifier",
  summary:
    "Strong mains amplifier at the head of a network: two UHF inputs and one for radio or Band III, each with its own gain.",
  keywords: ["headend", "multiband amplifier", "mixer", "mains", "block of flats"],
  prefix: "launch",
  trade: { job: "amplifier", price: 120, workMinutes: 45, isRare: true },
  options: z.object({
    ...uhfFields({ most: 50, gainDb: 30 }),
    radioGainDb: radioGainDb({ most: 45, default: 20 }),
    slopeDb: slopeDb({
      help: "How much less is amplified at 47 MHz than at 862 MHz: it makes up for the cable that follows.",
      max: 20,
      default: 0,
    }),
    noiseFigureDb: noiseFigureDb(6),
    outputDbuv: outputDbuv(116, TV_RATIO_DB),
    ...aerialSupplyFields({ label: "Feeds masthead amplifiers", help: "At the two UHF inputs." }),
    switchedOn: MAINS_ON,
    screening: equipmentScreening(),
  }),
  symbol: "amplifier-inputs",
  caption: (o) =>
    o.switchedOn ? `${numeralAsSet(o.uhf1GainDb)} / ${dB(o.uhf2GainDb)} · VHF ${dB(o.radioGainDb)}` : "off",
  ports: () => PORTS,
  signal: (o, context) => {
    const tilt = curve([LOW_END_MHZ, -o.slopeDb], [TOP_MHZ, 0]);
    return screened(context, o, { paths: pathsOf(o, o.switchedOn, tilt) });
  },
  power: (o) => {
    const volts = o.switchedOn ? Number(o.aerialSupply) : 0;
    if (volts === 0) return { selfPowered: o.switchedOn };
    const supply = { kind: "plain", volts13: volts, volts18: volts, limitMa: o.aerialLimitMa } as const;
    return {
      selfPowered: true,
      supplies: [
        { port: UHF_1.port, ...supply },
        { port: UHF_2.port, ...supply },
      ],
    };
  },
  cautions: ["mains", "bonding"],
});

export const AMPLIFIERS_OF_INPUTS: readonly PartKind[] = [mastheadInputs, launch];
