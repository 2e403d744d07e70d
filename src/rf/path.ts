/** Free space between the satellite and the dish. */

/** Speed of light [m/s], exact by definition of the SI. */
export const LIGHT_M_PER_S = 299_792_458;

/** Wavelength [m] of a frequency [MHz]. */
export function wavelengthM(frequencyMHz: number): number {
  return LIGHT_M_PER_S / (frequencyMHz * 1e6);
}

/**
 * Free-space loss between isotropic aerials [dB, positive].
 * About 205 to 206 dB from the geostationary orbit at Ku band.
 * L = 20·log10(4π·d/λ)  (ITU-R P.525)
 */
export function freeSpaceLossDb(options: { distanceKm: number; frequencyMHz: number }): number {
  const distanceM = options.distanceKm * 1000;
  return 20 * Math.log10((4 * Math.PI * distanceM) / wavelengthM(options.frequencyMHz));
}
