/** What a change costs: parts, hours, cables to pull. Prices are the user's own; none is known here. */
import type { Part } from "../design/design.ts";
import type { ChangedPart, Difference } from "./difference.ts";

export type Price = {
  /** Of one part, or of one metre of cable, in whatever currency the user reckons in. */
  readonly price: number;
  /** Time to put one in place, a whole run for a cable [min]. */
  readonly workMinutes: number;
};

/** By key of the catalogue. */
export type PriceList = Readonly<Record<string, Price>>;

export type Cost = {
  readonly partsPrice: number;
  readonly workMinutes: number;
  /** Cables to pull: new ones, and old ones replaced by another grade. */
  readonly newCables: number;
};

const FREE: Price = { price: 0, workMinutes: 0 };

/** Turning a knob, a switch or a menu [min]; common practice, no source. */
const SETTING_MINUTES = 5;
/** Turning the dish by the meter [min]; common practice, no source. */
const ALIGNING_MINUTES = 40;
/** Taking a part off is quicker than putting one in; common practice, no source. */
const REMOVAL_SHARE = 0.25;

/** Settings made at the part as it hangs there; whatever else differs is another part. */
const SETTINGS: readonly (readonly [kind: RegExp, options: RegExp])[] = [
  [/^receiver-/, /./],
  [/^amp-/, /^(gainDb|slopeDb|padDb|radioGainDb|aerialSupply|switchedOn)$/],
  [
    /^(multiswitch|stacking-converter)$/,
    /^(mainsOn|feedsLnb|terrestrialGainDb|bandSet|ownBands|stackDbuv|standard)$/,
  ],
  [/^lnb-stacked$/, /^(bandSet|ownBands|standard)$/],
  [/^power-inserter$/, /^switchedOn$/],
  [/^outlet-/, /^dwelling$/],
  // Somebody else's transmitters: nothing to be done on site.
  [/^(aerial-|pick-up)/, /^(channels|blocks|stations|levelDbuv|mast|handset|cordless)/],
];

export function costOf(diff: Difference, prices: PriceList): Cost {
  const of = (part: Part) => prices[part.kind] ?? FREE;
  let partsPrice = 0;
  let workMinutes = 0;
  const place = (part: Part) => {
    partsPrice += of(part).price * metresOf(part);
    workMinutes += of(part).workMinutes;
  };
  for (const part of diff.added) place(part);
  for (const part of diff.removed) workMinutes += of(part).workMinutes * REMOVAL_SHARE;
  for (const change of diff.changed) {
    const minutes = settingMinutes(change);
    if (minutes === null) place(change.after);
    else workMinutes += minutes;
  }
  const led =
    diff.added.length + diff.removed.length + diff.changed.length === 0 ? diff.wiresAdded.length : 0;
  return { partsPrice, workMinutes: workMinutes + led * SETTING_MINUTES, newCables: newCables(diff) };
}

function metresOf(part: Part): number {
  const { lengthM } = part.options;
  return part.kind === "cable" && typeof lengthM === "number" ? lengthM : 1;
}

/** Null where it takes another part. */
function settingMinutes({ before, after, options }: ChangedPart): number | null {
  if (before.kind !== after.kind) return null;
  if (after.kind === "dish" && options.every((key) => key === "pointingLossDb")) return ALIGNING_MINUTES;
  const settings = SETTINGS.filter(([kind]) => kind.test(after.kind)).map(([, option]) => option);
  return options.every((key) => settings.some((one) => one.test(key))) ? SETTING_MINUTES : null;
}

function newCables(diff: Difference): number {
  const isCable = (part: Part) => part.kind === "cable";
  return diff.added.filter(isCable).length + diff.changed.filter(({ after }) => isCable(after)).length;
}
