/** Multiswitch: gives many receivers the quadrant that each asks for; also as one stage of a cascade. */
import { curve, passBand } from "../signal/response.ts";
import { SIDE_REJECTION_DB, TERRESTRIAL_INPUT, terrestrialPaths } from "./besideSatellite.ts";
import {
  define,
  type PartKind,
  type Path,
  type Port,
  type PowerPath,
  type SignalTreatment,
} from "./contract.ts";
import { crosstalkFrom } from "./crosstalk.ts";
import { SILICON_DROP_VOLTS } from "./diodes.ts";
import { LNB_LEAST_VOLTS, SWITCH_THRESHOLD_VOLTS, UNIVERSAL_IF, WIDEBAND_IF } from "./lnbFields.ts";
import { lnbSupplies, terrestrialSupplies, trunkSupplies } from "./lnbSupply.ts";
import { MULTISWITCH_OPTIONS, type MultiswitchOptions } from "./multiswitchOptions.ts";
import {
  IF_FROM_MHZ,
  IF_TO_MHZ,
  numberedOutputs,
  outputId,
  polarisationInputs,
  QUADRANT_PORTS,
  type QuadrantPort,
  quadrantInputs,
  quadrantOfWhole,
  satellitePort,
  upTo,
} from "./quadrants.ts";
import { stackInputs, stackPath, stackSwitch } from "./stacks.ts";
import { usualUserBands } from "./userBands.ts";

const satellitesOf = (o: MultiswitchOptions): number => Number(o.satelliteInputs) / 4;

function outputsOf(o: MultiswitchOptions): readonly string[] {
  return upTo(o.outputs).map((n) => outputId(n, o.outputs));
}

function satellitePortsOf(o: MultiswitchOptions): readonly Port[] {
  return o.feed === "wideband" ? polarisationInputs(satellitesOf(o)) : quadrantInputs(satellitesOf(o));
}

function satelliteInputsOf(o: MultiswitchOptions): readonly string[] {
  return satellitePortsOf(o).map(({ id }) => id);
}

/** Its single-cable outputs, named by the standard they listen to. */
function singleCableOf(o: MultiswitchOptions): readonly Port[] {
  return o.singleCable.map(({ standard }, i) => ({
    id: `sc${i + 1}`,
    side: "out",
    medium: "coax",
    label: `${standard === "EN 50494" ? "SCR" : "dSCR"} ${i + 1}`,
    role: "output",
  }));
}

/** Whether it sets the outputs of a quad LNB itself: it must have mains for that, and feed the LNB. */
function isHolding(o: MultiswitchOptions): boolean {
  return o.feed === "quad" && o.supply === "mains" && o.mainsOn && o.feedsLnb;
}

const through = (input: string): string => `${input}-thru`;

function portsOf(o: MultiswitchOptions): readonly Port[] {
  const inputs = [...satellitePortsOf(o), ...(o.terrestrial ? [TERRESTRIAL_INPUT] : [])];
  const throughs = o.cascade
    ? inputs.map(
        (port): Port => ({
          id: through(port.id),
          side: "out",
          medium: "coax",
          label: `${port.label} through`,
          role: "trunk",
          ...(port.plane ? { plane: port.plane } : {}),
        }),
      )
    : [];
  return [...inputs, ...numberedOutputs(o.outputs), ...singleCableOf(o), ...throughs];
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
  const inputs = satelliteInputsOf(o);
  const besides = new Map(inputs.map((input) => [input, crosstalkFrom(inputs, input, o.crosstalkDb)]));
  return outputsOf(o).flatMap((to) =>
    upTo(satellites).flatMap((s) =>
      QUADRANT_PORTS.map((q) => ({
        to,
        ...drop,
        ...quadrantInput(o, q, s),
        ...besides.get(quadrantInput(o, q, s).from),
        condition: { port: to, setting: satellites > 1 ? `${s}:${q.quadrant}` : q.quadrant },
      })),
    ),
  );
}

/** Where a quadrant of the n-th satellite comes in, and how it gets to the satellite IF of a receiver. */
function quadrantInput(
  o: MultiswitchOptions,
  q: QuadrantPort,
  satellite: number,
): Omit<Path, "to" | "response"> {
  if (o.feed !== "wideband")
    return { from: satellitePort(q.port, satellite), ...(isHolding(o) ? { holds: true } : {}) };
  return {
    from: satellitePort(q.polarisation.toLowerCase(), satellite),
    ...quadrantOfWhole(q, o.widebandLoMHz),
  };
}

/** User bands for the single-cable outputs. */
function stacksOf(o: MultiswitchOptions): Pick<SignalTreatment, "paths" | "stacks"> {
  if (o.singleCable.length === 0) return {};
  const { paths, from, planes } = stackInputs(o, {
    inputs: satellitePortsOf(o),
    passes: o.feed === "wideband" ? WIDEBAND_IF : UNIVERSAL_IF,
    ...(isHolding(o) ? { holds: true } : {}),
  });
  const wideband = o.feed === "wideband" ? { widebandLoMHz: o.widebandLoMHz } : {};
  const stacks = o.singleCable.map((row, i) => {
    const bands = { standard: row.standard, userBands: usualUserBands(row) };
    return stackPath(o, { from, planes, to: `sc${i + 1}`, ...bands, ...wideband });
  });
  return { paths, stacks };
}

/** The trunk is a plain conductor with couplers on it: it works without supply, and below the satellite IF too. */
function trunkPaths(o: MultiswitchOptions): readonly Path[] {
  if (!o.cascade) return [];
  const loss = o.throughLossDb;
  const response = curve([47, -loss / 2], [IF_FROM_MHZ, -loss], [IF_TO_MHZ, -loss * 1.5]);
  const lines = satelliteInputsOf(o);
  return [
    ...lines.map((from) => ({
      from,
      to: through(from),
      response,
      ...crosstalkFrom(lines, from, o.trunkCrosstalkDb),
    })),
    ...(o.terrestrial ? [{ from: TERRESTRIAL_INPUT.id, to: through(TERRESTRIAL_INPUT.id), response }] : []),
  ];
}

/** Direct current towards the LNB: along the trunk, and through diodes from the receivers. */
function supplyPaths(o: MultiswitchOptions): readonly PowerPath[] {
  const inputs = satelliteInputsOf(o);
  // A unit that feeds the trunks below keeps that out of its LNB.
  const isHead = o.supply === "mains" && o.trunkSupply !== "0";
  const trunk: PowerPath[] =
    o.cascade && !isHead ? inputs.map((port) => ({ from: through(port), to: port, tone: false })) : [];
  if (o.supply !== "receivers" || !o.feedsLnb) return trunk;
  const outputs = [...outputsOf(o), ...singleCableOf(o).map(({ id }) => id)];
  const steered = outputs.flatMap((from) =>
    inputs.map((to) => ({ from, to, dropVolts: SILICON_DROP_VOLTS, tone: false })),
  );
  return [...trunk, ...steered];
}

const MULTISWITCH = define({
  kind: "multiswitch",
  family: "convert",
  name: "Multiswitch",
  summary:
    "Gives each receiver on its own cable the quadrant it asks for, from a quattro LNB or another that it is made for.",
  keywords: [
    "switch",
    "matrix",
    "cascade",
    "trunk",
    "quattro",
    "quad",
    "wideband",
    "block",
    "flats",
    "distribution",
  ],
  prefix: "switch",
  trade: { job: "switch unit", price: 120, workMinutes: 45, gives: "switched", fedWithVolts: 14 },
  options: MULTISWITCH_OPTIONS,
  symbol: "multiswitch",
  caption: (o) => {
    const inputs = `${satelliteInputsOf(o).length}${o.terrestrial ? "+TV" : ""}`;
    const singleCable = o.singleCable.length > 0 ? ` + ${o.singleCable.length} single-cable` : "";
    return `${inputs} in · ${o.outputs} out${singleCable}${o.cascade ? " · cascade" : ""}`;
  },
  ports: portsOf,
  signal: (o, { powered }) => {
    const { paths = [], stacks = [] } = powered ? stacksOf(o) : {};
    const outputs = [...outputsOf(o), ...singleCableOf(o).map(({ id }) => id)];
    return {
      paths: [
        ...(powered ? satellitePaths(o) : []),
        ...paths,
        ...terrestrialPaths(o, outputs, powered),
        ...trunkPaths(o),
      ],
      ...(stacks.length > 0 ? { stacks } : {}),
      isolationDb: o.isolationDb,
    };
  },
  power: (o) => {
    const outputs = outputsOf(o);
    const singleCable = singleCableOf(o).map(({ id }) => id);
    const mains = o.supply === "mains";
    const throughs = o.cascade ? satelliteInputsOf(o).map(through) : [];
    const wakes = o.energySaving ? { whileFedAt: [...outputs, ...singleCable] } : {};
    const feeding =
      o.supply === "receivers"
        ? [...outputs, ...singleCable]
        : o.supply === "head"
          ? satelliteInputsOf(o)
          : throughs;
    return {
      selfPowered: mains && o.mainsOn,
      paths: supplyPaths(o),
      ...(mains
        ? {
            supplies: [
              ...lnbSupplies(o, satellitePortsOf(o), { asks: isHolding(o), ...wakes }),
              ...terrestrialSupplies(o, wakes),
              ...trunkSupplies(o, throughs),
            ],
          }
        : { load: { milliamps: o.ownMa, ports: feeding, minVolts: LNB_LEAST_VOLTS } }),
      switches: [
        ...outputs.map((port) => ({
          port,
          by: satellitesOf(o) > 1 ? ("both" as const) : ("quadrant" as const),
          positions: satellitesOf(o),
          thresholdVolts: SWITCH_THRESHOLD_VOLTS,
        })),
        ...singleCable.map(stackSwitch),
      ],
    };
  },
  cautions: ["mains", "bonding"],
});

export const MULTISWITCHES: readonly PartKind[] = [MULTISWITCH];
