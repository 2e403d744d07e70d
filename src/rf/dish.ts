/** A parabolic dish: gain, beamwidth, and what bad pointing costs. */
import { wavelengthM } from "./path.ts";

/**
 * Gain of a dish over an isotropic aerial [dBi].
 * Efficiency is a fraction; 0.60 to 0.75 for offset dishes (from memory). For an oval offset dish
 * the diameter is that of the beam's cross-section, the shorter axis.
 * G = 10·log10(η·(π·D/λ)²)
 */
export function dishGainDbi(options: {
  diameterM: number;
  efficiency: number;
  frequencyMHz: number;
}): number {
  const { diameterM, efficiency, frequencyMHz } = options;
  return 10 * Math.log10(efficiency * ((Math.PI * diameterM) / wavelengthM(frequencyMHz)) ** 2);
}

/**
 * Full width of the beam between its half-power directions [degrees].
 * The factor runs from 66 to 72 with the illumination; 70 is the usual rule of thumb (from memory).
 * θ ≈ 70·λ/D
 */
export function beamwidthDeg(options: { diameterM: number; frequencyMHz: number }): number {
  return (70 * wavelengthM(options.frequencyMHz)) / options.diameterM;
}

/**
 * Loss of a dish that points past the satellite [dB, positive].
 * Half a beamwidth off costs 3 dB by definition. Holds in the main lobe only: beyond about one
 * beamwidth a real dish has side lobes and loses less than this formula says.
 * L ≈ 12·(offset/beamwidth)²
 */
export function pointingLossDb(options: { offAxisDeg: number; beamwidthDeg: number }): number {
  return 12 * (options.offAxisDeg / options.beamwidthDeg) ** 2;
}

/**
 * What a feed beside the focus loses [dB, positive]: its beam leaves the dish at an angle and is blurred.
 * Grows with the square of the number of beamwidths, so a large dish with its narrow beam loses more at the same angle.
 * About 1 dB at three beamwidths for an offset dish of f/D 0.6, after Ruze; from memory, order of magnitude.
 */
export function scanLossDb(options: { offAxisDeg: number; beamwidthDeg: number }): number {
  return 0.11 * (options.offAxisDeg / options.beamwidthDeg) ** 2;
}
