/** Multiswitch: gives many receivers the quadrant that each asks for; also as one stage of a cascade. */
import { curve, passBand } from "../signal/response.ts";
import { SIDE_REJECTION_DB, TERRESTRIAL_INPUT, terrestrialPaths } from "./besideSatellite.ts";
import { define, type PartKind, type Path, type Port, type PowerPath } from "./contract.ts";
import { SILICON_DROP_VOLTS } from "./diodes.ts";
import { LNB_LEAST_VOLTS, SWITCH_THRESHOLD_VOLTS } from "./lnbFields.ts";
import { lnbSupplies } from "./lnbSupply.ts";
import { MULTISWITCH_OPTIONS, type MultiswitchOptions } from "./multiswitchOptions.ts";
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
          role: "trunk",
          ...(port.plane ? { plane: port.plane } : {}),
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

/** Direct current towards the LNB: along the trunk, and through diodes from the receivers. */
function supplyPaths(o: MultiswitchOptions): readonly PowerPath[] {
  const inputs = satelliteInputsOf(o);
  const trunk: PowerPath[] = o.cascade
    ? inputs.map((port) => ({ from: through(port), to: port, tone: false }))
    : [];
  if (o.supply !== "receivers" || !o.feedsLnb) return trunk;
  const steered = outputsOf(o).flatMap((from) =>
    inputs.map((to) => ({ from, to, dropVolts: SILICON_DROP_VOLTS, tone: false })),
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
  trade: { job: "switch unit", price: 120, workMinutes: 45, gives: "switched", fedWithVolts: 14 },
  options: MULTISWITCH_OPTIONS,
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
    isolationDb: o.isolationDb,
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
