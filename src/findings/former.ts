/** TV channels that are still in a list, and that phones use now. */
import type { Band } from "../signal/band.ts";

/** Whether nobody sends this carrier any more, so that nobody misses it. */
export function isFormer({ grid }: Band, i: number): boolean {
  return grid.plan[grid.index[i] ?? 0]?.former === true;
}
