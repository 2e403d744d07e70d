/** What a receiver can really get: every carrier of its sources, and why the missing ones are missing. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { type Service, type Television, televisionOf } from "../signal/carrier.ts";
import { ABSENT, type CarrierResult, type GotCarrier } from "./carrierResult.ts";
import type { SoundFacts } from "./finding.ts";
import { receiverResults } from "./inputReception.ts";
import type { Missing, Plane } from "./missing.ts";
import { soundOf } from "./sound.ts";
import { type TunerReception, tunersOf } from "./tuners.ts";
import { planeKey, type WantedCarrier, wantedCarriers } from "./wanted.ts";

/** Carriers that are missing for one reason, as it looks from the receiver. */
export type MissingGroup = Missing & {
  /** Tells it from the receiver's other groups. */
  readonly key: string;
  /** One of them, for following it to where it is lost. */
  readonly sample: WantedCarrier;
};

export type ServiceReception = {
  readonly service: Service;
  readonly wanted: number;
  readonly got: number;
  readonly television?: Television;
  /** Of the carriers got [dBµV, dBµV, dB]; absent when none. */
  readonly levelMin?: number;
  readonly levelMax?: number;
  readonly cnMin?: number;
  /** Of FM: how the poorest station got sounds. */
  readonly sound?: SoundFacts;
  readonly missing: readonly MissingGroup[];
};

export type ReceptionResult = {
  readonly services: readonly ServiceReception[];
  readonly tuners: readonly TunerReception[];
};

type Received = { readonly sources: readonly PartRecord[]; readonly result: ReceptionResult };

const receivedBy = new WeakMap<PartRecord, Received>();

/** What the receiver of a record gets; `sources` are the records of the design's aerials and dishes. */
export function receive(record: PartRecord, sources: readonly PartRecord[]): ReceptionResult | undefined {
  if (!record.kind.reception) return undefined;
  const former = receivedBy.get(record);
  if (former && sendTheSame(former.sources, sources)) return former.result;
  const result = received(record, sources);
  receivedBy.set(record, { sources, result });
  return result;
}

/** Whether two lists of sources send the same, whatever became of their labels. */
export function sendTheSame(a: readonly PartRecord[], b: readonly PartRecord[]): boolean {
  return a.length === b.length && a.every((record, i) => record.outputs === b[i]?.outputs);
}

function received(record: PartRecord, sources: readonly PartRecord[]): ReceptionResult {
  const wants = record.kind.reception?.(record.options).wants ?? [];
  const services = wants.map((service) =>
    summed(service, wantedCarriers(record, sources, service), receiverResults(record, service)),
  );
  return { services, tuners: tunersOf(record, sources) };
}

/** Every carrier of a service that a receiver gets, at the input where it gets it best. */
export function carriersGot(record: PartRecord, service: Service): readonly GotCarrier[] {
  return [...receiverResults(record, service).values()].filter((result) => result.got);
}

function summed(
  service: Service,
  wanted: readonly WantedCarrier[],
  results: ReadonlyMap<string, CarrierResult>,
): ServiceReception {
  let got = 0;
  let levelMin = Number.POSITIVE_INFINITY;
  let levelMax = Number.NEGATIVE_INFINITY;
  let cnMin = Number.POSITIVE_INFINITY;
  for (const { key } of wanted) {
    const result = results.get(key);
    if (!result?.got) continue;
    got++;
    levelMin = Math.min(levelMin, result.levelDbuv);
    levelMax = Math.max(levelMax, result.levelDbuv);
    cnMin = Math.min(cnMin, result.cnDb);
  }
  return {
    service,
    wanted: wanted.length,
    got,
    ...televisionOf(
      service,
      wanted.map(({ carrier }) => carrier.mode),
    ),
    ...(got > 0 ? { levelMin, levelMax, cnMin } : {}),
    ...soundField(service, wanted, results),
    missing: missingOf(wanted, results),
  };
}

function soundField(
  service: Service,
  wanted: readonly WantedCarrier[],
  results: ReadonlyMap<string, CarrierResult>,
): Pick<ServiceReception, "sound"> {
  const sound = service === "fm" ? soundOf(wanted, results) : undefined;
  return sound ? { sound } : {};
}

/**
 * Wanted carriers that are not got, by reason, most frequent first. What does not arrive is told apart by plane:
 * each may have been lost elsewhere.
 */
export function missingOf(
  wanted: readonly WantedCarrier[],
  results: ReadonlyMap<string, CarrierResult>,
): readonly MissingGroup[] {
  const inPlane = new Map<Plane, number>();
  const groups = new Map<string, { first: MissingGroup; count: number; byPlane: Map<Plane, number> }>();
  for (const each of wanted) {
    const { key, plane } = each;
    if (plane) inPlane.set(plane, (inPlane.get(plane) ?? 0) + 1);
    const result = results.get(key) ?? ABSENT;
    if (result.got) continue;
    const { got: _, ...lost } = result;
    const apart = lost.why === "absent" && plane ? planeKey(plane) : "";
    const same = `${JSON.stringify(lost.reason)}${apart}`;
    let group = groups.get(same);
    if (!group) {
      group = {
        first: { ...lost, key: same, count: 0, planes: [], sample: each },
        count: 0,
        byPlane: new Map(),
      };
      groups.set(same, group);
    }
    group.count++;
    if (plane) group.byPlane.set(plane, (group.byPlane.get(plane) ?? 0) + 1);
  }
  return [...groups.values()]
    .map(({ first, count, byPlane }) => ({
      ...first,
      count,
      planes: [...byPlane].filter(([plane, n]) => n === inPlane.get(plane)).map(([plane]) => plane),
    }))
    .sort((a, b) => b.count - a.count);
}
