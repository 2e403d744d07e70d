/**
 * The frequency axis of every strip. One axis for all coaxial wires, so that two strips can be compared
 * at a glance, and one for the sky band.
 *
 * The coaxial axis is straight within each of the bands that installers deal with and narrows the gaps
 * between them. On a straight axis from 5 to 2400 MHz all of FM would be one pixel wide; on a logarithmic
 * one the satellite IF, where most carriers lie, would be squeezed into a seventh.
 */

import { type ScaleLinear, scaleLinear } from "d3-scale";
import {
  SATELLITE_BANDS,
  type SatelliteBand,
  SKY_FROM_MHZ,
  SKY_SPLIT_MHZ,
  SKY_TO_MHZ,
  satelliteBandOf,
} from "../../parts/planSatellite.ts";
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

export const SKY_TICKS_MHZ: readonly [number, number, number] = [SKY_FROM_MHZ, SKY_SPLIT_MHZ, SKY_TO_MHZ];

/** Ticks of the wire from a dish, the first and last at its ends, by the band that its satellite sends in [MHz]. */
const SKY_STRETCHES: Readonly<Record<SatelliteBand, readonly [number, number, number]>> = {
  C: [3_400, 4_200, 4_800],
  Ku: SKY_TICKS_MHZ,
  Ka: [17_300, 19_700, 22_000],
};

/** Ticks of the wire from a dish on which something lies at this frequency. */
export function skyTicks(atMHz: number): readonly number[] {
  return SKY_STRETCHES[satelliteBandOf(atMHz)];
}

/** From where to where the wire from a dish reaches. */
export function skyStretch(atMHz: number): { readonly fromMHz: number; readonly toMHz: number } {
  const [fromMHz, , toMHz] = SKY_STRETCHES[satelliteBandOf(atMHz)];
  return { fromMHz, toMHz };
}

/** Whether a frequency is one of the wire from a dish: no cable carries anything near it. */
export function isOnSky(mhz: number): boolean {
  return mhz > (COAX_TO_MHZ + SATELLITE_BANDS.C.fromMHz) / 2;
}

export type FrequencyScale = ScaleLinear<number, number>;

/** Maps 5–2400 MHz onto 0..widthPx [px]; frequencies outside are held at the ends. */
export function coaxScale(widthPx: number): FrequencyScale {
  return scaleLinear(
    COAX_STOPS.map(([mhz]) => mhz),
    COAX_STOPS.map(([, share]) => share * widthPx),
  ).clamp(true);
}

/** Maps the band of a satellite that sends at this frequency onto 0..widthPx [px]: 10.70–12.75 GHz for Ku band. */
export function skyScale(widthPx: number, atMHz: number = SKY_SPLIT_MHZ): FrequencyScale {
  const { fromMHz, toMHz } = skyStretch(atMHz);
  return scaleLinear([fromMHz, toMHz], [0, widthPx]).clamp(true);
}

/** "950", "3.4 G" or "12.75 G": short enough for a tick. */
export function tickLabel(mhz: number): string {
  return isOnSky(mhz) ? `${numeral(mhz / 1000, 2)} G` : numeral(mhz, 0);
}
