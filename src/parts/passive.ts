/** Small pieces from which the coaxial parts are put together. */

import { curve, flat, type Response, series } from "../signal/response.ts";
import { numeral } from "../words/numbers.ts";
import type { Path, Port, PortRole, PowerPath } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import type { OptionTrade } from "./optionTrade.ts";

export const MEMORY = "typical, from memory";

export function coaxIn(id: string, label = id, role: PortRole = "input"): Port {
  return { id, side: "in", medium: "coax", label, role };
}

export function coaxOut(id: string, label = id, role: PortRole = "output"): Port {
  return { id, side: "out", medium: "coax", label, role };
}

/** One way in, one way out: parts that can be dropped onto a wire. */
export const THROUGH_PORTS: readonly Port[] = [coaxIn("in"), coaxOut("out")];
export const INLINE = { in: "in", out: "out" } as const;

/** Direct current, tone and messages run through unhindered. */
export const LINE_POWER: PowerPath = { from: "out", to: "in", tone: true };

export type Range = { readonly fromMHz: number; readonly toMHz: number };

/** A range whatever order the user typed the edges in. */
export function between(aMHz: number, bMHz: number): Range {
  return { fromMHz: Math.min(aMHz, bMHz), toMHz: Math.max(aMHz, bMHz) };
}

/** Passes what lies in the ranges and stops the rest. Ranges that touch or overlap are one. */
export function passing(ranges: readonly Range[], rejectionDb: number): Response {
  return { type: "windows", windows: merged(ranges), rejectionDb };
}

export function merged(ranges: readonly Range[]): readonly Range[] {
  const sorted = [...ranges].sort((a, b) => a.fromMHz - b.fromMHz);
  const out: Range[] = [];
  for (const range of sorted) {
    const last = out[out.length - 1];
    if (last && range.fromMHz <= last.toMHz)
      out[out.length - 1] = { fromMHz: last.fromMHz, toMHz: Math.max(last.toMHz, range.toMHz) };
    else out.push(range);
  }
  return out;
}

/**
 * What any good satellite-rated passive lets through, a wideband feed (up to 2350 MHz) included.
 * From memory: trade parts are marked 5–2400 MHz.
 */
export const WHOLE_LINE: Range = { fromMHz: 5, toMHz: 2400 };

/** Where parts for satellite end [MHz]: now, and two generations of older ones. */
export type BandEnd = "2400" | "2050" | "1750";

/** A plain part on the whole line with the same loss everywhere. */
export function plainLoss(lossDb: number, upTo: BandEnd = "2400"): Response {
  const line = LINE_PASS[upTo];
  return lossDb === 0 ? line : series(flat(-lossDb), line);
}

const { fromMHz } = WHOLE_LINE;

/** Outside its range a passive isn't a filter: it just gets worse. From memory. */
const LINE_PASS: Readonly<Record<BandEnd, Response>> = {
  "2400": passing([WHOLE_LINE], 20),
  "2050": passing([{ fromMHz, toMHz: 2050 }], 20),
  "1750": passing([{ fromMHz, toMHz: 1750 }], 20),
};

/** Field for where a part ends that is made for satellite. */
export const bandEnd = (o: Pick<OptionTrade, "onlyWhen"> = {}) =>
  choice({
    label: "Passes up to",
    choices: [
      { value: "2400", label: "2400 MHz" },
      { value: "2050", label: "2050 MHz (older)" },
      { value: "1750", label: "1750 MHz (oldest)" },
    ],
    default: "2400",
    help: "Marked on the part. Older ones were made before the high band was used, and lose its upper transponders.",
    source: MEMORY,
    advanced: true,
    ...o,
  });

/** A type that reaches the end of the satellite IF, in the place of an older one. */
export const TO_THE_END = [{ name: "a type up to 2400 MHz", options: { upTo: "2400" } }];

/** Field for where the TV socket or branch of a part ends. */
export const tvEnd = () =>
  choice({
    label: "TV up to",
    choices: [
      { value: "862", label: "862 MHz (channel 69)" },
      { value: "790", label: "790 MHz (channel 60)" },
      { value: "694", label: "694 MHz (channel 48)" },
    ],
    default: "862",
    help: "Parts with an edge at 694 or 790 MHz keep phone masts above the TV band out.",
    source: "862 MHz, Spanish Royal Decree 346/2011; 790 and 694 MHz by the clearances, from memory",
    advanced: true,
  });

/** A type that passes TV to the end, in the place of one with a lower edge. */
export const TV_TO_THE_END = [{ name: "a type for TV up to 862 MHz", options: { tvTo: "862" } }];

/** Loss at the edge of a soft flank, and where it begins [dB]: more than half the power is gone, as real filters have losses. */
const AT_THE_EDGE_DB = 4;
const FLANK_BEGINS_DB = 0.05;
/** Where it ends; with less, two branches side by side would give out more than comes in [dB]. */
const FLANK_ENDS_DB = 20;

/**
 * Passes a range with soft flanks: so far inside an edge the loss begins, at the edge it is 4 dB, and as far outside the
 * filter stops by 20 dB, whatever less is asked for. `lowMHz`, `highMHz`: width at either edge; without any flank as `passing`.
 */
export function softPassing(
  range: Range,
  rejectionDb: number,
  { lowMHz = 0, highMHz = 0 }: { readonly lowMHz?: number; readonly highMHz?: number },
): Response {
  if (lowMHz === 0 && highMHz === 0) return passing([range], rejectionDb);
  const { fromMHz: from, toMHz: to } = range;
  const points: (readonly [number, number])[] = [];
  if (lowMHz > 0)
    points.push([from - lowMHz, -FLANK_ENDS_DB], [from, -AT_THE_EDGE_DB], [from + lowMHz, -FLANK_BEGINS_DB]);
  if (highMHz > 0)
    points.push([to - highMHz, -FLANK_BEGINS_DB], [to, -AT_THE_EDGE_DB], [to + highMHz, -FLANK_ENDS_DB]);
  return series(
    curve(...points),
    passing([{ fromMHz: from - lowMHz, toMHz: to + highMHz }], Math.max(1, rejectionDb - FLANK_ENDS_DB)),
  );
}

/** One path from "in" to "out". */
export function throughPath(response: Response): readonly Path[] {
  return [{ from: "in", to: "out", response }];
}

export function insertionLoss(
  value: number,
  label = "Insertion loss",
  onlyWhen: OptionTrade["onlyWhen"] = {},
) {
  return number({
    label,
    unit: "dB",
    min: 0,
    max: 20,
    step: 0.1,
    default: value,
    source: MEMORY,
    spreadDb: 0.3,
    onlyWhen,
  });
}

export function dcPass(value: boolean) {
  return toggle({
    label: "DC and 22 kHz pass",
    help: "Whether 13/18 V, 22 kHz and messages get through to the parts before this one.",
    default: value,
    source: MEMORY,
    means: "supply pass",
    passes: [true],
  });
}

/** Whether 22 kHz comes along where direct current passes; `onlyWhen`: the choices with which any does. */
export function tonePass(onlyWhen: NonNullable<OptionTrade["onlyWhen"]>) {
  return toggle({
    label: "22 kHz passes as well",
    help: "Some types pass 13/18 V only: without the tone there is no high band, and no messages get through.",
    default: true,
    source: MEMORY,
    advanced: true,
    onlyWhen,
  });
}

/** Switch by which a part says that its own mains unit runs. */
export const MAINS_ON = toggle({
  label: "Mains on",
  default: true,
  means: "mains",
  onSite: "setting",
  soundValue: true,
});

/** Decibels for captions: "3 dB", "7.5 dB". */
export function dB(value: number): string {
  return `${numeral(value)} dB`;
}

/** Field for the isolation between the outputs of a part. */
export function decoupling(db: number, o: { readonly label?: string } & Pick<OptionTrade, "onlyWhen"> = {}) {
  return number({
    label: "Isolation between outputs",
    ...o,
    unit: "dB",
    min: 0,
    max: 60,
    step: 1,
    default: db,
    source: MEMORY,
    advanced: true,
    means: "decoupling",
    spreadDb: 3,
  });
}

/** Field for the return loss of a part: how little it sends back of what reaches it. */
export function returnLoss(db: number) {
  return number({
    label: "Return loss",
    unit: "dB",
    help: "How much weaker the reflection is than what arrives. Together with other parts it makes ripple.",
    min: 3,
    max: 80,
    step: 1,
    default: db,
    source:
      "typical: cable 20 dB and more, splitters and taps 14 to 22, outlets 14 to 18, from guidelines for house networks",
    advanced: true,
    means: "return loss",
  });
}
