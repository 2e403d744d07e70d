/** User bands at a point: those of the receivers behind it, not of all that hang on the same converter. */
import type { PartRecord } from "../evaluate/evaluation.ts";

/** Numbers of the user bands that receivers behind an output are set to; empty where none speaks from there. */
export function userBandsBehind(record: PartRecord, port: string): ReadonlySet<number> {
  return new Set((record.feeds[port] ?? []).flatMap((offer) => offer.request?.userBands ?? []));
}
