/** Where limits apply: the sockets of outlets and the inputs of receivers, and what can be received there. */
import { defaultOptions } from "../parts/catalogue.ts";
import type { PartKind } from "../parts/contract.ts";
import { type Band, SILENCE, type Spectrum } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { ciDb, cnDb, cniDb, imDb, isLive } from "../signal/readout.ts";
import { remembered } from "../signal/remember.ts";
import { isFormer } from "./former.ts";
import { keptLimits, type Limits, limitsFor, type Profile } from "./limits.ts";
import { outdoneOn } from "./rivals.ts";
import type { RuleView } from "./rule.ts";
import { isOfUse, userBandsBehind } from "./userBandsBehind.ts";

export type Place = {
  readonly port: string;
  readonly services: readonly Service[];
  readonly spectrum: Spectrum;
  /** User bands that count there. */
  readonly userBands: ReadonlySet<number>;
};

/** A receiver behind an outlet is judged at the outlet's socket: the same level is not reported twice. */
export function placesOf({ record, kindAt }: Pick<RuleView, "record" | "kindAt">): Place[] {
  const sockets = record.kind.delivery?.(record.options).sockets ?? [];
  const inputs = record.kind.reception?.(record.options).inputs ?? [];
  return [
    ...sockets.map(({ port, services }) => ({
      port,
      services,
      spectrum: record.outputs[port] ?? SILENCE,
      userBands: userBandsBehind(record, port),
    })),
    ...inputs
      .filter(({ port }) => !isSocket(kindAt(port), record.joined[port]?.[1]))
      .map(({ port, services }) => ({
        port,
        services,
        spectrum: record.inputs[port] ?? SILENCE,
        userBands: userBandsBehind(record, port),
      })),
  ];
}

/** Whether a receiver's lead comes from a socket; the through output of a riser plate is none. */
function isSocket(kind: PartKind | undefined, port: string | undefined): boolean {
  if (!kind?.delivery) return false;
  return kind.ports(defaultOptions(kind)).find((p) => p.id === port)?.role !== "trunk";
}

/** A carrier as a finding quotes it. */
export type CarrierFigures = {
  readonly origin: string;
  /** Entry of the source's plan. */
  readonly index: number;
  /** User band that carries it. */
  readonly userBand?: number;
  readonly name: string;
  readonly centreMHz: number;
  readonly levelDbuv: number;
  /** Against noise and interference together, against noise alone, against interference alone [dB]. */
  readonly cniDb: number;
  readonly cnDb: number;
  readonly ciDb: number;
};

/** `limits`: with the distance that the design keeps from them. */
export type Heard = CarrierFigures & {
  readonly limits: Limits;
  /** Against third-order products alone [dB]; +Infinity where there are none. */
  readonly imDb: number;
};

/**
 * Live carriers of one service at a place that the profile has limits for. One that several alternatives
 * offer counts once; of a stacked feed only the user bands in use behind the place count.
 */
export function heardAt(place: Place, service: Service, profile: Profile): readonly Heard[] {
  const byProfile = remembered(
    known,
    place.spectrum,
    () => new WeakMap<Profile, Map<string, readonly Heard[]>>(),
  );
  const byService = remembered(byProfile, profile, () => new Map<string, readonly Heard[]>());
  const key = `${service} ${[...place.userBands].join()}`;
  return remembered(byService, key, () => liveCarriersAt(place, service, profile));
}

/** Several rules ask the same of each place. */
const known = new WeakMap<Spectrum, WeakMap<Profile, Map<string, readonly Heard[]>>>();

function liveCarriersAt(place: Place, service: Service, profile: Profile): readonly Heard[] {
  const found = new Map<string, Heard>();
  const isOutdone = outdoneOn(place.spectrum.bands);
  for (const band of place.spectrum.bands) {
    if (band.origin.service !== service) continue;
    for (let i = 0; i < band.level.length; i++) {
      const carrier = carrierOf(band, i);
      const limits = limitsFor(profile, service, carrier?.mode ?? "", band.grid.required[i]);
      if (!limits || !carrier || !isLive(band, i)) continue;
      if (!isOfUse(band, i, place.userBands) || isOutdone(band, i) || isFormer(band, i)) continue;
      const id = `${band.origin.key}#${band.grid.index[i]}`;
      if (found.has(id)) continue;
      found.set(id, { ...figuresOf(band, i), limits: keptLimits(limits, profile), imDb: imDb(band, i) });
    }
  }
  return [...found.values()];
}

export function figuresOf(band: Band, i: number): CarrierFigures {
  const userBand = band.stack?.numbers[i];
  return {
    origin: band.origin.key,
    index: band.grid.index[i] ?? 0,
    ...(userBand === undefined ? {} : { userBand }),
    name: carrierOf(band, i)?.name ?? "",
    centreMHz: band.grid.centre[i] ?? 0,
    levelDbuv: band.level[i] ?? 0,
    cniDb: cniDb(band, i),
    cnDb: cnDb(band, i),
    ciDb: ciDb(band, i),
  };
}

function carrierOf(band: Band, i: number) {
  return band.grid.plan[band.grid.index[i] ?? 0];
}
