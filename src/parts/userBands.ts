/** User bands of channel-stacked feeds: the usual sets, and how a part's options choose among them. */
import { z } from "zod";
import { type TuningRequest, tuningDscr, tuningScr } from "../rf/tuningWord.ts";
import type { StackStandard } from "../signal/band.ts";
import { remembered } from "../signal/remember.ts";
import { plural } from "../words/plural.ts";
import type { StackPath } from "./contract.ts";
import { choice, number, rows, wholeNumber } from "./fields.ts";
import type { OptionTrade } from "./optionTrade.ts";
import { SKY_SPLIT_MHZ, satelliteBandOf } from "./planSatellite.ts";
import { C_BAND_LO_MHZ, KA_BAND_LO_MHZ, UNIVERSAL_HIGH_LO_MHZ, UNIVERSAL_LOW_LO_MHZ } from "./quadrants.ts";

export type UserBand = StackPath["userBands"][number];
export type BandSet = keyof typeof USUAL_CENTRES_MHZ;

/** Most user bands on one output: 8 in EN 50494, 32 in EN 50607, as quoted in the scope of the latter. */
export const MOST_USER_BANDS: Readonly<Record<StackStandard, number>> = {
  "EN 50494": 8,
  "EN 50607": 32,
  both: 32,
};

/** Centres of the first four user bands of the long set, on which older receivers are usually set too [MHz]. */
const FOUR_MHZ = [1210, 1420, 1680, 2040] as const;

/** The first twelve of those between them [MHz]. */
const TWELVE_MHZ = [984, 1020, 1056, 1092, 1128, 1164, 1256, 1292, 1328, 1364, 1458, 1494] as const;

/**
 * Usual centres [MHz], in the order of the user bands' numbers; as quoted in public tables of LNBs.
 * The 32nd of the long set lies at 2148 MHz, so its upper half is beyond the 2150 MHz of most cables' parts.
 */
export const USUAL_CENTRES_MHZ = {
  four: FOUR_MHZ,
  eight: [1284, 1400, 1516, 1632, 1748, 1864, 1980, 2096],
  sixteen: [...FOUR_MHZ, ...TWELVE_MHZ],
  thirtyTwo: [
    ...FOUR_MHZ,
    ...TWELVE_MHZ,
    ...[1530, 1566, 1602, 1638, 1716, 1752, 1788, 1824, 1860, 1896, 1932, 1968, 2004, 2076, 2112, 2148],
  ],
} as const;

/** Of the set of 16, so many listen to EN 50494, and all beyond them to EN 50607 (common practice, no source). */
const SCR_OF_SIXTEEN = 4;

/**
 * What a receiver sends to get a transponder on a user band; null where the standard's word does not reach.
 * Receivers reckon with the oscillators of a universal converter, whatever feeds the stacking one; for C band and Ka band
 * with the usual ones there, which may stand above the signal.
 */
export function tuningFor(
  standard: StackStandard,
  o: { readonly airMHz: number; readonly userBandMHz: number },
): TuningRequest | null {
  const { airMHz, userBandMHz } = o;
  const band = satelliteBandOf(airMHz);
  const loMHz =
    band === "C"
      ? C_BAND_LO_MHZ
      : band === "Ka"
        ? KA_BAND_LO_MHZ
        : airMHz < SKY_SPLIT_MHZ
          ? UNIVERSAL_LOW_LO_MHZ
          : UNIVERSAL_HIGH_LO_MHZ;
  const ifMHz = Math.abs(airMHz - loMHz);
  return standard === "EN 50494" ? tuningScr({ ifMHz, userBandMHz }) : tuningDscr({ ifMHz, userBandMHz });
}

/** Width of a user band [MHz]: analogue filters 46 to 60, digital ones 30 to 36; typical, from memory. */
const USUAL_WIDTH_MHZ = { four: 50, eight: 50, sixteen: 36, thirtyTwo: 36 } as const;

const SET_CHOICES = [
  { value: "four", label: "Usual set of 4" },
  { value: "eight", label: "Usual set of 8" },
  { value: "sixteen", label: "4 SCR and 12 dSCR" },
  { value: "thirtyTwo", label: "Usual set of 32" },
] as const;

export const STANDARD_CHOICES = [
  { value: "EN 50494", label: "SCR (EN 50494)" },
  { value: "EN 50607", label: "dSCR (EN 50607)" },
  { value: "both", label: "SCR and dSCR" },
] as const;

/** Choices of a standard and of a usual set, for a list of outputs that differ in them. */
export function usualBandFields() {
  return {
    standard: choice({ label: "Standard", choices: STANDARD_CHOICES, default: "EN 50607" }),
    bandSet: choice({ label: "User bands", choices: SET_CHOICES, default: "thirtyTwo" }),
  };
}

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
      choices: STANDARD_CHOICES,
      default: o.standard,
      means: "user band standard",
      ...onSite,
    }),
    bandSet: choice({
      label: "User bands",
      help: "One for each tuner. A usual set, or a list of your own.",
      choices: [...SET_CHOICES, { value: "own", label: "List below" }],
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
    ...stackFields(onSite),
  };
}

/** What the stage that makes the user bands does to them. */
export function stackFields(onSite: Pick<OptionTrade, "onSite" | "onlyWhen">) {
  return {
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
    stackLeastDbuv: number({
      label: "Least input level",
      unit: "dBµV",
      help: "For each transponder. Below it the gain control is at its end, and the user band gets weaker.",
      min: 30,
      max: 90,
      step: 1,
      default: 60,
      source: "60 to 90 dBµV, a trade forum on one unit",
      advanced: true,
      spreadDb: 2,
    }),
    stackNoiseDb: number({
      label: "Noise figure of the user bands",
      unit: "dB",
      help: "Referred to what comes to the stage that makes them.",
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
    if (o.bandSet !== "own") return usualUserBands({ standard: o.standard, bandSet: o.bandSet });
    const most = MOST_USER_BANDS[o.standard];
    const byNumber = new Map<number, UserBand>();
    for (const row of o.ownBands)
      if (row.number <= most && !byNumber.has(row.number))
        byNumber.set(row.number, { ...row, widthMHz: o.ownWidthMHz });
    return [...byNumber.values()];
  });
}

type UsualBands = { readonly standard: StackStandard; readonly bandSet: BandSet };

const usual = new Map<string, readonly UserBand[]>();

/** A usual set as far as a standard reaches; the mixed one brings its own. The same list whoever asks. */
export function usualUserBands({ standard, bandSet }: UsualBands): readonly UserBand[] {
  return remembered(usual, `${standard} ${bandSet}`, () => {
    const widthMHz = USUAL_WIDTH_MHZ[bandSet];
    const isMixed = bandSet === "sixteen";
    return USUAL_CENTRES_MHZ[bandSet].slice(0, isMixed ? undefined : MOST_USER_BANDS[standard]).map(
      (centreMHz, i): UserBand => ({
        number: i + 1,
        centreMHz,
        widthMHz,
        ...(isMixed ? { standard: i < SCR_OF_SIXTEEN ? "EN 50494" : "EN 50607" } : {}),
      }),
    );
  });
}

/** "8 user bands · SCR", "16 user bands · SCR and dSCR". */
export function userBandCaption(o: UserBandOptions): string {
  const bands = plural(userBandsOf(o).length, {
    zero: "no user band",
    one: (n) => `${n} user band`,
    other: (n) => `${n} user bands`,
  });
  const standards = new Set(userBandsOf(o).map((band) => band.standard ?? o.standard));
  const words = [...(standards.size > 0 ? standards : [o.standard])].map((s) =>
    s === "both" ? "SCR and dSCR" : s === "EN 50494" ? "SCR" : "dSCR",
  );
  return `${bands} · ${words.join(" and ")}`;
}
