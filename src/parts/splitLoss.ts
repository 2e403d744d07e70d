/** Loss of splitters and combiners: the ideal division of power, and what real parts add to it. */
import { curve, flat, type Response, series } from "../signal/response.ts";
import { choice, number } from "./fields.ts";
import { MEMORY, passing, type Range } from "./passive.ts";

export type SplitLoss = {
  readonly ways: number;
  readonly type: "hybrid" | "resistive";
  readonly range: "tv" | "sat" | "sat-2050" | "sat-1750";
  readonly loss: "typical" | "own";
  readonly ownTvDb: number;
  readonly ownSatDb: number;
};

/**
 * Least loss per leg of an equal split: the power is divided. [dB]
 * 10·log10(N)
 */
export function idealSplitDb(ways: number): number {
  return 10 * Math.log10(ways);
}

/**
 * Loss per leg of a resistive star matched at every port. [dB]
 * As much again is lost as heat; the legs are decoupled by no more than this.
 * 20·log10(N)
 */
export function resistiveSplitDb(ways: number): number {
  return 20 * Math.log10(ways);
}

/**
 * What a ferrite splitter loses beyond the ideal, for each two-way stage [MHz, dB]: an N-way splitter is a tree
 * of log2(N) of them. With these, 2, 4 and 8 ways come to 3.5–4, 7–7.5 and 10.5–11.5 dB at TV and 5, 10 and
 * 15 dB at 2150 MHz, which is what trade parts state (from memory).
 */
const EXCESS_PER_STAGE: readonly (readonly [number, number])[] = [
  [5, 0.5],
  [862, 0.75],
  [950, 1.22],
  [2150, 2],
];

const RANGES: Readonly<Record<SplitLoss["range"], Range>> = {
  tv: { fromMHz: 5, toMHz: 1000 },
  sat: { fromMHz: 5, toMHz: 2400 },
  "sat-2050": { fromMHz: 5, toMHz: 2050 },
  "sat-1750": { fromMHz: 5, toMHz: 1750 },
};

/** Gain of each leg; one object for all legs. */
export function splitResponse(o: SplitLoss): Response {
  return series(legGain(o), passing([RANGES[o.range]], 20));
}

function legGain(o: SplitLoss): Response {
  if (o.type === "resistive") return flat(-resistiveSplitDb(o.ways));
  const ideal = idealSplitDb(o.ways);
  if (o.loss === "own") {
    // A data sheet can't promise more than physics gives.
    const tv = -Math.max(ideal, o.ownTvDb);
    const sat = -Math.max(ideal, o.ownSatDb);
    return curve([5, tv], [862, tv], [2150, sat]);
  }
  const stages = Math.log2(o.ways);
  return curve(...EXCESS_PER_STAGE.map(([f, excess]) => [f, -(ideal + stages * excess)] as const));
}

/** Splitters are hybrids in stages, or three legs of a half and two quarters: five and seven ways are not made. */
export const SOLD_WAYS = { values: [2, 3, 4, 6, 8], source: MEMORY };

/** Option fields that a splitter and a combiner share. */
export const SPLIT_FIELDS = {
  type: choice({
    label: "Type",
    choices: [
      { value: "hybrid", label: "Ferrite (hybrid)" },
      { value: "resistive", label: "Resistive" },
    ],
    default: "hybrid",
    help: "A resistive one loses 20·log10 N and hardly isolates its legs.",
    source: MEMORY,
    soundValue: "hybrid",
  }),
  range: choice({
    label: "Made for",
    choices: [
      { value: "tv", label: "TV and radio, 5–1000 MHz" },
      { value: "sat", label: "TV and satellite, 5–2400 MHz" },
      { value: "sat-2050", label: "TV and satellite, 5–2050 MHz (older)" },
      { value: "sat-1750", label: "TV and satellite, 5–1750 MHz (oldest)" },
    ],
    default: "sat",
    source: MEMORY,
  }),
  loss: choice({
    label: "Loss",
    choices: [
      { value: "typical", label: "Typical" },
      { value: "own", label: "From the data sheet" },
    ],
    default: "typical",
    source: "10·log10 N and a typical excess, from memory",
    advanced: true,
    spreadDb: 0.5,
  }),
  ownTvDb: number({
    label: "Data sheet loss up to 862 MHz",
    unit: "dB",
    help: "Counts with “From the data sheet”; never below the ideal 10·log10 N.",
    min: 0,
    max: 30,
    step: 0.1,
    default: 4,
    source: MEMORY,
    advanced: true,
    onlyWhen: { type: "hybrid", loss: "own" },
    spreadDb: 0.3,
  }),
  ownSatDb: number({
    label: "Data sheet loss at 2150 MHz",
    unit: "dB",
    help: "Counts with “From the data sheet”; never below the ideal 10·log10 N.",
    min: 0,
    max: 30,
    step: 0.1,
    default: 5.5,
    source: MEMORY,
    advanced: true,
    onlyWhen: { type: "hybrid", loss: "own" },
    spreadDb: 0.3,
  }),
};
