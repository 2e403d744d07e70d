/** Small pieces from which the coaxial parts are put together. */

import { flat, type Response, series } from "../signal/response.ts";
import { numeral } from "../words/numbers.ts";
import type { Path, Port, PortRole, PowerPath } from "./contract.ts";
import { number, toggle } from "./fields.ts";
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

/** A plain part on the whole line with the same loss everywhere. */
export function plainLoss(lossDb: number): Response {
  return lossDb === 0 ? WHOLE_LINE_PASS : series(flat(-lossDb), WHOLE_LINE_PASS);
}

/** Outside its range a passive isn't a filter: it just gets worse. From memory. */
const WHOLE_LINE_PASS = passing([WHOLE_LINE], 20);

/** One path from "in" to "out". */
export function throughPath(response: Response): readonly Path[] {
  return [{ from: "in", to: "out", response }];
}

export function insertionLoss(value: number, label = "Insertion loss") {
  return number({
    label,
    unit: "dB",
    min: 0,
    max: 20,
    step: 0.1,
    default: value,
    source: MEMORY,
    spreadDb: 0.3,
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

/** Whether 22 kHz comes along where direct current passes; `dc`: the choices with which any does. */
export function tonePass(dc: readonly string[]) {
  return toggle({
    label: "22 kHz passes as well",
    help: "Some types pass 13/18 V only: without the tone there is no high band, and no messages get through.",
    default: true,
    source: MEMORY,
    advanced: true,
    onlyWhen: { dc },
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
