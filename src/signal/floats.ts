/**
 * Arrays for the carriers of a band, cut from larger blocks: a large design makes tens of thousands of them, and
 * what costs then is not the arithmetic but one allocation, and one collection, for each.
 */

/** Small, because a block stays in memory as long as any array cut from it [numbers]. */
const BLOCK = 2048;

let block = new Float64Array(BLOCK);
let used = 0;

/** An array of n zeros. */
export function zeros(n: number): Float64Array {
  if (n > BLOCK / 4) return new Float64Array(n);
  if (used + n > BLOCK) {
    block = new Float64Array(BLOCK);
    used = 0;
  }
  used += n;
  return new Float64Array(block.buffer, (used - n) * 8, n);
}
