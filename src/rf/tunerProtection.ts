/**
 * How much stronger a neighbour may be before a tuner loses the carrier that it is tuned to. Ratios are wanted carrier
 * to interferer: −30 dB allows a neighbour 30 dB stronger. ITU-R BT.1368, BT.2033 and BT.2215 for television and
 * ITU-R BS.412 for FM, all from memory.
 */

/** "silicon": a tuner on one chip, as today; "can": a screened one with an intermediate frequency of about 36 MHz. */
export type TunerClass = "silicon" | "can";

/** What stands beside: a broadcast with constant power, a phone mast, or a handset, which sends in bursts. */
export type Neighbour = "broadcast" | "mast" | "handset";

const ADJACENT_DB = -30;
const FURTHER_DB = -40;
/** Of a can tuner: the channel as far beyond its oscillator as the wanted one lies before it, nine of 8 MHz. */
const IMAGE_DB = -31;
export const IMAGE_MHZ = { from: 68, to: 76 } as const;

/** Of phone masts: up to the first gap, and from the second one on; between them a straight line. */
const MAST = { nearMHz: 9, nearDb: -33, farMHz: 20, farDb: -45 } as const;
/** What bursts cost beyond that [dB]: 5 to 15 in some tuners, so the least. */
const BURSTS_DB = 5;

/** Beyond this gap no ratio gets any better [MHz]. */
export const NEIGHBOURS_WITHIN_MHZ = MAST.farMHz;

export type Beside = {
  readonly neighbour: Neighbour;
  readonly tuner: TunerClass;
  /** Neighbour's centre less the wanted one's [MHz]. */
  readonly offsetMHz: number;
  /** From edge to edge [MHz]: so it holds for any raster. */
  readonly gapMHz: number;
  /** Occupied width of the wanted carrier [MHz]. */
  readonly widthMHz: number;
};

/** Least ratio of a digital carrier (TV, DAB) to what stands beside it [dB, negative]. */
export function besideRatioDb({ neighbour, tuner, offsetMHz, gapMHz, widthMHz }: Beside): number {
  if (neighbour !== "broadcast") {
    const share = (gapMHz - MAST.nearMHz) / (MAST.farMHz - MAST.nearMHz);
    const mastDb = MAST.nearDb + Math.min(1, Math.max(0, share)) * (MAST.farDb - MAST.nearDb);
    return neighbour === "mast" ? mastDb : mastDb + BURSTS_DB;
  }
  if (gapMHz < widthMHz / 2) return ADJACENT_DB;
  const isImage = tuner === "can" && offsetMHz > IMAGE_MHZ.from && offsetMHz < IMAGE_MHZ.to;
  return isImage ? IMAGE_DB : FURTHER_DB;
}

/** The same at any distance: what a neighbour may be at most, wherever it is [dB]. */
export function farRatioDb(neighbour: Neighbour): number {
  if (neighbour === "broadcast") return FURTHER_DB;
  return neighbour === "mast" ? MAST.farDb : MAST.farDb + BURSTS_DB;
}

/**
 * Ratios for FM against a steady neighbour, every 25 kHz from 0 to 400 kHz [dB]; BS.412 for a swing of 75 kHz, from
 * memory. With less the neighbour is heard, which is no loss of the station yet.
 */
const FM_STEP_MHZ = 0.025;
const FM_MONO_DB = [36, 32, 24, 16, 12, 9.5, 8, 7, 6, 4.5, 2, -2, -7, -11.5, -15, -17.5, -20] as const;
const FM_STEREO_DB = [45, 51, 51, 45, 33, 24.5, 18, 11, 7, 4.5, 2, -2, -7, -11.5, -15, -17.5, -20] as const;
/** Further away; from memory, as good tuners reach. */
const FM_FURTHER_DB = -40;

/** Beyond this distance no FM ratio gets any better [MHz]. */
export const FM_NEIGHBOURS_WITHIN_MHZ = 0.4;

/** Ratio of an FM station to another at which nothing of that one is heard [dB]. `offsetMHz`: between their centres. */
export function fmRatioDb({ offsetMHz, stereo }: { offsetMHz: number; stereo: boolean }): number {
  const table = stereo ? FM_STEREO_DB : FM_MONO_DB;
  const steps = Math.abs(offsetMHz) / FM_STEP_MHZ;
  // Frequencies are sums of binary fractions: 88.3 and 88.7 lie a trifle more than 0.4 apart.
  const below = Math.floor(steps + 1e-6);
  const from = table[below];
  if (from === undefined || steps > table.length - 1 + 1e-6) return FM_FURTHER_DB;
  const to = table[below + 1] ?? from;
  return from + Math.max(0, steps - below) * (to - from);
}
