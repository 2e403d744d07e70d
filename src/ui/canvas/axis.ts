/**
 * The frequency axis of every strip. One axis for all coaxial wires, so that two strips can be compared
 * at a glance, and one for the sky band.
 *
 * The coaxial axis is straight within each of the bands that installers deal with and narrows the gaps
 * between them. On a straight axis from 5 to 2400 MHz all of FM would be one pixel wide; on a logarithmic
 * one the satellite IF, where most carriers lie, would be squeezed into a seventh.
 */

import { type ScaleLinear, scaleLinear } from "d3-scale";
import { SKY_FROM_MHZ, SKY_SPLIT_MHZ, SKY_TO_MHZ } from "../../parts/planSatellite.ts";
import { numeral } from "../../words/numbers.ts";

/** [MHz, share of the width]. The bands: FM, DAB band III, UHF TV (to 694, then to 862), satellite IF. */
export const COAX_STOPS = [
  [5, 0],
  [87, 0.03],
  [108, 0.1],
  [174, 0.13],
  [240, 0.23],
  [470, 0.32],
  [694, 0.5],
  [862, 0.57],
  [950, 0.6],
  [2150, 0.965],
  [2400, 1],
] as const;

export const COAX_FROM_MHZ = 5;
export const COAX_TO_MHZ = 2400;
export const COAX_TICKS_MHZ: readonly number[] = [100, 200, 470, 694, 950, 1500, 2150];

export const SKY_TICKS_MHZ: readonly number[] = [SKY_FROM_MHZ, SKY_SPLIT_MHZ, SKY_TO_MHZ];

export type FrequencyScale = ScaleLinear<number, number>;

/** Maps 5–2400 MHz onto 0..widthPx [px]; frequencies outside are held at the ends. */
export function coaxScale(widthPx: number): FrequencyScale {
  return scaleLinear(
    COAX_STOPS.map(([mhz]) => mhz),
    COAX_STOPS.map(([, share]) => share * widthPx),
  ).clamp(true);
}

/** Maps 10.70–12.75 GHz onto 0..widthPx [px]. */
export function skyScale(widthPx: number): FrequencyScale {
  return scaleLinear([SKY_FROM_MHZ, SKY_TO_MHZ], [0, widthPx]).clamp(true);
}

/** "950", "10.7 G" or "12.75 G": short enough for a tick. */
export function tickLabel(mhz: number): string {
  return mhz >= 10_000 ? `${numeral(mhz / 1000, 2)} G` : numeral(mhz, 0);
}
