/** Where signals share frequencies: who meets whom, and how badly. */
import type { Meeting } from "../evaluate/evaluation.ts";
import { type CollisionGrade, collisionGrade } from "../rf/protection.ts";
import type { Band } from "../signal/band.ts";
import { type Service, WANTED_SERVICES } from "../signal/carrier.ts";
import { isFormer } from "./former.ts";

/**
 * Meetings of different signals, put together by who meets whom, whichever of the two suffers; quadrants of one
 * dish count as one.
 */
export function meetingsByPair(meetings: readonly Meeting[]): Meeting[][] {
  const groups = new Map<string, Meeting[]>();
  for (const m of meetings) {
    if (m.echo || !isWanted(m.victim.origin.service)) continue;
    const key = pairKey(m);
    const group = groups.get(key);
    if (group) group.push(m);
    else groups.set(key, [m]);
  }
  return [...groups.values()];
}

/** Who meets whom, and where: the same whichever of the two is looked at, and whatever came first. */
export function pairKey(m: Meeting): string {
  // The channel of a modulator and its noise are two troubles, mended in two ways.
  const ends = [m.victim, m.other]
    .map(
      (b) => `${b.origin.service}@${b.origin.part}${b.isFloor && b.origin.service === "tv" ? "/noise" : ""}`,
    )
    .sort();
  return `${m.port}|${ends.join("|")}`;
}

/** Whether anybody may want to receive it: a phone mast that TV disturbs is nobody's loss here. */
export function isWanted(service: Service): boolean {
  return WANTED_SERVICES.some((s) => s === service);
}

export type Hit = {
  readonly band: Band;
  readonly i: number;
  readonly other: Band;
  readonly grade: CollisionGrade;
  readonly ciDb: number;
  readonly requiredDb: number;
};

function hitsOf(m: Meeting): Hit[] {
  return m.carriers.flatMap((i, n) => {
    if (isFormer(m.victim, i)) return [];
    const requiredDb = m.victim.grid.required[i] ?? 0;
    const ciDb = m.ciDb[n] ?? Number.POSITIVE_INFINITY;
    const grade = collisionGrade({ ciDb, requiredDb });
    return [{ band: m.victim, i, other: m.other, grade, ciDb, requiredDb }];
  });
}

/** The carrier with the least C/I above what it needs. */
export function worstHit(pair: readonly Meeting[]): Hit | undefined {
  return pair.flatMap(hitsOf).reduce<Hit | undefined>((worst, hit) => {
    return worst && worst.ciDb - worst.requiredDb <= hit.ciDb - hit.requiredDb ? worst : hit;
  }, undefined);
}

/** Names a carrier wherever it is. */
export function idOf(band: Band, i: number): string {
  return `${band.origin.key}#${band.grid.index[i]}`;
}

/** How many carriers of a service suffer so. */
export type Toll = { readonly grade: CollisionGrade; readonly service: Service; readonly count: number };

/** Carriers that suffer, worst first, each counted by the worst that it meets. */
export function lossCounts(pair: readonly Meeting[]): readonly Toll[] {
  const worst = new Map<string, { service: Service; grade: CollisionGrade }>();
  for (const m of pair) {
    const { service } = m.victim.origin;
    for (const { band, i, grade } of hitsOf(m)) {
      const id = idOf(band, i);
      const known = worst.get(id);
      if (!known || ORDER.indexOf(grade) < ORDER.indexOf(known.grade)) worst.set(id, { service, grade });
    }
  }
  return ORDER.flatMap((grade) =>
    WANTED_SERVICES.flatMap((service) => {
      const count = [...worst.values()].filter((w) => w.grade === grade && w.service === service).length;
      return count > 0 && grade !== "negligible" ? [{ grade, service, count }] : [];
    }),
  );
}

const ORDER: readonly CollisionGrade[] = ["dead", "likely dead", "costs margin", "slight", "negligible"];
