import type { PartId } from "../../design/design.ts";
import type { Meeting } from "../../evaluate/evaluation.ts";
import type { CollisionGrade } from "../../rf/protection.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { type BandFacts, bandFactsOf } from "../bandFacts.ts";
import { isWanted, lossCounts, meetingsByPair, pairKey, type Toll, worstHit } from "../collisions.ts";
import type { Draft, Severity } from "../finding.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";

export type SharedFrequenciesFacts = {
  /** The signal that suffers most, and the one that it meets. */
  readonly victim: BandFacts;
  readonly other: BandFacts;
  /** Stretch that they share [MHz]. */
  readonly fromMHz: number;
  readonly toMHz: number;
  readonly tolls: readonly Toll[];
  /** The carrier hit worst. */
  readonly worst: {
    readonly name: string;
    readonly centreMHz: number;
    readonly origin: string;
    readonly index: number;
  };
  /** Where a signal from outside comes in; absent where both are wanted and only brought together. */
  readonly intruder?: PartId;
};

/** Two signals on the same frequencies of one wire. */
export const sharedFrequencies: RuleOf<"shared-frequencies"> = {
  id: "shared-frequencies",
  check: ({ record }) => {
    const drafts = meetingsByPair(record.meetings).flatMap((pair): readonly Draft<"shared-frequencies">[] => {
      const worst = worstHit(pair);
      const first = pair[0];
      if (!first || !worst || worst.grade === "negligible") return [];
      const { band, i, other } = worst;
      const here = record.part.id;
      const victim = bandFactsOf(band);
      const disturber = bandFactsOf(other);
      const intruder = isWanted(disturber.service) ? undefined : disturber.part;
      const index = band.grid.index[i] ?? 0;
      const wires = first.port.startsWith("#") ? [] : wireIdsAt(record, first.port);
      const ends = [victim.part, disturber.part].filter((part) => part !== intruder);
      return [
        {
          severity: SEVERITY[worst.grade],
          at: { part: here, port: first.port, service: serviceOf(first), band: pairKey(first) },
          parts: culpritFirst(intruder ?? here, [here, ...ends]),
          wires,
          value: worst.ciDb,
          limit: worst.requiredDb,
          unit: "dB C/I",
          facts: {
            victim,
            other: disturber,
            fromMHz: Math.min(...pair.map((m) => m.fromMHz)),
            toMHz: Math.max(...pair.map((m) => m.toMHz)),
            tolls: lossCounts(pair),
            worst: {
              name: band.grid.plan[index]?.name ?? "",
              centreMHz: band.grid.centre[i] ?? 0,
              origin: band.origin.key,
              index,
            },
            ...(intruder === undefined ? {} : { intruder }),
          },
        },
      ];
    });
    return drafts.filter(
      (draft) => drafts.find((each) => isSameEntry(each, draft, record.part.id)) === draft,
    );
  },
};

/** What gets in through the screen of a part with several outputs is at all of them: it is told at the first. */
function isSameEntry(a: Draft<"shared-frequencies">, b: Draft<"shared-frequencies">, here: PartId): boolean {
  if (a === b) return true;
  const [one, other] = [a.facts, b.facts];
  return (
    one.intruder === here &&
    other.intruder === here &&
    one.victim.part === other.victim.part &&
    one.victim.service === other.victim.service &&
    one.other.service === other.other.service
  );
}

/** Service of the pair, whichever of the two suffers more at the moment. */
function serviceOf({ victim, other }: Meeting): Service {
  const both = [victim.origin.service, other.origin.service];
  return WANTED_SERVICES.find((service) => both.includes(service)) ?? victim.origin.service;
}

const SEVERITY: Readonly<Record<CollisionGrade, Severity>> = {
  dead: "error",
  "likely dead": "error",
  "costs margin": "warning",
  slight: "note",
  negligible: "note",
};
