/** How one ordered list became another, entry by entry; entries are told apart by a key that is unique in each list. */
import { isSameValue } from "./options.ts";

export type ListPatch<T> = {
  /** Taken out: place in the list before, ascending. What moved is taken out and put in. */
  readonly out: readonly (readonly [index: number, entry: T])[];
  /** Put in: place in the list after, ascending. */
  readonly in: readonly (readonly [index: number, entry: T])[];
  /** Changed where they stand. */
  readonly changed: readonly (readonly [before: T, after: T])[];
};

/** Null where the lists say the same. */
export function listDifference<T>(
  before: readonly T[],
  after: readonly T[],
  keyOf: (entry: T) => string,
): ListPatch<T> | null {
  if (before === after) return null;
  const placeBefore = new Map(before.map((entry, i) => [keyOf(entry), i] as const));
  const staying = new Set<string>();
  const entered: [number, T][] = [];
  const changed: [T, T][] = [];
  let last = -1;
  for (const [i, entry] of after.entries()) {
    const key = keyOf(entry);
    const place = placeBefore.get(key);
    // Whoever stands before one that stays was moved there.
    if (place === undefined || place < last) {
      entered.push([i, entry]);
      continue;
    }
    last = place;
    staying.add(key);
    const former = before[place];
    if (former !== undefined && !isSameValue(former, entry)) changed.push([former, entry]);
  }
  const out = [...before.entries()].filter(([, entry]) => !staying.has(keyOf(entry)));
  return out.length + entered.length + changed.length === 0 ? null : { out, in: entered, changed };
}

/** The list after; null where the patch was not made for this list. */
export function applyList<T>(
  patch: ListPatch<T>,
  list: readonly T[],
  keyOf: (entry: T) => string,
): readonly T[] | null {
  const out = new Set<number>();
  for (const [index, entry] of patch.out) {
    const standing = list[index];
    if (standing === undefined || keyOf(standing) !== keyOf(entry)) return null;
    out.add(index);
  }
  const changes = new Map(patch.changed.map(([former, entry]) => [keyOf(former), entry] as const));
  const staying = list.filter((_, i) => !out.has(i));
  const kept = staying.map((entry) => changes.get(keyOf(entry)) ?? entry);
  if (staying.filter((entry) => changes.has(keyOf(entry))).length !== patch.changed.length) return null;

  const result: T[] = [];
  let taken = 0;
  for (const [index, entry] of patch.in) {
    const wanted = index - result.length;
    if (wanted < 0 || taken + wanted > kept.length) return null;
    result.push(...kept.slice(taken, taken + wanted), entry);
    taken += wanted;
  }
  result.push(...kept.slice(taken));
  return new Set(result.map(keyOf)).size === result.length ? result : null;
}

/** The way back. */
export function invertList<T>(patch: ListPatch<T>): ListPatch<T> {
  return { out: patch.in, in: patch.out, changed: patch.changed.map(([before, after]) => [after, before]) };
}
