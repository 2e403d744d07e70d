/** Splitters and taps: one line becomes several. */
import { z } from "zod";
import { curve, type Response, series } from "../signal/response.ts";
import { define, type PartKind, type PowerPath } from "./contract.ts";
import { SCHOTTKY_DROP_VOLTS } from "./diodes.ts";
import { choice, number, wholeNumber } from "./fields.ts";
import {
  bandEnd,
  coaxIn,
  coaxOut,
  dB,
  decoupling,
  INLINE,
  LINE_POWER,
  MEMORY,
  plainLoss,
  returnLoss,
  TO_THE_END,
  tonePass,
} from "./passive.ts";
import { equipmentScreening, screened } from "./screening.ts";
import { resistiveSplitDb, SOLD_WAYS, SPLIT_FIELDS, splitResponse } from "./splitLoss.ts";
import { tJoint } from "./tJoint.ts";

const outputs = (count: number, prefix: string) =>
  Array.from({ length: count }, (_, i) => `${prefix}${i + 1}`);

/** Supply from any of these outputs to the input; diodes keep one receiver's voltage out of another. */
function steered(ports: readonly string[], tone: boolean): readonly PowerPath[] {
  return ports.map((from) => ({ from, to: "in", tone, dropVolts: SCHOTTKY_DROP_VOLTS }));
}

/** A resistive splitter keeps its legs apart by no more than its loss. */
const splitterDecoupling = decoupling(22, { onlyWhen: { type: "hybrid" } });

/** Losses that taps and riser plates come in. */
export const SOLD_TAPS = { values: [6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30], source: MEMORY };

const splitter = define({
  kind: "splitter",
  family: "join",
  name: "Splitter",
  summary: "Shares one line among 2 to 8, each with the same, smaller level.",
  keywords: ["divider", "two-way", "four-way", "eight-way", "DC pass", "resistive"],
  prefix: "split",
  trade: {
    job: "splitter",
    price: 8,
    workMinutes: 10,
    widerTypes: [{ name: "a type for satellite, up to 2400 MHz", options: { range: "sat" } }],
  },
  options: z.object({
    ways: wholeNumber({ label: "Outputs", min: 2, max: 8, default: 2, means: "ways", sold: SOLD_WAYS }),
    ...SPLIT_FIELDS,
    isolationDb: splitterDecoupling,
    returnLossDb: returnLoss(16),
    dc: choice({
      label: "DC and 22 kHz pass",
      choices: [
        { value: "none", label: "Nowhere" },
        { value: "one", label: "From output 1 only" },
        { value: "all", label: "From every output, by diodes" },
        { value: "open", label: "From every output, without diodes" },
      ],
      default: "all",
      help: "An LNB behind it needs a way for the receiver’s 13/18 V. Diodes take half a volt and keep the receivers apart.",
      source: MEMORY,
      means: "supply pass",
      passes: ["one", "all", "open"],
    }),
    tone: tonePass({ dc: ["one", "all", "open"] }),
    screening: equipmentScreening(),
  }),
  symbol: (o) => (o.type === "resistive" ? "splitter-resistive" : "splitter"),
  caption: (o) => `${o.ways} ways${o.type === "resistive" ? ", resistive" : ""} · ${SUPPLY_WORDS[o.dc]}`,
  ports: (o) => [coaxIn("in"), ...outputs(o.ways, "out").map((id, i) => coaxOut(id, `out ${i + 1}`, "leg"))],
  signal: (o, context) => {
    const response = splitResponse(o);
    return screened(context, o, {
      paths: outputs(o.ways, "out").map((to) => ({ from: "in", to, response })),
      isolationDb: o.type === "resistive" ? resistiveSplitDb(o.ways) : o.isolationDb,
      returnLossDb: o.returnLossDb,
    });
  },
  power: (o) => {
    if (o.dc === "none") return {};
    if (o.dc === "one") return { paths: [{ from: "out1", to: "in", tone: o.tone }] };
    const legs = outputs(o.ways, "out");
    return {
      paths: o.dc === "all" ? steered(legs, o.tone) : legs.map((from) => ({ from, to: "in", tone: o.tone })),
    };
  },
});

const SUPPLY_WORDS = {
  none: "no DC pass",
  one: "DC from out 1",
  all: "DC from all",
  open: "DC from all, no diodes",
} as const;

/** Branches that took more than nine tenths of the power would leave no line: the least loss a tap can have. [dB] */
function possibleTapLoss(tapLossDb: number, taps: number): number {
  return Math.max(tapLossDb, 10 * Math.log10(taps / 0.9));
}

/**
 * What the splitter inside a tap of several branches loses beyond the ideal [dB]: 0.6 dB for each two-way stage, as a
 * splitter does. A branch is stated behind it, so that more is taken off the line than arrives at the branches.
 */
function innerSplitterDb(taps: number): number {
  return 0.6 * Math.log2(taps);
}

/**
 * Least loss of the through line when `taps` branches are taken off it: what they take is gone. [dB]
 * −10·log10(1 − n·10^(−C/10))
 */
export function idealThroughDb(tapLossDb: number, taps: number): number {
  return -10 * Math.log10(1 - taps * 10 ** (-possibleTapLoss(tapLossDb, taps) / 10));
}

/**
 * Through line of a real tap. The excess of 0.45 dB and 45 % of the ideal loss meets the usual data sheets
 * (2.0–2.5 dB for a 6 dB tap, 1.0–1.3 for 10 dB, 0.5 for 20 dB; from memory); satellite IF costs 0.7–1.5 dB more.
 */
export function tapThrough(tapLossDb: number, taps: number): Response {
  const tv = tapThroughDb(tapLossDb, taps);
  return curve([5, -tv], [862, -tv], [950, -tv - 0.7], [2150, -tv - 1.5]);
}

/**
 * What the through line of a real tap loses up to 862 MHz [dB].
 * Two branches of 12 dB cost it 1.5 dB, four 3, eight of 20 dB 1.3 (0.5 to 1 dB above the ideal, from memory).
 */
export function tapThroughDb(tapLossDb: number, taps: number): number {
  return 0.45 + 1.45 * idealThroughDb(tapLossDb - innerSplitterDb(taps), taps);
}

/** Branch of a real tap: its nominal value, a little more at satellite IF. */
export function tapBranch(tapLossDb: number, taps: number): Response {
  const inner = innerSplitterDb(taps);
  const loss = possibleTapLoss(tapLossDb - inner, taps) + inner;
  return curve([5, -loss], [862, -loss], [2150, -loss - 1]);
}

const tap = define({
  kind: "tap",
  family: "join",
  name: "Tap",
  summary: "Takes a little off a trunk for one or more branches and lets the rest run on.",
  keywords: ["branch", "directional coupler", "trunk", "tap-off"],
  prefix: "tap",
  trade: { job: "tap", price: 8, workMinutes: 10, inItsPlace: "coupler", widerTypes: TO_THE_END },
  options: z.object({
    taps: choice({
      label: "Branches",
      choices: [
        { value: "1", label: "1" },
        { value: "2", label: "2" },
        { value: "3", label: "3" },
        { value: "4", label: "4" },
        { value: "6", label: "6" },
        { value: "8", label: "8" },
      ],
      default: "1",
    }),
    tapLossDb: number({
      label: "Branch loss",
      unit: "dB",
      min: 6,
      max: 30,
      step: 1,
      default: 12,
      source: MEMORY,
      means: "tap loss",
      sold: SOLD_TAPS,
      spreadDb: 1,
      help: "The through loss follows from this. Two branches start at about 8 dB, four at 12, eight at 16.",
    }),
    upTo: bandEnd(),
    isolationDb: decoupling(22),
    returnLossDb: returnLoss(16),
    dc: choice({
      label: "DC and 22 kHz pass",
      choices: [
        { value: "none", label: "Nowhere" },
        { value: "through", label: "Along the through line" },
        { value: "all", label: "Through line and branches, by diodes" },
      ],
      default: "through",
      source: MEMORY,
      means: "supply pass",
      passes: ["through", "all"],
    }),
    tone: tonePass({ dc: ["through", "all"] }),
    screening: equipmentScreening(),
  }),
  symbol: "tap",
  caption: (o) => `${o.taps} × ${dB(o.tapLossDb)}`,
  ports: (o) => [
    coaxIn("in"),
    coaxOut("out", "out", "trunk"),
    ...outputs(Number(o.taps), "tap").map((id, i) => coaxOut(id, `tap ${i + 1}`, "tap")),
  ],
  signal: (o, context) => {
    const count = Number(o.taps);
    const line = plainLoss(0, o.upTo);
    const branch = series(tapBranch(o.tapLossDb, count), line);
    return screened(context, o, {
      paths: [
        { from: "in", to: "out", response: series(tapThrough(o.tapLossDb, count), line) },
        ...outputs(count, "tap").map((to) => ({ from: "in", to, response: branch })),
      ],
      isolationDb: o.isolationDb,
      returnLossDb: o.returnLossDb,
    });
  },
  power: (o) => {
    if (o.dc === "none") return {};
    const branches = o.dc === "all" ? steered(outputs(Number(o.taps), "tap"), o.tone) : [];
    return { paths: [{ ...LINE_POWER, tone: o.tone }, ...branches] };
  },
  inline: INLINE,
});

export const SPLITTERS: readonly PartKind[] = [splitter, tap, tJoint];
