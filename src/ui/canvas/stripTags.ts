/** Finds room for the tags under a strip: each near the middle of its band, none over another. */

export type WishedTag = {
  readonly text: string;
  readonly shortText: string;
  readonly colour: string;
  /** Wished centre [px]. */
  readonly x: number;
  /** Everything of it was filtered away. */
  readonly struck: boolean;
  readonly hit: boolean;
};

export type StripTag = Omit<WishedTag, "x"> & {
  /** Centre of the full text and of the short one, which is set larger [px]. */
  readonly x: number;
  readonly shortX: number;
};

/** Widths that a character takes, in the full size (9 px) and in the size for afar (15 px) [px]. */
const CHARACTER_PX = 6.2;
const LARGE_CHARACTER_PX = 11.2;
const SPACE_PX = 5;

export function placeTags(wished: readonly WishedTag[], widthPx: number): StripTag[] {
  const tags = merge(wished);
  const full = spread(
    tags.map((t) => ({ x: t.x, width: t.text.length * CHARACTER_PX })),
    widthPx,
  );
  const short = spread(
    tags.map((t) => ({ x: t.x, width: t.shortText.length * LARGE_CHARACTER_PX })),
    widthPx,
  );
  return tags.map((t, i) => ({ ...t, x: full[i] ?? t.x, shortX: short[i] ?? t.x }));
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
