/** Where a carrier that does not arrive at a receiver was lost: followed upwards from its inputs. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { findCarrier } from "../evaluate/trace.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import { satelliteBandOf } from "../parts/planSatellite.ts";
import { isLive } from "../signal/readout.ts";
import { isSetByVoltsOf } from "../signal/treat.ts";
import { inletsOf, mayCarry } from "./inlets.ts";
import type { Missing, MissingReason } from "./missing.ts";
import { supplyStop } from "./walk/supplyStop.ts";
import { voltsLost } from "./walk/voltsLost.ts";
import type { WantedCarrier } from "./wanted.ts";

export type Lost = { readonly reason: MissingReason } & Pick<Missing, "culprit" | "blamed" | "spoiler">;

type PortOf = { readonly part: PartId; readonly port: string };

/** An output that the search looks at, and the nearest input below it that is meant for what is missing. */
type Stop = { readonly at: PortOf; readonly meantFor: PortOf | undefined };

/** `outputs`: those that have what is missing; `divides`: the part itself gives it to these alone. */
type OtherOutput = Stop & { readonly outputs: readonly string[]; readonly divides: boolean };

/**
 * The nearest part that has the carrier at an input and not at the output asked for; else the nearest open input that
 * it could have come in by; else the output of the source, or of a part behind it, that leads nowhere.
 */
export function whereLost(
  evaluation: Evaluation,
  receiver: PartRecord,
  inputs: readonly ReceiverInput[],
  wanted: WantedCarrier,
): Lost {
  const seen = new Set<string>();
  let stops: Stop[] = [];
  let openInput: PortOf | undefined;
  let ownInput: PortOf | undefined;
  let otherOutput: OtherOutput | undefined;
  for (const { port, polarisation } of inputs) {
    if (polarisation && wanted.plane && polarisation !== wanted.plane.polarisation) continue;
    const meantFor = polarisation ? { part: receiver.part.id, port } : undefined;
    const end = receiver.joined[port];
    if (end) stops.push({ at: { part: end[0], port: end[1] }, meantFor });
    else ownInput ??= { part: receiver.part.id, port };
  }
  while (stops.length > 0) {
    const next: Stop[] = [];
    for (const stop of stops) {
      const key = `${stop.at.part}.${stop.at.port}`;
      const record = evaluation.record(stop.at.part);
      if (!record || seen.has(key)) continue;
      seen.add(key);
      const from = Object.keys(record.inputs).find((port) => hasLive(settable(record, port), wanted));
      if (from !== undefined) {
        const here = stoppedHere(record, stop.at.port, from, wanted);
        if (here.kind === "no supply")
          return { reason: here, culprit: { part: keepsSupplyFrom(evaluation, record) } };
        if (here.kind !== "other output") return { reason: here, culprit: { part: record.part.id } };
        const divides = inletsOf(record, stop.at.port).some((inlet) => inlet.port === from);
        const { outputs } = here;
        // Two lines that only pass a part side by side were told apart where they come from.
        if (!otherOutput || (divides && !otherOutput.divides && !otherOutput.meantFor))
          otherOutput = { ...stop, outputs, divides };
        // An output that another input leads to should have it from there.
        if (divides) continue;
      }
      const inlets = inletsOf(record, stop.at.port).filter((inlet) => mayCarry(inlet, wanted.plane));
      const meant = inlets.find((inlet) => !record.joined[inlet.port] && isBeside(record, inlet, wanted));
      const open = meant ?? inlets.find((inlet) => !record.joined[inlet.port]);
      if (open) openInput ??= { part: record.part.id, port: open.port };
      for (const { port, isMeant } of inlets) {
        const end = record.joined[port];
        const meantFor = isMeant ? { part: record.part.id, port } : stop.meantFor;
        if (end) next.push({ at: { part: end[0], port: end[1] }, meantFor });
      }
    }
    stops = next;
  }
  return endOf(evaluation, wanted, { openInput, otherOutput, ownInput });
}

/** Whoever takes the volts that arrive too low; else the part at which the supply ends or should begin. */
function keepsSupplyFrom(evaluation: Evaluation, record: PartRecord): PartId {
  const part = record.part.id;
  const { ports = [], minVolts = 0 } = record.power.load ?? {};
  const arriving = ports.flatMap((port) => (record.feeds[port] ?? []).map((offer) => ({ port, offer })));
  const [best] = arriving
    .filter(({ offer }) => offer.volts > 0)
    .sort((a, b) => b.offer.volts - a.offer.volts);
  if (!best) return supplyStop(evaluation, part).part;
  const { port, offer } = best;
  const { taker, supply } = voltsLost(evaluation, { part, port }, { offer, asked: "volts", needs: minVolts });
  return taker?.part ?? supply;
}

/** What a search came upon: open inputs on the way, outputs that have it, and an input of the receiver without a lead. */
type CameUpon = {
  readonly openInput: PortOf | undefined;
  readonly otherOutput: OtherOutput | undefined;
  readonly ownInput: PortOf | undefined;
};

function endOf(
  evaluation: Evaluation,
  wanted: WantedCarrier,
  { openInput, otherOutput, ownInput }: CameUpon,
): Lost {
  if (otherOutput?.meantFor) {
    const { at: from, meantFor, outputs } = otherOutput;
    const right = outputs[0] === undefined ? {} : { right: { part: from.part, port: outputs[0] } };
    return { reason: { kind: "wrong lead", ...meantFor, from, ...right }, culprit: meantFor };
  }
  const free = freeOutput(evaluation, wanted);
  const missingLead = (at: PortOf): Lost => ({
    reason: { kind: "open input", ...at, ...(free ? { free } : {}) },
    culprit: at,
  });
  if (openInput) return missingLead(openInput);
  if (otherOutput) {
    const { at, outputs } = otherOutput;
    return { reason: { kind: "other output", ...at, outputs }, culprit: { part: at.part } };
  }
  // One lead of several may be enough: it is to blame only where all of the others are in order.
  if (ownInput) return missingLead(ownInput);
  if (free) return { reason: { kind: "open output", ...free }, culprit: free };
  return { reason: { kind: "does not arrive" } };
}

/** Why a part that has a carrier at an input does not have it at an output. */
function stoppedHere(record: PartRecord, port: string, from: string, wanted: WantedCarrier): MissingReason {
  const part = record.part.id;
  if (record.looped) return { kind: "loop", part };
  if (!record.powered) return { kind: "no supply", part };
  const range = outsideRange(record, from, wanted);
  if (range)
    return {
      kind: "outside its range",
      part,
      band: satelliteBandOf(wanted.carrier.airMHz),
      ...range,
    };
  const outputs = Object.keys(record.outputs).filter((out) => hasLive(record.outputs[out], wanted));
  return outputs.length > 0
    ? { kind: "other output", part, port, outputs }
    : { kind: "no way through", part, from, to: port };
}

/** What an LNB takes of the sky at an input [MHz], where the carrier lies beside it. */
function outsideRange(
  { treatment }: PartRecord,
  from: string,
  { carrier }: WantedCarrier,
): { readonly fromMHz: number; readonly toMHz: number } | undefined {
  const taken = (treatment.paths ?? []).flatMap(({ from: input, loMHz, takes }) =>
    input === from && loMHz !== undefined && takes?.fromMHz !== undefined && takes.toMHz !== undefined
      ? [{ fromMHz: takes.fromMHz, toMHz: takes.toMHz }]
      : [],
  );
  const { airMHz } = carrier;
  if (taken.length === 0 || taken.some(({ fromMHz, toMHz }) => airMHz >= fromMHz && airMHz < toMHz))
    return undefined;
  return {
    fromMHz: Math.min(...taken.map(({ fromMHz }) => fromMHz)),
    toMHz: Math.max(...taken.map(({ toMHz }) => toMHz)),
  };
}

/** Whether the inputs beside this one, for the same position, get something from the dish in question. */
function isBeside(
  record: PartRecord,
  inlet: { readonly position?: string },
  { plane }: WantedCarrier,
): boolean {
  return inletsOf(record).some(
    ({ port, position }) =>
      position === inlet.position &&
      (record.inputs[port]?.bands ?? []).some((band) => band.origin.part === plane?.source),
  );
}

/** What arrives at an input, without what the part itself keeps away by the volts it gives there. */
function settable({ part, inputs }: PartRecord, port: string): PartRecord["inputs"][string] | undefined {
  const spectrum = inputs[port];
  const bands = spectrum?.bands.filter((band) => band.selected || !isSetByVoltsOf(part.id, band));
  return bands && { bands };
}

function hasLive(
  spectrum: PartRecord["inputs"][string] | undefined,
  { origin, index }: WantedCarrier,
): boolean {
  const found = findCarrier(spectrum?.bands ?? [], { origin, index }, undefined);
  return found !== undefined && (found.band.stack !== undefined || isLive(found.band, found.i));
}

/** An output that has the carrier and leads nowhere, nearest to the receivers: the last one on its way. */
function freeOutput(evaluation: Evaluation, wanted: WantedCarrier): PortOf | undefined {
  const seen = new Set<string>();
  let parts = [wanted.source];
  let last: PortOf | undefined;
  while (parts.length > 0) {
    const next: string[] = [];
    for (const id of parts) {
      const record = evaluation.record(id);
      if (!record || seen.has(id)) continue;
      seen.add(id);
      const outputs = Object.keys(record.outputs).filter((port) => hasLive(record.outputs[port], wanted));
      const open = outputs.find((port) => !record.joined[port]);
      // A part that hands it on elsewhere as well has a spare output, which is no fault.
      if (open !== undefined && outputs.every((port) => !record.joined[port]))
        last = { part: id, port: open };
      for (const port of outputs) {
        const end = record.joined[port];
        if (end) next.push(end[0]);
      }
    }
    parts = next;
  }
  return last;
}
