/** Amplifiers: under the aerial, in the distribution, and for satellite IF on the line. */
import { z } from "zod";
import { curve, flat, series } from "../signal/response.ts";
import { define, type PartKind, type Path } from "./contract.ts";
import { choice, number, toggle, whole } from "./fields.ts";
import {
  coaxIn,
  coaxOut,
  dB,
  INLINE,
  LINE_POWER,
  MEMORY,
  passing,
  type Range,
  THROUGH_PORTS,
} from "./passive.ts";

/** What is left of a signal through an amplifier without power. Order of magnitude, from memory. */
const UNPOWERED_GAIN = flat(-25);

/** Intermodulation ratios at which outputs are rated: EN 60728-3, from memory. */
const TV_RATIO_DB = 60;
const IF_RATIO_DB = 35;

const gainDb = (max: number, value: number) =>
  number({ label: "Gain", unit: "dB", min: 0, max, step: 0.5, default: value, source: MEMORY });

const noiseFigureDb = (value: number) =>
  number({ label: "Noise figure", unit: "dB", min: 0.2, max: 15, step: 0.1, default: value, source: MEMORY });

const outputDbuv = (value: number, ratioDb: number) =>
  number({
    label: "Rated output",
    unit: "dBµV",
    help: `Per carrier, where two carriers leave ${ratioDb} dB to their third-order products.`,
    min: 70,
    max: 130,
    step: 0.5,
    default: value,
    source: `two-carrier method of EN 60728-3; ${MEMORY}`,
  });

const supplyMilliamps = (value: number) =>
  number({ label: "Current", unit: "mA", min: 1, max: 500, default: value, source: MEMORY });

const minVolts = (value: number) =>
  number({
    label: "Works from",
    unit: "V",
    min: 4,
    max: 24,
    step: 0.5,
    default: value,
    source: MEMORY,
    advanced: true,
  });

/** What lies outside the bands of an amplifier comes out this much weaker. From memory. */
const OUT_OF_BAND_DB = 30;

const UHF_TOP = [
  { value: "694", label: "694 MHz (channel 48)" },
  { value: "790", label: "790 MHz (channel 60)" },
  { value: "862", label: "862 MHz (channel 69)" },
] as const;

const uhfTo = choice({
  label: "UHF up to",
  choices: UHF_TOP,
  default: "862",
  help: "An older amplifier that reaches higher also takes in the phone masts above the TV band.",
  source: "UHF TV ended at 862 MHz, then at 790, now at 694 (EU Decision 2017/899), from memory",
});

const masthead = define({
  kind: "amp-masthead",
  family: "lift",
  name: "Masthead amplifier",
  summary: "Lifts weak aerial signals at the mast, before the cable adds its noise; fed through the cable.",
  keywords: ["preamplifier", "booster", "aerial amplifier", "mast"],
  prefix: "masthead",
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
    milliamps: supplyMilliamps(40),
    minVolts: minVolts(10),
  }),
  symbol: "masthead",
  caption: (o) => `${dB(o.gainDb)} · noise figure ${dB(o.noiseFigureDb)}`,
  ports: () => THROUGH_PORTS,
  signal: (o, { powered }) => {
    const uhf = { fromMHz: 470, toMHz: Number(o.uhfTo) };
    const band = passing(o.takes === "uhf" ? [uhf] : [RADIO, uhf], OUT_OF_BAND_DB);
    if (!powered) return { paths: [{ from: "in", to: "out", response: series(UNPOWERED_GAIN, band) }] };
    const rating = { outputDbuv: o.outputDbuv, ratioDb: TV_RATIO_DB };
    const response = series(flat(o.gainDb), band);
    return { paths: [{ from: "in", to: "out", response, noiseFigureDb: o.noiseFigureDb, rating }] };
  },
  power: (o) => ({ load: { milliamps: o.milliamps, ports: ["out"], minVolts: o.minVolts } }),
  inline: INLINE,
  cautions: ["height", "bonding"],
});

const RADIO: Range = { fromMHz: 87, toMHz: 240 };

const distribution = define({
  kind: "amp-distribution",
  family: "lift",
  name: "Distribution amplifier",
  summary: "Mains amplifier for TV and radio, with one or more inputs and outputs.",
  keywords: ["loft amplifier", "launch amplifier", "booster", "headend", "mains"],
  prefix: "amp",
  options: z.object({
    inputs: choice({
      label: "Inputs",
      choices: [
        { value: "one", label: "One for everything" },
        { value: "two", label: "UHF, and FM with DAB" },
        { value: "three", label: "UHF, FM and DAB" },
      ],
      default: "one",
    }),
    outputs: whole({ label: "Outputs", min: 1, max: 8, default: 1 }),
    gainDb: gainDb(45, 15),
    slopeDb: number({
      label: "Slope",
      unit: "dB",
      help: "How much less is amplified at 47 MHz than at the top: it makes up for the cable that follows.",
      min: 0,
      max: 20,
      default: 0,
      source: MEMORY,
    }),
    padDb: number({
      label: "Input attenuator",
      unit: "dB",
      help: "On the UHF input; it costs as much noise as it takes level.",
      min: 0,
      max: 20,
      default: 0,
    }),
    radioGainDb: number({
      label: "Gain of the radio inputs",
      unit: "dB",
      min: -20,
      max: 45,
      default: 10,
      source: MEMORY,
    }),
    noiseFigureDb: noiseFigureDb(5),
    outputDbuv: outputDbuv(100, TV_RATIO_DB),
    uhfTo,
    aerialSupply: choice({
      label: "Feeds a masthead amplifier",
      choices: [
        { value: "0", label: "No" },
        { value: "12", label: "With 12 V" },
        { value: "24", label: "With 24 V" },
      ],
      default: "0",
      source: MEMORY,
    }),
    aerialLimitMa: number({
      label: "Limit of that supply",
      unit: "mA",
      min: 10,
      max: 500,
      default: 100,
      source: MEMORY,
      advanced: true,
    }),
    switchedOn: toggle({ label: "Mains on", default: true }),
  }),
  symbol: "amplifier",
  caption: (o) =>
    `${dB(o.gainDb)}${o.outputs > 1 ? ` · ${o.outputs} outputs` : ""}${o.switchedOn ? "" : " · off"}`,
  ports: (o) => [
    coaxIn("in", o.inputs === "one" ? "in" : "UHF"),
    ...RADIO_INPUTS[o.inputs].map((r) => coaxIn(r.port, r.label)),
    ...outputs(o.outputs).map((id, i) => coaxOut(id, o.outputs > 1 ? `out ${i + 1}` : "out")),
  ],
  signal: (o) => {
    const top = Number(o.uhfTo);
    const tvBand = { fromMHz: o.inputs === "one" ? LOW_END_MHZ : 470, toMHz: top };
    const tilted = curve([LOW_END_MHZ, o.gainDb - o.slopeDb], [top, o.gainDb]);
    // Without power nothing is amplified and nothing added: a passive with a large loss.
    const active = o.switchedOn
      ? { noiseFigureDb: o.noiseFigureDb, rating: { outputDbuv: o.outputDbuv, ratioDb: TV_RATIO_DB } }
      : {};
    const paths: Path[] = [
      { from: "in", to: "#tv", response: series(flat(-o.padDb), passing([tvBand], OUT_OF_BAND_DB)) },
      { from: "#tv", to: "#sum", response: o.switchedOn ? tilted : UNPOWERED_GAIN, ...active },
    ];
    const radioGain = o.switchedOn ? flat(o.radioGainDb) : UNPOWERED_GAIN;
    for (const { port, range } of RADIO_INPUTS[o.inputs]) {
      const response = series(radioGain, passing([range], OUT_OF_BAND_DB));
      paths.push({ from: port, to: "#sum", response, ...active });
    }
    for (const to of outputs(o.outputs)) paths.push({ from: "#sum", to, response: flat(0) });
    return { paths };
  },
  power: (o) => {
    const volts = o.switchedOn ? Number(o.aerialSupply) : 0;
    if (volts === 0) return { selfPowered: o.switchedOn };
    return {
      selfPowered: true,
      supplies: [{ port: "in", kind: "plain", volts13: volts, volts18: volts, limitMa: o.aerialLimitMa }],
    };
  },
  inline: INLINE,
  cautions: ["mains", "bonding"],
});

/** Lower end of the TV range, where slope is stated [MHz]: 47–862 MHz as in Spanish Royal Decree 346/2011. */
const LOW_END_MHZ = 47;

type RadioInput = { readonly port: string; readonly label: string; readonly range: Range };
const RADIO_INPUTS: Readonly<Record<"one" | "two" | "three", readonly RadioInput[]>> = {
  one: [],
  two: [{ port: "radio", label: "FM/DAB", range: RADIO }],
  three: [
    { port: "fm", label: "FM", range: { fromMHz: 87, toMHz: 108 } },
    { port: "dab", label: "DAB", range: { fromMHz: 174, toMHz: 240 } },
  ],
};

/** The first output is always "out", so that the amplifier can sit in a line whatever else it has. */
function outputs(count: number): readonly string[] {
  return Array.from({ length: count }, (_, i) => (i === 0 ? "out" : `out${i + 1}`));
}

const lineAmplifier = define({
  kind: "amp-if",
  family: "lift",
  name: "Satellite line amplifier",
  summary: "Lifts satellite IF on a long cable, fed by the receiver's own voltage, which it passes on.",
  keywords: ["IF amplifier", "in-line", "satellite booster", "950–2150"],
  prefix: "lineamp",
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
    toMHz: number({ label: "up to", unit: "MHz", min: 1900, max: 3000, default: 2150, source: MEMORY }),
    gainDb: gainDb(40, 20),
    slopeDb: number({
      label: "Slope",
      unit: "dB",
      help: "How much less is amplified at the low end than at the top.",
      min: 0,
      max: 12,
      default: 6,
      source: MEMORY,
    }),
    noiseFigureDb: noiseFigureDb(6),
    outputDbuv: outputDbuv(112, IF_RATIO_DB),
    below: choice({
      label: "TV and radio below it",
      choices: [
        { value: "stopped", label: "are stopped" },
        { value: "passed", label: "pass by, unamplified" },
      ],
      default: "stopped",
      source: MEMORY,
    }),
    milliamps: supplyMilliamps(60),
    minVolts: minVolts(11),
  }),
  symbol: "amplifier-if",
  caption: (o) => `${dB(o.gainDb)} at ${o.toMHz} MHz`,
  ports: () => THROUGH_PORTS,
  signal: (o, { powered }) => {
    const band = passing([{ fromMHz: o.fromMHz, toMHz: o.toMHz }], OUT_OF_BAND_DB);
    const gain = powered ? curve([o.fromMHz, o.gainDb - o.slopeDb], [o.toMHz, o.gainDb]) : UNPOWERED_GAIN;
    const active = powered
      ? { noiseFigureDb: o.noiseFigureDb, rating: { outputDbuv: o.outputDbuv, ratioDb: IF_RATIO_DB } }
      : {};
    const amplified: Path = { from: "in", to: "out", response: series(gain, band), ...active };
    if (o.below === "stopped") return { paths: [amplified] };
    // A carrier takes one of the two ways, so that it doesn't meet itself at the output.
    const beside = passing([{ fromMHz: 5, toMHz: o.fromMHz * 0.9 }], OUT_OF_BAND_DB);
    const middle = o.fromMHz * 0.95;
    return {
      paths: [
        { ...amplified, takes: { fromMHz: middle } },
        { from: "in", to: "out", response: series(flat(-1.5), beside), takes: { toMHz: middle } },
      ],
    };
  },
  power: (o) => ({
    paths: [LINE_POWER],
    load: { milliamps: o.milliamps, ports: ["out"], minVolts: o.minVolts },
  }),
  inline: INLINE,
});

export const AMPLIFIERS: readonly PartKind[] = [masthead, distribution, lineAmplifier];
