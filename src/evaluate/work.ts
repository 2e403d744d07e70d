/**
 * How much work a part is. One unit is about one carrier of one band on its way to one output, or one band held against
 * others; what signals take is counted where they are worked out (`signals.ts`).
 */
import type { PowerTreatment } from "../parts/contract.ts";
import type { Demand, Feed } from "../signal/control.ts";
import { notesOf, type SignalResult } from "./signals.ts";

export type EvaluationWork = { readonly loads: number; readonly supplies: number; readonly signals: number };

export const NO_WORK: EvaluationWork = { loads: 0, supplies: 0, signals: 0 };

export function totalOf({ loads, supplies, signals }: EvaluationWork): number {
  return loads + supplies + signals;
}

const PER_OFFER = 8;

/** What hangs on all ways, name by name. */
export function workOfLoads(power: PowerTreatment, atInput: (port: string) => Demand): number {
  let work = 1;
  for (const path of power.paths ?? []) work += atInput(path.to).draws.length;
  return work;
}

export function workOfSupplies(power: PowerTreatment, atOutput: (port: string) => Feed): number {
  let offers = 0;
  for (const path of power.paths ?? []) offers += atOutput(path.from).length;
  return 1 + PER_OFFER * offers;
}

export function workOfSignals(results: SignalResult): number {
  let work = 1;
  for (const notes of notesOf(results)) work += notes.work;
  return work;
}
