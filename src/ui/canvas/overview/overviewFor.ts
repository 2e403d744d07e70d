/** How much of a design an overview shows in a pane: the first of boxes, façade and cells that has room. */

import { MOST_STRIPS } from "../detail.ts";
import type { Box, Size } from "../layout.ts";
import { type BoxesLayout, boxesLayout } from "./boxesLayout.ts";
import { type FacadeLayout, facadeLayout, mostTilesPerRow } from "./facadeLayout.ts";
import {
  BAR,
  BOX_STRIP_WIDTH_PX,
  BOX_STYLES,
  GOOD_HEAD_STRIP_PX,
  GOOD_STRIP,
  LEAST_SCALE,
  LEAST_STRIP,
  MARGIN_PX,
  MOST_BOXES,
  MOST_SCALE,
  SCALE_STEP,
  TILE_HEAD_PX,
  TILE_INSET_PX,
  TILE_LINE_PX,
} from "./sizes.ts";
import { placesIn, type Skeleton } from "./skeleton.ts";

type Placed<L> = { readonly scale: number; readonly left: number; readonly top: number; readonly layout: L };

export type OverviewPlan =
  | ({ readonly level: "boxes" } & Placed<BoxesLayout>)
  | ({ readonly level: "facade" } & Placed<FacadeLayout>)
  | { readonly level: "cells" };

/** Every strip of the head counts more than one for each card, and that more than names alone. */
function headWorth({ head }: FacadeLayout, scale: number): number {
  if (head.cards.size === 0) return MOST_SCALE;
  const share = (head.stripWidth * scale) / GOOD_HEAD_STRIP_PX;
  return head.stripWidth === 0 ? 0.5 : Math.min(share, head.isWhole ? MOST_SCALE : 0.8);
}

/** A pane, and whether the bar with buttons floats over it. */
export type Room = Size & { readonly isBarOver: boolean };

export function overviewFor(skeleton: Skeleton, pane: Room): OverviewPlan {
  return boxesFor(skeleton, pane) ?? facadeFor(skeleton, pane) ?? { level: "cells" };
}

function boxesFor(skeleton: Skeleton, pane: Room): OverviewPlan | null {
  if (placesIn(skeleton).length > MOST_BOXES) return null;
  for (const style of BOX_STYLES) {
    const layout = boxesLayout(skeleton, style);
    for (const reserved of [0, BAR.height]) {
      const placed = fitted(layout, { width: pane.width, height: pane.height - reserved });
      if (placed.scale < LEAST_SCALE || style.stripPx * placed.scale < LEAST_STRIP.height) continue;
      if (BOX_STRIP_WIDTH_PX * placed.scale < LEAST_STRIP.width) continue;
      if (reserved === 0 && coversBar(layout, placed, pane) && pane.isBarOver) continue;
      return { level: "boxes", ...placed };
    }
  }
  return null;
}

function fitted<L extends Size>(layout: L, room: Size): Placed<L> {
  const scale = Math.min(
    MOST_SCALE,
    (room.width - 2 * MARGIN_PX) / Math.max(1, layout.width),
    (room.height - 2 * MARGIN_PX) / Math.max(1, layout.height),
  );
  return {
    scale,
    left: (room.width - layout.width * scale) / 2,
    top: (room.height - layout.height * scale) / 2,
    layout,
  };
}

/** Whether something of it would lie below the bar. */
function coversBar(layout: BoxesLayout, { scale, left, top }: Placed<BoxesLayout>, pane: Size): boolean {
  const isBelow = (box: Box) =>
    left + box.x * scale < BAR.width && top + (box.y + box.height) * scale > pane.height - BAR.height;
  return [...layout.cards.values(), ...layout.places.values()].some(isBelow);
}

/** What so many tiles take at least [px²]: where there is less, there is no façade to be looked for. */
function leastTilesPx2(places: number): number {
  const width = LEAST_STRIP.width + 2 * TILE_INSET_PX * LEAST_SCALE;
  const height = LEAST_STRIP.height + (TILE_HEAD_PX + TILE_LINE_PX + TILE_INSET_PX) * LEAST_SCALE;
  return places * width * height;
}

function facadeFor(skeleton: Skeleton, pane: Room): OverviewPlan | null {
  const places = placesIn(skeleton).length;
  if (places === 0 || places > MOST_STRIPS || leastTilesPx2(places) > pane.width * pane.height) return null;
  const below = pane.isBarOver ? BAR.height : MARGIN_PX;
  const room = { width: pane.width - 2 * MARGIN_PX, height: pane.height - below - MARGIN_PX };
  let best: (OverviewPlan & { level: "facade" }) | null = null;
  let bestWorth = 0;
  for (let step = 0; LEAST_SCALE + step * SCALE_STEP <= MOST_SCALE; step++) {
    const scale = LEAST_SCALE + step * SCALE_STEP;
    const size = { width: room.width / scale, height: room.height / scale };
    for (let n = 1; n <= mostTilesPerRow(skeleton, size.width); n++) {
      const layout = facadeLayout(skeleton, size, n);
      if (!layout) continue;
      const strip = { width: layout.strip.width * scale, height: layout.strip.height * scale };
      if (strip.width < LEAST_STRIP.width || strip.height < LEAST_STRIP.height) continue;
      const worth = Math.min(
        strip.width / GOOD_STRIP.width,
        strip.height / GOOD_STRIP.height,
        scale,
        headWorth(layout, scale),
      );
      // Of ways that are equally good the one with the larger strips, unless it leaves the pane empty beside them.
      const right = Math.max(...layout.frames.map(({ box }) => box.x + box.width));
      const filled = ((strip.width * strip.height) / (pane.width * pane.height)) * (right / size.width);
      if (worth + filled < bestWorth) continue;
      bestWorth = worth + filled;
      best = {
        level: "facade",
        scale,
        left: MARGIN_PX + (room.width - layout.width * scale) / 2,
        top: MARGIN_PX + Math.max(0, room.height - layout.height * scale) / 2,
        layout,
      };
    }
  }
  return best;
}
