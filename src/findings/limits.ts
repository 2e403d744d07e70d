/** What an outlet or a receiver should find: profiles of limits, dated and with their sources. */

import { type Settings, settingsOf } from "../design/settings.ts";
import { requiredCnDb } from "../rf/thresholds.ts";
import { isCableMode, type Service } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";
import { numeralAsSet } from "../words/numbers.ts";

export type Limits = {
  readonly minDbuv: number;
  readonly maxDbuv: number;
  /** Least C/N [dB]: what the profile asks for, or else what the mode needs and the profile's reserve more. */
  readonly cnDb: number;
  /** Least carrier to third-order products [dB]; absent where the profile asks for none. */
  readonly imDb?: number;
  /** Where the least C/N comes from, where the profile sets none that the mode can do with. */
  readonly cnSource?: string;
  /**
   * Least MER [dB], where the profile sets one: it counts noise and interference together, and C/N then noise alone.
   * Without it C/N counts both, which is the stricter reading.
   */
  readonly merDb?: number;
};

/**
 * Spare above what a mode needs, where a profile sets neither C/N nor a reserve [dB]: for rain, ageing and weather. A
 * choice of this tool; 3 dB is a usual reserve in link budgets, from memory.
 */
export const CN_SPARE_DB = 3;

/** What a profile says of a service or of one modulation of it. */
export type LimitRow = {
  readonly service: Service;
  /** How the keys of its modes begin; empty: all. */
  readonly mode: string;
  readonly minDbuv: number;
  readonly maxDbuv: number;
  readonly cnDb?: number;
  readonly merDb?: number;
  /** Least carrier to third-order products [dB]. */
  readonly imDb?: number;
  /** Where the row comes from, where that is not the profile's own source. */
  readonly source?: string;
};

/** The wide band of a network [MHz]: terrestrial, or satellite IF. */
export type NetworkRange = "terrestrial" | "satellite";

/** Least isolation between outlets of different dwellings over a range [dB]. */
export type IsolationRow = { readonly fromMHz: number; readonly toMHz: number; readonly db: number };

export type Profile = {
  readonly name: string;
  readonly dated: string;
  readonly source: string;
  /** Tried in order: the first whose service fits and whose text starts the mode decides. */
  readonly rows: readonly LimitRow[];
  /** Most that two carriers of a service may differ at an outlet [dB]. */
  readonly differenceDb: Partial<Record<Service, number>>;
  /** Where that comes from. */
  readonly differenceSource: string;
  /** Most that the level may fall or rise from one end of a range to the other [dB]. */
  readonly slopeDb: Partial<Record<NetworkRange, number>>;
  readonly isolation: readonly IsolationRow[];
  /** Where the isolation comes from, which is often another text than that of the levels. */
  readonly isolationSource: string;
  /**
   * Least C/N above what a mode needs [dB], where no row sets a C/N; `isAlways`: there too. Absent: `CN_SPARE_DB`.
   */
  readonly reserve?: { readonly db: number; readonly source: string; readonly isAlways?: boolean };
  /** Distance that the design keeps from every limit [dB]. */
  readonly keepDb: number;
};

const level = (
  service: Service,
  mode: string,
  minDbuv: number,
  maxDbuv: number,
  more: Pick<LimitRow, "cnDb" | "merDb" | "imDb" | "source"> = {},
): LimitRow => ({ service, mode, minDbuv, maxDbuv, ...more });

const RD346_NETWORK = "Spanish Royal Decree 346/2011, Annex I 4.3 and 4.4";

const RD346_ISOLATION: readonly IsolationRow[] = [
  { fromMHz: 47, toMHz: 300, db: 38 },
  { fromMHz: 300, toMHz: 862, db: 30 },
  { fromMHz: 950, toMHz: 2150, db: 20 },
];

const CN_FROM_MEMORY = "levels as quoted; C/N from memory";
const ESTIMATED = "estimated from the C/N beside that of 64QAM; not in the table";

/** EN 60728-1 outlet levels, as quoted in a public table. */
const EN_60728_ROWS: readonly LimitRow[] = [
  level("fm", "fm-mono", 40, 70, { cnDb: 38, source: CN_FROM_MEMORY }),
  level("fm", "", 50, 70, { cnDb: 48, source: CN_FROM_MEMORY }),
  level("dab", "", 28, 94),
  level("tv", "dvbc-16qam", 41, 61),
  level("tv", "dvbc-64qam", 47, 67, { cnDb: 26, source: CN_FROM_MEMORY }),
  level("tv", "dvbc-256qam", 54, 74, { cnDb: 32, source: CN_FROM_MEMORY }),
  // A mode between two of the table is held to the levels that suit both.
  level("tv", "dvbc-32qam", 47, 61, { source: "what 16QAM and 64QAM share; not in the table" }),
  level("tv", "dvbc-128qam", 54, 67, { source: "what 64QAM and 256QAM share; not in the table" }),
  level("tv", "dvbt2-256qam", 44, 74, { source: ESTIMATED }),
  level("tv", "dvbt2-64qam", 39, 74),
  level("tv", "dvbt2", 35, 74),
  level("tv", "dvbt-64qam-3/4", 48, 74, {
    cnDb: 26,
    source: "levels as a manual quotes them; C/N from memory",
  }),
  level("tv", "dvbt-64qam", 45, 74, { cnDb: 26, source: CN_FROM_MEMORY }),
  level("tv", "", 36, 74),
  level("satellite", "", 47, 77),
];

const EN_60728: Profile = {
  name: "EN 60728-1, as quoted",
  dated: "levels as quoted in a public table; seen 2026",
  source: "EN 60728-1 outlet levels, as quoted in a public table",
  rows: EN_60728_ROWS,
  differenceDb: { tv: 12, satellite: 15 },
  differenceSource: "EN 60728-1, from memory",
  slopeDb: {},
  isolation: RD346_ISOLATION,
  isolationSource: `${RD346_NETWORK}; the figures of EN 60728-1 itself are not known for certain`,
  keepDb: 0,
};

const RD_346: Profile = {
  name: "Royal Decree 346/2011, Annex I",
  dated: "2011, section 4",
  source: "Spanish Royal Decree 346/2011, Annex I 4.3 to 4.5",
  rows: [
    level("fm", "", 40, 70, { cnDb: 38 }),
    level("dab", "", 30, 70, { cnDb: 18 }),
    level("tv", "dvbc-", 45, 70, { cnDb: 28, imDb: 35 }),
    level("tv", "", 47, 70, { cnDb: 25, merDb: 21, imDb: 30 }),
    level("satellite", "dvbs-", 47, 77, { cnDb: 11, imDb: 18 }),
    level("satellite", "dvbs2-qpsk", 47, 77, { cnDb: 12, imDb: 18 }),
    level("satellite", "", 47, 77, { cnDb: 14, imDb: 18 }),
  ],
  differenceDb: {},
  differenceSource: "",
  slopeDb: { terrestrial: 16, satellite: 20 },
  isolation: RD346_ISOLATION,
  isolationSource: RD346_NETWORK,
  keepDb: 0,
};

const TARGETS = "target for flats, from memory";

const PRACTICE: Profile = {
  name: "Good practice (UK), as quoted",
  dated: "installers' pages seen 2026; codes from memory",
  source: "UK installers' page (TV 45 to 65 dBµV, C/N 26 dB good); targets for flats from memory",
  rows: [
    level("fm", "", 54, 74, { cnDb: 38, source: TARGETS }),
    level("dab", "", 40, 65, { cnDb: 18, source: TARGETS }),
    level("tv", "", 45, 65, { cnDb: 26 }),
    level("satellite", "", 52, 75, { source: TARGETS }),
  ],
  differenceDb: { tv: 12, satellite: 15 },
  differenceSource: "EN 60728-1, from memory",
  slopeDb: {},
  isolation: RD346_ISOLATION,
  isolationSource: `${RD346_NETWORK}; no figure of UK practice was found`,
  keepDb: 0,
};

const GERMANY: Profile = {
  ...EN_60728,
  name: "Germany: EN 60728-1 with the trade’s isolation",
  isolation: [
    { fromMHz: 47, toMHz: 862, db: 40 },
    { fromMHz: 950, toMHz: 2150, db: 30 },
  ],
  isolationSource:
    "about 40 dB between subscribers: rule of the German cable trade; 30 dB at satellite IF: from memory",
};

const SWITZERLAND: Profile = {
  ...EN_60728,
  name: "Switzerland: EN 60728-1 with the guideline’s isolation",
  dated: "guideline of 2005, p. 12; levels seen 2026",
  isolation: [
    { fromMHz: 47, toMHz: 300, db: 42 },
    { fromMHz: 300, toMHz: 862, db: 36 },
  ],
  isolationSource:
    "Swiss guideline for in-house networks, 2005: above 42 dB in the 7 MHz raster, 36 dB in the 8 MHz raster; none for satellite IF",
};

const BY_EN = "EN 60728-1, as quoted in a public table";

const ITALY: Profile = {
  name: "Italy: CEI 100-7, as quoted",
  dated: "as two firms quote it; seen 2026",
  source: "CEI 100-7, as quoted by two firms, who differ in the highest TV level (74 and 67 dBµV)",
  rows: [
    ...EN_60728_ROWS.filter(
      (row) => row.service === "fm" || row.service === "dab" || isCableMode(row.mode),
    ).map((row) => ({ ...row, source: row.source ? `EN 60728-1: ${row.source}` : BY_EN })),
    level("tv", "", 47, 74, { cnDb: 25, merDb: 25 }),
    level("satellite", "", 47, 77),
  ],
  differenceDb: { tv: 12, satellite: 15 },
  differenceSource: "EN 60728-1, from memory",
  slopeDb: {},
  isolation: RD346_ISOLATION,
  isolationSource: `${RD346_NETWORK}; no Italian figure was found`,
  reserve: { db: 5, source: "CEI 100-7, as two firms quote it", isAlways: true },
  keepDb: 0,
};

const profiles = new WeakMap<Settings, Profile>();

/** The profile that a design is judged by; the same object as long as its settings are. */
export function profileOf(design: { readonly settings?: Settings }): Profile {
  const settings = settingsOf(design);
  return remembered(profiles, settings, () => profileFor(settings));
}

function profileFor(settings: Settings): Profile {
  const profile = settings.limits === "own" ? ownProfile(settings) : BUILT_IN[settings.limits];
  return settings.keepDb === 0 ? profile : { ...profile, keepDb: settings.keepDb };
}

const BUILT_IN: Readonly<Record<Exclude<Settings["limits"], "own">, Profile>> = {
  en60728: EN_60728,
  rd346: RD_346,
  practice: PRACTICE,
  germany: GERMANY,
  switzerland: SWITZERLAND,
  italy: ITALY,
};

const OWN_SOURCE = "limits set in this design";

/** What somebody set: 0 dB in a row means that nothing is asked for. */
function ownProfile(settings: Settings): Profile {
  const { ownName, ownSource, ownLimits, ownIsolation, ownReserveDb } = settings;
  const source = ownSource.trim() || OWN_SOURCE;
  return {
    name: ownName.trim() || "My own limits",
    dated: "as set in this design",
    source,
    rows: ownLimits.map(({ service, minDbuv, maxDbuv, cnDb, merDb }) =>
      level(service, "", minDbuv, maxDbuv, { ...(cnDb ? { cnDb } : {}), ...(merDb ? { merDb } : {}) }),
    ),
    differenceDb: Object.fromEntries(
      ownLimits.flatMap((row) => (row.differenceDb ? [[row.service, row.differenceDb]] : [])),
    ),
    differenceSource: source,
    slopeDb: {},
    isolation: ownIsolation,
    isolationSource: source,
    reserve: { db: ownReserveDb, source },
    keepDb: 0,
  };
}

/** By profile, for every service and mode that was asked for. */
const known = new WeakMap<Profile, Map<string, Limits | undefined>>();

/**
 * Limits for a carrier; undefined for what nobody judges. `requiredDb`: what it needs, where its mode does not tell it,
 * as on a user band. The distance that the design keeps is not in them: `keptLimits`.
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
    return row && limitsOfRow(profile, row, requiredDb);
  });
}

function limitsOfRow({ reserve }: Profile, row: LimitRow, requiredDb: number): Limits {
  const { minDbuv, maxDbuv, merDb, imDb } = row;
  // A limit below what the mode needs would call good what nobody can receive.
  const least = requiredDb + (reserve?.isAlways ? reserve.db : 0);
  const levels = {
    minDbuv,
    maxDbuv,
    ...(merDb === undefined ? {} : { merDb: Math.max(merDb, least) }),
    ...(imDb === undefined ? {} : { imDb }),
  };
  if (row.cnDb !== undefined && row.cnDb >= least) return { ...levels, cnDb: row.cnDb };
  const spareDb = reserve?.db ?? CN_SPARE_DB;
  return { ...levels, cnDb: requiredDb + spareDb, cnSource: cnSourceOf(spareDb, reserve?.source) };
}

const kept = new WeakMap<Limits, Map<number, Limits>>();

/** The same limits with the distance that the design keeps from them: at most the middle between two that face each other. */
export function keptLimits(limits: Limits, { keepDb }: Profile): Limits {
  if (keepDb === 0) return limits;
  const byDistance = remembered(kept, limits, () => new Map<number, Limits>());
  return remembered(byDistance, keepDb, () => {
    const inside = Math.min(keepDb, Math.max(0, limits.maxDbuv - limits.minDbuv) / 2);
    return {
      ...limits,
      minDbuv: limits.minDbuv + inside,
      maxDbuv: limits.maxDbuv - inside,
      cnDb: limits.cnDb + keepDb,
      ...(limits.merDb === undefined ? {} : { merDb: limits.merDb + keepDb }),
      ...(limits.imDb === undefined ? {} : { imDb: limits.imDb + keepDb }),
    };
  });
}

/** The quality that a carrier lacks most, against what is asked for. */
export type QualityFigure = {
  /** "C/N": against noise alone; the others count interference too. Where the profile sets no MER, "C/(N+I)" is judged. */
  readonly figure: "C/N" | "C/(N+I)" | "MER";
  readonly valueDb: number;
  readonly limitDb: number;
};

/** How good a carrier is against its limits; of C/N and MER the one with less to spare. */
export function qualityOf(
  { cnDb, cniDb }: { readonly cnDb: number; readonly cniDb: number },
  limits: Limits,
): QualityFigure {
  if (limits.merDb === undefined) return { figure: "C/(N+I)", valueDb: cniDb, limitDb: limits.cnDb };
  const byNoise = limits.cnDb - cnDb;
  return limits.merDb - cniDb >= byNoise
    ? { figure: "MER", valueDb: cniDb, limitDb: limits.merDb }
    : { figure: "C/N", valueDb: cnDb, limitDb: limits.cnDb };
}

/** What lies closer to a limit meets it [dB]: meters show tenths, and nobody could tell the two apart. */
const SAME_DB = 0.05;

/** Where a limit comes from, with the distance that the design keeps from it. */
export function keptSource({ keepDb }: Profile, source: string): string {
  return keepDb === 0 ? source : `${source}; ${numeralAsSet(keepDb)} dB kept from it, as set in this design`;
}

/** Whether a limit is passed. `excessDb`: by how much [dB]. */
export function isBeyond(excessDb: number): boolean {
  return excessDb > SAME_DB;
}

function cnSourceOf(spareDb: number, source = "a choice of this tool"): string {
  return `C/N that the modulation needs, and ${numeralAsSet(spareDb)} dB to spare: ${source}`;
}
