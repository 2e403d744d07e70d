/** Whether a carrier is strong and clean enough behind a receiver's own tuner. */

import type { ReceiverInput } from "../parts/contract.ts";
import { noiseFactor } from "../rf/noise.ts";
import type { Clause } from "../sentences/phrases.ts";
import type { Band, Grid } from "../signal/band.ts";
import { carrierToDb } from "../signal/readout.ts";
import type { Fate, GotCarrier } from "./fate.ts";

/** Noise figure of the tuner behind every receiver input [dB]; typical, from memory. */
export const TUNER_NOISE_FIGURE_DB = 8;

/** Fate of a carrier that the input could tune: its level, and its quality with the tuner's noise. */
export function quality(input: ReceiverInput, band: Band, i: number): Fate {
  const { grid } = band;
  const f = grid.centre[i] ?? 0;
  if (f < input.tunesFromMHz || f > input.tunesToMHz) {
    const range = `${input.tunesFromMHz} to ${input.tunesToMHz} MHz, where this input tunes`;
    return {
      got: false,
      why: "out of range",
      clause: { one: (n) => `${n} is outside ${range}`, other: (n) => `${n} are outside ${range}` },
    };
  }
  return graded({
    port: input.port,
    origin: band.origin.key,
    index: grid.index[i] ?? 0,
    levelDbuv: band.level[i] ?? 0,
    noise: (band.noise[i] ?? 0) + tunerNoiseUv2(grid, i),
    interference: band.interference[i] ?? 0,
    requiredDb: grid.required[i] ?? 0,
  });
}

/** What the tuner adds in the noise bandwidth of a carrier, referred to its input [(µV)², linear]. */
export function tunerNoiseUv2(grid: Grid, i: number): number {
  return (grid.ktb[i] ?? 0) * (noiseFactor(TUNER_NOISE_FIGURE_DB) - 1);
}

export type Measured = Omit<GotCarrier, "cnDb"> & {
  /** Linear powers, the tuner's noise included [(µV)²]. */
  readonly noise: number;
  readonly interference: number;
  readonly requiredDb: number;
};

/** Got with C/(N+I) at or above what the carrier needs; or lost to noise, or else to what disturbs it. */
export function graded({ noise, interference, requiredDb, ...carrier }: Measured): Fate {
  const ratio = (power: number) => carrierToDb(carrier.levelDbuv, power);
  const cnDb = ratio(noise + interference);
  if (cnDb >= requiredDb) return { got: true, ...carrier, cnDb };
  return ratio(noise) >= requiredDb
    ? { got: false, why: "disturbed", clause: DISTURBED }
    : { got: false, why: "noisy", clause: NOISY };
}

const DISTURBED: Clause = {
  one: (n) => `${n} is drowned by another signal on the same frequencies`,
  other: (n) => `${n} are drowned by another signal on the same frequencies`,
};

const NOISY: Clause = {
  one: (n) => `${n} is too weak or too noisy`,
  other: (n) => `${n} are too weak or too noisy`,
};
