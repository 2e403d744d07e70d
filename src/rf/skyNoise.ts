/** Noise that an attenuating atmosphere radiates into the dish. */
import { dbToRatio } from "./decibel.ts";

/** Effective temperature of rain and cloud [K] (ITU-R P.618, from memory). */
export const RAIN_KELVIN = 275;

/**
 * Noise temperature of an attenuating medium in front of the dish [K].
 * Rain hurts twice: it takes away signal and it glows. 3 dB of rain add 137 K, more than a good
 * converter and a clear sky have together.
 * ΔT = T_medium·(1 − 10^(−A/10))
 */
export function skyNoiseKelvin(options: { attenuationDb: number; mediumKelvin?: number }): number {
  const { attenuationDb, mediumKelvin = RAIN_KELVIN } = options;
  return mediumKelvin * (1 - dbToRatio(-attenuationDb));
}
