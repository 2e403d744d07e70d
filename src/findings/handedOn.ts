/** What an outlet hands on: the usable carriers of a service on the sockets meant for it. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { marginDb } from "../signal/readout.ts";
import { whyOutOfReach } from "./feedSuits.ts";
import type { Missing } from "./missing.ts";
import { isOfUse, userBandsBehind } from "./userBandsBehind.ts";

/** Sockets of an outlet with the services that each is meant for. */
export type Sockets = readonly { readonly port: string; readonly services: readonly Service[] }[];

/** Carrier i of a band on a socket. */
export type HandedOn = { readonly port: string; readonly band: Band; readonly i: number };

/** Usable carriers of a service on the sockets meant for it. */
export function handedOn(record: PartRecord, sockets: Sockets, service: Service): readonly HandedOn[] {
  const found: HandedOn[] = [];
  for (const { port, services } of sockets) {
    if (!services.includes(service)) continue;
    const used = userBandsBehind(record, port);
    for (const band of (record.outputs[port] ?? SILENCE).bands) {
      if (band.origin.service !== service) continue;
      for (let i = 0; i < band.level.length; i++)
        if (!band.cut[i] && marginDb(band, i) >= 0 && isOfUse(band, i, used)) found.push({ port, band, i });
    }
  }
  return found;
}

/** What keeps every receiver at a socket from making a feed come; undefined where one can, or none is there to ask. */
export function barrierOf({ feeds }: PartRecord, port: string, band: Band): Missing | undefined {
  const speakers = (feeds[port] ?? []).filter((offer) => offer.kind === "commands" && !offer.dormant);
  const barriers = speakers.map((offer) => whyOutOfReach(offer, band));
  const [first] = barriers;
  if (!first?.reason || barriers.some((barrier) => !barrier)) return undefined;
  const { why, reason, culprit } = first;
  return { why, count: 0, reason, ...(culprit ? { culprit } : {}), planes: [] };
}
