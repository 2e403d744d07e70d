/** How much a terrestrial aerial takes off what does not come from where it looks. */

/** Bands with a reference pattern of their own: II for FM, III for DAB and VHF television, IV and V for UHF. */
export type PatternBand = "II" | "III" | "IV/V";

/**
 * What orthogonal polarisation and direction take together [dB], at all angles.
 * Recommendation ITU-R BT.419-3, from memory: the two are not added to one another.
 */
export const ORTHOGONAL_DB = 16;

/** Where the reference curve begins to fall, and what it has come to at 60° [°, dB]. */
const REFERENCE: Readonly<Record<PatternBand, { readonly fromDeg: number; readonly mostDb: number }>> = {
  // Recommendation ITU-R BS.599 for Band II and BT.419-3 for Band III, both from memory.
  II: { fromDeg: 27, mostDb: 12 },
  III: { fromDeg: 27, mostDb: 12 },
  // BT.419-3, as two public implementations have it: 0.4·(φ − 20) dB from 20° to 60°.
  "IV/V": { fromDeg: 20, mostDb: 16 },
};

const FLAT_FROM_DEG = 60;

/** Angle between two bearings, 0 to 180 [°]. */
export function bearingDifferenceDeg(aDeg: number, bDeg: number): number {
  const turn = Math.abs(aDeg - bDeg) % 360;
  return turn > 180 ? 360 - turn : turn;
}

/**
 * What the reference aerial of the ITU takes off at an angle from its axis, for like polarisation [dB, positive].
 * The curve holds for most places in built-up areas; an aerial in the open does slightly better.
 */
export function referenceDiscriminationDb(band: PatternBand, angleDeg: number): number {
  const { fromDeg, mostDb } = REFERENCE[band];
  const fallen = (angleDeg - fromDeg) / (FLAT_FROM_DEG - fromDeg);
  return mostDb * Math.min(1, Math.max(0, fallen));
}

/**
 * What an aerial of a stated beam takes off at an angle from its axis [dB, positive]: 3 dB at half its beam width,
 * growing with the square of the angle (a Gaussian main lobe, from memory), until its front-to-back ratio.
 */
export function beamDiscriminationDb(o: {
  readonly angleDeg: number;
  readonly beamWidthDeg: number;
  readonly frontToBackDb: number;
}): number {
  return Math.min(o.frontToBackDb, 12 * (o.angleDeg / o.beamWidthDeg) ** 2);
}

/** Direction and polarisation together [dB, positive]: whichever takes more, never the sum. */
export function withPolarisationDb(directionDb: number, orthogonal: boolean): number {
  return orthogonal ? Math.max(ORTHOGONAL_DB, directionDb) : directionDb;
}
