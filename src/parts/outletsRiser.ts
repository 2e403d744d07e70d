/** Outlets strung along a riser: each takes a little off and passes the rest on; the last one ends the line. */
import { z } from "zod";
import { flat, type Response, series } from "../signal/response.ts";
import {
  type Delivery,
  define,
  type PartKind,
  type Path,
  type Port,
  type PowerPath,
  type SignalContext,
} from "./contract.ts";
import { SCHOTTKY_DROP_VOLTS } from "./diodes.ts";
import { choice, number, toggle } from "./fields.ts";
import {
  type BandEnd,
  bandEnd,
  coaxIn,
  coaxOut,
  dB,
  decoupling,
  INLINE,
  LINE_POWER,
  MEMORY,
  passing,
  plainLoss,
  type Range,
  returnLoss,
  TO_THE_END,
  TV_TO_THE_END,
  tonePass,
  tvEnd,
} from "./passive.ts";
import { dwellingField } from "./plate.ts";
import { type EquipmentClass, equipmentScreening, equipmentScreeningDb, ingress } from "./screening.ts";
import { SOLD_TAPS, tapBranch, tapThrough } from "./splitters.ts";

type Socket = {
  readonly port: "tv" | "radio" | "sat";
  readonly label: string;
  readonly services: Delivery["sockets"][number]["services"];
  readonly ranges: readonly Range[];
};

/**
 * Sockets of riser plates: FM at the radio socket, TV with DAB beside it, satellite where there is one.
 * Edges typical, from memory.
 */
function riserSockets({ satellite, tvTo, upTo }: Sockets): readonly Socket[] {
  const terrestrial: readonly Socket[] = [
    {
      port: "tv",
      label: "TV",
      services: ["tv", "dab"],
      ranges: [
        { fromMHz: 5, toMHz: 68 },
        { fromMHz: 118, toMHz: Number(tvTo) },
      ],
    },
    { port: "radio", label: "Radio", services: ["fm"], ranges: [{ fromMHz: 87, toMHz: 108 }] },
  ];
  if (!satellite) return terrestrial;
  return [
    ...terrestrial,
    { port: "sat", label: "SAT", services: ["satellite"], ranges: [{ fromMHz: 950, toMHz: Number(upTo) }] },
  ];
}

const SOCKET_REJECTION_DB = 25;

const socketPorts = (o: Sockets): readonly Port[] =>
  riserSockets(o).map((s) => coaxOut(s.port, s.label, "socket"));

const socketPaths = (o: Sockets, gain: Response): readonly Path[] =>
  riserSockets(o).map((s) => ({
    from: "in",
    to: s.port,
    response: series(gain, passing(s.ranges, SOCKET_REJECTION_DB)),
  }));

/** What gets in through the plate comes out of its sockets, behind their filters. */
const socketIngress = (o: Sockets, gain: Response, context: SignalContext) =>
  ingress(
    context,
    (f) => equipmentScreeningDb(o.screening, f),
    socketPaths(o, gain).map(({ to, response }) => ({ port: to, through: response })),
  );

const delivered = (o: Sockets): Delivery => ({
  sockets: riserSockets(o).map(({ port, services }) => ({ port, services })),
});

type RiserPass = { readonly satelliteDc: "none" | "diode"; readonly satelliteTone: boolean };

/** Diodes let the highest voltage win and keep it out of the neighbours' receivers. */
function satPower(o: RiserPass): readonly PowerPath[] {
  if (o.satelliteDc === "none") return [];
  return [{ from: "sat", to: "in", tone: o.satelliteTone, dropVolts: SCHOTTKY_DROP_VOLTS }];
}

const riserPass = {
  satelliteDc: choice({
    label: "Satellite socket passes DC",
    help: "Types for switched feeds have none, or only along the line.",
    choices: [
      { value: "none", label: "No" },
      { value: "diode", label: "Yes, by a diode" },
    ],
    default: "diode",
    source: MEMORY,
    advanced: true,
    onlyWhen: { satellite: true },
  }),
  satelliteTone: tonePass({ satellite: true, satelliteDc: ["diode"] }),
};

const satellite = toggle({
  label: "Satellite socket",
  help: "For a single-cable feed on the riser; DC and messages pass through diodes.",
  default: false,
  passes: [true],
});

/** What decides about the sockets of a riser plate. */
type Sockets = {
  readonly satellite: boolean;
  readonly tvTo: string;
  readonly upTo: BandEnd;
  readonly screening: EquipmentClass;
};

const WIDER_RISER = [...TV_TO_THE_END, ...TO_THE_END];

const through = define({
  kind: "outlet-through",
  family: "deliver",
  name: "Outlet, loop-through",
  firstName: "Outlet, through",
  summary: "Outlet in a riser: takes its share off and passes the rest on to the next flat.",
  keywords: ["wall plate", "riser", "through", "tap", "block", "series"],
  prefix: "plate",
  trade: {
    job: "riser plate",
    price: 8,
    workMinutes: 15,
    inItsPlace: "coupler",
    widerTypes: WIDER_RISER,
    mistakenFor: [{ kind: "outlet-end" }, { kind: "outlet-tv" }],
  },
  options: z.object({
    tapLossDb: number({
      label: "Loss to the sockets",
      unit: "dB",
      help: "The through loss follows from this. Outlets with more loss sit nearer to the head of the riser.",
      min: 6,
      max: 30,
      step: 1,
      default: 14,
      source: MEMORY,
      means: "tap loss",
      sold: SOLD_TAPS,
      spreadDb: 1,
    }),
    satellite,
    ...riserPass,
    tvTo: tvEnd(),
    upTo: bandEnd(),
    isolationDb: decoupling(25, { label: "Isolation between line out and sockets" }),
    screening: equipmentScreening(),
    returnLossDb: returnLoss(16),
    dwelling: dwellingField(),
  }),
  symbol: "outlet-through",
  caption: (o) => `${dB(o.tapLossDb)} · ${o.satellite ? "TV / FM / SAT" : "TV / FM"}`,
  ports: (o) => [coaxIn("in"), coaxOut("out", "through", "trunk"), ...socketPorts(o)],
  signal: (o, context) => ({
    ...socketIngress(o, tapBranch(o.tapLossDb, 1), context),
    paths: [
      { from: "in", to: "out", response: series(tapThrough(o.tapLossDb, 1), plainLoss(0, o.upTo)) },
      ...socketPaths(o, tapBranch(o.tapLossDb, 1)),
    ],
    isolationDb: o.isolationDb,
    returnLossDb: o.returnLossDb,
  }),
  power: (o) => (o.satellite ? { paths: [LINE_POWER, ...satPower(o)] } : {}),
  delivery: (o) => delivered(o),
  inline: INLINE,
});

const end = define({
  kind: "outlet-end",
  family: "deliver",
  name: "Outlet, terminated",
  firstName: "Outlet, end of riser",
  summary: "Last outlet of a riser; its own 75 Ω terminates the line.",
  keywords: ["wall plate", "riser", "end of riser", "block", "last"],
  prefix: "plate",
  trade: {
    job: "riser plate",
    price: 8,
    workMinutes: 15,
    widerTypes: WIDER_RISER,
    mistakenFor: [{ kind: "outlet-through" }, { kind: "outlet-tv" }],
  },
  options: z.object({
    lossDb: number({
      label: "Loss to the sockets",
      unit: "dB",
      min: 0,
      max: 20,
      step: 0.1,
      default: 4,
      source: MEMORY,
      means: "chosen loss",
      sold: { values: [1, 2, 4, 6, 8, 10, 12], source: MEMORY },
      spreadDb: 0.5,
    }),
    satellite,
    ...riserPass,
    tvTo: tvEnd(),
    upTo: bandEnd({ onlyWhen: { satellite: true } }),
    screening: equipmentScreening(),
    returnLossDb: returnLoss(14),
    dwelling: dwellingField(),
  }),
  symbol: (o) => (o.satellite ? "outlet-3" : "outlet-2"),
  caption: (o) => `${dB(o.lossDb)} · ${o.satellite ? "TV / FM / SAT" : "TV / FM"}`,
  ports: (o) => [coaxIn("in"), ...socketPorts(o)],
  signal: (o, context) => ({
    ...socketIngress(o, flat(-o.lossDb), context),
    paths: socketPaths(o, flat(-o.lossDb)),
    returnLossDb: o.returnLossDb,
  }),
  power: (o) => (o.satellite ? { paths: satPower(o) } : {}),
  delivery: (o) => delivered(o),
});

export const RISER_OUTLETS: readonly PartKind[] = [through, end];
