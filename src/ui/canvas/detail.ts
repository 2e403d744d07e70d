/** How much cards and strips show, by how near one looks and by how much is in view. */
import type { StripDetail } from "./Strip.tsx";

/**
 * How much there is to see. "plan": too many parts for cards, the whole is one drawing.
 * "small": cards with a large name, and strips as shapes alone. "mid": large names and tags.
 * "near": everything. "close": frequencies too, and a strip behind each run of cable.
 */
export type Detail = "plan" | StripDetail;

/** More cards, or more strips, than this at once make moving about slow (measured). */
export const MOST_CARDS = 250;
export const MOST_STRIPS = 250;

/**
 * Least zoom of each level: its type is never below 10 px on the screen. A name of a small card is 24 px and may come
 * down to 0.42; from 0.66 on there are tags on the strips (15.5 px), so that signals can be read.
 */
export const LEVEL_ZOOMS = { small: 0.42, mid: 0.66, near: 0.88, close: 1.6 } as const;

export function detailFor(options: {
  readonly zoom: number;
  readonly partsInView: number;
  readonly wiresInView: number;
}): Detail {
  const { zoom, partsInView, wiresInView } = options;
  if (partsInView > MOST_CARDS || wiresInView > MOST_STRIPS || zoom < LEVEL_ZOOMS.small) return "plan";
  if (zoom < LEVEL_ZOOMS.mid) return "small";
  if (zoom < LEVEL_ZOOMS.near) return "mid";
  return zoom < LEVEL_ZOOMS.close ? "near" : "close";
}
