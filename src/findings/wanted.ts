/** What whoever sits before a receiver may expect of it. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { type Service, WANTED_SERVICES } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";
import { carrierKey } from "./fate.ts";

/** Keys of the carriers to expect: those of every source upstream, or else of every source drawn. */
export function wantedCarriers(
  record: PartRecord,
  sources: readonly PartRecord[],
  service: Service,
): readonly string[] {
  const above = new Set(record.sources);
  const upstream = sources.filter((s) => above.has(s.part.id)).flatMap((s) => sent(s, service));
  return upstream.length > 0 ? upstream : sources.flatMap((s) => sent(s, service));
}

/** Carriers of all services that a source sends out. */
export function carriersSent(source: PartRecord): number {
  return WANTED_SERVICES.reduce((sum, service) => sum + sent(source, service).length, 0);
}

/** Every receiver asks the same of every source. */
const known = new WeakMap<PartRecord, Map<Service, readonly string[]>>();

/** Keys of the carriers of a service that a source itself sends out. */
function sent(source: PartRecord, service: Service): readonly string[] {
  const byService = remembered(known, source, () => new Map<Service, readonly string[]>());
  return remembered(byService, service, () =>
    Object.values(source.outputs)
      .flatMap((s) => s.bands)
      .filter((b) => b.origin.part === source.part.id && b.origin.service === service)
      .flatMap((b) => Array.from(b.grid.index, (i) => carrierKey(b.origin.key, i))),
  );
}
