/** Figures as sentences print them. */

/** Beyond so many decimals no difference means anything. */
const MOST_DECIMALS = 4;

/**
 * A figure and the limit that it is held against, with as many decimals as their difference needs: one that is too
 * small never reads as if it were met. [11.46, 11.5] gives "11.46" and "11.5"; [11, 11.5] gives "11" and "11.5".
 */
export function besideLimit(value: number, limit: number): readonly [value: string, limit: string] {
  let decimals = 1;
  while (decimals < MOST_DECIMALS && value !== limit && rounded(value, decimals) === rounded(limit, decimals))
    decimals++;
  return [rounded(value, decimals), rounded(limit, decimals)];
}

function rounded(x: number, decimals: number): string {
  // Minus zero is zero.
  return String(Number(x.toFixed(decimals)) + 0);
}
