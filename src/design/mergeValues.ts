/** The small steps of a three-way merge: one value, and the order of a list. */
import { isSameValue } from "./options.ts";

/** Something that both sides changed to different results. */
export type MergeClash = {
  /** Id of the part that it concerns; null: the design as a whole. */
  readonly part: string | null;
  /** Key of an option or a setting, or "label", "place", "kind", "wire", "removed", "title", "lesson", "variant", "size". */
  readonly what: string;
};

/** Takes down a clash. */
export type NoteClash = (part: string | null, what: string) => void;

/** The value of the side that changed it. Where both did, differently, it is a clash, and theirs stands. */
export function mergeValue<T>(base: T, ours: T, theirs: T, onClash: () => void): T {
  if (isSameValue(ours, theirs) || isSameValue(base, theirs)) return ours;
  if (!isSameValue(base, ours)) onClash();
  return theirs;
}

/**
 * Order of a merged list, by the keys of its entries: that of the side that changed it, theirs where both did.
 * What only the other side has follows its predecessor there; what it has at its end goes to the end.
 */
export function mergeOrder(
  base: readonly string[],
  ours: readonly string[],
  theirs: readonly string[],
  survives: (key: string) => boolean,
): readonly string[] {
  const [main, other] = isSameValue(base, theirs) ? [ours, theirs] : [theirs, ours];
  const known = new Set(main);
  const after = new Map<string | undefined, string[]>();
  let last: string | undefined;
  for (const key of other) {
    if (known.has(key)) last = key;
    else if (survives(key)) after.set(last, [...(after.get(last) ?? []), key]);
  }
  const atEnd = after.get(last) ?? [];
  after.delete(last);
  const before = after.get(undefined) ?? [];
  return [
    ...before,
    ...main.flatMap((key) => [...(survives(key) ? [key] : []), ...(after.get(key) ?? [])]),
    ...atEnd,
  ];
}

/** The former list where the new one holds the very same entries: unchanged lists keep their identity. */
export function keptList<T>(former: readonly T[], list: readonly T[]): readonly T[] {
  return former.length === list.length && former.every((entry, i) => entry === list[i]) ? former : list;
}
