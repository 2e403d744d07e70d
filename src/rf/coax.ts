/** Attenuation of coaxial cable over frequency, length and temperature. */

/** What the loss of a run depends on; k1 and k2 are the grade, for 100 m at 20 °C. */
export type CoaxRun = {
  /** Conductor (skin effect) term [dB/100 m per √MHz]. */
  readonly k1: number;
  /** Dielectric term [dB/100 m per MHz]. */
  readonly k2: number;
  readonly lengthM: number;
  readonly temperatureC: number;
  readonly frequencyMHz: number;
};

/** Rise of the conductor term per kelvin: copper's +0.39 %/K of resistivity, under the square root. From memory. */
export const CONDUCTOR_LOSS_PER_KELVIN = 0.002;

/** Rise of the direct-current resistance of copper per kelvin: 0.393 %, IEC 60028, from memory. */
export const COPPER_RESISTANCE_PER_KELVIN = 0.00393;

/**
 * Resistance of a run at a temperature, as a multiple of that at 20 °C, where data sheets state it.
 * Copper-clad steel grows a little faster (steel alone about 0.5 %/K, from memory); the copper counts here.
 */
export function resistanceGrowth(temperatureC: number): number {
  return 1 + COPPER_RESISTANCE_PER_KELVIN * (temperatureC - REFERENCE_CELSIUS);
}

/** Temperature for which data sheets state attenuation [°C]. */
export const REFERENCE_CELSIUS = 20;

/**
 * Loss of a cable run [dB, positive].
 * The conductor term dominates at TV frequencies, so a doubled frequency costs about 1.4 times the decibels,
 * not twice. Constants fitted below 1 GHz still hold at satellite IF to a few per cent.
 * loss = (k1·√f·(1 + 0.002·(t − 20)) + k2·f) · length/100
 */
export function coaxLossDb(run: CoaxRun): number {
  const { k1, k2, lengthM, temperatureC, frequencyMHz } = run;
  const warmth = 1 + CONDUCTOR_LOSS_PER_KELVIN * (temperatureC - REFERENCE_CELSIUS);
  // Skin effect knows no direct current: at or below 0 MHz only the loop resistance counts, which is not loss here.
  const f = Math.max(0, frequencyMHz);
  return ((k1 * warmth * Math.sqrt(f) + k2 * f) * lengthM) / 100;
}
