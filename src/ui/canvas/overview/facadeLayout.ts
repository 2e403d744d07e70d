/**
 * A design as a façade: the head on top, below it a frame for each part that feeds places, with a tile for each of
 * them. Lines run from the head to the frames and never to the tiles: that would read as wiring looped through.
 */
import type { FeedingGroup } from "../../../design/feeding/feedingGroups.ts";
import type { Box, Size } from "../layout.ts";
import { type HeadRow, headRow } from "./headRow.ts";
import {
  FRAME_GAP_PX,
  FRAME_INSET_PX,
  HEADING_PX,
  LEAST_TILE_PX,
  MOST_STRIP_SHARE,
  MOST_STRIP_WIDTH_PX,
  RUN_PX,
  TILE_GAP_PX,
  TILE_HEAD_PX,
  TILE_INSET_PX,
  TILE_LINE_PX,
  TRUNK_PITCH_PX,
} from "./sizes.ts";
import { placesIn, type Skeleton } from "./skeleton.ts";
import { type Trunk, trunksOf } from "./trunks.ts";

export type PlacedFrame = {
  readonly group: FeedingGroup;
  readonly box: Box;
  readonly tiles: ReadonlyMap<string, Box>;
};

export type FacadeLayout = {
  readonly width: number;
  readonly height: number;
  readonly head: HeadRow;
  readonly frames: readonly PlacedFrame[];
  readonly strip: Size;
  readonly trunks: readonly Trunk[];
};

/** Frames side by side as far as their tiles fill a row of so many. */
function rowsOf(groups: readonly FeedingGroup[], tilesPerRow: number): FeedingGroup[][] {
  const rows: FeedingGroup[][] = [];
  let used = 0;
  for (const group of groups) {
    const columns = Math.min(group.places.length, tilesPerRow);
    const row = rows.at(-1);
    if (row && used + columns <= tilesPerRow) row.push(group);
    else {
      rows.push([group]);
      used = 0;
    }
    used += columns;
  }
  return rows;
}

/**
 * With so many tiles in a row, in a room of this size; null where no row has so many, or where there is no room for
 * strips at all.
 */
export function facadeLayout(skeleton: Skeleton, room: Size, tilesPerRow: number): FacadeLayout | null {
  const rows = rowsOf(skeleton.groups, tilesPerRow);
  // A column that stays empty in every row would only make the others narrow.
  if (!rows.some((row) => columnsIn(row, tilesPerRow) === tilesPerRow)) return null;
  const head = headRow(skeleton, room.width);
  const feeders = new Map(rows.flatMap((row, r) => row.map((group) => [group.feeder ?? "", r] as const)));
  const into = skeleton.links.filter((link) => feeders.has(link.to) && link.to !== link.from);
  const low = into.filter((link) => (feeders.get(link.to) ?? 0) > 0 || feeders.has(link.from)).length;
  // Of these the ones that come from the head run along below it first.
  const aside = into.filter((link) => (feeders.get(link.to) ?? 0) > 0 && !feeders.has(link.from)).length;
  const gutter = low > 0 ? RUN_PX + low * TRUNK_PITCH_PX : 0;
  const across = Math.max(1, ...rows.map((row) => row.length));
  const spent = gutter + across * 2 * FRAME_INSET_PX + (across - 1) * FRAME_GAP_PX;
  const tileWidth = Math.min(
    MOST_STRIP_WIDTH_PX + 2 * TILE_INSET_PX,
    Math.floor((room.width - spent + TILE_GAP_PX) / tilesPerRow - TILE_GAP_PX),
  );
  const linesIn = (row: readonly FeedingGroup[]) =>
    into.filter((link) => row.slice(0, -1).some((group) => group.feeder === link.to)).length;
  const gapAbove = (row: readonly FeedingGroup[], r: number) =>
    r === 0
      ? (head.height > 0 ? RUN_PX : 0) + TRUNK_PITCH_PX * (head.loose.length + aside)
      : FRAME_GAP_PX + TRUNK_PITCH_PX * linesIn(row);
  const tilesHigh = rows.map((row) => rowsHigh(row, tilesPerRow));
  const fixed =
    head.height +
    rows.reduce((sum, row, r) => sum + gapAbove(row, r) + HEADING_PX + FRAME_INSET_PX - TILE_GAP_PX, 0);
  const all = tilesHigh.reduce((sum, n) => sum + n, 0);
  const strip = {
    width: tileWidth - 2 * TILE_INSET_PX,
    height: Math.min(
      Math.floor((room.height - fixed) / Math.max(1, all) - TILE_GAP_PX) -
        TILE_HEAD_PX -
        TILE_LINE_PX -
        TILE_INSET_PX,
      Math.floor(MOST_STRIP_SHARE * (tileWidth - 2 * TILE_INSET_PX)),
    ),
  };
  if (strip.width <= 0 || strip.height <= 0) return null;
  const tile = {
    width: tileWidth,
    height: TILE_HEAD_PX + TILE_LINE_PX + strip.height + TILE_INSET_PX,
  };
  const frames: PlacedFrame[] = [];
  const full = tilesPerRow * (tile.width + TILE_GAP_PX) - TILE_GAP_PX + spent - gutter;
  let y = head.height;
  rows.forEach((row, r) => {
    y += gapAbove(row, r);
    const height =
      HEADING_PX + (tilesHigh[r] ?? 0) * (tile.height + TILE_GAP_PX) - TILE_GAP_PX + FRAME_INSET_PX;
    let x = 0;
    for (const group of row) {
      const columns = Math.min(group.places.length, tilesPerRow);
      const natural = columns * (tile.width + TILE_GAP_PX) - TILE_GAP_PX + 2 * FRAME_INSET_PX;
      const box = { x, y, width: row.length === 1 ? full : natural, height };
      frames.push({ group, box, tiles: tilesOf(group, { box, tile, tilesPerRow }) });
      x += natural + FRAME_GAP_PX;
    }
    y += height;
  });
  const trunks = trunksOf(skeleton, { head, frames, into, right: full + RUN_PX / 2 });
  return { width: Math.max(full + gutter, head.width), height: y, head, frames, strip, trunks };
}

function columnsIn(row: readonly FeedingGroup[], tilesPerRow: number): number {
  return row.reduce((sum, { places }) => sum + Math.min(places.length, tilesPerRow), 0);
}

function rowsHigh(row: readonly FeedingGroup[], tilesPerRow: number): number {
  return Math.max(...row.map((group) => Math.ceil(group.places.length / tilesPerRow)));
}

type Grid = { readonly box: Box; readonly tile: Size; readonly tilesPerRow: number };

function tilesOf(group: FeedingGroup, { box, tile, tilesPerRow }: Grid): ReadonlyMap<string, Box> {
  return new Map(
    group.places.map(({ key }, n) => [
      key,
      {
        x: box.x + FRAME_INSET_PX + (n % tilesPerRow) * (tile.width + TILE_GAP_PX),
        y: box.y + HEADING_PX + Math.floor(n / tilesPerRow) * (tile.height + TILE_GAP_PX),
        ...tile,
      },
    ]),
  );
}

/** Most tiles side by side that can be of use in a room. */
export function mostTilesPerRow(skeleton: Skeleton, width: number): number {
  return Math.min(placesIn(skeleton).length, Math.floor(width / LEAST_TILE_PX));
}
