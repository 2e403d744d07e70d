/** The carriers of a wire as rows: what the table lists and what the cursor reads out. */
import { type Limits, limitsFor, type Profile } from "../../../findings/limits.ts";
import { ratioToDb } from "../../../rf/decibel.ts";
import { collisionGrade } from "../../../rf/protection.ts";
import type { Band, CutReason, Spectrum } from "../../../signal/band.ts";
import { disturbanceUv2 } from "../../../signal/readout.ts";
import { bandTitle } from "../../canvas/bands.ts";

/**
 * "live": fine. "touched": another signal costs it margin. "hit": another signal takes it, or very likely does.
 * "weak": noise and interference together leave less C/N than it needs. "cut": taken away on the road.
 * "idle": only while a switch stands otherwise.
 */
export type CarrierRowState = "live" | "touched" | "hit" | "weak" | "cut" | "idle";

export type CarrierRow = {
  /** Unique on the wire. */
  readonly key: string;
  readonly band: Band;
  /** Position in the arrays of the band. */
  readonly i: number;
  readonly bandName: string;
  readonly name: string;
  readonly airMHz: number;
  readonly hereMHz: number;
  readonly widthMHz: number;
  /** [dBµV]; −Infinity when nothing is left. */
  readonly level: number;
  /** Noise in the carrier's noise bandwidth [dBµV]. */
  readonly noise: number;
  /** Interference in the carrier [dBµV]; −Infinity for none. */
  readonly interference: number;
  readonly cnDb: number;
  /** Carrier over interference [dB]; +Infinity for none. */
  readonly ciDb: number;
  readonly cniDb: number;
  readonly requiredDb: number;
  readonly state: CarrierRowState;
  /** Level that an outlet should have, where the carrier is a wanted one. */
  readonly limits?: Limits;
  /** Only for a cut carrier: the part and what it did. */
  readonly cutBy?: { readonly part: string; readonly reason: CutReason };
  /** User band number of a stacked feed. */
  readonly userBand?: number;
};

/** All carriers of a wire, in order of frequency. */
export function carrierRows(
  spectrum: Spectrum,
  shows: (band: Band) => boolean,
  profile: Profile,
): readonly CarrierRow[] {
  return spectrum.bands
    .flatMap((band, b) => rowsOf(band, b, { shown: shows(band), profile }))
    .sort((a, b) => a.hereMHz - b.hereMHz || a.key.localeCompare(b.key));
}

function rowsOf(
  band: Band,
  b: number,
  { shown, profile }: { shown: boolean; profile: Profile },
): CarrierRow[] {
  const name = bandTitle(band);
  const { grid } = band;
  return Array.from(band.level, (level, i) => {
    const carrier = grid.plan[grid.index[i] ?? 0];
    const noisePower = band.noise[i] ?? 0;
    const interferencePower = disturbanceUv2(band, i);
    const noise = ratioToDb(noisePower);
    const interference = ratioToDb(interferencePower);
    const requiredDb = grid.required[i] ?? 0;
    const cniDb = level - ratioToDb(noisePower + interferencePower);
    const ciDb = level - interference;
    const cut = band.cuts[(band.cut[i] ?? 0) - 1];
    const limits = carrier && limitsFor(profile, band.origin.service, carrier.mode, requiredDb);
    const userBand = band.stack?.numbers[i];
    return {
      key: `${b}.${i}`,
      band,
      i,
      bandName: name,
      name: userBand === undefined ? (carrier?.name ?? "") : `User band ${userBand}`,
      airMHz: carrier?.airMHz ?? 0,
      hereMHz: grid.centre[i] ?? 0,
      widthMHz: grid.width[i] ?? 0,
      level,
      noise,
      interference,
      cnDb: level - noise,
      ciDb,
      cniDb,
      requiredDb,
      state: stateOf({ shown, isCut: cut !== undefined, cniDb, ciDb, requiredDb }),
      ...(limits ? { limits } : {}),
      ...(cut ? { cutBy: cut } : {}),
      ...(userBand === undefined ? {} : { userBand }),
    };
  });
}

function stateOf(c: {
  shown: boolean;
  isCut: boolean;
  cniDb: number;
  ciDb: number;
  requiredDb: number;
}): CarrierRowState {
  if (c.isCut) return "cut";
  if (!c.shown) return "idle";
  const grade = c.ciDb === Number.POSITIVE_INFINITY ? "negligible" : collisionGrade(c);
  if (grade === "dead" || grade === "likely dead") return "hit";
  if (!(c.cniDb >= c.requiredDb)) return "weak";
  return grade === "costs margin" ? "touched" : "live";
}

const CUT_WORDS: Readonly<Record<CutReason, string>> = {
  filter: "filtered out by",
  range: "outside the range of",
  stopped: "stopped by",
};

/** The state in words; `labelOf` names a part. */
export function stateWords(row: CarrierRow, labelOf: (part: string) => string): string {
  switch (row.state) {
    case "live":
      return "Good";
    case "touched":
      return "Another signal lies close";
    case "hit":
      return "Lost to another signal";
    case "weak":
      return "Too noisy";
    case "idle":
      return "Only in another switch position";
    case "cut":
      return row.cutBy ? `Removed: ${CUT_WORDS[row.cutBy.reason]} “${labelOf(row.cutBy.part)}”` : "Removed";
  }
}

export type SortKey = "name" | "airMHz" | "hereMHz" | "level" | "cnDb" | "cniDb" | "state";

const STATE_ORDER: readonly CarrierRowState[] = ["hit", "weak", "touched", "cut", "live", "idle"];

/** Rows in the order a table header asks for; equal ones stay in order of frequency. */
export function sortRows(
  rows: readonly CarrierRow[],
  by: SortKey,
  descending: boolean,
): readonly CarrierRow[] {
  const compare = (a: CarrierRow, b: CarrierRow): number => {
    if (by === "name") return a.name.localeCompare(b.name, undefined, { numeric: true });
    if (by === "state") return STATE_ORDER.indexOf(a.state) - STATE_ORDER.indexOf(b.state);
    // Two absent levels are −Infinity both; their difference would be NaN and upset the sort.
    return a[by] === b[by] ? 0 : a[by] < b[by] ? -1 : 1;
  };
  return [...rows].sort((a, b) => (descending ? -compare(a, b) : compare(a, b)));
}
