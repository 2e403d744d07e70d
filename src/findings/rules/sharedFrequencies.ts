import type { Meeting } from "../../evaluate/evaluation.ts";
import { type CollisionGrade, collisionGrade } from "../../rf/protection.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import type { Severity } from "../finding.ts";
import { type Rule, wireAt } from "../rule.ts";
import { bandName, carriers, list, partName } from "../words.ts";

/** Two signals on the same frequencies of one wire. */
export const sharedFrequencies: Rule = {
  id: "shared-frequencies",
  title: "Two signals share frequencies on one wire",
  explain:
    "A wire carries each frequency once. Where two signals overlap, each is noise to the other: " +
    "a carrier survives only if it is stronger than the other by the C/N that its modulation needs, with something to spare.",
  source: "Noise-like interference adds to noise (C/(N+I)); grades by the spare C/N that it costs",
  check: ({ record }) =>
    pairs(record.meetings.filter((m) => !m.echo && isWanted(m.victim.origin.service))).flatMap((pair) => {
      const worst = worstHit(pair);
      if (!worst || worst.grade === "negligible") return [];
      const from = Math.round(Math.min(...pair.map((m) => m.fromMHz)));
      const to = Math.round(Math.max(...pair.map((m) => m.toMHz)));
      const first = pair[0];
      if (!first) return [];
      return [
        {
          severity: SEVERITY[worst.grade],
          parts: [record.part.id, first.victim.origin.part, first.other.origin.part],
          wires: first.port.startsWith("#") ? [] : wireAt(record, first.port),
          message:
            `${bandName(first.victim)} and ${bandName(first.other)} share ${from} to ${to} MHz behind ` +
            `${partName(record.part.id)}: ${list(tally(pair))}.`,
          value: worst.ciDb,
          limit: worst.requiredDb,
          unit: "dB C/I",
          source: sharedFrequencies.source,
          cure: "Give one of them a cable of its own, or convert it to frequencies that are free (a channel-stacking converter).",
        },
      ];
    }),
};

/** A phone mast that TV disturbs is nobody's loss here. */
function isWanted(service: Service): boolean {
  return WANTED_SERVICES.some((s) => s === service);
}

const SEVERITY: Readonly<Record<CollisionGrade, Severity>> = {
  dead: "error",
  "likely dead": "error",
  "costs margin": "warning",
  slight: "note",
  negligible: "note",
};

/** Meetings put together by who meets whom, whichever of the two suffers; quadrants of one dish count as one. */
function pairs(meetings: readonly Meeting[]): Meeting[][] {
  const groups = new Map<string, Meeting[]>();
  for (const m of meetings) {
    const ends = [m.victim, m.other].map((b) => `${b.origin.service}@${b.origin.part}`).sort();
    const key = `${m.port}|${ends.join("|")}`;
    const group = groups.get(key);
    if (group) group.push(m);
    else groups.set(key, [m]);
  }
  return [...groups.values()];
}

type Hit = { readonly grade: CollisionGrade; readonly ciDb: number; readonly requiredDb: number };

function hitsOf(m: Meeting): Hit[] {
  return m.carriers.map((i, n) => {
    const requiredDb = m.victim.grid.required[i] ?? 0;
    const ciDb = m.ciDb[n] ?? Number.POSITIVE_INFINITY;
    return { grade: collisionGrade({ ciDb, requiredDb }), ciDb, requiredDb };
  });
}

function worstHit(pair: readonly Meeting[]): Hit | undefined {
  return pair.flatMap(hitsOf).reduce<Hit | undefined>((worst, hit) => {
    return worst && worst.ciDb - worst.requiredDb <= hit.ciDb - hit.requiredDb ? worst : hit;
  }, undefined);
}

/** "5 TV multiplexes are lost", "1 TV multiplex loses part of its margin": each carrier by the worst that it meets. */
function tally(pair: readonly Meeting[]): string[] {
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
        ? [`${carriers(n, service)} ${VERB[grade][n === 1 ? 0 : 1]}`]
        : [];
    }),
  );
}

const ORDER: readonly CollisionGrade[] = ["dead", "likely dead", "costs margin", "slight", "negligible"];

const VERB: Readonly<Record<CollisionGrade, readonly [one: string, many: string]>> = {
  dead: ["is lost", "are lost"],
  "likely dead": ["is as good as lost", "are as good as lost"],
  "costs margin": ["loses part of its margin", "lose part of their margin"],
  slight: ["is slightly disturbed", "are slightly disturbed"],
  negligible: ["is hardly touched", "are hardly touched"],
};
