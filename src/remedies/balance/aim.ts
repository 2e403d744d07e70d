/** How well the outlets of a design are levelled, as one number to make small. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { profileOf } from "../../findings/limits.ts";
import { heardAt, placesOf } from "../../findings/places.ts";
import type { Service } from "../../signal/carrier.ts";
import { inputsBehind, type Site } from "../site.ts";

export type Aim = {
  readonly service: Service;
  /** Level that every outlet should have [dBµV]. */
  readonly targetDbuv: number;
  /** Most that outlets may lie apart, each taken by its mean level [dB]. */
  readonly spreadDb: number;
};

/** Level of the service at one socket or receiver. */
export type PlaceLevel = {
  readonly part: string;
  readonly port: string;
  readonly meanDbuv: number;
  readonly minDbuv: number;
  readonly maxDbuv: number;
  /** Distance of the worst carrier from the nearer limit [dB]; negative: outside. */
  readonly marginDb: number;
  /** Distance of the weakest carrier from its least level, and of the strongest from its most [dB]. */
  readonly aboveLeastDb: number;
  readonly belowMostDb: number;
};

/** Sockets for the service; in a design without outlets, its receivers. */
export function levelsOf(site: Site, service: Service): readonly PlaceLevel[] {
  const profile = profileOf(site.design);
  return site.evaluation.records.flatMap((record) =>
    placesOf({ record, kindAt: (port) => site.evaluation.record(record.joined[port]?.[0] ?? "")?.kind })
      .filter((place) => place.services.includes(service))
      .flatMap((place): PlaceLevel[] => {
        const heard = heardAt(place, service, profile);
        if (heard.length === 0) return [];
        const levels = heard.map((h) => h.levelDbuv);
        const aboveLeastDb = Math.min(...heard.map((h) => h.levelDbuv - h.limits.minDbuv));
        const belowMostDb = Math.min(...heard.map((h) => h.limits.maxDbuv - h.levelDbuv));
        return [
          {
            part: record.part.id,
            port: place.port,
            meanDbuv: levels.reduce((sum, l) => sum + l, 0) / levels.length,
            minDbuv: Math.min(...levels),
            maxDbuv: Math.max(...levels),
            marginDb: Math.min(aboveLeastDb, belowMostDb),
            aboveLeastDb,
            belowMostDb,
          },
        ];
      }),
  );
}

/** The same places with the input that their signal comes by. */
export function placesWithInput(
  site: Site,
  levels: readonly PlaceLevel[],
): readonly { readonly part: PartRecord; readonly input: string }[] {
  return levels.flatMap(({ part, port }) => {
    const record = site.evaluation.record(part);
    if (!record) return [];
    const isInput = record.ports.some((p) => p.id === port && p.side === "in");
    const input = isInput ? port : inputsBehind(record, port).find((p) => record.joined[p]);
    return input === undefined ? [] : [{ part: record, input }];
  });
}

/**
 * Penalty of a state: what lies outside the limits counts most, then what makes outlets lie further apart than
 * asked, then their distance from the target, then the slope within each.
 */
export function penaltyOf(levels: readonly PlaceLevel[], aim: Aim): number {
  if (levels.length === 0) return Number.POSITIVE_INFINITY;
  const means = levels.map((l) => l.meanDbuv);
  const spread = Math.max(...means) - Math.min(...means);
  const outside = levels.reduce((sum, l) => sum + Math.max(0, -l.marginDb), 0);
  const off = means.reduce((sum, mean) => sum + (mean - aim.targetDbuv) ** 2, 0) / means.length;
  const tilt = levels.reduce((sum, l) => sum + (l.maxDbuv - l.minDbuv), 0) / levels.length;
  return 100 * outside + 10 * Math.max(0, spread - aim.spreadDb) + off + 0.1 * spread + 0.05 * tilt;
}

export function isReached(levels: readonly PlaceLevel[], aim: Aim): boolean {
  const means = levels.map((l) => l.meanDbuv);
  return (
    levels.length > 0 &&
    levels.every((l) => l.marginDb >= 0) &&
    Math.max(...means) - Math.min(...means) <= aim.spreadDb
  );
}
