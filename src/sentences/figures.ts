/** Figures as sentences print them. */
import { NO_FIGURE, numeral } from "../words/numbers.ts";

/** Beyond so many decimals no difference means anything. */
const MOST_DECIMALS = 4;

/**
 * A figure and the limit that it is held against, with as many decimals as their difference needs: one that is too
 * small never reads as if it were met. [11.46, 11.5] gives "11.46" and "11.5"; [11, 11.5] gives "11" and "11.5".
 */
export function besideLimit(value: number, limit: number): readonly [value: string, limit: string] {
  let decimals = 1;
  while (decimals < MOST_DECIMALS && value !== limit && numeral(value, decimals) === numeral(limit, decimals))
    decimals++;
  return [numeral(value, decimals), numeral(limit, decimals)];
}

/** "62–71 dBµV", "62 dBµV" when both ends read alike, "–" for nothing. */
export function levelRangeWords(min: number | undefined, max: number | undefined): string {
  const [low, high] = [numeral(min, 0), numeral(max, 0)];
  if (low === NO_FIGURE || high === NO_FIGURE) return NO_FIGURE;
  return low === high ? `${low} dBµV` : `${low}–${high} dBµV`;
}
