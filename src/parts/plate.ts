/** A wall plate as its sockets: ports, paths, supply and delivery all follow from them. */
import type { z } from "zod";
import type { Response } from "../signal/response.ts";
import { type Delivery, define, type PartKind, type Path, type Port, type PowerPath } from "./contract.ts";
import { SCHOTTKY_DROP_VOLTS } from "./diodes.ts";
import { choice, text } from "./fields.ts";
import { coaxIn, coaxOut, MEMORY, type returnLoss, tonePass } from "./passive.ts";
import { type EquipmentClass, equipmentScreeningDb, ingress } from "./screening.ts";
import type { Trade } from "./trade.ts";

/** Which dwelling an outlet belongs to: outlets of different dwellings must be isolated from one another. */
export function dwellingField() {
  return text({
    label: "Flat",
    help: "The flat that the outlet belongs to, by any name. Left empty, isolation from other flats is not checked.",
    maxLength: 40,
    default: "",
    advanced: true,
    onSite: "setting",
  });
}

/** One socket, or more, of a plate: which input it hangs on, what it lets out, what it is for. */
export type Socket = {
  readonly port: string;
  readonly label: string;
  readonly from: string;
  readonly gain: Response;
  readonly services: Delivery["sockets"][number]["services"];
  /** Whether supply passes from the socket to the input, by a diode or both ways, and whether the tone does. */
  readonly dc: SocketPass;
  readonly tone: boolean;
};

type SocketPass = "none" | "open" | "diode";

/** What satellite sockets pass: DC, by a diode or not, and 22 kHz. */
export function satellitePassFields(label: string) {
  const passes = ["open", "diode"];
  return {
    satelliteDc: choice({
      label,
      help: "Outlets for single-cable lines have a diode: it takes half a volt and keeps the receivers apart.",
      choices: [
        { value: "none", label: "No" },
        { value: "open", label: "Yes" },
        { value: "diode", label: "Yes, by a diode" },
      ],
      default: "open",
      source: MEMORY,
      advanced: true,
      means: "supply pass",
      passes,
    }),
    satelliteTone: tonePass({ satelliteDc: passes }),
  };
}

type SatellitePass = { readonly satelliteDc: SocketPass; readonly satelliteTone: boolean };

function socketPorts(sockets: readonly Socket[]): readonly Port[] {
  const inputs = [...new Set(sockets.map((s) => s.from))];
  return [
    ...inputs.map((id, i) => coaxIn(id, inputs.length > 1 ? `in ${i + 1}` : "in")),
    ...sockets.map((s) => coaxOut(s.port, s.label, "socket")),
  ];
}

function socketPaths(sockets: readonly Socket[]): readonly Path[] {
  return sockets.map((s) => ({ from: s.from, to: s.port, response: s.gain }));
}

function socketPower(sockets: readonly Socket[]): readonly PowerPath[] {
  return sockets
    .filter((s) => s.dc !== "none")
    .map((s) => ({
      from: s.port,
      to: s.from,
      tone: s.tone,
      ...(s.dc === "diode" ? { dropVolts: SCHOTTKY_DROP_VOLTS } : {}),
    }));
}

function delivered(sockets: readonly Socket[]): Delivery {
  return { sockets: sockets.map(({ port, services }) => ({ port, services })) };
}

type PlateOptions = z.ZodObject<{ returnLossDb: ReturnType<typeof returnLoss> }>;

/** Everything about a plate follows from its sockets. */
export function plate<S extends PlateOptions>(
  kind: {
    readonly kind: string;
    readonly name: string;
    readonly summary: string;
    readonly keywords: readonly string[];
    readonly trade: Trade;
    readonly symbol: "outlet-1" | "outlet-2" | "outlet-3" | "outlet-4";
    readonly options: S;
    readonly caption: (o: z.output<S>) => string;
    /** Its screening class. */
    readonly screened: (o: z.output<S>) => EquipmentClass;
  },
  sockets: (o: z.output<S>) => readonly Socket[],
): PartKind {
  const { screened, ...declared } = kind;
  return define({
    ...declared,
    family: "deliver",
    prefix: "plate",
    ports: (o) => socketPorts(sockets(o)),
    signal: (o, context) => ({
      paths: socketPaths(sockets(o)),
      returnLossDb: o.returnLossDb,
      ...ingress(
        context,
        (f) => equipmentScreeningDb(screened(o), f),
        sockets(o).map(({ port, gain }) => ({ port, through: gain })),
      ),
    }),
    power: (o) => ({ paths: socketPower(sockets(o)) }),
    delivery: (o) => delivered(sockets(o)),
  });
}

export const satSocket = (
  pass: SatellitePass,
  gain: Response,
  port = "sat",
  from = "in",
  label = "SAT",
): Socket => ({
  port,
  label,
  from,
  gain,
  services: ["satellite"],
  dc: pass.satelliteDc,
  tone: pass.satelliteTone,
});
