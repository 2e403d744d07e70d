/** What a dish hears beside its axis: reference patterns of ITU-R recommendations, as gains over an isotropic aerial. */
import { wavelengthM } from "./path.ts";

export type DishBeam = {
  readonly diameterM: number;
  readonly frequencyMHz: number;
  /** Gain on the axis [dBi]. */
  readonly gainDbi: number;
};

/**
 * Reference pattern of a home dish, wanted polarisation [dBi] (ITU-R BO.1213-1; for diameters of 11 wavelengths and more).
 * Main lobe G − 0.0025·(D·φ/λ)², a shelf to 95·λ/D, 29 − 25·log10(φ) to −5 dBi, 0 dBi beyond 70°.
 */
export function homeDishDbi(beam: DishBeam, offAxisDeg: number): number {
  const { gainDbi } = beam;
  const ratio = wavelengths(beam);
  const shelfEndDeg = 95 / ratio;
  const shelfDbi = 29 - 25 * Math.log10(shelfEndDeg);
  const lobeEndDeg = Math.sqrt(Math.max(0, gainDbi - shelfDbi) / 0.0025) / ratio;
  if (offAxisDeg < lobeEndDeg) return gainDbi - 0.0025 * (ratio * offAxisDeg) ** 2;
  if (offAxisDeg < shelfEndDeg) return shelfDbi;
  if (offAxisDeg < 10 ** (34 / 25)) return 29 - 25 * Math.log10(offAxisDeg);
  return offAxisDeg < 70 ? -5 : 0;
}

/**
 * Reference pattern of a home dish, other polarisation [dBi] (ITU-R BO.1213-1; last two pieces from memory).
 * 25 dB below the gain on the axis, 17 dB below at the edge of the main lobe.
 */
export function homeDishCrossDbi(beam: DishBeam, offAxisDeg: number): number {
  const { gainDbi } = beam;
  const edgeDeg = (2 * Math.sqrt(3 / 0.0025)) / wavelengths(beam);
  const fallEndDeg = (edgeDeg / 2) * Math.sqrt(10.1875);
  const edgeDbi = gainDbi - 17;
  if (offAxisDeg < 0.25 * edgeDeg) return gainDbi - 25;
  if (offAxisDeg < 0.44 * edgeDeg)
    return gainDbi - 25 + (8 * (offAxisDeg - 0.25 * edgeDeg)) / (0.19 * edgeDeg);
  if (offAxisDeg < edgeDeg) return edgeDbi;
  if (offAxisDeg < fallEndDeg) {
    const fallDb = 21 - 25 * Math.log10(fallEndDeg) - edgeDbi;
    return edgeDbi + (fallDb * (offAxisDeg - edgeDeg)) / (fallEndDeg - edgeDeg);
  }
  if (offAxisDeg < 10 ** (26 / 25)) return 21 - 25 * Math.log10(offAxisDeg);
  return offAxisDeg < 70 ? -5 : 0;
}

/**
 * Envelope of the side lobes of an earth-station dish [dBi] (ITU-R S.465-6): 32 − 25·log10(φ) to 48°, −10 dBi beyond.
 * The recommendation begins beside the main lobe; nearer to the axis the lobe of BO.1213 stands, never below its edge.
 */
export function stationDishDbi(beam: DishBeam, offAxisDeg: number): number {
  const ratio = wavelengths(beam);
  const fromDeg =
    ratio >= 50 ? Math.max(1, 100 / ratio) : ratio < 33.3 ? 2.5 : Math.max(2, 114 * ratio ** -1.09);
  const besideDbi = (deg: number) => 32 - 25 * Math.log10(deg);
  if (offAxisDeg < fromDeg)
    return Math.max(beam.gainDbi - 0.0025 * (ratio * offAxisDeg) ** 2, besideDbi(fromDeg));
  return offAxisDeg < 48 ? besideDbi(offAxisDeg) : -10;
}

/** Diameter in wavelengths. */
function wavelengths({ diameterM, frequencyMHz }: DishBeam): number {
  return diameterM / wavelengthM(frequencyMHz);
}
