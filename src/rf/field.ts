/** From the field strength at an aerial to the level at its terminals. */
import { IMPEDANCE_OHM } from "./decibel.ts";
import { LIGHT_M_PER_S } from "./path.ts";

/** Gain of a half-wave dipole over an isotropic aerial [dBi]; aerial makers state gain over either. */
export const DIPOLE_DBI = 2.15;

/** Wave impedance of free space, in the textbook rounding 120·π [Ω]. */
const FREE_SPACE_OHM = 120 * Math.PI;

/** 10·log10(30 Ω · 1 mW) in (µV/m)² at 1 m: 104.77 dB. */
const EIRP_TO_FIELD_DB = 10 * Math.log10(30 * 1e-3 * 1e12);

/**
 * Field of a transmitter in free space [dBµV/m].
 * E = 104.77 + EIRP − 20·log10(d), with EIRP in dBm, d in m. Walls and trees take something off.
 */
export function eirpToFieldDbuvPerM(options: { eirpDbm: number; distanceM: number }): number {
  return EIRP_TO_FIELD_DB + options.eirpDbm - 20 * Math.log10(options.distanceM);
}

/** 10·log10(75 Ω · (c / 1 MHz)² / (4π · 120π Ω)) = 31.53 dB. */
const FIELD_TO_LEVEL_DB =
  10 * Math.log10((IMPEDANCE_OHM * (LIGHT_M_PER_S / 1e6) ** 2) / (4 * Math.PI * FREE_SPACE_OHM));

/**
 * Level of a matched aerial in a field [dBµV into 75 Ω].
 * The same field gives less level at higher frequency: an aerial of given gain shrinks with the wavelength.
 * U = E + G − 20·log10(f) + 31.53, with E in dBµV/m, G in dBi, f in MHz
 */
export function fieldToLevelDbuv(options: {
  fieldDbuvPerM: number;
  gainDbi: number;
  frequencyMHz: number;
}): number {
  const { fieldDbuvPerM, gainDbi, frequencyMHz } = options;
  return fieldDbuvPerM + gainDbi - 20 * Math.log10(frequencyMHz) + FIELD_TO_LEVEL_DB;
}
