/** How much of a design an overview shows in a pane: the first of boxes, façade and cells that has room. */
import type { Box, Size } from "../layout.ts";
import { BOX_STRIP_WIDTH_PX, BOX_STYLES, type BoxesLayout, boxesLayout } from "./boxesLayout.ts";
import { type FacadeLayout, facadeLayout, mostTilesPerRow } from "./facadeLayout.ts";
import { placesIn, type Skeleton } from "./skeleton.ts";

/** Names of 12.5 px are 11 px on the screen. */
export const LEAST_SCALE = 0.88;
const MOST_SCALE = 1.6;
const SCALE_STEP = 0.04;
/** Strips are at least that large on the screen [px]. */
const LEAST_STRIP: Size = { width: 108, height: 38 };
/** What a strip and a scale are measured by when several ways of a façade fit. */
const GOOD_STRIP: Size = { width: 136, height: 58 };
const GOOD_HEAD_STRIP_PX = 104;
/** More strips at once than this make moving about slow (measured). */
const MOST_STRIPS = 250;
/** With more places than this, a column of boxes fits no pane. */
const MOST_BOXES = 60;
const MARGIN_PX = 10;
/** The bar with buttons, in the lower left corner. */
export const BAR: Size = { width: 340, height: 52 };

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

function facadeFor(skeleton: Skeleton, pane: Room): OverviewPlan | null {
  const places = placesIn(skeleton).length;
  if (places === 0 || places > MOST_STRIPS) return null;
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
      // Of ways that are equally good the one with the larger strips.
      const filled = (strip.width * strip.height) / (pane.width * pane.height);
      if (worth + filled <= bestWorth) continue;
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
