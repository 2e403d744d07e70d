/** Whether a carrier is strong and clean enough behind a receiver's own tuner, and the tuner not blocked. */

import type { PartRecord } from "../evaluate/evaluation.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import { noiseFactor } from "../rf/noise.ts";
import type { Band, Grid } from "../signal/band.ts";
import { carrierToDb, disturbanceUv2 } from "../signal/readout.ts";
import type { BlockedAt } from "./blockedCarriers.ts";
import { type Blocking, besideHeadroomDb, totalHeadroomDb } from "./blocking.ts";
import type { CarrierResult, GotCarrier } from "./carrierResult.ts";
import { whyNotTuned } from "./tuningRange.ts";

/** Result for a carrier that the input could tune: its level, its quality with the tuner's noise, and whether it is blocked. */
export function quality(input: ReceiverInput, band: Band, i: number, blocking: Blocking): CarrierResult {
  const untuned = whyNotTuned(input, band, i);
  if (untuned) return untuned;
  const at = { service: band.origin.service, port: input.port };
  return unblocked(qualityAlone(input, band, i), at, totalHeadroomDb(blocking, band), () =>
    besideHeadroomDb(blocking, band, i),
  );
}

/** The same whatever stands beside it. */
export function qualityAlone(input: ReceiverInput, band: Band, i: number): CarrierResult {
  const { grid } = band;
  return graded({
    port: input.port,
    origin: band.origin.key,
    index: grid.index[i] ?? 0,
    levelDbuv: band.level[i] ?? 0,
    noise: (band.noise[i] ?? 0) + tunerNoiseUv2(grid, i, input.frontEnd.noiseFigureDb),
    interference: disturbanceUv2(band, i),
    requiredDb: grid.required[i] ?? 0,
  });
}

/**
 * The same where the tuner is not blocked. Too much in all comes before noise and products: nothing is received then.
 * What is too weak or disturbed by itself is lost whatever stands beside it.
 */
export function unblocked(
  result: CarrierResult,
  at: Omit<BlockedAt, "by">,
  totalDb: number,
  beside: () => number | undefined,
): CarrierResult {
  if (totalDb < 0) return blocked({ ...at, by: "total" });
  if (!result.got) return result;
  const besideDb = beside();
  if (besideDb !== undefined && besideDb < 0) return blocked({ ...at, by: "beside" });
  return { ...result, headroom: { totalDb, ...(besideDb === undefined ? {} : { besideDb }) } };
}

function blocked(at: BlockedAt): CarrierResult {
  return { got: false, why: "blocked", reason: { kind: "blocked", ...at } };
}

/** What the tuner adds in the noise bandwidth of a carrier, referred to its input [(µV)², linear]. */
export function tunerNoiseUv2(grid: Grid, i: number, noiseFigureDb: number): number {
  return (grid.ktb[i] ?? 0) * (noiseFactor(noiseFigureDb) - 1);
}

/** Noise figure of the tuner behind an input [dB]; undefined at a part that receives nothing. */
export function tunerNoiseFigureDb(record: PartRecord, port: string): number | undefined {
  const inputs = record.kind.reception?.(record.options).inputs;
  return inputs?.find((input) => input.port === port)?.frontEnd.noiseFigureDb;
}

export type TunerCarrier = Omit<GotCarrier, "cnDb" | "headroom"> & {
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
