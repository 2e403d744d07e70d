/** Mains amplifier for TV and radio. */
import { z } from "zod";
import { curve, flat, series } from "../signal/response.ts";
import {
  aerialSupplyFields,
  gainDb,
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
import { define, type Path } from "./contract.ts";
import { choice, number, wholeNumber } from "./fields.ts";
import { coaxIn, coaxOut, dB, INLINE, MAINS_ON, MEMORY, passing, type Range } from "./passive.ts";
import { equipmentScreening, screened } from "./screening.ts";

export const distribution = define({
  kind: "amp-distribution",
  family: "lift",
  name: "Distribution amplifier",
  summary: "Mains amplifier for TV and radio, with one or more inputs and outputs.",
  keywords: ["loft amplifier", "launch amplifier", "booster", "headend", "mains"],
  prefix: "amp",
  trade: {
    job: "amplifier",
    price: 60,
    workMinutes: 30,
    inItsPlace: "coupler",
    widerTypes: WIDER_UHF,
  },
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
    outputs: wholeNumber({
      label: "Outputs",
      min: 1,
      max: 8,
      default: 1,
      means: "outputs",
      sold: { values: [1, 2, 4, 8], source: MEMORY },
    }),
    gainDb: gainDb(45, 15),
    slopeDb: slopeDb({
      help: "How much less is amplified at 47 MHz than at the top: it makes up for the cable that follows.",
      max: 20,
      default: 0,
    }),
    padDb: number({
      label: "Input attenuator",
      unit: "dB",
      help: "On the UHF input; it costs as much noise as it takes level.",
      min: 0,
      max: 20,
      step: 1,
      default: 0,
      means: "input pad",
      onSite: "setting",
      turnsBy: 1,
    }),
    radioGainDb: number({
      label: "Gain of the radio inputs",
      unit: "dB",
      min: -20,
      max: 45,
      step: 1,
      default: 10,
      source: MEMORY,
      means: "radio gain",
      onlyWhen: { inputs: ["two", "three"] },
      onSite: "setting",
      turnsBy: 1,
      spreadDb: 1.5,
    }),
    noiseFigureDb: noiseFigureDb(5),
    outputDbuv: outputDbuv(100, TV_RATIO_DB),
    uhfTo,
    ...aerialSupplyFields({ label: "Feeds a masthead amplifier" }),
    switchedOn: MAINS_ON,
    screening: equipmentScreening(),
  }),
  symbol: "amplifier",
  caption: (o) =>
    `${dB(o.gainDb)}${o.outputs > 1 ? ` · ${o.outputs} outputs` : ""}${o.switchedOn ? "" : " · off"}`,
  ports: (o) => [
    coaxIn("in", o.inputs === "one" ? "in" : "UHF"),
    ...RADIO_INPUTS[o.inputs].map((r) => coaxIn(r.port, r.label, "band")),
    ...outputs(o.outputs).map((id, i) => coaxOut(id, o.outputs > 1 ? `out ${i + 1}` : "out")),
  ],
  signal: (o, context) => {
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
    return screened(context, o, { paths });
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
