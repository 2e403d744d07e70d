/** What a receiver or an outlet has to spare, and whether that is enough to rely on. */
import { settingsOf } from "../design/settings.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { type CarrierId, type TraceOutput, type TraceStep, traceCarrier } from "../evaluate/trace.ts";
import { BLOCKING_SPREAD_DB } from "../parts/receiverFrontEnd.ts";
import type { Carrier, Service } from "../signal/carrier.ts";
import type { Blamed } from "./blame/culprit.ts";
import { leakBehind } from "./blame/edgeLeak.ts";
import { unfedBehind } from "./blame/edgeUnfed.ts";
import type { Headroom } from "./blocking.ts";
import { echoNotchDb } from "./echoNotch.ts";
import type { Edge, Tightest } from "./finding.ts";
import { receiverResults } from "./inputReception.ts";
import { isBeyond, limitsFor, profileOf } from "./limits.ts";
import type { Plane } from "./missing.ts";
import { againstOf, rainMinutes } from "./rainOutage.ts";
import type { ReceptionResult } from "./reception.ts";
import { deviationOf, rippleAlong } from "./ripple.ts";
import { spreadAlong } from "./spread.ts";
import { sourcesOf, wantedCarriers } from "./wanted.ts";
import { askWhole, type Kept, keptWhile } from "./watched.ts";

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
  /** What makes it one: it lets other signals in, or has no supply. */
  readonly culprit?: Blamed;
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

/** `notchDb`: what its two ways may take from it; absent where it comes by one, or has the least anyway. */
type Candidate = { readonly judged: Judged; readonly db: number; readonly notchDb?: number };

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
  // A carrier with more to spare than another may still be the first to go, where its copies cancel.
  const notched: Partial<Record<Tightest["by"], Candidate>> = {};
  const offer = (by: Tightest["by"], judged: Judged, db: number) => {
    const former = least[by];
    if (!former || db < former.db) least[by] = { judged, db };
    const notchDb = CANCELS.has(by) ? echoNotchDb(evaluation, judged) : 0;
    if (notchDb === 0) return;
    const worst = notched[by];
    if (!worst || db - notchDb < worst.db - (worst.notchDb ?? 0)) notched[by] = { judged, db, notchDb };
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
  const rated = [least, notched].flatMap((candidates) =>
    JUDGED_BY.flatMap((by) => {
      const candidate = candidates[by];
      return candidate ? [rate(evaluation, service, by, candidate)] : [];
    }),
  );
  return rated.sort(byUrgency)[0];
}

/** What an echo takes from: level and C/N alike, for noise comes by other ways. */
const CANCELS: ReadonlySet<Tightest["by"]> = new Set(["C/N", "level low"]);

/** Of equals the first is told. */
const JUDGED_BY: readonly Tightest["by"][] = ["C/N", "level low", "level high", "neighbour", "all signals"];

/** What is on an edge is told before what merely has less to spare. */
export function byUrgency(a: Margin, b: Margin): number {
  return Number(!a.edge) - Number(!b.edge) || a.marginDb - b.marginDb;
}

function rate(evaluation: Evaluation, service: Service, by: Tightest["by"], candidate: Candidate): Margin {
  const { judged, db } = candidate;
  const tightest: Tightest = { service, carrier: judged.carrier.name, by };
  const edge = edgeOf(evaluation, by, candidate);
  const culprit = edge && judged.end && culpritBehind(evaluation, by, { ...judged, end: judged.end });
  return { service, marginDb: db, tightest, ...(edge ? { edge } : {}), ...(culprit ? { culprit } : {}) };
}

/** What is known to be wrong on the way of a carrier that has too little to spare. */
function culpritBehind(
  evaluation: Evaluation,
  by: Tightest["by"],
  judged: Judged & Required<Pick<Judged, "end">>,
): Blamed | undefined {
  const isLacking = by === "C/N" || by === "level low";
  const unfed = isLacking ? unfedBehind(evaluation, judged.end, judged) : undefined;
  return unfed ?? (by === "C/N" ? leakBehind(evaluation, judged.end, judged) : undefined);
}

function edgeOf(
  evaluation: Evaluation,
  by: Tightest["by"],
  { judged, db, notchDb = 0 }: Candidate,
): Edge | undefined {
  if (isBeyond(-db)) return { kind: "outside limits" };
  const { keepDb } = settingsOf(evaluation.design);
  if (isBeyond(keepDb - db)) return { kind: "kept distance", neededDb: keepDb };
  if (isBeyond(notchDb - db)) return { kind: "two ways", neededDb: notchDb };
  // A few decibels over the highest level take no picture: what a tuner cannot take is judged by all signals together.
  if (by === "level high") return undefined;
  const neededDb = strayOf(evaluation, by, { judged, db });
  if (isBeyond(neededDb - db)) return { kind: "spread", neededDb };
  const { plane, carrier } = judged;
  const dish = by === "C/N" && plane ? evaluation.record(plane.source) : undefined;
  if (!dish || !plane) return undefined;
  const { polarisation } = plane;
  const { end, userBand } = judged;
  const steps = end ? traceCarrier(evaluation, end, judged, userBand) : [];
  const against = againstOf(evaluation, steps, judged);
  const minutesAYear = rainMinutes(evaluation, dish, {
    airMHz: carrier.airMHz,
    polarisation,
    marginDb: db,
    ...(against ? { against } : {}),
    ...(steps[0] ? { port: steps[0].to } : {}),
  });
  return minutesAYear !== undefined && minutesAYear > MOST_RAIN_MINUTES
    ? { kind: "rain", minutesAYear }
    : undefined;
}

/** Mismatch that is counted at most [dB]; who has more to spare than this and the parts' own spread is not asked. */
const MOST_MISMATCH_DB = 12;

/**
 * How far a figure may stand from what is calculated, one standard deviation [dB]: by the spread of the parts, and by the ripple of
 * their mismatch, whose phase nobody knows. Level: all of the way. C/N: what lies before the first stage with noise of its own.
 */
function strayOf(evaluation: Evaluation, by: Tightest["by"], { judged, db }: Candidate): number {
  const { end, userBand } = judged;
  // Both come by much the same way; what allows one to stand above the other differs from tuner to tuner.
  if (by === "neighbour") return BLOCKING_SPREAD_DB;
  if (!end) return 0;
  const steps = traceCarrier(evaluation, end, judged, userBand);
  const spread = spreadAlong(evaluation, steps, judged);
  const levelDb = by === "all signals" ? Math.hypot(spread.levelDb, BLOCKING_SPREAD_DB) : spread.levelDb;
  const partsDb = by === "C/N" ? spread.cnDb : levelDb;
  if (db > Math.hypot(partsDb, MOST_MISMATCH_DB)) return partsDb;
  const first = by === "C/N" ? steps.findIndex((step) => isActive(evaluation, step)) : -1;
  const hops = first < 0 ? steps : steps.slice(0, first);
  const mismatchDb = askWhole(evaluation, (whole) => {
    const ripple = rippleAlong(whole, hops).at(-1);
    return ripple ? Math.min(MOST_MISMATCH_DB, deviationOf(ripple)) : 0;
  });
  return Math.hypot(partsDb, mismatchDb);
}

/** Whether a step has noise of its own. */
function isActive(evaluation: Evaluation, { part, from, to, userBand }: TraceStep): boolean {
  const { paths = [], stacks = [] } = evaluation.record(part)?.treatment ?? {};
  if (from === null) return false;
  const isStacked = userBand !== undefined && stacks.some((stack) => stack.to === to);
  return isStacked || paths.some((path) => path.from === from && path.noiseFigureDb !== undefined);
}
