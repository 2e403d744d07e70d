/** Counts of what every receiver gets and every outlet hands on, without the findings: many faults are tried. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { handedOn } from "../../findings/handedOn.ts";
import { receiverResults } from "../../findings/inputReception.ts";
import type { Plane } from "../../findings/missing.ts";
import { receive } from "../../findings/reception.ts";
import { outletVerdict } from "../../findings/verdict.ts";
import { planeKey, wantedCarriers } from "../../findings/wanted.ts";
import { skyHalfOf } from "../../parts/planSatellite.ts";
import type { Service } from "../../signal/carrier.ts";

export type ReceptionCounts = {
  readonly part: PartId;
  readonly role: "receiver" | "outlet";
  readonly services: ReadonlyMap<Service, { readonly wanted: number; readonly got: number }>;
  /** Transponders got of each plane, by `planeKey`. */
  readonly planes: ReadonlyMap<string, number>;
  /** Transponders got by each tuner while all others ask for what they ask for. */
  readonly tuners: ReadonlyMap<number, number>;
};

const known = new WeakMap<Evaluation, ReadonlyMap<PartId, ReceptionCounts>>();

/** By part, receivers and outlets in the order of the design. */
export function receptionAt(evaluation: Evaluation): ReadonlyMap<PartId, ReceptionCounts> {
  let counts = known.get(evaluation);
  if (!counts) {
    const sources = evaluation.records.filter((r) => r.kind.family === "receive");
    counts = new Map(
      evaluation.records.flatMap((record) => {
        const own = receiverCounts(record, sources) ?? outletCounts(record);
        return own ? [[record.part.id, own] as const] : [];
      }),
    );
    known.set(evaluation, counts);
  }
  return counts;
}

function receiverCounts(record: PartRecord, sources: readonly PartRecord[]): ReceptionCounts | undefined {
  const reception = receive(record, sources);
  if (!reception) return undefined;
  const planes = new Map<string, number>();
  const results = receiverResults(record, "satellite");
  if (reception.services.some((s) => s.service === "satellite"))
    for (const { key, plane } of wantedCarriers(record, sources, "satellite"))
      if (plane && results.get(key)?.got) add(planes, plane);
  return {
    part: record.part.id,
    role: "receiver",
    services: new Map(reception.services.map(({ service, wanted, got }) => [service, { wanted, got }])),
    planes,
    tuners: new Map(reception.tuners.map(({ number, together }) => [number, together.got])),
  };
}

function outletCounts(record: PartRecord): ReceptionCounts | undefined {
  const verdict = outletVerdict(record);
  const sockets = record.kind.delivery?.(record.options).sockets;
  if (!verdict || !sockets) return undefined;
  const planes = new Map<string, number>();
  const seen = new Set<string>();
  for (const { band, i } of handedOn(record, sockets, "satellite")) {
    const { part: source, polarisation, key, circular } = band.origin;
    const index = band.grid.index[i] ?? 0;
    const carrier = band.grid.plan[index];
    // User bands carry whatever is asked for: there is no plane to look for.
    if (!polarisation || !carrier || band.stack || seen.has(`${key}#${index}`)) continue;
    seen.add(`${key}#${index}`);
    const half = skyHalfOf(carrier.airMHz);
    add(planes, { source, polarisation, half, ...(circular ? { circular } : {}) });
  }
  return {
    part: record.part.id,
    role: "outlet",
    services: new Map(verdict.services.map(({ service, wanted, got }) => [service, { wanted, got }])),
    planes,
    tuners: new Map(),
  };
}

function add(planes: Map<string, number>, plane: Plane): void {
  const key = planeKey(plane);
  planes.set(key, (planes.get(key) ?? 0) + 1);
}
