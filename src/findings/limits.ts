/** What an outlet or a receiver should find: profiles of limits, dated and with their sources. */

import { type Settings, settingsOf } from "../design/settings.ts";
import { requiredCnDb } from "../rf/thresholds.ts";
import type { Service } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";
import { numeralAsSet } from "../words/numbers.ts";

export type Limits = {
  readonly minDbuv: number;
  readonly maxDbuv: number;
  /** Least C/N [dB]: what the profile asks for, or else what the mode needs and `CN_SPARE_DB` more. */
  readonly cnDb: number;
  /** Least carrier to third-order products [dB]; absent where the profile asks for none. */
  readonly imDb?: number;
  /** Where the least C/N comes from, where the profile sets none that the mode can do with. */
  readonly cnSource?: string;
};

/**
 * Spare above what a mode needs, where a profile sets no C/N [dB]: for rain, ageing and weather. A choice of this
 * tool; 3 dB is a usual reserve in link budgets, from memory.
 */
export const CN_SPARE_DB = 3;

/** What a profile says of a service: a level, and sometimes a C/N. */
type Row = Omit<Limits, "cnDb" | "cnSource"> & {
  readonly cnDb?: number;
  readonly service: Service;
  readonly mode: string;
};

/** The wide band of a network [MHz]: terrestrial, or satellite IF. */
export type NetworkRange = "terrestrial" | "satellite";

export type Profile = {
  readonly name: string;
  readonly dated: string;
  readonly source: string;
  /** Tried in order: the first whose service fits and whose text starts the mode decides. */
  readonly rows: readonly Row[];
  /** Most that two carriers of a service may differ at an outlet [dB]. */
  readonly differenceDb: Partial<Record<Service, number>>;
  /** Most that the level may fall or rise from one end of a range to the other [dB]. */
  readonly slopeDb: Partial<Record<NetworkRange, number>>;
  /** Least isolation between outlets of different dwellings [dB]. */
  readonly isolation: readonly { readonly fromMHz: number; readonly toMHz: number; readonly db: number }[];
};

const level = (service: Service, mode: string, minDbuv: number, maxDbuv: number, cnDb?: number): Row => ({
  service,
  mode,
  minDbuv,
  maxDbuv,
  ...(cnDb === undefined ? {} : { cnDb }),
});

/** Where the isolation of every profile comes from. */
export const ISOLATION_SOURCE = "Spanish Royal Decree 346/2011, Annex I 4.4";

/** Isolation figures of the Spanish law; EN 60728-1's own were not at hand in a form worth trusting. */
const RD346_ISOLATION = [
  { fromMHz: 47, toMHz: 300, db: 38 },
  { fromMHz: 300, toMHz: 862, db: 30 },
  { fromMHz: 950, toMHz: 2150, db: 20 },
];

const EN_60728: Profile = {
  name: "EN 60728-1, as quoted",
  dated: "levels as quoted in a public table; seen 2026",
  source: "EN 60728-1 outlet levels, as quoted in a public table",
  rows: [
    level("fm", "fm-mono", 40, 70, 38),
    level("fm", "", 50, 70, 48),
    level("dab", "", 28, 94),
    // Not in the table: estimated from its C/N beside that of 64 QAM.
    level("tv", "dvbt2-256qam", 44, 74),
    level("tv", "dvbt2-64qam", 39, 74),
    level("tv", "dvbt2", 35, 74),
    level("tv", "dvbt-64qam", 45, 74, 26),
    level("tv", "", 36, 74),
    level("satellite", "", 47, 77),
  ],
  // From memory.
  differenceDb: { tv: 12, satellite: 15 },
  slopeDb: {},
  isolation: RD346_ISOLATION,
};

const RD_346: Profile = {
  name: "Royal Decree 346/2011, Annex I",
  dated: "2011, section 4",
  source: "Spanish Royal Decree 346/2011, Annex I 4.3 to 4.5",
  rows: [
    level("fm", "", 40, 70, 38),
    level("dab", "", 30, 70, 18),
    { ...level("tv", "", 47, 70, 25), imDb: 30 },
    { ...level("satellite", "dvbs-", 47, 77, 11), imDb: 18 },
    { ...level("satellite", "dvbs2-qpsk", 47, 77, 12), imDb: 18 },
    { ...level("satellite", "", 47, 77, 14), imDb: 18 },
  ],
  differenceDb: {},
  slopeDb: { terrestrial: 16, satellite: 20 },
  isolation: RD346_ISOLATION,
};

const PRACTICE: Profile = {
  name: "Good practice (UK), as quoted",
  dated: "installers' pages seen 2026; codes from memory",
  source: "UK installers' page (TV 45 to 65 dBµV, C/N 26 dB good); targets for flats from memory",
  rows: [
    level("fm", "", 54, 74, 38),
    level("dab", "", 40, 65, 18),
    level("tv", "", 45, 65, 26),
    level("satellite", "", 52, 75),
  ],
  differenceDb: { tv: 12, satellite: 15 },
  slopeDb: {},
  isolation: RD346_ISOLATION,
};

const profiles = new WeakMap<Settings, Profile>();

/** The profile that a design is judged by; the same object as long as its settings are. */
export function profileOf(design: { readonly settings?: Settings }): Profile {
  const settings = settingsOf(design);
  return remembered(profiles, settings, () => profileFor(settings));
}

function profileFor(settings: Settings): Profile {
  switch (settings.limits) {
    case "en60728":
      return EN_60728;
    case "rd346":
      return RD_346;
    case "practice":
      return PRACTICE;
    case "own":
      return {
        name: "My own limits",
        dated: "as set in this design",
        source: "limits set in this design",
        rows: settings.ownLimits.map((row) =>
          level(row.service, "", row.minDbuv, row.maxDbuv, row.cnDb || undefined),
        ),
        differenceDb: {},
        slopeDb: {},
        isolation: RD346_ISOLATION,
      };
  }
}

/** By profile, for every service and mode that was asked for. */
const known = new WeakMap<Profile, Map<string, Limits | undefined>>();

/**
 * Limits for a carrier; undefined for what nobody judges. `requiredDb`: what it needs, where its mode does not tell it,
 * as on a user band.
 */
export function limitsFor(
  profile: Profile,
  service: Service,
  mode: string,
  requiredDb = requiredCnDb(mode),
): Limits | undefined {
  const byMode = remembered(known, profile, () => new Map<string, Limits | undefined>());
  return remembered(byMode, `${service} ${mode} ${requiredDb}`, () => {
    const row = profile.rows.find((r) => r.service === service && mode.startsWith(r.mode));
    if (!row) return undefined;
    const { minDbuv, maxDbuv, cnDb, imDb } = row;
    const always = { minDbuv, maxDbuv, ...(imDb === undefined ? {} : { imDb }) };
    // A limit below what the mode needs would call good what nobody can receive.
    if (cnDb !== undefined && cnDb >= requiredDb) return { ...always, cnDb };
    return { ...always, cnDb: requiredDb + CN_SPARE_DB, cnSource: CN_SOURCE };
  });
}

/** Sums of decibels that should meet a limit come out by so little beside it [dB]. */
const SAME_DB = 1e-6;

/** Whether a limit is passed. `excessDb`: by how much [dB]. */
export function isBeyond(excessDb: number): boolean {
  return excessDb > SAME_DB;
}

const CN_SOURCE = `C/N that the modulation needs, and ${numeralAsSet(CN_SPARE_DB)} dB to spare: a choice of this tool`;
