/**
 * Keeps stretches of different wires apart that run beside each other in one gap: each gets a lane of its own, in the
 * order in which they cross least. Written for upright stretches; for level ones up and left are exchanged.
 */

/** A stretch at one place across, free to move between two limits [px]. */
export type LaneStretch = {
  /** Stretches of one wire mind each other's room, and no more. */
  readonly wire?: string;
  readonly wanted: number;
  readonly min: number;
  readonly max: number;
  /** Its two ends along, and to which side the wire goes on there: −1 towards smaller places, 0 not at all. */
  readonly ends: readonly [StretchEnd, StretchEnd];
};
export type StretchEnd = { readonly at: number; readonly side: -1 | 0 | 1 };

/** Best first: what there is room for. */
const WIDEST_PX = 10;
const LANES_PX = [WIDEST_PX, 8, 7, 5, 3.5, 2];
/** Stretches that end nearer to each other than this keep apart too. */
const END_ROOM_PX = 6;
/** Ends at heights nearer than this would lie on each other. */
const SAME_PX = 4;
const LYING_COST = 30;
const IMPOSSIBLE_COST = 1000;

/** More pairs than these are a crowd in which everything hangs together: then each only minds what is close. */
const MOST_PAIRS = 12_000;
const CLOSE_PX = 14;

/** Where each stretch runs. */
export function inLanes(stretches: readonly LaneStretch[]): number[] {
  return separated(stretches, false);
}

function separated(stretches: readonly LaneStretch[], isCrowd: boolean): number[] {
  const at = stretches.map((s) => clampedTo(s, s.wanted));
  for (const group of groupsOf(stretches)) {
    if (group.members.length === 1) continue;
    if (pairsIn(group) > MOST_PAIRS) {
      if (isCrowd) continue;
      const closer = group.members.flatMap((i) => stretches[i] ?? []).map(kept);
      separated(closer, true).forEach((place, n) => {
        at[group.members[n] ?? 0] = place;
      });
      continue;
    }
    const order = ordered(stretches, group);
    const places = spread(stretches, order, group.beside);
    for (const i of order) at[i] = places.get(i) ?? at[i] ?? 0;
  }
  return at;
}

function kept(s: LaneStretch): LaneStretch {
  return { ...s, min: Math.max(s.min, s.wanted - CLOSE_PX), max: Math.min(s.max, s.wanted + CLOSE_PX) };
}

function pairsIn({ members, beside }: Group): number {
  return members.reduce((sum, i) => sum + (beside.get(i)?.length ?? 0), 0) / 2;
}

type Beside = ReadonlyMap<number, readonly number[]>;
type Group = { readonly members: readonly number[]; readonly beside: Beside };

const low = (s: LaneStretch) => Math.min(s.ends[0].at, s.ends[1].at);
const high = (s: LaneStretch) => Math.max(s.ends[0].at, s.ends[1].at);
const clampedTo = (s: LaneStretch, value: number) => Math.max(s.min, Math.min(s.max, value));

/** Stretches that may come to run beside each other, directly or by others between. */
function groupsOf(stretches: readonly LaneStretch[]): Group[] {
  const beside = new Map<number, number[]>(stretches.map((_, i) => [i, []]));
  const sorted = stretches.map((_, i) => i).sort((a, b) => low(at(a)) - low(at(b)) || a - b);
  let running: number[] = [];
  for (const i of sorted) {
    const own = at(i);
    running = running.filter((j) => high(at(j)) + END_ROOM_PX > low(own));
    for (const j of running) {
      const other = at(j);
      if (isFixed(own) && isFixed(other)) continue;
      if (own.min > other.max + WIDEST_PX || other.min > own.max + WIDEST_PX) continue;
      beside.get(i)?.push(j);
      beside.get(j)?.push(i);
    }
    running.push(i);
  }
  const seen = new Set<number>();
  const groups: Group[] = [];
  for (const i of sorted) {
    if (seen.has(i)) continue;
    const members = [i];
    seen.add(i);
    for (const each of members) {
      for (const next of beside.get(each) ?? []) {
        if (!seen.has(next)) members.push(next);
        seen.add(next);
      }
    }
    groups.push({ members, beside });
  }
  return groups;

  function at(i: number): LaneStretch {
    return stretches[i] as LaneStretch;
  }
}

const isFixed = (s: LaneStretch) => s.max - s.min < 0.01;

/** From the smallest place to the largest, so that wires cross least. */
function ordered(stretches: readonly LaneStretch[], { members, beside }: Group): number[] {
  // How much speaks for others to come before it.
  const waitsFor = new Map<number, Map<number, number>>(members.map((i) => [i, new Map()]));
  for (const i of members) {
    for (const j of beside.get(i) ?? []) {
      const [a, b] = [stretches[i], stretches[j]];
      if (!a || !b || i > j) continue;
      const gain = costOf(b, a) - costOf(a, b);
      if (gain > 0) waitsFor.get(j)?.set(i, gain);
      if (gain < 0) waitsFor.get(i)?.set(j, -gain);
    }
  }
  const left = new Set([...members].sort((a, b) => wantedOf(a) - wantedOf(b) || a - b));
  const order: number[] = [];
  const weight = new Map([...left].map((i) => [i, totalOf(waitsFor.get(i))]));
  while (left.size > 0) {
    let best: number | null = null;
    for (const i of left) {
      if (best === null || (weight.get(i) ?? 0) < (weight.get(best) ?? 0)) best = i;
      if (weight.get(best) === 0) break;
    }
    if (best === null) break;
    left.delete(best);
    order.push(best);
    for (const j of beside.get(best) ?? []) {
      const gone = waitsFor.get(j)?.get(best);
      if (gone !== undefined) weight.set(j, (weight.get(j) ?? 0) - gone);
    }
  }
  return order;

  function wantedOf(i: number): number {
    return stretches[i]?.wanted ?? 0;
  }
}

function totalOf(values: ReadonlyMap<number, number> | undefined): number {
  let total = 0;
  for (const value of values?.values() ?? []) total += value;
  return total;
}

/** What it costs that `a` runs at a smaller place than `b`. */
function costOf(a: LaneStretch, b: LaneStretch): number {
  if (a.wire !== undefined && a.wire === b.wire && a.min < b.max) return 0;
  let cost = a.min >= b.max ? IMPOSSIBLE_COST : 0;
  for (const end of a.ends) if (end.side > 0) cost += meeting(end, b);
  for (const end of b.ends) if (end.side < 0) cost += meeting(end, a);
  return cost;
}

/** What it costs that the wire behind an end must get past another stretch. */
function meeting(end: StretchEnd, other: LaneStretch): number {
  for (const theirs of other.ends) {
    if (theirs.side === -end.side && Math.abs(theirs.at - end.at) < SAME_PX) return LYING_COST;
  }
  return end.at > low(other) && end.at < high(other) ? 1 : 0;
}

/** As near to where each wants to be as the widest lanes allow for which there is room. */
function spread(
  stretches: readonly LaneStretch[],
  order: readonly number[],
  beside: Beside,
): ReadonlyMap<number, number> {
  const rank = new Map(order.map((i, n) => [i, n]));
  const before = order.map((i, n) => (beside.get(i) ?? []).filter((j) => (rank.get(j) ?? n) < n));
  const after = order.map((i, n) => (beside.get(i) ?? []).filter((j) => (rank.get(j) ?? n) > n));
  const backwards = [...order.keys()].reverse();
  for (const lane of LANES_PX) {
    const least = new Map<number, number>();
    const most = new Map<number, number>();
    for (const n of order.keys()) least.set(own(n), pushed(least, n, lane, stretchAt(n).min));
    for (const n of backwards) most.set(own(n), held(most, n, lane, stretchAt(n).max));
    const fits = order.every((i) => (least.get(i) ?? 0) <= (most.get(i) ?? 0) + 0.01);
    if (!fits && lane !== LANES_PX.at(-1)) continue;
    const up = new Map<number, number>();
    const down = new Map<number, number>();
    const within = (n: number, value: number) => {
      const [a, b] = [least.get(own(n)) ?? 0, most.get(own(n)) ?? 0];
      return Math.max(Math.min(a, b), Math.min(b, value));
    };
    for (const n of order.keys()) up.set(own(n), within(n, pushed(up, n, lane, stretchAt(n).wanted)));
    for (const n of backwards) down.set(own(n), within(n, held(down, n, lane, stretchAt(n).wanted)));
    // Both keep the lanes, so what lies half way keeps them as well, and is in the middle.
    return new Map(order.map((i) => [i, ((up.get(i) ?? 0) + (down.get(i) ?? 0)) / 2]));
  }
  return new Map();

  function own(n: number): number {
    return order[n] ?? 0;
  }
  function stretchAt(n: number): LaneStretch {
    return stretches[own(n)] as LaneStretch;
  }
  function pushed(places: ReadonlyMap<number, number>, n: number, lane: number, value: number): number {
    return (before[n] ?? []).reduce((v, j) => Math.max(v, (places.get(j) ?? v - lane) + lane), value);
  }
  function held(places: ReadonlyMap<number, number>, n: number, lane: number, value: number): number {
    return (after[n] ?? []).reduce((v, j) => Math.min(v, (places.get(j) ?? v + lane) - lane), value);
  }
}
