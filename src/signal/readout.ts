/** Numbers read off a band: what a meter hung on the wire would show. */
import type { Band } from "./band.ts";

/** Carrier to noise ratio of carrier i [dB]; +Infinity where there is no noise at all. */
export function cnDb(band: Band, i: number): number {
  return carrierToDb(band.level[i] ?? 0, band.noise[i] ?? 0);
}

/** All that disturbs carrier i beside noise: other signals, and third-order products [(µV)², linear]. */
export function disturbanceUv2(band: Band, i: number): number {
  return (band.interference[i] ?? 0) + (band.products?.[i] ?? 0);
}

/** Carrier to all that disturbs carrier i beside noise [dB]; +Infinity where nothing does. */
export function ciDb(band: Band, i: number): number {
  return carrierToDb(band.level[i] ?? 0, disturbanceUv2(band, i));
}

/** Carrier i to the third-order products of the amplifiers on its way [dB]; +Infinity where there are none. */
export function imDb(band: Band, i: number): number {
  return carrierToDb(band.level[i] ?? 0, band.products?.[i] ?? 0);
}

/** Carrier to noise and interference together [dB]: interference is taken as noise-like. */
export function cniDb(band: Band, i: number): number {
  return carrierToDb(band.level[i] ?? 0, (band.noise[i] ?? 0) + disturbanceUv2(band, i));
}

/** What is left above the C/N that the carrier needs [dB]; negative: not receivable. */
export function marginDb(band: Band, i: number): number {
  return cniDb(band, i) - (band.grid.required[i] ?? 0);
}

/** Live: not cut by any filter on the way. */
export function isLive(band: Band, i: number): boolean {
  return band.cut[i] === 0;
}

export function liveCount(band: Band): number {
  let n = 0;
  for (const mark of band.cut) if (mark === 0) n++;
  return n;
}

export type LevelRange = { readonly minDbuv: number; readonly maxDbuv: number };

/** Lowest and highest level of the live carriers; null when none is live. */
export function levelRange(band: Band): LevelRange | null {
  let minDbuv = Number.POSITIVE_INFINITY;
  let maxDbuv = Number.NEGATIVE_INFINITY;
  band.level.forEach((level, i) => {
    if (band.cut[i]) return;
    minDbuv = Math.min(minDbuv, level);
    maxDbuv = Math.max(maxDbuv, level);
  });
  return minDbuv <= maxDbuv ? { minDbuv, maxDbuv } : null;
}

/** A carrier's level against a linear power [dB]; +Infinity where there is none. */
export function carrierToDb(levelDbuv: number, powerUv2: number): number {
  return powerUv2 > 0 ? levelDbuv - 10 * Math.log10(powerUv2) : Number.POSITIVE_INFINITY;
}
