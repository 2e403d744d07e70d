/** Cards in columns from the sources to the places; a line over several columns keeps a free row in each of them. */
import { ITEM_GAP_PX, PASSING_PX } from "./sizes.ts";
import type { Link, Skeleton } from "./skeleton.ts";

export type Item = {
  readonly id: string;
  /** "passing": a line on its way through the column. */
  readonly sort: "card" | "place" | "passing";
  readonly column: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Where lines come in and leave, from the top. */
  readonly inAt: (port: string) => number;
  readonly outAt: (port: string) => number;
};

/** A link between two neighbouring columns, by the heights of its ends. */
export type Segment = {
  readonly link: Link;
  readonly from: number;
  readonly to: number;
  readonly isLast: boolean;
};

export type PlaceColumn = {
  readonly width: number;
  readonly items: readonly Item[];
  /** From here to the next column. */
  readonly segments: readonly Segment[];
};

/** @param places the last column, placed already; everything else is put where its lines are short. */
export function columnsOf(skeleton: Skeleton, places: readonly Item[]): readonly PlaceColumn[] {
  const rank = ranksOf(skeleton);
  const last = Math.max(-1, ...rank.values()) + 1;
  const columnAt = (id: string) => (rank.has(id) ? last - 1 - (rank.get(id) ?? 0) : last);
  const columns: Item[][] = Array.from({ length: last + 1 }, () => []);
  columns[last] = places.map((item) => ({ ...item, column: last }));
  for (const { id, frame } of skeleton.cards) {
    const at = (port: string) => frame.ports.get(port)?.y ?? frame.height / 2;
    const column = columnAt(id);
    columns[column]?.push({
      id,
      sort: "card",
      column,
      y: 0,
      width: frame.width,
      height: frame.height,
      inAt: at,
      outAt: at,
    });
  }
  const chains = skeleton.links
    .filter((link) => columnAt(link.from) < columnAt(link.to))
    .map((link) => chainOf(link, columns, columnAt));
  const bottom = Math.max(0, ...places.map((p) => p.y + p.height));
  for (let n = last - 1; n >= 0; n--) settle(columns, n, chains, bottom);
  const top = Math.min(0, ...columns.flat().map((item) => item.y));
  const lowered = columns.map((items) => items.map((item) => ({ ...item, y: item.y - top })));
  return lowered.map((items, n) => ({
    width: Math.max(0, ...items.map((item) => item.width)),
    items,
    segments: chains.flatMap((chain) => segmentAt(chain, lowered, n)),
  }));
}

/** How many cards come after each one, on the longest way. */
function ranksOf({ cards, links }: Skeleton): ReadonlyMap<string, number> {
  const ids = new Set(cards.map((card) => card.id));
  const next = new Map<string, string[]>();
  for (const { from, to } of links)
    if (ids.has(from) && ids.has(to)) next.set(from, [...(next.get(from) ?? []), to]);
  const rank = new Map<string, number>();
  const open = new Set<string>();
  const rankOf = (id: string): number => {
    const before = rank.get(id);
    if (before !== undefined) return before;
    // A line that comes round to here is not followed again.
    if (open.has(id)) return -1;
    open.add(id);
    const own = 1 + Math.max(-1, ...(next.get(id) ?? []).map(rankOf));
    rank.set(id, own);
    return own;
  };
  for (const { id } of cards) rankOf(id);
  return rank;
}

/** The ids of the items that a link runs over, from column to column. */
type Chain = { readonly link: Link; readonly first: number; readonly ids: readonly string[] };

function chainOf(link: Link, columns: Item[][], columnAt: (id: string) => number): Chain {
  const first = columnAt(link.from);
  const ids = [link.from];
  for (let column = first + 1; column < columnAt(link.to); column++) {
    const id = `${link.from} ${link.fromPort} ${link.to} ${column}`;
    const at = () => PASSING_PX / 2;
    columns[column]?.push({
      id,
      sort: "passing",
      column,
      y: 0,
      width: 0,
      height: PASSING_PX,
      inAt: at,
      outAt: at,
    });
    ids.push(id);
  }
  return { link, first, ids: [...ids, link.to] };
}

/** Puts the items of a column where their lines to the next one are straight, as far as there is room. */
function settle(columns: Item[][], n: number, chains: readonly Chain[], bottom: number): void {
  const next = new Map((columns[n + 1] ?? []).map((item) => [item.id, item] as const));
  const wished = (item: Item): number => {
    const tops = chains.flatMap(({ link, first, ids }) => {
      const target = next.get(ids[n + 1 - first] ?? "");
      if (ids[n - first] !== item.id || !target) return [];
      return [target.y + target.inAt(link.toPort) - item.outAt(link.fromPort)];
    });
    return tops.length > 0
      ? tops.reduce((sum, top) => sum + top, 0) / tops.length
      : (bottom - item.height) / 2;
  };
  const order = (columns[n] ?? [])
    .map((item) => ({ item, wish: wished(item) }))
    .sort((a, b) => a.wish + a.item.height / 2 - (b.wish + b.item.height / 2));
  let free = Number.NEGATIVE_INFINITY;
  const placed = order.map(({ item, wish }) => {
    const y = Math.max(wish, free);
    free = y + item.height + ITEM_GAP_PX;
    return { item, wish, y };
  });
  const drift = placed.reduce((sum, { y, wish }) => sum + y - wish, 0) / Math.max(1, placed.length);
  const top = (placed[0]?.y ?? 0) - drift;
  const end = free - ITEM_GAP_PX - drift;
  const back = end > bottom ? Math.min(end - bottom, Math.max(0, top)) : Math.min(0, top);
  columns[n] = placed.map(({ item, y }) => ({ ...item, y: Math.round(y - drift - back) }));
}

function segmentAt(
  { link, first, ids }: Chain,
  columns: readonly (readonly Item[])[],
  n: number,
): readonly Segment[] {
  const from = columns[n]?.find((item) => item.id === ids[n - first]);
  const to = columns[n + 1]?.find((item) => item.id === ids[n + 1 - first]);
  if (!from || !to) return [];
  return [
    {
      link,
      from: from.y + from.outAt(link.fromPort),
      to: to.y + to.inAt(link.toPort),
      isLast: n + 2 - first === ids.length,
    },
  ];
}
