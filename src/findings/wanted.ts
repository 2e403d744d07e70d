/** What whoever sits before a receiver may expect of it. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Band } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { carrierKey } from "./fate.ts";

/** Keys of the carriers to expect: those of every source upstream, or else of every source drawn. */
export function wantedCarriers(
  record: PartRecord,
  sources: readonly PartRecord[],
  service: Service,
): readonly string[] {
  const offering = sources.filter((s) => emitted(s, service).length > 0);
  const upstream = offering.filter((s) => record.sources.includes(s.part.id));
  const chosen = upstream.length > 0 ? upstream : offering;
  return chosen.flatMap((s) =>
    emitted(s, service).flatMap((b) => Array.from(b.grid.index, (i) => carrierKey(b.origin.key, i))),
  );
}

/** Bands of a service that a source itself sends out. */
function emitted(source: PartRecord, service: Service): readonly Band[] {
  return Object.values(source.outputs).flatMap((s) =>
    s.bands.filter((b) => b.origin.part === source.part.id && b.origin.service === service),
  );
}
