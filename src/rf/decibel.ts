/** Decibels, and levels as the trade reads them: dBµV into 75 Ω. */

/** Impedance of every cable and port [Ω]. */
export const IMPEDANCE_OHM = 75;

/** 0 dBm into 75 Ω, as a level [dBµV]: 10·log10(1 mW · 75 Ω / (1 µV)²) = 108.75. */
const ZERO_DBM_IN_DBUV = 10 * Math.log10(1e-3 * IMPEDANCE_OHM * 1e12);

/** Power ratio from decibels: 10^(dB/10). −Infinity dB gives 0, an absent signal. */
export function dbToRatio(db: number): number {
  return 10 ** (db / 10);
}

/** Decibels from a power ratio: 10·log10(ratio). 0 gives −Infinity, an absent signal. */
export function ratioToDb(ratio: number): number {
  return 10 * Math.log10(ratio);
}

/** Level [dBµV into 75 Ω] of a power [dBm]: dBm + 108.75. (Into 50 Ω it would be 106.99.) */
export function dbmToDbuv(dbm: number): number {
  return dbm + ZERO_DBM_IN_DBUV;
}

/** Power [dBm] of a level [dBµV into 75 Ω]: dBµV − 108.75. */
export function dbuvToDbm(dbuv: number): number {
  return dbuv - ZERO_DBM_IN_DBUV;
}

/**
 * Sums uncorrelated signals by power. [dBµV]
 * Two equal levels give +3.01 dB; an empty list gives −Infinity (no signal, not 0 dBµV).
 * L = 10·log10(Σ 10^(Lᵢ/10))
 */
export function sumDbuv(levels: Iterable<number>): number {
  let sum = 0;
  for (const level of levels) sum += dbToRatio(level);
  return ratioToDb(sum);
}
