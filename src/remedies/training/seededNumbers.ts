/** Numbers that look random and are the same for the same seed, so that a trainer can hand out one case to all. */

/**
 * Numbers from 0 (included) to 1 (excluded). "mulberry32" by Tommy Ettinger, public domain (2017),
 * as widely published in JavaScript: 32 bits of state, full period.
 */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Takes one of the items, each as likely as its weight; undefined from an empty list. */
export function drawn<T>(
  items: readonly T[],
  weightOf: (item: T) => number,
  next: () => number,
): T | undefined {
  const total = items.reduce((sum, item) => sum + weightOf(item), 0);
  let rest = next() * total;
  return items.find((item) => {
    rest -= weightOf(item);
    return rest < 0;
  });
}
