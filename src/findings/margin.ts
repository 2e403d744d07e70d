/** What a receiver has to spare, and whether that is enough to rely on. */
import { settingsOf } from "../design/settings.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Service } from "../signal/carrier.ts";
import type { GotCarrier } from "./carrierResult.ts";
import type { Edge, Tightest } from "./finding.ts";
import { receiverResults } from "./inputReception.ts";
import { limitsFor, profileOf } from "./limits.ts";
import { rainMinutes } from "./rainOutage.ts";
import { spreadOf } from "./spread.ts";
import { type WantedCarrier, wantedCarriers } from "./wanted.ts";

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

type Candidate = { readonly carrier: GotCarrier; readonly wanted: WantedCarrier; readonly db: number };

/** Margin of one service at a receiver; undefined where a wanted carrier is missing, or nothing is wanted. */
export function marginOf(
  evaluation: Evaluation,
  record: PartRecord,
  sources: readonly PartRecord[],
  service: Service,
): Margin | undefined {
  const profile = profileOf(evaluation.design);
  const results = receiverResults(record, service);
  const least: Partial<Record<Tightest["by"], Candidate>> = {};
  const offer = (by: Tightest["by"], candidate: Candidate) => {
    const former = least[by];
    if (!former || candidate.db < former.db) least[by] = candidate;
  };
  for (const wanted of wantedCarriers(record, sources, service)) {
    const carrier = results.get(wanted.key);
    if (!carrier?.got) return undefined;
    offer("C/N", { carrier, wanted, db: carrier.cnDb - carrier.requiredDb });
    const limits = limitsFor(profile, service, wanted.carrier.mode);
    if (!limits) continue;
    offer("level low", { carrier, wanted, db: carrier.levelDbuv - limits.minDbuv });
    offer("level high", { carrier, wanted, db: limits.maxDbuv - carrier.levelDbuv });
  }
  const rated = (["C/N", "level low", "level high"] as const).flatMap((by) => {
    const candidate = least[by];
    return candidate ? [rate(evaluation, record, service, by, candidate)] : [];
  });
  return rated.sort(byUrgency)[0];
}

/** What is on an edge is told before what merely has less to spare. */
export function byUrgency(a: Margin, b: Margin): number {
  return Number(!a.edge) - Number(!b.edge) || a.marginDb - b.marginDb;
}

function rate(
  evaluation: Evaluation,
  record: PartRecord,
  service: Service,
  by: Tightest["by"],
  { carrier, wanted, db }: Candidate,
): Margin {
  const tightest: Tightest = { service, carrier: wanted.carrier.name, by };
  const edge = edgeOf(evaluation, record, by, { carrier, wanted, db });
  return { service, marginDb: db, tightest, ...(edge ? { edge } : {}) };
}

function edgeOf(
  evaluation: Evaluation,
  record: PartRecord,
  by: Tightest["by"],
  { carrier, wanted, db }: Candidate,
): Edge | undefined {
  if (db < 0) return { kind: "outside limits" };
  const { keepDb } = settingsOf(evaluation.design);
  if (db < keepDb) return { kind: "kept distance", neededDb: keepDb };
  const spread = spreadOf(evaluation, record, carrier);
  const neededDb = by === "C/N" ? spread.cnDb : spread.levelDb;
  if (db < neededDb) return { kind: "spread", neededDb };
  const dish = by === "C/N" && wanted.plane ? evaluation.record(wanted.plane.source) : undefined;
  if (!dish || !wanted.plane) return undefined;
  const { airMHz } = wanted.carrier;
  const { polarisation } = wanted.plane;
  const minutesAYear = rainMinutes(evaluation, dish, { airMHz, polarisation, marginDb: db });
  return minutesAYear !== undefined && minutesAYear > MOST_RAIN_MINUTES
    ? { kind: "rain", minutesAYear }
    : undefined;
}
