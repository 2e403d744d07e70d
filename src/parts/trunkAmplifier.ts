/** Trunk amplifier: lifts all trunks of a cascade at once, satellite and terrestrial, and feeds the LNB. */
import { z } from "zod";
import { curve, passBand, type Response } from "../signal/response.ts";
import { UNPOWERED_GAIN } from "./amplifierFields.ts";
import { SIDE_REJECTION_DB, TERRESTRIAL_INPUT } from "./besideSatellite.ts";
import { define, type PartKind, type Path, type Port } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import { LNB_LEAST_VOLTS } from "./lnbFields.ts";
import { lnbSupplies, lnbSupplyFields, trunkSupplies, trunkSupplyFields } from "./lnbSupply.ts";
import { dB, MEMORY } from "./passive.ts";
import { IF_FROM_MHZ, IF_TO_MHZ, quadrantInputs, trunkCount } from "./quadrants.ts";
import { equipmentScreening, screened } from "./screening.ts";

const OPTIONS = z.object({
  satelliteInputs: trunkCount({
    label: "Satellite trunks",
    help: "Four for each satellite position; with the terrestrial one 5, 9, 13 or 17 trunks.",
  }),
  gainDb: number({
    label: "Gain at 2150 MHz",
    unit: "dB",
    help: "Of every satellite trunk.",
    min: 0,
    max: 40,
    step: 0.5,
    default: 20,
    source: "typical (15 to 30), from memory",
    means: "gain",
    onSite: "setting",
    turnsBy: 1,
    spreadDb: 1.5,
  }),
  slopeDb: number({
    label: "Slope",
    unit: "dB",
    help: "How much less is amplified at 950 MHz, against the slope of the trunk’s cable.",
    min: 0,
    max: 15,
    step: 1,
    default: 6,
    source: "typical (4 to 8), from memory",
    means: "slope",
    onSite: "setting",
    turnsBy: 1,
    spreadDb: 1,
  }),
  noiseFigureDb: number({
    label: "Noise figure",
    unit: "dB",
    min: 1,
    max: 15,
    step: 0.5,
    default: 8,
    source: "typical (6 to 10), from memory",
    spreadDb: 1,
    advanced: true,
  }),
  outputDbuv: number({
    label: "Rated output",
    unit: "dBµV",
    help: "Of a satellite trunk: per carrier, with two carriers and 35 dB to their third-order products.",
    min: 90,
    max: 130,
    step: 1,
    default: 115,
    source: "typical (112 to 120), from memory",
    spreadDb: 2,
  }),
  terrestrial: toggle({ label: "Terrestrial trunk", default: true }),
  terrestrialGainDb: number({
    label: "Terrestrial gain at 862 MHz",
    unit: "dB",
    min: 0,
    max: 45,
    step: 0.5,
    default: 25,
    source: "typical (25 to 42), from memory",
    means: "terrestrial gain",
    onSite: "setting",
    turnsBy: 1,
    onlyWhen: { terrestrial: true },
    spreadDb: 1.5,
  }),
  terrestrialSlopeDb: number({
    label: "Terrestrial slope",
    unit: "dB",
    help: "How much less is amplified at 47 MHz.",
    min: 0,
    max: 15,
    step: 1,
    default: 4,
    source: MEMORY,
    onSite: "setting",
    turnsBy: 1,
    onlyWhen: { terrestrial: true },
    spreadDb: 1,
  }),
  terrestrialNoiseDb: number({
    label: "Terrestrial noise figure",
    unit: "dB",
    min: 1,
    max: 15,
    step: 0.5,
    default: 6,
    source: "typical (5 to 8), from memory",
    onlyWhen: { terrestrial: true },
    spreadDb: 1,
    advanced: true,
  }),
  terrestrialOutputDbuv: number({
    label: "Terrestrial rated output",
    unit: "dBµV",
    help: "Per carrier, with two carriers and 60 dB to their third-order products.",
    min: 90,
    max: 130,
    step: 1,
    default: 116,
    source: "typical (114 to 120), from memory",
    onlyWhen: { terrestrial: true },
    spreadDb: 2,
  }),
  supply: choice({
    label: "Supply",
    choices: [
      { value: "mains", label: "Own mains unit" },
      { value: "head", label: "From the head end" },
    ],
    help: "From the head end: over the satellite trunks, from a unit above that feeds them.",
    default: "mains",
    means: "unit supply",
    passes: ["head"],
  }),
  ...lnbSupplyFields({ supply: ["mains"] }),
  ...trunkSupplyFields({ supply: ["mains"] }),
  ownMa: number({
    label: "Own current",
    unit: "mA",
    help: "When fed from the head end.",
    min: 10,
    max: 2000,
    step: 10,
    default: 300,
    source: "order of magnitude, from memory",
    advanced: true,
    onlyWhen: { supply: ["head"] },
  }),
  screening: equipmentScreening(),
});

type Options = z.output<typeof OPTIONS>;

const satelliteInputsOf = (o: Options): readonly Port[] => quadrantInputs(Number(o.satelliteInputs) / 4);

const inputsOf = (o: Options): readonly Port[] => [
  ...satelliteInputsOf(o),
  ...(o.terrestrial ? [TERRESTRIAL_INPUT] : []),
];

const outputOf = (input: string): string => `${input}-out`;

function pathOf(o: Options, input: Port, powered: boolean): Path {
  const isSatellite = input.role === "plane";
  const passes = isSatellite ? { fromMHz: IF_FROM_MHZ, toMHz: IF_TO_MHZ } : { fromMHz: 47, toMHz: 862 };
  const way = { from: input.id, to: outputOf(input.id) };
  const within = (gain: Response) => passBand({ ...passes, gain, rejectionDb: SIDE_REJECTION_DB });
  if (!powered) return { ...way, response: within(UNPOWERED_GAIN) };
  const [gainDb, slopeDb] = isSatellite ? [o.gainDb, o.slopeDb] : [o.terrestrialGainDb, o.terrestrialSlopeDb];
  return {
    ...way,
    response: within(curve([passes.fromMHz, gainDb - slopeDb], [passes.toMHz, gainDb])),
    noiseFigureDb: isSatellite ? o.noiseFigureDb : o.terrestrialNoiseDb,
    rating: isSatellite
      ? { outputDbuv: o.outputDbuv, ratioDb: 35 }
      : { outputDbuv: o.terrestrialOutputDbuv, ratioDb: 60 },
  };
}

const TRUNK_AMPLIFIER = define({
  kind: "amp-trunks",
  family: "lift",
  name: "Trunk amplifier",
  summary:
    "Lifts the trunks of a cascade of multiswitches at their start, with slope against the cable, and feeds the LNB.",
  keywords: [
    "trunk",
    "launch amplifier",
    "cascade",
    "5 trunks",
    "9 trunks",
    "17 trunks",
    "head-end",
    "multiswitch",
    "booster",
  ],
  prefix: "trunkamp",
  trade: {
    job: "amplifier",
    price: 150,
    workMinutes: 45,
    isRare: true,
    fedWithVolts: 15,
    leadsTo: ["cable", "switch unit"],
  },
  options: OPTIONS,
  symbol: "trunk-amplifier",
  caption: (o) => `${inputsOf(o).length} trunks · ${dB(o.gainDb)}`,
  ports: (o) => [
    ...inputsOf(o),
    ...inputsOf(o).map(
      (port): Port => ({
        id: outputOf(port.id),
        side: "out",
        medium: "coax",
        label: `${port.label} out`,
        role: "trunk",
        ...(port.plane ? { plane: port.plane } : {}),
      }),
    ),
  ],
  signal: (o, context) =>
    screened(context, o, { paths: inputsOf(o).map((input) => pathOf(o, input, context.powered)) }),
  power: (o) => {
    const inputs = satelliteInputsOf(o).map(({ id }) => id);
    if (o.supply === "head")
      return {
        load: { milliamps: o.ownMa, ports: inputs, minVolts: LNB_LEAST_VOLTS },
        // What comes over the trunks goes on to the next unit.
        paths: inputs.map((to) => ({ from: outputOf(to), to, tone: false })),
      };
    return {
      selfPowered: o.mainsOn,
      supplies: [...lnbSupplies(o, satelliteInputsOf(o)), ...trunkSupplies(o, inputs.map(outputOf))],
    };
  },
  cautions: ["mains", "bonding"],
});

export const TRUNK_AMPLIFIERS: readonly PartKind[] = [TRUNK_AMPLIFIER];
