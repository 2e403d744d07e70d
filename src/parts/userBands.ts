/** User bands of channel-stacked feeds: the usual sets, and how a part's options choose among them. */
import { z } from "zod";
import { type TuningRequest, tuningDscr, tuningScr } from "../rf/tuningWord.ts";
import { remembered } from "../signal/remember.ts";
import { plural } from "../words/plural.ts";
import type { StackPath } from "./contract.ts";
import { choice, number, rows, wholeNumber } from "./fields.ts";
import { SKY_SPLIT_MHZ } from "./planSatellite.ts";
import { UNIVERSAL_HIGH_LO_MHZ, UNIVERSAL_LOW_LO_MHZ } from "./quadrants.ts";

export type UserBand = StackPath["userBands"][number];
export type StackStandard = StackPath["standard"];

/** Most user bands on one output: 8 in EN 50494, 32 in EN 50607, as quoted in the scope of the latter. */
export const MOST_USER_BANDS: Readonly<Record<StackStandard, number>> = { "EN 50494": 8, "EN 50607": 32 };

/**
 * Usual centres [MHz], in the order of the user bands' numbers; as quoted in public tables of LNBs.
 * The 32nd of the long set lies at 2148 MHz, so its upper half is beyond the 2150 MHz of most cables' parts.
 */
export const USUAL_CENTRES_MHZ = {
  four: [1210, 1420, 1680, 2040],
  eight: [1284, 1400, 1516, 1632, 1748, 1864, 1980, 2096],
  thirtyTwo: [
    1210, 1420, 1680, 2040, 984, 1020, 1056, 1092, 1128, 1164, 1256, 1292, 1328, 1364, 1458, 1494, 1530, 1566,
    1602, 1638, 1716, 1752, 1788, 1824, 1860, 1896, 1932, 1968, 2004, 2076, 2112, 2148,
  ],
} as const;

/**
 * What a receiver sends to get a transponder on a user band; null where the standard's word does not reach.
 * Receivers reckon with the oscillators of a universal converter, whatever feeds the stacking one.
 */
export function tuningFor(
  standard: StackStandard,
  o: { readonly airMHz: number; readonly userBandMHz: number },
): TuningRequest | null {
  const { airMHz, userBandMHz } = o;
  const ifMHz = airMHz - (airMHz < SKY_SPLIT_MHZ ? UNIVERSAL_LOW_LO_MHZ : UNIVERSAL_HIGH_LO_MHZ);
  return standard === "EN 50494" ? tuningScr({ ifMHz, userBandMHz }) : tuningDscr({ ifMHz, userBandMHz });
}

/** Width of a user band [MHz]: analogue filters 46 to 60, digital ones 30 to 36; typical, from memory. */
const USUAL_WIDTH_MHZ = { four: 50, eight: 50, thirtyTwo: 36 } as const;

export function userBandFields(o: {
  readonly standard: StackStandard;
  readonly set: "four" | "thirtyTwo";
  /** Whether user bands and their level are set at the unit: an LNB comes as it is. */
  readonly onSite: "setting" | undefined;
}) {
  const onSite = o.onSite ? { onSite: o.onSite } : {};
  return {
    standard: choice({
      label: "Standard",
      help: "EN 50494 (SCR) has up to 8 user bands, EN 50607 (dSCR) up to 32. The receivers must support the same one.",
      choices: [
        { value: "EN 50494", label: "SCR (EN 50494)" },
        { value: "EN 50607", label: "dSCR (EN 50607)" },
      ],
      default: o.standard,
      means: "user band standard",
      ...onSite,
    }),
    bandSet: choice({
      label: "User bands",
      help: "One for each tuner. A usual set, or a list of your own.",
      choices: [
        { value: "four", label: "Usual set of 4" },
        { value: "eight", label: "Usual set of 8" },
        { value: "thirtyTwo", label: "Usual set of 32" },
        { value: "own", label: "List below" },
      ],
      default: o.set,
      means: "user band set",
      ...onSite,
    }),
    ownBands: rows({
      label: "Own user bands",
      help: "Used when the set is your own list.",
      row: z.object({
        number: wholeNumber({ label: "Number", min: 1, max: 32, default: 1 }),
        centreMHz: number({ label: "Centre", unit: "MHz", min: 950, max: 2150, step: 1, default: 1210 }),
      }),
      maxRows: 32,
      default: USUAL_CENTRES_MHZ.four.map((centreMHz, i) => ({ number: i + 1, centreMHz })),
      source: "usual set of four, as quoted in public tables of LNBs",
      ...onSite,
      onlyWhen: { bandSet: "own" },
    }),
    ownWidthMHz: number({
      label: "Width of own user bands",
      unit: "MHz",
      help: "Used when the set is your own list.",
      min: 10,
      max: 100,
      step: 1,
      default: 46,
      source: "analogue filters 46 to 60, digital 30 to 36; typical, from memory",
      advanced: true,
      onlyWhen: { bandSet: "own" },
    }),
    stackDbuv: number({
      label: "Level of each user band",
      unit: "dBµV",
      help: "Held by automatic gain control.",
      min: 50,
      max: 110,
      step: 1,
      default: 80,
      source: "typical (75 to 85), from memory",
      means: "user band level",
      ...onSite,
      spreadDb: 2,
    }),
    stackNoiseDb: number({
      label: "Noise figure of the user bands",
      unit: "dB",
      min: 0,
      max: 20,
      step: 0.5,
      default: 8,
      source: "order of magnitude, from memory",
      advanced: true,
      spreadDb: 2,
    }),
  };
}

export type UserBandOptions = z.output<z.ZodObject<ReturnType<typeof userBandFields>>>;

const lists = new WeakMap<UserBandOptions, readonly UserBand[]>();

/**
 * The user bands of a part, no more than its standard can address.
 * Of a number that is listed twice the first counts: no message could tell the two apart.
 * The same list for the same options, so that all outputs share what is worked out from it.
 */
export function userBandsOf(o: UserBandOptions): readonly UserBand[] {
  return remembered(lists, o, () => {
    const most = MOST_USER_BANDS[o.standard];
    const byNumber = new Map<number, UserBand>();
    for (const band of listedBands(o))
      if (band.number <= most && !byNumber.has(band.number)) byNumber.set(band.number, band);
    return [...byNumber.values()];
  });
}

function listedBands(o: UserBandOptions): readonly UserBand[] {
  const { bandSet } = o;
  if (bandSet === "own") return o.ownBands.map((row) => ({ ...row, widthMHz: o.ownWidthMHz }));
  const widthMHz = USUAL_WIDTH_MHZ[bandSet];
  return USUAL_CENTRES_MHZ[bandSet].map((centreMHz, i) => ({ number: i + 1, centreMHz, widthMHz }));
}

/** "8 user bands · SCR". */
export function userBandCaption(o: UserBandOptions): string {
  const bands = plural(userBandsOf(o).length, {
    zero: "no user band",
    one: (n) => `${n} user band`,
    other: (n) => `${n} user bands`,
  });
  return `${bands} · ${o.standard === "EN 50494" ? "SCR" : "dSCR"}`;
}
