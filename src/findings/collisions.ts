/** Where signals share frequencies: who meets whom, how badly, and what it comes to in words. */
import type { Meeting } from "../evaluate/evaluation.ts";
import { type CollisionGrade, collisionGrade } from "../rf/protection.ts";
import { type Clause, carriers } from "../sentences/phrases.ts";
import type { Band } from "../signal/band.ts";
import { type Service, WANTED_SERVICES } from "../signal/carrier.ts";
import { plural } from "../words/plural.ts";

/**
 * Meetings of different signals, put together by who meets whom, whichever of the two suffers; quadrants of one
 * dish count as one.
 */
export function pairs(meetings: readonly Meeting[]): Meeting[][] {
  const groups = new Map<string, Meeting[]>();
  for (const m of meetings) {
    if (m.echo || !isWanted(m.victim.origin.service)) continue;
    const ends = [m.victim, m.other].map((b) => `${b.origin.service}@${b.origin.part}`).sort();
    const key = `${m.port}|${ends.join("|")}`;
    const group = groups.get(key);
    if (group) group.push(m);
    else groups.set(key, [m]);
  }
  return [...groups.values()];
}

/** A phone mast that TV disturbs is nobody's loss here. */
function isWanted(service: Service): boolean {
  return WANTED_SERVICES.some((s) => s === service);
}

export type Hit = { readonly grade: CollisionGrade; readonly ciDb: number; readonly requiredDb: number };

function hitsOf(m: Meeting): Hit[] {
  return m.carriers.map((i, n) => {
    const requiredDb = m.victim.grid.required[i] ?? 0;
    const ciDb = m.ciDb[n] ?? Number.POSITIVE_INFINITY;
    return { grade: collisionGrade({ ciDb, requiredDb }), ciDb, requiredDb };
  });
}

export function worstHit(pair: readonly Meeting[]): Hit | undefined {
  return pair.flatMap(hitsOf).reduce<Hit | undefined>((worst, hit) => {
    return worst && worst.ciDb - worst.requiredDb <= hit.ciDb - hit.requiredDb ? worst : hit;
  }, undefined);
}

/** The carrier with the least C/I above what it needs. */
export function worstCarrier(
  pair: readonly Meeting[],
): { readonly band: Band; readonly i: number } | undefined {
  let worst: { band: Band; i: number; spareDb: number } | undefined;
  for (const m of pair)
    hitsOf(m).forEach(({ ciDb, requiredDb }, n) => {
      if (!worst || ciDb - requiredDb < worst.spareDb)
        worst = { band: m.victim, i: m.carriers[n] ?? 0, spareDb: ciDb - requiredDb };
    });
  return worst;
}

/** Names a carrier wherever it is. */
export function idOf(band: Band, i: number): string {
  return `${band.origin.key}#${band.grid.index[i]}`;
}

/** "5 TV multiplexes are lost", "1 TV multiplex loses part of its margin": each carrier by the worst that it meets. */
export function tally(pair: readonly Meeting[]): string[] {
  const worst = new Map<string, { service: Service; grade: CollisionGrade }>();
  for (const m of pair) {
    const { service, key } = m.victim.origin;
    hitsOf(m).forEach(({ grade }, n) => {
      const id = `${key}#${m.victim.grid.index[m.carriers[n] ?? 0]}`;
      const known = worst.get(id);
      if (!known || ORDER.indexOf(grade) < ORDER.indexOf(known.grade)) worst.set(id, { service, grade });
    });
  }
  return ORDER.flatMap((grade) =>
    WANTED_SERVICES.flatMap((service) => {
      const n = [...worst.values()].filter((w) => w.grade === grade && w.service === service).length;
      return n > 0 && grade !== "negligible"
        ? [
            plural(n, {
              one: WORDS[grade].one(carriers(n, service)),
              other: WORDS[grade].other(carriers(n, service)),
            }),
          ]
        : [];
    }),
  );
}

const ORDER: readonly CollisionGrade[] = ["dead", "likely dead", "costs margin", "slight", "negligible"];

const WORDS: Readonly<Record<CollisionGrade, Clause>> = {
  dead: { one: (who) => `${who} is lost`, other: (who) => `${who} are lost` },
  "likely dead": { one: (who) => `${who} is as good as lost`, other: (who) => `${who} are as good as lost` },
  "costs margin": {
    one: (who) => `${who} loses part of its margin`,
    other: (who) => `${who} lose part of their margin`,
  },
  slight: { one: (who) => `${who} is slightly disturbed`, other: (who) => `${who} are slightly disturbed` },
  negligible: { one: (who) => `${who} is hardly touched`, other: (who) => `${who} are hardly touched` },
};
