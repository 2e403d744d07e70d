/** Diplexers and triplexers: the same filters put bands together and take them apart. */
import { z } from "zod";
import { flat, type Response, series } from "../signal/response.ts";
import { WIDER_UHF } from "./amplifierFields.ts";
import { define, type PartKind, type Path, type Port, type PowerPath } from "./contract.ts";
import { choice, number } from "./fields.ts";
import {
  between,
  coaxIn,
  coaxOut,
  insertionLoss,
  MEMORY,
  passing,
  type Range,
  softPassing,
  tonePass,
} from "./passive.ts";

/** A branch of a frequency splitter: which port, what passes there, and whether supply does. */
type Branch = {
  readonly port: string;
  readonly label: string;
  readonly gain: Response;
  readonly dc: boolean;
};
type Direction = "combine" | "split";

/** The same filters serve both ways; only the sides of the ports change. */
function branchPorts(branches: readonly Branch[], direction: Direction): readonly Port[] {
  return direction === "combine"
    ? [...branches.map((b) => coaxIn(b.port, b.label, "band")), coaxOut("out")]
    : [coaxIn("in"), ...branches.map((b) => coaxOut(b.port, b.label, "band"))];
}

function branchPaths(branches: readonly Branch[], direction: Direction): readonly Path[] {
  return branches.map((b) =>
    direction === "combine"
      ? { from: b.port, to: "out", response: b.gain }
      : { from: "in", to: b.port, response: b.gain },
  );
}

function branchPower(branches: readonly Branch[], direction: Direction, tone: boolean): readonly PowerPath[] {
  return branches
    .filter((b) => b.dc)
    .map((b) =>
      direction === "combine" ? { from: "out", to: b.port, tone } : { from: b.port, to: "in", tone },
    );
}

const rejectionDb = (value: number) =>
  number({
    label: "Rejection of the other branches",
    unit: "dB",
    min: 5,
    max: 80,
    step: 1,
    default: value,
    source: MEMORY,
    advanced: true,
    spreadDb: 5,
  });

const diplexerOptions = z.object({
  split: choice({
    label: "Bands",
    choices: [
      { value: "tv", label: "TV and radio 5–862 MHz / satellite from 950 MHz" },
      { value: "tv-790", label: "TV and radio 5–790 MHz / satellite from 950 MHz" },
      { value: "tv-694", label: "TV and radio 5–694 MHz / satellite from 950 MHz" },
      { value: "radio", label: "Radio 5–240 MHz / wideband satellite from 290 MHz" },
      { value: "own", label: "Own edges" },
    ],
    default: "tv",
    help: "A wideband feed starts at about 300 MHz: the usual TV/satellite diplexer cuts it below 950 MHz.",
    source: "5–862 and 950–2150 MHz, the network ranges of Spanish Royal Decree 346/2011; edges typical",
  }),
  satTopMHz: number({
    label: "Satellite branch up to",
    unit: "MHz",
    help: "1750 or 2050 MHz on older parts.",
    min: 1700,
    max: 3000,
    default: 2150,
    source: "2150 MHz, Spanish Royal Decree 346/2011; some parts reach 2400 MHz",
  }),
  tvToMHz: number({
    label: "Own edges: lower branch up to",
    unit: "MHz",
    help: "Ends at the latest where the satellite branch begins; no filter gives all of a signal to both.",
    min: 50,
    max: 1000,
    default: 862,
    source: MEMORY,
    advanced: true,
    onlyWhen: { split: "own" },
  }),
  satFromMHz: number({
    label: "Own edges: satellite branch from",
    unit: "MHz",
    min: 200,
    max: 1200,
    default: 950,
    source: MEMORY,
    advanced: true,
    onlyWhen: { split: "own" },
  }),
  tvLossDb: insertionLoss(1.2, "Loss of the lower branch"),
  satLossDb: insertionLoss(2, "Loss of the satellite branch"),
  rejectionDb: rejectionDb(30),
  flankMHz: number({
    label: "Width of the flanks",
    unit: "MHz",
    help: "How far inside its edge a branch begins to lose; 4 dB are lost at the edge. Between two TV channels 8 to 40 MHz.",
    min: 0,
    max: 40,
    default: 0,
    source:
      "an aerial dealer’s page: 4 dB one channel beside the edge, 1 dB five channels beside it; 0: sharp",
    advanced: true,
  }),
  dc: choice({
    label: "DC and 22 kHz pass",
    choices: [
      { value: "sat", label: "On the satellite branch" },
      { value: "tv", label: "On the lower branch" },
      { value: "both", label: "On both" },
      { value: "none", label: "Nowhere" },
    ],
    default: "sat",
    source: MEMORY,
    means: "supply pass",
    passes: ["sat", "both", "tv"],
  }),
  tone: tonePass({ dc: ["sat", "tv", "both"] }),
});

const EDGES = {
  tv: { tvTo: 862, satFrom: 950 },
  "tv-790": { tvTo: 790, satFrom: 950 },
  "tv-694": { tvTo: 694, satFrom: 950 },
  radio: { tvTo: 240, satFrom: 290 },
} as const;

function diplexerBranches(o: z.output<typeof diplexerOptions>): readonly Branch[] {
  const { tvTo, satFrom } =
    o.split === "own" ? { tvTo: Math.min(o.tvToMHz, o.satFromMHz), satFrom: o.satFromMHz } : EDGES[o.split];
  // A wideband feed reaches 2350 MHz, so a diplexer made for it does too.
  const satTo = o.split === "radio" ? Math.max(o.satTopMHz, 2350) : o.satTopMHz;
  const branch = (range: Range, lossDb: number, flank: { lowMHz?: number; highMHz?: number }) =>
    series(flat(-lossDb), softPassing(range, o.rejectionDb, flank));
  return [
    {
      port: "tv",
      label: o.split === "radio" ? "Radio" : "TV",
      gain: branch(between(5, tvTo), o.tvLossDb, { highMHz: o.flankMHz }),
      dc: o.dc === "tv" || o.dc === "both",
    },
    {
      port: "sat",
      label: "SAT",
      gain: branch(between(satFrom, satTo), o.satLossDb, { lowMHz: o.flankMHz }),
      dc: o.dc === "sat" || o.dc === "both",
    },
  ];
}

function diplexer(direction: Direction): PartKind {
  const joins = direction === "combine";
  return define({
    kind: joins ? "diplexer-combine" : "diplexer-split",
    family: "join",
    name: joins ? "Diplexer, combining" : "Diplexer, separating",
    summary: joins
      ? "Puts TV and satellite IF onto one cable through a low and a high pass, with little loss."
      : "Takes TV and satellite IF apart again at the end of a shared cable.",
    keywords: ["TV/SAT", "combiner", "separator", "crossover"],
    prefix: "diplex",
    trade: {
      job: joins ? "combiner" : "separator",
      price: 8,
      workMinutes: 10,
      widerTypes: [
        { name: "a diplexer for the whole satellite IF", options: { satTopMHz: 2400 } },
        { name: "a diplexer for TV to 862 MHz and satellite from 950 MHz", options: { split: "tv" } },
      ],
    },
    options: diplexerOptions,
    symbol: joins ? "diplexer" : "diplexer-split",
    caption: (o) => (o.split === "radio" ? "radio / wideband" : "TV / SAT"),
    ports: (o) => branchPorts(diplexerBranches(o), direction),
    signal: (o) => ({ paths: branchPaths(diplexerBranches(o), direction) }),
    power: (o) => ({ paths: branchPower(diplexerBranches(o), direction, o.tone) }),
  });
}

const triplexerOptions = z.object({
  uhfTo: choice({
    label: "UHF branch up to",
    choices: [
      { value: "694", label: "694 MHz (channel 48)" },
      { value: "790", label: "790 MHz (channel 60)" },
      { value: "862", label: "862 MHz (channel 69)" },
    ],
    default: "694",
    source: "UHF TV now ends at 694 MHz, EU Decision 2017/899, from memory",
  }),
  lossDb: insertionLoss(1, "Loss of each branch"),
  rejectionDb: rejectionDb(22),
  dc: choice({
    label: "DC and 22 kHz pass",
    choices: [
      { value: "uhf", label: "On the UHF branch" },
      { value: "none", label: "Nowhere" },
    ],
    default: "uhf",
    help: "For a masthead amplifier under the UHF aerial.",
    source: MEMORY,
    means: "supply pass",
    passes: ["uhf"],
  }),
});

function triplexerBranches(o: z.output<typeof triplexerOptions>): readonly Branch[] {
  const branch = (fromMHz: number, toMHz: number) =>
    series(flat(-o.lossDb), passing([{ fromMHz, toMHz }], o.rejectionDb));
  return [
    { port: "fm", label: "FM", gain: branch(87, 108), dc: false },
    { port: "dab", label: "DAB", gain: branch(174, 240), dc: false },
    { port: "uhf", label: "UHF", gain: branch(470, Number(o.uhfTo)), dc: o.dc === "uhf" },
  ];
}

function triplexer(direction: Direction): PartKind {
  const joins = direction === "combine";
  return define({
    kind: joins ? "triplexer-combine" : "triplexer-split",
    family: "join",
    name: joins ? "Triplexer, combining" : "Triplexer, separating",
    summary: joins
      ? "Puts an FM, a DAB and a UHF aerial onto one cable, each through its own band filter."
      : "Takes FM, DAB and UHF apart at the end of a shared cable.",
    keywords: ["FM/DAB/UHF", "aerial combiner", "VHF/UHF"],
    prefix: "triplex",
    trade: { job: joins ? "combiner" : "separator", price: 8, workMinutes: 10, widerTypes: WIDER_UHF },
    options: triplexerOptions,
    symbol: joins ? "triplexer" : "triplexer-split",
    caption: (o) => `FM / DAB / UHF to ${o.uhfTo} MHz`,
    ports: (o) => branchPorts(triplexerBranches(o), direction),
    signal: (o) => ({ paths: branchPaths(triplexerBranches(o), direction) }),
    power: (o) => ({ paths: branchPower(triplexerBranches(o), direction, true) }),
  });
}

export const DIPLEXERS: readonly PartKind[] = [
  diplexer("combine"),
  diplexer("split"),
  triplexer("combine"),
  triplexer("split"),
];
