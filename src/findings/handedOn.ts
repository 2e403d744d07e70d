/** What an outlet hands on: the usable carriers of a service on the sockets meant for it. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import { frontEndOf, OVERLOAD, TUNER_NOISE_FIGURE_DB } from "../parts/receiverFrontEnd.ts";
import { CABLE_FROM_MHZ } from "../parts/receiverTelevision.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { carrierToDb, disturbanceUv2, marginDb } from "../signal/readout.ts";
import { blockingAt, totalHeadroomDb } from "./blocking.ts";
import { whyOutOfReach } from "./feedSuits.ts";
import { isFormer } from "./former.ts";
import type { Missing, MissingReason } from "./missing.ts";
import { outdoneOn } from "./rivals.ts";
import { tunerNoiseUv2 } from "./tunerQuality.ts";
import { isOfUse, userBandsBehind } from "./userBandsBehind.ts";

/** Sockets of an outlet with the services that each is meant for. */
export type Sockets = readonly { readonly port: string; readonly services: readonly Service[] }[];

/** Carrier i of a band on a socket. */
export type HandedOn = { readonly port: string; readonly band: Band; readonly i: number };

/** Usable carriers of a service on the sockets meant for it: those that a usual tuner there would receive. */
export function handedOn(record: PartRecord, sockets: Sockets, service: Service): readonly HandedOn[] {
  return comingOut(record, sockets, service).filter((on) => !uselessBy(record, on));
}

/** All that comes out there, however weak or disturbed. */
export function comingOut(record: PartRecord, sockets: Sockets, service: Service): readonly HandedOn[] {
  const found: HandedOn[] = [];
  for (const { port, services } of sockets) {
    if (!services.includes(service)) continue;
    const used = userBandsBehind(record, port);
    const { bands } = record.outputs[port] ?? SILENCE;
    const isOutdone = outdoneOn(bands);
    for (const band of bands) {
      if (band.origin.service !== service) continue;
      for (let i = 0; i < band.level.length; i++)
        if (!band.cut[i] && isOfUse(band, i, used) && !isOutdone(band, i) && !isFormer(band, i))
          found.push({ port, band, i });
    }
  }
  return found;
}

type Useless = Extract<MissingReason, { readonly kind: "blocked" | "disturbed" | "noisy" }>;

/**
 * What keeps a usual tuner at a socket from a carrier that comes out there: too much in all, other signals and products, or noise;
 * undefined where nothing does.
 */
export function uselessBy(record: PartRecord, on: HandedOn): Useless | undefined {
  const { port, band, i } = on;
  if (isTooMuch(record, on)) return { kind: "blocked", service: band.origin.service, port, by: "total" };
  if (isReceivable(band, i)) return undefined;
  const isDisturbed = disturbanceUv2(band, i) > (band.noise[i] ?? 0) && marginDb(band, i) < 0;
  return { kind: isDisturbed ? "disturbed" : "noisy" };
}

/** Whether a usual tuner would receive a carrier as it comes out. */
function isReceivable(band: Band, i: number): boolean {
  const noise = (band.noise[i] ?? 0) + tunerNoiseUv2(band.grid, i, TUNER_NOISE_FIGURE_DB);
  const cnDb = carrierToDb(band.level[i] ?? 0, noise + disturbanceUv2(band, i));
  return cnDb >= (band.grid.required[i] ?? 0);
}

/** Tuners as they usually stand behind a socket: their range [MHz], and the most that they take. */
const USUAL_RANGES = {
  tv: { from: CABLE_FROM_MHZ, to: 862, overloadDbuv: OVERLOAD.tv.dbuv },
  dab: { from: 174, to: 240, overloadDbuv: OVERLOAD.dab.dbuv },
  fm: { from: 87.5, to: 108, overloadDbuv: OVERLOAD.fm.dbuv },
} as const;

function usualInput(service: keyof typeof USUAL_RANGES, port: string): ReceiverInput {
  const { from, to, overloadDbuv } = USUAL_RANGES[service];
  return {
    port,
    feed: "terrestrial",
    services: [service],
    tunesFromMHz: from,
    tunesToMHz: to,
    tuners: 1,
    frontEnd: frontEndOf({ noiseFigureDb: TUNER_NOISE_FIGURE_DB, overloadDbuv }),
  };
}

/** Whether all that comes out of the socket together blocks a usual tuner there. */
function isTooMuch(record: PartRecord, { port, band }: HandedOn): boolean {
  const { service } = band.origin;
  if (service !== "tv" && service !== "dab" && service !== "fm") return false;
  const blocking = blockingAt(record.outputs[port] ?? SILENCE, usualInput(service, port));
  return totalHeadroomDb(blocking, band) < 0;
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
