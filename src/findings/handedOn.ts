/** What an outlet hands on: the usable carriers of a service on the sockets meant for it. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { TUNER_NOISE_FIGURE_DB } from "../parts/receiverFrontEnd.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { carrierToDb, disturbanceUv2 } from "../signal/readout.ts";
import { whyOutOfReach } from "./feedSuits.ts";
import type { Missing } from "./missing.ts";
import { tunerNoiseUv2 } from "./tunerQuality.ts";
import { isOfUse, userBandsBehind } from "./userBandsBehind.ts";

/** Sockets of an outlet with the services that each is meant for. */
export type Sockets = readonly { readonly port: string; readonly services: readonly Service[] }[];

/** Carrier i of a band on a socket. */
export type HandedOn = { readonly port: string; readonly band: Band; readonly i: number };

/** Usable carriers of a service on the sockets meant for it: those that a usual tuner there would receive. */
export function handedOn(record: PartRecord, sockets: Sockets, service: Service): readonly HandedOn[] {
  return comingOut(record, sockets, service).filter(({ band, i }) => isReceivable(band, i));
}

/** All that comes out there, however weak or disturbed. */
export function comingOut(record: PartRecord, sockets: Sockets, service: Service): readonly HandedOn[] {
  const found: HandedOn[] = [];
  for (const { port, services } of sockets) {
    if (!services.includes(service)) continue;
    const used = userBandsBehind(record, port);
    for (const band of (record.outputs[port] ?? SILENCE).bands) {
      if (band.origin.service !== service) continue;
      for (let i = 0; i < band.level.length; i++)
        if (!band.cut[i] && isOfUse(band, i, used)) found.push({ port, band, i });
    }
  }
  return found;
}

/** Whether a usual tuner would receive a carrier as it comes out. */
export function isReceivable(band: Band, i: number): boolean {
  const noise = (band.noise[i] ?? 0) + tunerNoiseUv2(band.grid, i, TUNER_NOISE_FIGURE_DB);
  const cnDb = carrierToDb(band.level[i] ?? 0, noise + disturbanceUv2(band, i));
  return cnDb >= (band.grid.required[i] ?? 0);
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
