/** Which carriers a blocked tuner loses, by how much, and to what: the figures of a finding. */

import type { PartId } from "../design/design.ts";
import type { PartRecord } from "../evaluate/evaluation.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { isLive } from "../signal/readout.ts";
import { type BlockedBy, type Blocking, blockingAt, type Loud } from "./blocking.ts";

/** A carrier at the tuner's input. */
export type CarrierThere = {
  readonly service: Service;
  /** Source, or of a user band the converter. */
  readonly part: PartId;
  readonly origin: string;
  readonly index: number;
  readonly userBand?: number;
  readonly name: string;
  readonly centreMHz: number;
  readonly levelDbuv: number;
};

export type Blocked = {
  /** The carrier that is furthest from being received. */
  readonly wanted: CarrierThere;
  /** The strongest of all, or what stands beside the wanted one. */
  readonly by: CarrierThere;
  /** All power and what the tuner takes [dBµV]; or how far the neighbour is above, and how far it may be [dB]. */
  readonly value: number;
  readonly limit: number;
};

export type BlockedAt = { readonly service: Service; readonly port: string; readonly by: BlockedBy };

/** The worst of a service at an input; undefined where nothing of it is blocked that way. */
export function blockedAt(record: PartRecord, { service, port, by }: BlockedAt): Blocked | undefined {
  const input = record.kind.reception?.(record.options).inputs.find((one) => one.port === port);
  if (!input) return undefined;
  const spectrum = record.inputs[port] ?? SILENCE;
  const blocking = blockingAt(spectrum, input);
  let worst: Blocked | undefined;
  for (const band of spectrum.bands) {
    if (band.origin.service !== service) continue;
    for (let i = 0; i < band.level.length; i++) {
      const found = isLive(band, i) ? blockedCarrier(blocking, by, band, i) : undefined;
      if (found && (!worst || found.value - found.limit > worst.value - worst.limit)) worst = found;
    }
  }
  return worst;
}

function blockedCarrier(blocking: Blocking, by: BlockedBy, band: Band, i: number): Blocked | undefined {
  const wanted = there({ band, i, levelDbuv: band.level[i] ?? 0 });
  if (by === "total") {
    const value = blocking.totalDbuv(band);
    const loudest = blocking.loudest(band);
    if (!loudest || value <= blocking.overloadDbuv) return undefined;
    return { wanted, by: there(loudest), value, limit: blocking.overloadDbuv };
  }
  const beside = blocking.beside(band, i);
  if (!beside || beside.aboveDb <= beside.allowedDb) return undefined;
  return { wanted, by: there(beside.by), value: beside.aboveDb, limit: beside.allowedDb };
}

function there({ band, i, levelDbuv }: Loud): CarrierThere {
  const { origin, grid, stack } = band;
  const index = grid.index[i] ?? 0;
  const userBand = stack?.numbers[i];
  return {
    service: origin.service,
    part: origin.part,
    origin: origin.key,
    index,
    ...(userBand === undefined ? {} : { userBand }),
    name: grid.plan[index]?.name ?? "",
    centreMHz: grid.centre[i] ?? 0,
    levelDbuv,
  };
}
