/** Outlets strung along a riser: each takes a little off and passes the rest on; the last one ends the line. */
import { z } from "zod";
import { flat, type Response, series } from "../signal/response.ts";
import { type Delivery, define, type PartKind, type Path, type Port, type PowerPath } from "./contract.ts";
import { SCHOTTKY_DROP_VOLTS } from "./diodes.ts";
import { number, toggle } from "./fields.ts";
import {
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
} from "./passive.ts";
import { dwellingField } from "./plate.ts";
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
function riserSockets(satellite: boolean): readonly Socket[] {
  const terrestrial: readonly Socket[] = [
    {
      port: "tv",
      label: "TV",
      services: ["tv", "dab"],
      ranges: [
        { fromMHz: 5, toMHz: 68 },
        { fromMHz: 118, toMHz: 862 },
      ],
    },
    { port: "radio", label: "Radio", services: ["fm"], ranges: [{ fromMHz: 87, toMHz: 108 }] },
  ];
  if (!satellite) return terrestrial;
  return [
    ...terrestrial,
    { port: "sat", label: "SAT", services: ["satellite"], ranges: [{ fromMHz: 950, toMHz: 2400 }] },
  ];
}

const SOCKET_REJECTION_DB = 25;

const socketPorts = (satellite: boolean): readonly Port[] =>
  riserSockets(satellite).map((s) => coaxOut(s.port, s.label, "socket"));

const socketPaths = (satellite: boolean, gain: Response): readonly Path[] =>
  riserSockets(satellite).map((s) => ({
    from: "in",
    to: s.port,
    response: series(gain, passing(s.ranges, SOCKET_REJECTION_DB)),
  }));

const delivered = (satellite: boolean): Delivery => ({
  sockets: riserSockets(satellite).map(({ port, services }) => ({ port, services })),
});

/** Diodes let the highest voltage win and keep it out of the neighbours' receivers. */
const SAT_POWER: PowerPath = { from: "sat", to: "in", tone: true, dropVolts: SCHOTTKY_DROP_VOLTS };

const satellite = toggle({
  label: "Satellite socket",
  help: "For a single-cable feed on the riser; DC and messages pass through diodes.",
  default: false,
  passes: [true],
});

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
    isolationDb: decoupling(25, { label: "Isolation between line out and sockets" }),
    dwelling: dwellingField(),
  }),
  symbol: "outlet-through",
  caption: (o) => `${dB(o.tapLossDb)} · ${o.satellite ? "TV / FM / SAT" : "TV / FM"}`,
  ports: (o) => [coaxIn("in"), coaxOut("out", "through", "trunk"), ...socketPorts(o.satellite)],
  signal: (o) => ({
    paths: [
      { from: "in", to: "out", response: series(tapThrough(o.tapLossDb, 1), plainLoss(0)) },
      ...socketPaths(o.satellite, tapBranch(o.tapLossDb, 1)),
    ],
    isolationDb: o.isolationDb,
  }),
  power: (o) => (o.satellite ? { paths: [LINE_POWER, SAT_POWER] } : {}),
  delivery: (o) => delivered(o.satellite),
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
    dwelling: dwellingField(),
  }),
  symbol: (o) => (o.satellite ? "outlet-3" : "outlet-2"),
  caption: (o) => `${dB(o.lossDb)} · ${o.satellite ? "TV / FM / SAT" : "TV / FM"}`,
  ports: (o) => [coaxIn("in"), ...socketPorts(o.satellite)],
  signal: (o) => ({ paths: socketPaths(o.satellite, flat(-o.lossDb)) }),
  power: (o) => (o.satellite ? { paths: [SAT_POWER] } : {}),
  delivery: (o) => delivered(o.satellite),
});

export const RISER_OUTLETS: readonly PartKind[] = [through, end];
