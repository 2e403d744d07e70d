/** Finds room for the tags under a strip: each near the middle of its band, none over another. */
import { textWidth } from "./lettering.ts";

export type WishedTag = {
  readonly text: string;
  readonly shortText: string;
  readonly colour: string;
  /** Centre, wished or given [px]. */
  readonly x: number;
  /** Everything of it was filtered away. */
  readonly struck: boolean;
  readonly hit: boolean;
};

type TagRoom = { readonly widthPx: number; readonly sizePx: number };

/**
 * The tags at a type size and within a width: in full where all have room, else in short; and where not even the
 * short ones have, without the least of them.
 */
export function placeTags(wished: readonly WishedTag[], room: TagRoom): WishedTag[] {
  const tags = merge(wished);
  const full = placed(tags, room);
  if (full) return full;
  let short = tags.map((t) => ({ ...t, text: t.shortText }));
  for (;;) {
    const result = placed(short, room);
    if (result || short.length === 0) return result ?? [];
    // What collides is named before what does not; of the rest the last one gives way.
    const least = short.findLast((t) => t.struck) ?? short.findLast((t) => !t.hit) ?? short.at(-1);
    short = short.filter((t) => t !== least);
  }
}

function placed(tags: readonly WishedTag[], { widthPx, sizePx }: TagRoom): WishedTag[] | null {
  const items = tags.map((t) => ({ x: t.x, width: textWidth(t.text, sizePx) }));
  const needed = items.reduce((sum, { width }) => sum + width + SPACE_PX, -SPACE_PX);
  if (needed > widthPx) return null;
  const places = spread(items, widthPx);
  return tags.map((t, i) => ({ ...t, x: places[i] ?? t.x }));
}

/** Two aerials of one service share a tag; it is struck out only if nothing of either is left. */
function merge(wished: readonly WishedTag[]): WishedTag[] {
  const byText = new Map<string, WishedTag>();
  for (const tag of wished) {
    const same = byText.get(tag.text);
    if (!same) byText.set(tag.text, tag);
    else if (same.struck !== tag.struck) byText.set(tag.text, same.struck ? tag : same);
    else byText.set(tag.text, { ...same, x: (same.x + tag.x) / 2, hit: same.hit || tag.hit });
  }
  return [...byText.values()].sort((a, b) => a.x - b.x);
}

const SPACE_PX = 4;

/** Pushes neighbours apart from left to right, then back from the right edge. */
function spread(items: readonly { readonly x: number; readonly width: number }[], widthPx: number): number[] {
  const lefts: number[] = [];
  let free = 0;
  for (const { x, width } of items) {
    const left = Math.max(free, x - width / 2);
    lefts.push(left);
    free = left + width + SPACE_PX;
  }
  let limit = widthPx;
  for (let i = items.length - 1; i >= 0; i--) {
    const width = items[i]?.width ?? 0;
    lefts[i] = Math.max(0, Math.min(lefts[i] ?? 0, limit - width));
    limit = (lefts[i] ?? 0) - SPACE_PX;
  }
  return items.map(({ width }, i) => (lefts[i] ?? 0) + width / 2);
}
