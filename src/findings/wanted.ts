/** What whoever sits before a receiver may expect of it. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { SKY_SPLIT_MHZ } from "../parts/planSatellite.ts";
import type { Band } from "../signal/band.ts";
import { type Carrier, type Service, WANTED_SERVICES } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";
import { carrierKey } from "./carrierResult.ts";
import type { Plane } from "./missing.ts";

/** A carrier that a source sends out. */
export type WantedCarrier = {
  readonly key: string;
  readonly origin: string;
  /** Entry of the source's plan. */
  readonly index: number;
  readonly carrier: Carrier;
  /** Of a satellite's carrier; one object for all carriers of a plane. */
  readonly plane?: Plane;
};

/** Carriers to expect: those of every source upstream, or else of every source drawn. */
export function wantedCarriers(
  record: PartRecord,
  sources: readonly PartRecord[],
  service: Service,
): readonly WantedCarrier[] {
  const above = new Set(record.sources);
  const upstream = sources.filter((s) => above.has(s.part.id)).flatMap((s) => sent(s, service));
  return upstream.length > 0 ? upstream : sources.flatMap((s) => sent(s, service));
}

/** Carriers of all services that a source sends out. */
export function carriersSent(source: PartRecord): number {
  return WANTED_SERVICES.reduce((sum, service) => sum + sent(source, service).length, 0);
}

/** A plane as a key: the dish and the quadrant. */
export function planeKey({ source, polarisation, half }: Plane): string {
  return `${source}/${polarisation}${half === "low" ? "L" : "H"}`;
}

/** Every receiver asks the same of every source. */
const known = new WeakMap<PartRecord, Map<Service, readonly WantedCarrier[]>>();

/** Carriers of a service that a source itself sends out. */
function sent(source: PartRecord, service: Service): readonly WantedCarrier[] {
  const byService = remembered(known, source, () => new Map<Service, readonly WantedCarrier[]>());
  return remembered(byService, service, () =>
    Object.values(source.outputs)
      .flatMap((s) => s.bands)
      .filter((b) => b.origin.part === source.part.id && b.origin.service === service)
      .flatMap(carriersOf),
  );
}

function carriersOf({ origin, grid }: Band): readonly WantedCarrier[] {
  const { polarisation, satellite, part: source, key } = origin;
  const plane = (half: Plane["half"]): Plane | undefined =>
    polarisation && {
      source,
      ...(satellite === undefined ? {} : { position: satellite }),
      polarisation,
      half,
    };
  const planes = { low: plane("low"), high: plane("high") };
  return Array.from(grid.index).flatMap((index): WantedCarrier[] => {
    const carrier = grid.plan[index];
    if (!carrier) return [];
    const own = planes[carrier.airMHz < SKY_SPLIT_MHZ ? "low" : "high"];
    return [{ key: carrierKey(key, index), origin: key, index, carrier, ...(own ? { plane: own } : {}) }];
  });
}
