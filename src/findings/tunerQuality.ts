/** Whether a carrier is strong and clean enough behind a receiver's own tuner. */

import type { ReceiverInput } from "../parts/contract.ts";
import { noiseFactor } from "../rf/noise.ts";
import type { Band, Grid } from "../signal/band.ts";
import { carrierToDb, disturbanceUv2 } from "../signal/readout.ts";
import type { CarrierResult, GotCarrier } from "./carrierResult.ts";
import { whyNotTuned } from "./tuningRange.ts";

/** Noise figure of the tuner behind every receiver input [dB]; typical, from memory. */
export const TUNER_NOISE_FIGURE_DB = 8;

/** Result for a carrier that the input could tune: its level, and its quality with the tuner's noise. */
export function quality(input: ReceiverInput, band: Band, i: number): CarrierResult {
  const { grid } = band;
  const untuned = whyNotTuned(input, band, i);
  if (untuned) return untuned;
  return graded({
    port: input.port,
    origin: band.origin.key,
    index: grid.index[i] ?? 0,
    levelDbuv: band.level[i] ?? 0,
    noise: (band.noise[i] ?? 0) + tunerNoiseUv2(grid, i),
    interference: disturbanceUv2(band, i),
    requiredDb: grid.required[i] ?? 0,
  });
}

/** What the tuner adds in the noise bandwidth of a carrier, referred to its input [(µV)², linear]. */
export function tunerNoiseUv2(grid: Grid, i: number): number {
  return (grid.ktb[i] ?? 0) * (noiseFactor(TUNER_NOISE_FIGURE_DB) - 1);
}

export type TunerCarrier = Omit<GotCarrier, "cnDb"> & {
  /** Linear powers, the tuner's noise included [(µV)²]. */
  readonly noise: number;
  readonly interference: number;
};

/** Got with C/(N+I) at or above what the carrier needs; or lost to noise, unless what disturbs it does more. */
export function graded({ noise, interference, ...carrier }: TunerCarrier): CarrierResult {
  const ratio = (power: number) => carrierToDb(carrier.levelDbuv, power);
  const cnDb = ratio(noise + interference);
  const { requiredDb } = carrier;
  if (cnDb >= requiredDb) return { got: true, ...carrier, cnDb };
  const why = ratio(noise) >= requiredDb && interference > noise ? "disturbed" : "noisy";
  return { got: false, why, reason: { kind: why } };
}
