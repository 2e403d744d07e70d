import type { Meeting } from "../../evaluate/evaluation.ts";
import { type CollisionGrade, collisionGrade } from "../../rf/protection.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { ciDb } from "../../signal/readout.ts";
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
      const hit = tally(pair);
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
            `${partName(record.part.id)}: ${list(hit)} ${VERB[worst.grade]}.`,
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

const VERB: Readonly<Record<CollisionGrade, string>> = {
  dead: "are lost",
  "likely dead": "are as good as lost",
  "costs margin": "lose part of their margin",
  slight: "are slightly disturbed",
  negligible: "are hardly touched",
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

function worstHit(pair: readonly Meeting[]) {
  let worst: { grade: CollisionGrade; ciDb: number; requiredDb: number } | undefined;
  for (const m of pair)
    for (const i of m.carriers) {
      const requiredDb = m.victim.grid.required[i] ?? 0;
      const ci = ciDb(m.victim, i);
      if (!worst || ci - requiredDb < worst.ciDb - worst.requiredDb)
        worst = { grade: collisionGrade({ ciDb: ci, requiredDb }), ciDb: ci, requiredDb };
    }
  return worst;
}

/** "9 satellite transponders", "6 TV multiplexes": how many of each side are hit. */
function tally(pair: readonly Meeting[]): string[] {
  const hit = new Map<Meeting["victim"]["origin"]["service"], Set<string>>();
  for (const m of pair) {
    const { service, key } = m.victim.origin;
    const set = hit.get(service) ?? new Set();
    for (const i of m.carriers) set.add(`${key}#${m.victim.grid.index[i]}`);
    hit.set(service, set);
  }
  return [...hit].map(([service, set]) => carriers(set.size, service));
}
