/** What parts and handwork take: the user's own prices, and minutes that are common practice. */
import type { Part } from "../design/design.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { PartKind } from "../parts/contract.ts";
import { onSiteOf, optionsMeaning } from "../parts/meanings.ts";
import type { OnSite } from "../parts/optionTrade.ts";
import type { ChangedPart } from "./difference.ts";

export type Price = {
  /** Of one part, or of one metre of cable, in whatever currency the user reckons in. */
  readonly price: number;
  /** Time to put one in place, a whole run for a cable [min]. */
  readonly workMinutes: number;
};

/** By key of the catalogue. */
export type PriceList = Readonly<Record<string, Price>>;

export const FREE: Price = { price: 0, workMinutes: 0 };

/** Turning a knob, a switch or a menu; turning the dish by the meter [min]; common practice, no source. */
const SETTING_MINUTES = 5;
/** Taking a lead off and putting it on elsewhere [min]; common practice, no source. */
export const WIRE_MINUTES = 5;
const MINUTES: Readonly<Record<OnSite, number>> = {
  setting: SETTING_MINUTES,
  aligning: 40,
  // Somebody else's transmitters: to take them into the plan is all.
  "not ours": SETTING_MINUTES,
};
/** Taking a dish down and aligning it elsewhere, or on a longer mast [min]; common practice, no source. */
const MOVING_MINUTES = 90;
/** Taking a part off is quicker than putting one in; common practice, no source. */
const REMOVAL_SHARE = 0.25;

/** Exchanging the lead that something gets into, with its plugs [min]; common practice, no source. */
const LEAD_MINUTES = 15;

/** A fault that stands in the drawing as a part goes by the work that it takes to mend it; it is nothing to take off. */
function removalMinutes(part: Part, prices: PriceList): number {
  const trade = kindOf(part.kind)?.trade;
  if (trade?.job === "unwanted signal") return LEAD_MINUTES;
  const { workMinutes } = prices[part.kind] ?? FREE;
  return trade?.defect ? workMinutes : Math.round(workMinutes * REMOVAL_SHARE);
}

/** Time that one part takes [min]. */
export const minutesOf = {
  fit: (part: Part, prices: PriceList) => (prices[part.kind] ?? FREE).workMinutes,
  remove: removalMinutes,
  change: (change: ChangedPart, prices: PriceList) =>
    settingMinutes(change) ?? (prices[change.after.kind] ?? FREE).workMinutes,
} as const;

/** Null where it takes another part. */
export function settingMinutes({ before, after, options }: ChangedPart): number | null {
  const kind = kindOf(after.kind);
  if (!kind || before.kind !== after.kind) return null;
  let most = 0;
  for (const key of options) {
    const way = onSiteOf(kind, key);
    if (!way) return null;
    most = Math.max(most, isMoved(kind, key, before, after) ? MOVING_MINUTES : 0);
    most = Math.max(most, isTurned(kind, key, before, after) ? MINUTES.aligning : MINUTES[way]);
  }
  return most;
}

/** An aerial that gives more than before was turned. */
function isTurned(kind: PartKind, key: string, before: Part, after: Part): boolean {
  if (kind.trade.job !== "aerial" || !optionsMeaning(kind, "source level").includes(key)) return false;
  return Number(after.options[key]) > Number(before.options[key]);
}

/** A dish from which less stands in the way than before stands elsewhere: houses and trees stay where they are. */
function isMoved(kind: PartKind, key: string, before: Part, after: Part): boolean {
  if (!optionsMeaning(kind, "obstacles").includes(key)) return false;
  const [was, is] = [before, after].map(({ options }) => options[key]);
  return Array.isArray(was) && Array.isArray(is) && was.length > 0 && is.length <= was.length;
}
