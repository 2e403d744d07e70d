/** What a change costs: parts, hours, cables to pull. Prices are the user's own; none is known here. */
import type { Part } from "../design/design.ts";
import { kindOf } from "../parts/catalogue.ts";
import { metresOf } from "../parts/meanings.ts";
import type { Difference } from "./difference.ts";
import { FREE, type PriceList, settingMinutes } from "./prices.ts";
import { workOf } from "./work.ts";

export type Cost = {
  readonly partsPrice: number;
  readonly workMinutes: number;
  /** Cables to pull: new ones, and old ones replaced by another grade. */
  readonly newCables: number;
};

/** The minutes are those of the list of `work`, so that who adds them up comes to the same. */
export function costOf(diff: Difference, prices: PriceList, work = workOf(diff, prices)): Cost {
  const bought = [
    ...diff.added,
    ...diff.changed.flatMap((change) => (settingMinutes(change) === null ? [change.after] : [])),
  ];
  return {
    partsPrice: bought.reduce((sum, part) => sum + priceOf(part, prices), 0),
    workMinutes: work.reduce((sum, { minutes }) => sum + minutes, 0),
    newCables: bought.filter((part) => kindOf(part.kind)?.trade.job === "cable").length,
  };
}

function priceOf(part: Part, prices: PriceList): number {
  const kind = kindOf(part.kind);
  return (prices[part.kind] ?? FREE).price * ((kind && metresOf(kind, part.options)) ?? 1);
}
