/** The parts that a carrier has come through, from its source to a place: where a culprit is looked for. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { type CarrierId, type TracedOutput, type TraceStep, traceOutput } from "../../evaluate/trace.ts";
import { cniDb, isLive } from "../../signal/readout.ts";
import { remembered } from "../../signal/remember.ts";
import { extreme } from "../extreme.ts";

export type Spot = { readonly part: PartId; readonly port: string };

/** A carrier as it arrives at a place; on a stacked feed by its user band. */
export type Arriving = { readonly origin: string; readonly index: number; readonly userBand?: number };

/** One part on the way, and what it did to the carrier. */
export type Stage = {
  readonly record: PartRecord;
  readonly step: TraceStep;
  readonly carrier: CarrierId;
};

/** Stages from the source to a socket, or to an input of a receiver; empty where the carrier does not come. */
export function stagesTo(evaluation: Evaluation, spot: Spot, arriving: Arriving): readonly Stage[] {
  const at = outputBefore(evaluation, spot);
  const carrier = at && carrierOf(evaluation, at, arriving);
  return carrier ? stagesBehind(evaluation, at, carrier, arriving.userBand) : [];
}

/** Ways to outputs, by output and carrier: all sockets of a riser share most of theirs. */
const known = new WeakMap<Evaluation, Map<string, readonly Stage[]>>();

function stagesBehind(
  evaluation: Evaluation,
  at: Spot,
  carrier: CarrierId,
  userBand: number | undefined,
): readonly Stage[] {
  const ways = remembered(known, evaluation, () => new Map<string, readonly Stage[]>());
  const keyOf = ({ part, port }: Spot) =>
    `${part}.${port} ${carrier.origin}#${carrier.index} ${userBand ?? ""}`;
  const open: { readonly key: string; readonly stage: Stage }[] = [];
  let before: readonly Stage[] = [];
  // Upwards to what is known already, or to the source; no way is longer than there are parts.
  let here: Spot | null = at;
  for (let guard = evaluation.records.length; here && guard > 0; guard--) {
    const key = keyOf(here);
    const former = ways.get(key);
    if (former) {
      before = former;
      break;
    }
    const record = evaluation.record(here.part);
    const traced: TracedOutput | null = record ? traceOutput(evaluation, here, carrier, userBand) : null;
    if (!record || !traced) break;
    open.push({ key, stage: { record, step: traced.step, carrier } });
    here = traced.before;
  }
  for (const { key, stage } of open.reverse()) {
    before = [...before, stage];
    ways.set(key, before);
  }
  return before;
}

/** The output at a spot, or the one that feeds the input there. */
export function outputBefore(evaluation: Evaluation, { part, port }: Spot): Spot | undefined {
  const record = evaluation.record(part);
  if (!record) return undefined;
  if (record.ports.some((p) => p.id === port && p.side === "out")) return { part, port };
  const end = record.joined[port];
  return end && { part: end[0], port: end[1] };
}

/** Of a user band the worst carrier that it can hold: its noise is what the user band is given. */
function carrierOf(evaluation: Evaluation, at: Spot, arriving: Arriving): CarrierId | undefined {
  if (arriving.userBand === undefined) return arriving;
  const bands = evaluation.record(at.part)?.outputs[at.port]?.bands ?? [];
  const holds = bands.find((b) => b.origin.key === arriving.origin)?.stack?.holds ?? [];
  const held = holds.flatMap((band) =>
    Array.from(band.grid.index.entries())
      .filter(([i]) => isLive(band, i))
      .map(([i, index]) => ({ origin: band.origin.key, index, cniDb: cniDb(band, i) })),
  );
  return extreme(held, (c) => -c.cniDb);
}
