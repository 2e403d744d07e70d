/** The parts that a carrier has come through, from its source to a place: where a culprit is looked for. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { type CarrierId, type TraceStep, traceCarrier } from "../../evaluate/trace.ts";
import { cniDb, isLive } from "../../signal/readout.ts";
import { extreme } from "../extreme.ts";

export type Spot = { readonly part: PartId; readonly port: string };

/** A carrier as it arrives at a place; on a stacked feed by its user band. */
export type Arriving = { readonly origin: string; readonly index: number; readonly userBand?: number };

/** One part on the way. `frequencyMHz`: where the carrier leaves it. */
export type Stage = {
  readonly record: PartRecord;
  readonly step: TraceStep;
  readonly carrier: CarrierId;
};

/** Stages from the source to a socket, or to an input of a receiver; empty where the carrier does not come. */
export function stagesTo(evaluation: Evaluation, spot: Spot, arriving: Arriving): readonly Stage[] {
  const at = outputBefore(evaluation, spot);
  const carrier = at && carrierOf(evaluation, at, arriving);
  if (!carrier) return [];
  return traceCarrier(evaluation, at, carrier, arriving.userBand).flatMap((step) => {
    const record = evaluation.record(step.part);
    return record ? [{ record, step, carrier }] : [];
  });
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
