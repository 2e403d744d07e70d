/** Patterns that tell lines apart without colour. */
const DASHES = ["1 3", "7 2 1 2", "3 3", "10 3", "7 2 1 2 1 2"] as const;

/** The pattern of the n-th carrier of a walk; with many carriers they come again. */
export function dashOf(n: number): string {
  return DASHES[n % DASHES.length] ?? DASHES[0];
}
