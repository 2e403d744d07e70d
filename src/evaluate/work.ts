/**
 * How much work a part is. One unit is about one carrier of one band on its way to one output, or one band held against
 * others; what signals take is counted where they are worked out (`signals.ts`), and so is what supplies take (`supply/settle.ts`).
 */
import { notesOf, type SignalResult } from "./signals.ts";

export type EvaluationWork = { readonly supplies: number; readonly signals: number };

export const NO_WORK: EvaluationWork = { supplies: 0, signals: 0 };

export function totalOf({ supplies, signals }: EvaluationWork): number {
  return supplies + signals;
}

export function workOfSignals(results: SignalResult): number {
  let work = 1;
  for (const notes of notesOf(results)) work += notes.work;
  return work;
}
