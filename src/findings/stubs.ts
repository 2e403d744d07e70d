/** Dead ends of cable: what hangs on a joint of lines and ends open or shorted. */
import type { PartId, PortRef } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { metresOf } from "../parts/meanings.ts";
import type { Stub } from "../rf/stub.ts";
import { gainDbAt } from "../signal/gain.ts";
import { passivePaths } from "./decoupling.ts";

export type DeadEnd = {
  readonly stub: Stub;
  readonly lengthM: number;
  /** Parts of it, from the joint on. */
  readonly parts: readonly PartId[];
  /** Loss of it one way at a frequency [dB]. */
  readonly lossDbAt: (frequencyMHz: number) => number;
};

/** Legs that are kept apart by less than this are simply joined [dB]: three lines have 3.5, a resistive splitter 6. */
const JOINED_DB = 4;

/** A passive part that loses more than this lets nothing through that would be worth a notch [dB]. */
const STOPS_DB = 12;

/** Whether the legs of a part are simply joined to its line. */
export function joinsLines({ treatment, looped }: PartRecord): boolean {
  return !looped && treatment.isolationDb !== undefined && treatment.isolationDb < JOINED_DB;
}

/** What hangs on an output, if it is a length of cable that ends open or shorted; undefined where the line is in use. */
export function deadEndAt(evaluation: Evaluation, [part, port]: PortRef): DeadEnd | undefined {
  const parts: PartRecord[] = [];
  let electricalM = 0;
  let lengthM = 0;
  let end: Stub["end"] = "open";
  let next = evaluation.record(part)?.joined[port];
  while (next) {
    const record = evaluation.record(next[0]);
    if (!record || record.looped || parts.includes(record)) return undefined;
    const input = next[1];
    const ways = passivePaths(record).filter((path) => path.from === input);
    const [way] = ways;
    if (!way || ways.length > 1) return undefined;
    parts.push(record);
    if (record.kind.trade.defect && -gainDbAt(way.response, MIDDLE_MHZ) > STOPS_DB) {
      end = record.power.shorts?.length ? "shorted" : "open";
      break;
    }
    electricalM += record.treatment.electricalM ?? 0;
    lengthM += metresOf(record.kind, record.options) ?? 0;
    next = record.joined[way.to];
  }
  if (electricalM === 0) return undefined;
  return {
    stub: { electricalM, end },
    lengthM,
    parts: parts.map((record) => record.part.id),
    lossDbAt: (frequencyMHz) =>
      parts.reduce((sum, record) => {
        const way = passivePaths(record)[0];
        const lossDb = way ? -gainDbAt(way.response, frequencyMHz) : 0;
        return lossDb > STOPS_DB && record.kind.trade.defect ? sum : sum + lossDb;
      }, 0),
  };
}

const MIDDLE_MHZ = 600;
