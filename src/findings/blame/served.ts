/** Which places an output serves: who also serves places that are in order is less likely to be the culprit. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { remembered } from "../../signal/remember.ts";
import { extreme } from "../extreme.ts";
import { isBeyond, profileOf, qualityOf } from "../limits.ts";
import { type Heard, heardAt, placesOf } from "../places.ts";
import { askWhole, wholeOf } from "../watched.ts";
import { stagesTo } from "./stages.ts";

/** A limit that places of a service may miss. */
export type MissedLimit = "too little" | "too much" | "C/N";

/** The places behind one output. */
export type Served = {
  /** How many miss the limit, and by how much at most [dB]. */
  readonly failing: number;
  readonly missingDb: number;
  /** How many are in order, and by how much all of these could change in the direction wanted [dB]. */
  readonly inOrder: number;
  readonly spareDb: number;
};

/** What an output ("part.port") on the way to places of a service serves. */
export type ServedByOutput = (output: string) => Served;

/** Asked of the whole design, output by output: a kept answer rests on what these serve, not on all parts. */
export function placesServed(evaluation: Evaluation, service: Service, limit: MissedLimit): ServedByOutput {
  return (output) => {
    const of = (whole: Evaluation) => allServed(whole, service, limit).get(output) ?? NOBODY;
    askWhole(evaluation, (whole) => Object.values(of(whole)).join());
    return of(wholeOf(evaluation));
  };
}

const known = new WeakMap<Evaluation, Map<string, ReadonlyMap<string, Served>>>();

function allServed(whole: Evaluation, service: Service, limit: MissedLimit): ReadonlyMap<string, Served> {
  const ofAll = remembered(known, whole, () => new Map<string, ReadonlyMap<string, Served>>());
  return remembered(ofAll, `${service} ${limit}`, () => served(whole, service, limit));
}

function served(evaluation: Evaluation, service: Service, limit: MissedLimit): ReadonlyMap<string, Served> {
  const outputs = new Map<string, Served>();
  const profile = profileOf(evaluation.design);
  if (!WANTED_SERVICES.some((s) => s === service)) return outputs;
  for (const record of evaluation.records) {
    const kindAt = (port: string) => evaluation.record(record.joined[port]?.[0] ?? "")?.kind;
    for (const place of placesOf({ record, kindAt })) {
      if (!place.services.includes(service)) continue;
      const heard = heardAt(place, service, profile);
      const worst = extreme(heard, (c) => missingDb(c, limit));
      if (!worst) continue;
      const missing = missingDb(worst, limit);
      const isFailing = isBeyond(missing);
      if (!isFailing && heard.some((c) => isOut(c, limit))) continue;
      const spare = Math.min(...heard.map((c) => spareDb(c, limit)));
      for (const { step } of stagesTo(evaluation, { part: record.part.id, port: place.port }, worst)) {
        const key = `${step.part}.${step.to}`;
        const before = outputs.get(key) ?? NOBODY;
        outputs.set(key, {
          failing: before.failing + Number(isFailing),
          missingDb: isFailing ? Math.max(before.missingDb, missing) : before.missingDb,
          inOrder: before.inOrder + Number(!isFailing),
          spareDb: isFailing ? before.spareDb : Math.min(before.spareDb, spare),
        });
      }
    }
  }
  return outputs;
}

const NOBODY: Served = { failing: 0, missingDb: 0, inOrder: 0, spareDb: Number.POSITIVE_INFINITY };

function missingDb(heard: Heard, limit: MissedLimit): number {
  const { levelDbuv, limits } = heard;
  if (limit === "C/N") {
    const { limitDb, valueDb } = qualityOf(heard, limits);
    return limitDb - valueDb;
  }
  return limit === "too little" ? limits.minDbuv - levelDbuv : levelDbuv - limits.maxDbuv;
}

/** Whether it misses another limit that has to do with this one. */
function isOut(heard: Heard, limit: MissedLimit): boolean {
  return (
    limit !== "C/N" && (isBeyond(missingDb(heard, "too little")) || isBeyond(missingDb(heard, "too much")))
  );
}

/** How much more, or less, of it would still do. */
function spareDb({ levelDbuv, limits }: Heard, limit: MissedLimit): number {
  if (limit === "C/N") return Number.POSITIVE_INFINITY;
  return limit === "too little" ? limits.maxDbuv - levelDbuv : levelDbuv - limits.minDbuv;
}
