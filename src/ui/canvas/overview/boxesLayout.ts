/**
 * A design as cards and, in a last column, a box for each place: sizes and lines by arithmetic, in the px of the cards.
 */
import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import { type Box, boundsOf, type Point } from "../layout.ts";
import { columnsOf, type Item, type PlaceColumn, type Segment } from "./columns.ts";
import { laneOrder } from "./lanes.ts";
import {
  BOX_INSET_PX,
  BOX_WIDTH_PX,
  type BoxStyle,
  CHIPS_PER_ROW,
  GROUP_GAP_PX,
  LENGTH_PILL,
  LINE_CLEAR_PX,
  LINE_PITCH_PX,
  RISER_GAP_PX,
} from "./sizes.ts";
import { type Link, placesIn, type Skeleton } from "./skeleton.ts";

export type BoxLine = {
  readonly link: Link;
  readonly points: readonly Point[];
  /** Where its length stands. */
  readonly pill?: Box;
};

export type BoxesLayout = {
  readonly width: number;
  readonly height: number;
  readonly style: BoxStyle;
  readonly cards: ReadonlyMap<string, Box>;
  readonly places: ReadonlyMap<string, Box>;
  readonly lines: readonly BoxLine[];
};

export function boxHeight(place: FedPlace, { headPx, stripPx, chipPx }: BoxStyle): number {
  const rows = Math.max(1, Math.ceil(place.receivers.length / CHIPS_PER_ROW));
  return headPx + stripPx + rows * chipPx + BOX_INSET_PX;
}

export function boxesLayout(skeleton: Skeleton, style: BoxStyle): BoxesLayout {
  const column = stacked(skeleton, style);
  const columns = columnsOf(skeleton, column);
  const gaps = columns.map((_, n) => gapAfter(columns, n));
  let x = 0;
  const lefts = columns.map(({ width }, n) => {
    const left = x;
    x += width + (gaps[n]?.width ?? 0);
    return left;
  });
  const boxOf = ({ column: n, y, height, width }: Item): Box => ({ x: lefts[n] ?? 0, y, width, height });
  const all = columns.flatMap((c) => c.items);
  const cards = new Map(all.filter((i) => i.sort === "card").map((i) => [i.id, boxOf(i)] as const));
  const places = new Map(all.filter((i) => i.sort === "place").map((i) => [i.id, boxOf(i)] as const));
  const lines = [...lineOf(columns, lefts, gaps), ...riserLines(skeleton, places)];
  const bounds = boundsOf([...cards.values(), ...places.values()]);
  return { width: x, height: bounds ? bounds.y + bounds.height : 0, style, cards, places, lines };
}

/** Boxes one below the other, group by group. */
function stacked(skeleton: Skeleton, style: BoxStyle): readonly Item[] {
  let y = 0;
  return skeleton.groups.flatMap((group, g) => {
    if (g > 0) y += GROUP_GAP_PX;
    return group.places.map((place): Item => {
      const height = boxHeight(place, style);
      const item: Item = {
        id: place.key,
        sort: "place",
        column: 0,
        y,
        width: BOX_WIDTH_PX,
        height,
        inAt: () => style.headPx + style.stripPx / 2,
        outAt: () => height,
      };
      y += height + (group.riser === undefined ? style.gapPx : RISER_GAP_PX);
      return item;
    });
  });
}

type Gap = { readonly width: number; readonly lanes: ReadonlyMap<Segment, number> };

function gapAfter(columns: readonly PlaceColumn[], n: number): Gap {
  const own = columns[n];
  if (!own || n === columns.length - 1) return { width: 0, lanes: new Map() };
  const { lanes, count } = laneOrder(own.segments);
  const hasPill = own.segments.some((s) => s.isLast && s.link.cableM > 0);
  return {
    width: 2 * LINE_CLEAR_PX + count * LINE_PITCH_PX + (hasPill ? LENGTH_PILL.width + LINE_CLEAR_PX : 0),
    lanes,
  };
}

/** The segments of each link, put together to one line. */
function lineOf(
  columns: readonly PlaceColumn[],
  lefts: readonly number[],
  gaps: readonly Gap[],
): readonly BoxLine[] {
  const points = new Map<Link, Point[]>();
  const pills = new Map<Link, Box>();
  columns.forEach(({ segments, width }, n) => {
    const start = (lefts[n] ?? 0) + width;
    const end = lefts[n + 1] ?? start;
    for (const segment of segments) {
      const { link, from, to } = segment;
      const lane = gaps[n]?.lanes.get(segment);
      const line = points.get(link) ?? [];
      points.set(link, line);
      line.push({ x: start, y: from });
      if (lane !== undefined) {
        const x = start + LINE_CLEAR_PX + lane * LINE_PITCH_PX;
        line.push({ x, y: from }, { x, y: to });
      }
      line.push({ x: end, y: to });
      if (segment.isLast && link.cableM > 0)
        pills.set(link, {
          x: end - LINE_CLEAR_PX - LENGTH_PILL.width,
          y: to - LENGTH_PILL.height / 2,
          ...LENGTH_PILL,
        });
    }
  });
  return [...points].map(([link, line]) => {
    const pill = pills.get(link);
    return { link, points: line, ...(pill ? { pill } : {}) };
  });
}

/** Along a riser the line runs from place to place. */
function riserLines(skeleton: Skeleton, places: ReadonlyMap<string, Box>): readonly BoxLine[] {
  const keys = placesIn(skeleton).map((place) => place.key);
  return skeleton.links.flatMap((link): readonly BoxLine[] => {
    const from = places.get(link.from);
    const to = places.get(link.to);
    if (!from || !to || keys[keys.indexOf(link.from) + 1] !== link.to) return [];
    const x = from.x + from.width / 2;
    const top = from.y + from.height;
    const middle = (top + to.y) / 2;
    const pill = { x: x - LENGTH_PILL.width / 2, y: middle - LENGTH_PILL.height / 2, ...LENGTH_PILL };
    return [
      {
        link,
        points: [
          { x, y: top },
          { x, y: to.y },
        ],
        ...(link.cableM > 0 ? { pill } : {}),
      },
    ];
  });
}
