/** What a receiver can really get: every carrier of its sources, and why the missing ones are missing. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Service } from "../signal/carrier.ts";
import { absent, type Fate, type GotCarrier, type Lost } from "./fate.ts";
import { hearAll } from "./listening.ts";
import { wantedCarriers } from "./wanted.ts";

export type ServiceReception = {
  readonly service: Service;
  readonly wanted: number;
  readonly got: number;
  /** Of the carriers got [dBµV, dBµV, dB]; absent when none. */
  readonly levelMin?: number;
  readonly levelMax?: number;
  readonly cnMin?: number;
  readonly missing: readonly Missing[];
};

/** So many carriers are missing for the same reason. */
export type Missing = Omit<Lost, "got"> & { readonly count: number };

export type ReceptionResult = { readonly services: readonly ServiceReception[] };

/** Works out what the receiver of a record gets; `sources` are the records of the design's aerials and dishes. */
export function receive(record: PartRecord, sources: readonly PartRecord[]): ReceptionResult | undefined {
  const reception = record.kind.reception?.(record.options);
  if (!reception) return undefined;
  const services = reception.wants.map((service) =>
    summed(service, wantedCarriers(record, sources, service), hearAll(record, service)),
  );
  return { services };
}

/** Every carrier of a service that a receiver gets, at the input where it gets it best. */
export function carriersGot(record: PartRecord, service: Service): readonly GotCarrier[] {
  return [...hearAll(record, service).values()].filter((fate) => fate.got);
}

function summed(
  service: Service,
  wanted: readonly string[],
  fates: ReadonlyMap<string, Fate>,
): ServiceReception {
  let got = 0;
  let levelMin = Number.POSITIVE_INFINITY;
  let levelMax = Number.NEGATIVE_INFINITY;
  let cnMin = Number.POSITIVE_INFINITY;
  const missing = new Map<string, Missing>();
  for (const key of wanted) {
    const fate = fates.get(key) ?? absent(key, service);
    if (fate.got) {
      got++;
      levelMin = Math.min(levelMin, fate.levelDbuv);
      levelMax = Math.max(levelMax, fate.levelDbuv);
      cnMin = Math.min(cnMin, fate.cnDb);
      continue;
    }
    const { got: _, ...lost } = fate;
    const same = fate.clause.other("");
    missing.set(same, { ...lost, count: (missing.get(same)?.count ?? 0) + 1 });
  }
  return {
    service,
    wanted: wanted.length,
    got,
    ...(got > 0 ? { levelMin, levelMax, cnMin } : {}),
    missing: [...missing.values()].sort((a, b) => b.count - a.count),
  };
}
