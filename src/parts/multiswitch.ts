/** Multiswitch: gives many receivers the quadrant that each asks for; also as one stage of a cascade. */
import { z } from "zod";
import { curve, passBand } from "../signal/response.ts";
import {
  SIDE_REJECTION_DB,
  TERRESTRIAL_INPUT,
  terrestrialFields,
  terrestrialPaths,
} from "./besideSatellite.ts";
import { define, type PartKind, type Path, type Port, type PowerPath } from "./contract.ts";
import { choice, number, toggle, whole } from "./fields.ts";
import { LNB_LEAST_VOLTS, SWITCH_THRESHOLD_VOLTS } from "./lnbFields.ts";
import { lnbSupplies, lnbSupplyFields } from "./lnbSupply.ts";
import {
  IF_FROM_MHZ,
  IF_TO_MHZ,
  numberedOutputs,
  outputId,
  QUADRANT_PORTS,
  quadrantInputs,
  satellitePort,
  upTo,
} from "./quadrants.ts";

const OPTIONS = z.object({
  satelliteInputs: choice({
    label: "Satellite inputs",
    help: "Four for each satellite position.",
    choices: [
      { value: "4", label: "4 (one satellite)" },
      { value: "8", label: "8 (two satellites)" },
      { value: "16", label: "16 (four satellites)" },
    ],
    default: "4",
  }),
  outputs: whole({ label: "Outputs", help: "One for each receiver input.", min: 2, max: 32, default: 8 }),
  supply: choice({
    label: "Supply",
    choices: [
      { value: "mains", label: "Own mains unit" },
      { value: "receivers", label: "From the receivers" },
      { value: "trunk", label: "Through the trunk" },
    ],
    help: "Through the trunk: from the next unit of the cascade, over the through outputs.",
    default: "mains",
  }),
  ...lnbSupplyFields(),
  ownMa: number({
    label: "Own current",
    unit: "mA",
    help: "When fed from the receivers or the trunk.",
    min: 0,
    max: 500,
    step: 5,
    default: 60,
    source: "order of magnitude, from memory",
    advanced: true,
  }),
  build: choice({
    label: "Satellite path",
    choices: [
      { value: "active", label: "Active (gain)" },
      { value: "tap", label: "Tap (loss)" },
    ],
    help: "Tap units of a cascade take a little off the trunk for each output.",
    default: "active",
  }),
  satLowGainDb: number({
    label: "Gain at 950 MHz",
    unit: "dB",
    help: "When active.",
    min: -20,
    max: 20,
    step: 0.5,
    default: -2,
    source: "typical (−2 to +6), from memory",
  }),
  satHighGainDb: number({
    label: "Gain at 2150 MHz",
    unit: "dB",
    help: "When active; often higher than at 950 MHz, against the slope of the cable.",
    min: -20,
    max: 20,
    step: 0.5,
    default: 2,
    source: "typical (−2 to +6), from memory",
  }),
  tapLossDb: number({
    label: "Tap loss",
    unit: "dB",
    help: "From the trunk to an output, when built as a tap.",
    min: 0,
    max: 40,
    step: 1,
    default: 20,
    source: "typical (16 to 25), from memory",
  }),
  satNoiseDb: number({
    label: "Noise figure",
    unit: "dB",
    help: "Of the active satellite path.",
    min: 1,
    max: 15,
    step: 0.5,
    default: 7,
    source: "typical (5 to 9), from memory",
    advanced: true,
  }),
  satRatedDbuv: number({
    label: "Rated output",
    unit: "dBµV",
    help: "Of the active satellite path: per carrier, with two carriers and 35 dB to their third-order products.",
    min: 70,
    max: 120,
    step: 1,
    default: 98,
    source: "typical (85 to 100), from memory",
    advanced: true,
  }),
  ...terrestrialFields(),
  cascade: toggle({
    label: "Through outputs",
    help: "Hands all inputs on to the next unit of a cascade.",
    default: false,
  }),
  throughLossDb: number({
    label: "Through loss at 950 MHz",
    unit: "dB",
    help: "Along the trunk; half as much again at 2150 MHz, half at 47 MHz.",
    min: 0,
    max: 15,
    step: 0.5,
    default: 2,
    source: "typical (1 to 4), from memory",
  }),
});

type MultiswitchOptions = z.output<typeof OPTIONS>;

const satellitesOf = (o: MultiswitchOptions): number => Number(o.satelliteInputs) / 4;

function outputsOf(o: MultiswitchOptions): readonly string[] {
  return upTo(o.outputs).map((n) => outputId(n, o.outputs));
}

function satelliteInputsOf(o: MultiswitchOptions): readonly string[] {
  return quadrantInputs(satellitesOf(o)).map(({ id }) => id);
}

const through = (input: string): string => `${input}-thru`;

function portsOf(o: MultiswitchOptions): readonly Port[] {
  const inputs = [...quadrantInputs(satellitesOf(o)), ...(o.terrestrial ? [TERRESTRIAL_INPUT] : [])];
  const throughs = o.cascade
    ? inputs.map(
        (port): Port => ({
          id: through(port.id),
          side: "out",
          medium: "coax",
          label: `${port.label} through`,
        }),
      )
    : [];
  return [...inputs, ...numberedOutputs(o.outputs), ...throughs];
}

const SATELLITE_IF = { fromMHz: IF_FROM_MHZ, toMHz: IF_TO_MHZ, rejectionDb: SIDE_REJECTION_DB };

/** What an output gets of an input while its switch stands there. */
function dropOf(o: MultiswitchOptions): Pick<Path, "response" | "noiseFigureDb" | "rating"> {
  if (o.build === "tap")
    // A tap's coupling sags a little towards the top; typical, from memory.
    return {
      response: passBand({
        ...SATELLITE_IF,
        gain: curve([IF_FROM_MHZ, -o.tapLossDb], [IF_TO_MHZ, -o.tapLossDb - 2]),
      }),
    };
  return {
    response: passBand({
      ...SATELLITE_IF,
      gain: curve([IF_FROM_MHZ, o.satLowGainDb], [IF_TO_MHZ, o.satHighGainDb]),
    }),
    noiseFigureDb: o.satNoiseDb,
    rating: { outputDbuv: o.satRatedDbuv, ratioDb: 35 },
  };
}

function satellitePaths(o: MultiswitchOptions): readonly Path[] {
  const satellites = satellitesOf(o);
  const drop = dropOf(o);
  return outputsOf(o).flatMap((to) =>
    upTo(satellites).flatMap((s) =>
      QUADRANT_PORTS.map(({ port, quadrant }) => ({
        from: satellitePort(port, s),
        to,
        ...drop,
        condition: { port: to, setting: satellites > 1 ? `${s}:${quadrant}` : quadrant },
      })),
    ),
  );
}

/** The trunk is a plain conductor with couplers on it: it works without supply, and below the satellite IF too. */
function trunkPaths(o: MultiswitchOptions): readonly Path[] {
  if (!o.cascade) return [];
  const loss = o.throughLossDb;
  const response = curve([47, -loss / 2], [IF_FROM_MHZ, -loss], [IF_TO_MHZ, -loss * 1.5]);
  const inputs = [...satelliteInputsOf(o), ...(o.terrestrial ? [TERRESTRIAL_INPUT.id] : [])];
  return inputs.map((from) => ({ from, to: through(from), response }));
}

/** Forward drop of a steering diode [V]; a silicon diode, from memory. */
const DIODE_VOLTS = 0.7;

/** Direct current towards the LNB: along the trunk, and through diodes from the receivers. */
function supplyPaths(o: MultiswitchOptions): readonly PowerPath[] {
  const inputs = satelliteInputsOf(o);
  const trunk: PowerPath[] = o.cascade
    ? inputs.map((port) => ({ from: through(port), to: port, tone: false }))
    : [];
  if (o.supply !== "receivers" || !o.feedsLnb) return trunk;
  const steered = outputsOf(o).flatMap((from) =>
    inputs.map((to) => ({ from, to, dropVolts: DIODE_VOLTS, tone: false })),
  );
  return [...trunk, ...steered];
}

const MULTISWITCH = define({
  kind: "multiswitch",
  family: "convert",
  name: "Multiswitch",
  summary: "Gives each receiver on its own cable the quadrant it asks for, from a quattro LNB.",
  keywords: ["switch", "matrix", "cascade", "trunk", "quattro", "block", "flats", "distribution"],
  prefix: "switch",
  options: OPTIONS,
  symbol: "multiswitch",
  caption: (o) => {
    const inputs = `${o.satelliteInputs}${o.terrestrial ? "+TV" : ""}`;
    return `${inputs} in · ${o.outputs} out${o.cascade ? " · cascade" : ""}`;
  },
  ports: portsOf,
  signal: (o, { powered }) => ({
    paths: [
      ...(powered ? satellitePaths(o) : []),
      ...terrestrialPaths(o, outputsOf(o), powered),
      ...trunkPaths(o),
    ],
  }),
  power: (o) => {
    const outputs = outputsOf(o);
    const mains = o.supply === "mains";
    const throughs = o.cascade ? satelliteInputsOf(o).map(through) : [];
    const feeding = o.supply === "receivers" ? outputs : throughs;
    return {
      selfPowered: mains && o.mainsOn,
      paths: supplyPaths(o),
      ...(mains
        ? { supplies: lnbSupplies(o, satelliteInputsOf(o)) }
        : { load: { milliamps: o.ownMa, ports: feeding, minVolts: LNB_LEAST_VOLTS } }),
      switches: outputs.map((port) => ({
        port,
        by: satellitesOf(o) > 1 ? ("both" as const) : ("quadrant" as const),
        positions: satellitesOf(o),
        thresholdVolts: SWITCH_THRESHOLD_VOLTS,
      })),
    };
  },
  cautions: ["mains", "bonding"],
});

export const MULTISWITCHES: readonly PartKind[] = [MULTISWITCH];
