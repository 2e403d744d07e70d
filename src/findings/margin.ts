/** What a receiver or an outlet has to spare, and whether that is enough to rely on. */
import { settingsOf } from "../design/settings.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { CarrierId, TraceOutput } from "../evaluate/trace.ts";
import { BLOCKING_SPREAD_DB } from "../parts/receiverFrontEnd.ts";
import type { Carrier, Service } from "../signal/carrier.ts";
import type { Headroom } from "./blocking.ts";
import type { Edge, Tightest } from "./finding.ts";
import { receiverResults } from "./inputReception.ts";
import { isBeyond, limitsFor, profileOf } from "./limits.ts";
import type { Plane } from "./missing.ts";
import { rainMinutes } from "./rainOutage.ts";
import type { ReceptionResult } from "./reception.ts";
import { type Spread, spreadOf } from "./spread.ts";
import { sourcesOf, wantedCarriers } from "./wanted.ts";
import { type Kept, keptWhile } from "./watched.ts";

/** Rain that takes the picture for longer than this in a year is no reserve any more [min]: 0.1 % of a year. */
const MOST_RAIN_MINUTES = 526;

/** What the carrier with the least to spare has, and what it would need to be relied on. */
export type Margin = {
  readonly service: Service;
  /** The least, unless another is on an edge [dB]. */
  readonly marginDb: number;
  readonly tightest: Tightest;
  /** Why that is a knife's edge; absent where it is enough. */
  readonly edge?: Edge;
};

/** A carrier where it is judged: at a receiver or on a socket. */
export type Judged = CarrierId & {
  /** User band that carries it, on a single-cable feed. */
  readonly userBand?: number;
  readonly levelDbuv: number;
  readonly cnDb: number;
  /** C/N that its modulation needs [dB]. */
  readonly requiredDb: number;
  /** How far a receiver's tuner is from being blocked; absent on a socket. */
  readonly headroom?: Headroom;
  /** The output that it comes out of there; absent at a receiver that nothing leads to. */
  readonly end?: TraceOutput;
  readonly carrier: Carrier;
  readonly plane?: Pick<Plane, "source" | "polarisation">;
};

type Candidate = { readonly judged: Judged; readonly db: number };

const kept = new WeakMap<PartRecord, Kept<ReadonlyMap<Service, Margin>>>();

/** Margins of a receiver by service, of those of which no wanted carrier is missing. */
export function marginsOf(
  evaluation: Evaluation,
  record: PartRecord,
  reception: ReceptionResult,
): ReadonlyMap<Service, Margin> {
  const settings = settingsOf(evaluation.design);
  return keptWhile(kept, record, { evaluation, also: [reception, settings] }, (watched) => {
    const margins = new Map<Service, Margin>();
    for (const { service, wanted, got } of reception.services) {
      const margin = got === wanted ? marginOf(watched, record, sourcesOf(evaluation), service) : undefined;
      if (margin) margins.set(service, margin);
    }
    return margins;
  });
}

function marginOf(
  evaluation: Evaluation,
  record: PartRecord,
  sources: readonly PartRecord[],
  service: Service,
): Margin | undefined {
  const results = receiverResults(record, service);
  const judged: Judged[] = [];
  for (const { key, carrier, plane } of wantedCarriers(record, sources, service)) {
    const result = results.get(key);
    if (!result?.got) return undefined;
    const end = record.joined[result.port];
    judged.push({
      ...result,
      carrier,
      ...(end ? { end: { part: end[0], port: end[1] } } : {}),
      ...(plane ? { plane } : {}),
    });
  }
  return leastOf(evaluation, service, judged);
}

/** The margin of the carrier with the least to spare; undefined of none. */
export function leastOf(
  evaluation: Evaluation,
  service: Service,
  carriers: readonly Judged[],
): Margin | undefined {
  const profile = profileOf(evaluation.design);
  const least: Partial<Record<Tightest["by"], Candidate>> = {};
  const offer = (by: Tightest["by"], judged: Judged, db: number) => {
    const former = least[by];
    if (!former || db < former.db) least[by] = { judged, db };
  };
  for (const judged of carriers) {
    const { levelDbuv } = judged;
    offer("C/N", judged, judged.cnDb - judged.requiredDb);
    const { headroom } = judged;
    if (headroom) offer("all signals", judged, headroom.totalDb);
    if (headroom?.besideDb !== undefined) offer("neighbour", judged, headroom.besideDb);
    const limits = limitsFor(profile, service, judged.carrier.mode);
    if (!limits) continue;
    offer("level low", judged, levelDbuv - limits.minDbuv);
    offer("level high", judged, limits.maxDbuv - levelDbuv);
  }
  const rated = JUDGED_BY.flatMap((by) => {
    const candidate = least[by];
    return candidate ? [rate(evaluation, service, by, candidate)] : [];
  });
  return rated.sort(byUrgency)[0];
}

/** Of equals the first is told. */
const JUDGED_BY: readonly Tightest["by"][] = ["C/N", "level low", "level high", "neighbour", "all signals"];

/** What is on an edge is told before what merely has less to spare. */
export function byUrgency(a: Margin, b: Margin): number {
  return Number(!a.edge) - Number(!b.edge) || a.marginDb - b.marginDb;
}

function rate(
  evaluation: Evaluation,
  service: Service,
  by: Tightest["by"],
  { judged, db }: Candidate,
): Margin {
  const tightest: Tightest = { service, carrier: judged.carrier.name, by };
  const edge = edgeOf(evaluation, by, { judged, db });
  return { service, marginDb: db, tightest, ...(edge ? { edge } : {}) };
}

function spreadBy(by: Tightest["by"], { cnDb, levelDb }: Spread): number {
  if (by === "C/N") return cnDb;
  if (by === "neighbour") return BLOCKING_SPREAD_DB;
  return by === "all signals" ? Math.hypot(levelDb, BLOCKING_SPREAD_DB) : levelDb;
}

function edgeOf(evaluation: Evaluation, by: Tightest["by"], { judged, db }: Candidate): Edge | undefined {
  if (isBeyond(-db)) return { kind: "outside limits" };
  const { keepDb } = settingsOf(evaluation.design);
  if (isBeyond(keepDb - db)) return { kind: "kept distance", neededDb: keepDb };
  const spread = spreadOf(evaluation, judged.end, judged);
  const neededDb = spreadBy(by, spread);
  if (isBeyond(neededDb - db)) return { kind: "spread", neededDb };
  const { plane, carrier } = judged;
  const dish = by === "C/N" && plane ? evaluation.record(plane.source) : undefined;
  if (!dish || !plane) return undefined;
  const { polarisation } = plane;
  const minutesAYear = rainMinutes(evaluation, dish, { airMHz: carrier.airMHz, polarisation, marginDb: db });
  return minutesAYear !== undefined && minutesAYear > MOST_RAIN_MINUTES
    ? { kind: "rain", minutesAYear }
    : undefined;
}
