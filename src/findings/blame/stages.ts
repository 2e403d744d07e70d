/** The parts that a carrier has come through, from its source to a place: where a culprit is looked for. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { type CarrierId, type TraceStep, traceOutput } from "../../evaluate/trace.ts";
import { cniDb, isLive } from "../../signal/readout.ts";
import { remembered } from "../../signal/remember.ts";
import { extreme } from "../extreme.ts";
import { wholeOf } from "../watched.ts";

export type OutputSpot = { readonly part: PartId; readonly port: string };

/** A carrier as it arrives at a place; on a stacked feed by its user band. */
export type Arriving = { readonly origin: string; readonly index: number; readonly userBand?: number };

/** One part on the way, and what it did to the carrier. */
export type Stage = {
  readonly record: PartRecord;
  readonly step: TraceStep;
  readonly carrier: CarrierId;
};

/** Whether the carrier is amplified here on its way. */
export function isAmplifier({ record, step }: Stage): boolean {
  const { job } = record.kind.trade;
  return (job === "amplifier" || job === "mast amplifier") && record.powered && (step.gainDb ?? 0) > 0;
}

/** Stages from the source to a socket, or to an input of a receiver; empty where the carrier does not come. */
export function stagesTo(evaluation: Evaluation, spot: OutputSpot, arriving: Arriving): readonly Stage[] {
  const at = outputBefore(evaluation, spot);
  const carrier = at && carrierOf(evaluation, at, arriving);
  return carrier ? stagesBehind(evaluation, at, carrier, arriving.userBand) : [];
}

/** Ways to outputs, by output and carrier: all sockets of a riser share most of theirs. */
const known = new WeakMap<Evaluation, Map<string, readonly Stage[]>>();

function stagesBehind(
  evaluation: Evaluation,
  at: OutputSpot,
  carrier: CarrierId,
  userBand: number | undefined,
): readonly Stage[] {
  const whole = wholeOf(evaluation);
  const ways = remembered(known, whole, () => new Map<string, readonly Stage[]>());
  const open: { readonly key: string; readonly stage: Stage }[] = [];
  let before: readonly Stage[] = [];
  // Upwards to what is known already, or to the source; no way is longer than there are parts.
  let here: OutputSpot | null = at;
  for (let guard = whole.records.length; here && guard > 0; guard--) {
    const key: string = `${here.part}.${here.port} ${arrivingKey(carrier, userBand)}`;
    const former = ways.get(key);
    if (former) {
      before = former;
      break;
    }
    const passed: PassedStage | undefined = stageAt(evaluation, here, carrier, userBand);
    if (!passed) break;
    open.push({ key, stage: passed.stage });
    here = passed.before;
  }
  for (const { key, stage } of open.reverse()) {
    before = [...before, stage];
    ways.set(key, before);
  }
  // Whoever keeps what follows from a way rests on all its parts, those that were known already included.
  for (const { record } of before) evaluation.record(record.part.id);
  return before;
}

/** A stage, and the output before it; null at the source. */
export type PassedStage = { readonly stage: Stage; readonly before: OutputSpot | null };

/** A record tells by itself what it did to a carrier. */
const passedBy = new WeakMap<PartRecord, Map<string, PassedStage | null>>();

/** The stage of the part at an output; undefined where the carrier is not there. */
export function stageAt(
  evaluation: Evaluation,
  at: OutputSpot,
  carrier: CarrierId,
  userBand: number | undefined,
): PassedStage | undefined {
  const record = evaluation.record(at.part);
  if (!record) return undefined;
  const ofRecord = remembered(passedBy, record, () => new Map<string, PassedStage | null>());
  const passed = remembered(ofRecord, `${at.port} ${arrivingKey(carrier, userBand)}`, () => {
    const traced = traceOutput(evaluation, at, carrier, userBand);
    return traced && { stage: { record, step: traced.step, carrier }, before: traced.before };
  });
  return passed ?? undefined;
}

export function arrivingKey({ origin, index }: CarrierId, userBand: number | undefined): string {
  return `${origin}#${index} ${userBand ?? ""}`;
}

/** What a part does to the carrier of a stage hangs on nothing else. */
export function stageKey({ step, carrier }: Stage): string {
  return `${step.from} ${step.to} ${arrivingKey(carrier, step.userBand)}`;
}

/** The output at a spot, or the one that feeds the input there. */
export function outputBefore(evaluation: Evaluation, { part, port }: OutputSpot): OutputSpot | undefined {
  const record = evaluation.record(part);
  if (!record) return undefined;
  if (record.ports.some((p) => p.id === port && p.side === "out")) return { part, port };
  const end = record.joined[port];
  return end && { part: end[0], port: end[1] };
}

/** The carrier itself; of a user band the worst carrier that it can hold: its noise is what the user band is given. */
export function carrierOf(evaluation: Evaluation, at: OutputSpot, arriving: Arriving): CarrierId | undefined {
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
