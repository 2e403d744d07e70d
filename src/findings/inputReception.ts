/** What becomes of every carrier on the wire of a receiver's input. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";
import { type Blocking, blockingAt, totalHeadroomDb } from "./blocking.ts";
import {
  addResult,
  type CarrierResult,
  type CarrierResults,
  carrierKey,
  cutResult,
} from "./carrierResult.ts";
import { deadAtVertical } from "./deadAtVertical.ts";
import { type TunedInput, whyUnusable } from "./feedSuits.ts";
import { addStackedResults } from "./stackedReception.ts";
import { quality, qualityAlone } from "./tunerQuality.ts";

/** Adds the results of all carriers of a service that arrive at an input. */
export function addInputResults(
  record: PartRecord,
  tuned: TunedInput,
  service: Service,
  results: CarrierResults,
): void {
  const { input, selectedOnly } = tuned;
  if (!input.services.includes(service)) return;
  const spectrum = record.inputs[input.port] ?? SILENCE;
  const blocking = blockingAt(spectrum, input);
  for (const band of spectrum.bands)
    if (band.origin.service === service && (!selectedOnly || band.selected))
      addBandResults(tuned, band, blocking, results);
}

/** Results of a service's carriers over all inputs of a receiver, with everybody asking for what they ask for now. */
export function receiverResults(record: PartRecord, service: Service): ReadonlyMap<string, CarrierResult> {
  const byService = remembered(known, record, () => new Map<Service, CarrierResults>());
  return remembered(byService, service, () => {
    const results: CarrierResults = new Map();
    for (const input of record.kind.reception?.(record.options).inputs ?? [])
      addInputResults(record, { receiver: record.part.id, input, alone: false }, service, results);
    return results;
  });
}

const known = new WeakMap<PartRecord, Map<Service, CarrierResults>>();

function addBandResults(tuned: TunedInput, band: Band, blocking: Blocking, results: CarrierResults): void {
  const { input } = tuned;
  const dead = deadAtVertical({ receiver: tuned.receiver, port: input.port }, band);
  if (band.stack) {
    const stacked = (one: Band, into: CarrierResults) => {
      if (one.stack) addStackedResults(tuned, one, one.stack, totalHeadroomDb(blocking, one), into);
      return into;
    };
    if (!dead) {
      stacked(band, results);
      return;
    }
    // A single-cable receiver rests at 13 V between its messages, and all the others may ask for vertical meanwhile.
    const weak = dead.left ? stacked(dead.left, new Map()) : new Map<string, CarrierResult>();
    for (const [key, alive] of stacked(band, new Map())) {
      const left = weak.get(key);
      addResult(results, key, !alive.got || left?.got ? (left?.got ? left : alive) : dead.lost);
    }
    return;
  }
  const unusable = whyUnusable(tuned, band);
  const result = (i: number): CarrierResult => {
    const alive = quality(input, band, i, blocking);
    if (!dead || !alive.got) return alive;
    const weak = dead.left && qualityAlone(input, dead.left, i);
    // What it gets it gets at its weakest.
    return weak?.got ? { ...alive, ...weak } : dead.lost;
  };
  for (let i = 0; i < band.level.length; i++)
    addResult(
      results,
      carrierKey(band.origin.key, band.grid.index[i] ?? 0),
      cutResult(band, i) ?? unusable ?? result(i),
    );
}
