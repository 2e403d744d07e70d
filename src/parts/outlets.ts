/** Wall plates: what they let out at which socket, and which socket lets supply and tone back in. */
import { z } from "zod";
import { flat, type Response, series } from "../signal/response.ts";
import { type Delivery, define, type PartKind, type Path, type Port, type PowerPath } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import { RISER_OUTLETS } from "./outletsRiser.ts";
import { coaxIn, coaxOut, insertionLoss, MEMORY, passing, plainLoss, type Range } from "./passive.ts";

/** One socket, or more, of a plate: which input it hangs on, what it lets out, what it is for. */
type Socket = {
  readonly port: string;
  readonly label: string;
  readonly from: string;
  readonly gain: Response;
  readonly services: Delivery["sockets"][number]["services"];
  /** Supply and tone pass from the socket to the input. */
  readonly dc: boolean;
};

function socketPorts(sockets: readonly Socket[]): readonly Port[] {
  const inputs = [...new Set(sockets.map((s) => s.from))];
  return [
    ...inputs.map((id, i) => coaxIn(id, inputs.length > 1 ? `in ${i + 1}` : "in")),
    ...sockets.map((s) => coaxOut(s.port, s.label)),
  ];
}

function socketPaths(sockets: readonly Socket[]): readonly Path[] {
  return sockets.map((s) => ({ from: s.from, to: s.port, response: s.gain }));
}

function socketPower(sockets: readonly Socket[]): readonly PowerPath[] {
  return sockets.filter((s) => s.dc).map((s) => ({ from: s.port, to: s.from, tone: true }));
}

function delivered(sockets: readonly Socket[]): Delivery {
  return { sockets: sockets.map(({ port, services }) => ({ port, services })) };
}

/** Everything about a plate follows from its sockets. */
function plate<S extends z.ZodObject>(
  kind: {
    readonly kind: string;
    readonly name: string;
    readonly summary: string;
    readonly keywords: readonly string[];
    readonly symbol: "outlet-1" | "outlet-2" | "outlet-3" | "outlet-4";
    readonly options: S;
    readonly caption: (o: z.output<S>) => string;
  },
  sockets: (o: z.output<S>) => readonly Socket[],
): PartKind {
  return define({
    ...kind,
    family: "deliver",
    prefix: "plate",
    ports: (o) => socketPorts(sockets(o)),
    signal: (o) => ({ paths: socketPaths(sockets(o)) }),
    power: (o) => ({ paths: socketPower(sockets(o)) }),
    delivery: (o) => delivered(sockets(o)),
  });
}

const satSocket = (gain: Response, port = "sat", from = "in", label = "SAT"): Socket => ({
  port,
  label,
  from,
  gain,
  services: ["satellite"],
  dc: true,
});

const outletSat = plate(
  {
    kind: "outlet-sat",
    name: "Outlet, satellite",
    summary: "Plain plate with one satellite socket; lets a wideband feed through whole.",
    keywords: ["wall plate", "socket", "F connector", "direct", "single"],
    symbol: "outlet-1",
    options: z.object({ lossDb: insertionLoss(1) }),
    caption: () => "direct, 5–2400 MHz",
  },
  (o) => [satSocket(plainLoss(o.lossDb))],
);

const outletTwin = plate(
  {
    kind: "outlet-sat-twin",
    name: "Outlet, twin satellite",
    summary: "Plain plate with two satellite sockets, each on its own cable.",
    keywords: ["wall plate", "socket", "F connector", "dual", "two cables"],
    symbol: "outlet-2",
    options: z.object({ lossDb: insertionLoss(1) }),
    caption: () => "two cables, 5–2400 MHz",
  },
  (o) => {
    const gain = plainLoss(o.lossDb);
    return [satSocket(gain, "sat", "in", "SAT 1"), satSocket(gain, "sat2", "in2", "SAT 2")];
  },
);

const outletTv = plate(
  {
    kind: "outlet-tv",
    name: "Outlet, TV",
    summary: "Plate with one TV socket, on the aerial's cable.",
    keywords: ["wall plate", "socket", "coaxial", "aerial socket", "terrestrial", "radio"],
    symbol: "outlet-1",
    options: z.object({
      lossDb: insertionLoss(1),
      dcPass: toggle({
        label: "Passes supply",
        help: "A plain plate may; an isolated one doesn't. Needed to feed a masthead amplifier from the room.",
        default: false,
        source: MEMORY,
      }),
    }),
    caption: () => "5–862 MHz",
  },
  (o) => [
    {
      port: "tv",
      label: "TV",
      from: "in",
      gain: series(flat(-o.lossDb), passing([TV_AND_RADIO], 30)),
      services: ["tv", "dab", "fm"],
      dc: o.dcPass,
    },
  ],
);

/** Terrestrial range of networks and plates [MHz]: 5–862, Spanish Royal Decree 346/2011 and typical parts. */
const TV_AND_RADIO: Range = { fromMHz: 5, toMHz: 862 };

const separating = {
  satFromMHz: number({
    label: "Satellite socket from",
    unit: "MHz",
    help: "A wideband feed starts at about 300 MHz and loses all below this.",
    min: 250,
    max: 1200,
    default: 950,
    source: "950 MHz, Spanish Royal Decree 346/2011",
    advanced: true,
  }),
  satToMHz: number({
    label: "Satellite socket up to",
    unit: "MHz",
    min: 1900,
    max: 3000,
    default: 2150,
    source: "2150 MHz, Spanish Royal Decree 346/2011; some plates reach 2400 MHz",
    advanced: true,
  }),
  tvToMHz: number({
    label: "TV socket up to",
    unit: "MHz",
    help: "Ends at the latest where the satellite socket begins: no filter gives all of a signal to both.",
    min: 230,
    max: 1000,
    default: 862,
    source: "862 MHz, Spanish Royal Decree 346/2011",
    advanced: true,
  }),
  rejectionDb: number({
    label: "Rejection between sockets",
    unit: "dB",
    min: 5,
    max: 80,
    default: 30,
    source: MEMORY,
    advanced: true,
  }),
};

type Separating = {
  readonly satFromMHz: number;
  readonly satToMHz: number;
  readonly tvToMHz: number;
  readonly rejectionDb: number;
  readonly satLossDb: number;
};

const filtered = (ranges: readonly Range[], lossDb: number, o: Separating): Response =>
  series(flat(-lossDb), passing(ranges, o.rejectionDb));

const tvTop = (o: Separating): number => Math.min(o.tvToMHz, o.satFromMHz);

const satWindow = (o: Separating): Response =>
  filtered([{ fromMHz: o.satFromMHz, toMHz: o.satToMHz }], o.satLossDb, o);

const outletDiplexed = plate(
  {
    kind: "outlet-diplexed",
    name: "Outlet, TV and satellite",
    summary: "Plate that separates a shared cable into a TV and a satellite socket.",
    keywords: ["wall plate", "diplexed", "socket", "TV/SAT"],
    symbol: "outlet-2",
    options: z.object({
      tvLossDb: insertionLoss(1.5, "Loss to the TV socket"),
      satLossDb: insertionLoss(2, "Loss to the satellite socket"),
      ...separating,
    }),
    caption: (o) => `TV / SAT ${o.satFromMHz}–${o.satToMHz} MHz`,
  },
  (o) => [
    {
      port: "tv",
      label: "TV",
      from: "in",
      gain: filtered([{ fromMHz: 5, toMHz: tvTop(o) }], o.tvLossDb, o),
      services: ["tv", "dab", "fm"],
      dc: false,
    },
    satSocket(satWindow(o)),
  ],
);

const triplexing = {
  radio: choice({
    label: "Radio socket",
    choices: [
      { value: "fm-dab", label: "FM and DAB; TV from 470 MHz" },
      { value: "fm", label: "FM only; TV gets what lies beside it" },
    ],
    default: "fm-dab",
    source: MEMORY,
  }),
  tvLossDb: insertionLoss(2, "Loss to the TV socket"),
  radioLossDb: insertionLoss(3, "Loss to the radio socket"),
  satLossDb: insertionLoss(2, "Loss to the satellite sockets"),
  ...separating,
};

type Triplexing = Separating & {
  readonly radio: "fm" | "fm-dab";
  readonly tvLossDb: number;
  readonly radioLossDb: number;
};

/** TV, radio and satellite from one cable. Edges of the radio branch typical, from memory. */
function triplexed(o: Triplexing, satLabel: string): readonly Socket[] {
  const withDab = o.radio === "fm-dab";
  const tv: readonly Range[] = withDab
    ? above(470, tvTop(o))
    : [{ fromMHz: 5, toMHz: 68 }, ...above(118, tvTop(o))];
  return [
    {
      port: "tv",
      label: "TV",
      from: "in",
      gain: filtered(tv, o.tvLossDb, o),
      services: withDab ? ["tv"] : ["tv", "dab"],
      dc: false,
    },
    {
      port: "radio",
      label: "Radio",
      from: "in",
      gain: filtered([{ fromMHz: 87, toMHz: withDab ? 240 : 108 }], o.radioLossDb, o),
      services: withDab ? ["fm", "dab"] : ["fm"],
      dc: false,
    },
    satSocket(satWindow(o), "sat", "in", satLabel),
  ];
}

/** Nothing is left of a branch whose top lies below its start. */
const above = (fromMHz: number, toMHz: number): readonly Range[] =>
  toMHz > fromMHz ? [{ fromMHz, toMHz }] : [];

const radioWords = (o: Triplexing) => (o.radio === "fm" ? "FM" : "FM+DAB");

const outletTriplexed = plate(
  {
    kind: "outlet-triplexed",
    name: "Outlet, TV, radio and satellite",
    summary: "Plate that separates a shared cable into a TV, a radio and a satellite socket.",
    keywords: ["wall plate", "triplexed", "socket", "FM", "DAB"],
    symbol: "outlet-3",
    options: z.object(triplexing),
    caption: (o) => `TV / ${radioWords(o)} / SAT`,
  },
  (o) => triplexed(o, "SAT"),
);

const outletQuad = plate(
  {
    kind: "outlet-quad",
    name: "Outlet, TV, radio and two satellite",
    summary:
      "Plate on two cables: the first separated into TV, radio and satellite, the second satellite only.",
    keywords: ["wall plate", "quadplexed", "quadruplexed", "socket", "twin"],
    symbol: "outlet-4",
    options: z.object({ ...triplexing, sat2LossDb: insertionLoss(1, "Loss to the second satellite socket") }),
    caption: (o) => `TV / ${radioWords(o)} / 2 × SAT`,
  },
  (o) => [...triplexed(o, "SAT 1"), satSocket(plainLoss(o.sat2LossDb), "sat2", "in2", "SAT 2")],
);

export const OUTLETS: readonly PartKind[] = [
  outletSat,
  outletTwin,
  outletTv,
  outletDiplexed,
  outletTriplexed,
  outletQuad,
  ...RISER_OUTLETS,
];
