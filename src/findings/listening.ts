/** A receiver's input goes through what is on its wire, carrier by carrier. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { carrierKey, cutFate, type Fates, note } from "./fate.ts";
import { type Listener, refusal } from "./reach.ts";
import { listenStacked } from "./stackedReception.ts";
import { quality } from "./tunerQuality.ts";

/** Notes what becomes of every carrier of a service that arrives at the listener's input. */
export function hear(record: PartRecord, listener: Listener, service: Service, fates: Fates): void {
  const { input, selectedOnly } = listener;
  if (!input.services.includes(service)) return;
  for (const band of (record.inputs[input.port] ?? SILENCE).bands)
    if (band.origin.service === service && (!selectedOnly || band.selected)) listen(listener, band, fates);
}

/** Fates of a service's carriers over all inputs of a receiver, with everybody asking for what they ask for now. */
export function hearAll(record: PartRecord, service: Service): Fates {
  const fates: Fates = new Map();
  for (const input of record.kind.reception?.(record.options).inputs ?? [])
    hear(record, { receiver: record.part.id, input, alone: false }, service, fates);
  return fates;
}

function listen(listener: Listener, band: Band, fates: Fates): void {
  if (band.stack) {
    listenStacked(listener, band, band.stack, fates);
    return;
  }
  const refused = refusal(listener, band);
  for (let i = 0; i < band.level.length; i++)
    note(
      fates,
      carrierKey(band.origin.key, band.grid.index[i] ?? 0),
      cutFate(band, i) ?? refused ?? quality(listener.input, band, i),
    );
}
