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

/** Where the feeds of a dish sit: from the LNB to the middle of the dish, and across it [m]. */
export type DishDepth = { readonly focalLengthM: number; readonly diameterM: number };

/**
 * Beam deviation factor: by how much less a beam is turned than the feed is seen to be moved from the middle of the dish.
 * BDF = (1 + k·(D/4F)²)/(1 + (D/4F)²) with k = 0.36 for the usual taper, after Lo (1960); from memory.
 * Of an offset dish F is its distance from the feed to the middle, as for its equivalent paraboloid.
 */
export function beamDeviationFactor({ focalLengthM, diameterM }: DishDepth): number {
  const depth = (diameterM / (4 * focalLengthM)) ** 2;
  return (1 + 0.36 * depth) / (1 + depth);
}

/** Angle between the beams of two feeds beside each other [degrees]: BDF·atan(spacing/F). */
export function feedAngleDeg(spacingM: number, depth: DishDepth): number {
  const movedDeg = (Math.atan(spacingM / depth.focalLengthM) * 180) / Math.PI;
  return beamDeviationFactor(depth) * movedDeg;
}

/** How far a feed sits from the one in the focus so that its beam is turned by an angle [m]. */
export function feedSpacingM(angleDeg: number, depth: DishDepth): number {
  const movedDeg = angleDeg / beamDeviationFactor(depth);
  return depth.focalLengthM * Math.tan((movedDeg * Math.PI) / 180);
}
