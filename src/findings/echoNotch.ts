/** What two ways of one carrier may take from it where they cancel. */

import type { Evaluation } from "../evaluate/evaluation.ts";
import { type CarrierId, type TraceOutput, traceCarrier } from "../evaluate/trace.ts";
import { notchDepthDb } from "../rf/echo.ts";
import { remembered } from "../signal/remember.ts";
import { askWhole } from "./watched.ts";

/** Deepest notch that is reckoned with [dB]: copies of just one level would cancel wholly; a choice of this tool. */
const MOST_NOTCH_DB = 20;

/**
 * Depth of the deepest notch that a carrier's copies may cut on its way [dB]; 0 where it comes by one way. In a house the ways
 * differ by metres: a notch is then tens of megahertz wide and can swallow a whole channel, wherever it lies.
 * `end`: the output where it is judged.
 */
export function echoNotchDb(
  evaluation: Evaluation,
  { end, userBand, ...carrier }: CarrierId & { readonly end?: TraceOutput; readonly userBand?: number },
): number {
  // Most designs have no echo at all: then nothing is traced.
  if (!end || !askWhole(evaluation, (whole) => echoed(whole).has(carrier.origin))) return 0;
  let depthDb = 0;
  for (const { part } of traceCarrier(evaluation, end, carrier, userBand))
    for (const { echo, victim, carriers, ciDb } of evaluation.record(part)?.meetings ?? []) {
      if (!echo || victim.origin.key !== carrier.origin) continue;
      const place = carriers.findIndex((i) => victim.grid.index[i] === carrier.index);
      const apartDb = ciDb[place];
      if (apartDb !== undefined) depthDb = Math.max(depthDb, notchDepthDb(apartDb));
    }
  return Math.min(MOST_NOTCH_DB, depthDb);
}

const origins = new WeakMap<Evaluation, ReadonlySet<string>>();

/** Keys of all signals that meet themselves somewhere. */
function echoed(whole: Evaluation): ReadonlySet<string> {
  return remembered(origins, whole, () => {
    const echoes = whole.records.flatMap((r) => r.meetings.filter((m) => m.echo));
    return new Set(echoes.map((m) => m.victim.origin.key));
  });
}
