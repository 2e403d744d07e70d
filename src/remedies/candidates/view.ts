/** A dish that does not see its satellite for something in the way: raised above it, or moved to where the view is free. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { dishOptionsOf } from "../../parts/dishBands.ts";
import {
  type DishFeed,
  feedsOf,
  middleOfBandMHz,
  type Obstacle,
  obstructionOf,
} from "../../parts/dishFeeds.ts";
import type { DishOptions } from "../../parts/dishOptions.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { recordsAround } from "./around.ts";

/** By so much a dish is raised on a longer mast; beyond it somebody looks for another place [m]; common practice, no source. */
const RAISES_M = [1, 2, 3] as const;
/** As free as that a view is free [dB]; what the finding about it leaves alone. */
const FREE_DB = 1;
/** Behind an edge that stands as high as the ray, and behind any higher one, no larger dish makes up for it [dB]. */
const HIDDEN_DB = 6;

export const clearView: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record): readonly Candidate[] => {
    const o = optionsOf(record);
    const hidden = o && hiddenFeed(o);
    const key = optionMeaning(record.kind, "obstacles");
    if (!o || !hidden || key === undefined) return [];
    const { id } = record.part;
    const set = (obstacles: readonly Obstacle[]) => (design: Parameters<Candidate["apply"]>[0]) => {
      const d = draft(design);
      d.set(id, { [key]: obstacles });
      return d.result();
    };
    const metres = RAISES_M.find((m) => !hiddenFeed({ ...o, obstacles: seenFrom(o.obstacles, m) }));
    if (metres !== undefined)
      return [candidate("dish-raised", [id, metres], { metres }, set(seenFrom(o.obstacles, metres)))];
    const free = o.obstacles.filter((obstacle) => !hiddenFeed({ ...o, obstacles: [obstacle] }));
    const { azimuthDeg, elevationDeg } = hidden.aim;
    return [candidate("dish-moved", [id], { azimuthDeg, elevationDeg }, set(free))];
  });

/** Whether a dish stands behind something that takes most of its signal. */
export function isHidden(record: PartRecord): boolean {
  const o = optionsOf(record);
  return o !== undefined && hiddenFeed(o, HIDDEN_DB) !== undefined;
}

/** Those of a dish with something before it. */
function optionsOf(record: PartRecord): DishOptions | undefined {
  const o = dishOptionsOf(record);
  return o && o.obstacles.length > 0 ? o : undefined;
}

/** A feed whose satellite stands above the horizon and behind an obstacle. */
function hiddenFeed(o: DishOptions, leastDb: number = FREE_DB): DishFeed | undefined {
  return feedsOf(o).find(
    ({ aim }) => aim.elevationDeg > 0 && (obstructionOf(o, aim, middleOfBandMHz(o))?.lossDb ?? 0) >= leastDb,
  );
}

/** How high obstacles stand, seen from so much further up: their height over the dish is less, their distance the same. */
function seenFrom(obstacles: readonly Obstacle[], raisedM: number): Obstacle[] {
  return obstacles.map((obstacle) => {
    const rise = Math.tan((obstacle.elevationDeg * Math.PI) / 180) - raisedM / obstacle.distanceM;
    const elevationDeg = Math.max(0, Math.ceil((Math.atan(rise) * 180) / Math.PI));
    return { ...obstacle, elevationDeg };
  });
}
