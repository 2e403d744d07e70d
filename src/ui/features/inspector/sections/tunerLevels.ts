/** What a tuner finds at its input now. */
import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import type { TunerReception } from "../../../../findings/tuners.ts";
import { type Band, SILENCE } from "../../../../signal/band.ts";
import { isLive } from "../../../../signal/readout.ts";

export type InputCarrier = { readonly band: Band; readonly i: number; readonly levelDbuv: number };

/**
 * The weakest and the strongest live carrier that a tuner can turn to now: of its own user band on a stacked feed,
 * else of the bands that are selected. Null when there is none.
 */
export function tunerLevels(
  record: PartRecord,
  tuner: TunerReception,
): { readonly weakest: InputCarrier; readonly strongest: InputCarrier } | null {
  let weakest: InputCarrier | null = null;
  let strongest: InputCarrier | null = null;
  for (const band of (record.inputs[tuner.input] ?? SILENCE).bands) {
    if (band.origin.service !== tuner.service || !band.selected) continue;
    for (let i = 0; i < band.level.length; i++) {
      if (!isLive(band, i)) continue;
      if (band.stack && band.stack.numbers[i] !== tuner.userBand) continue;
      const carrier = { band, i, levelDbuv: band.level[i] ?? 0 };
      if (!weakest || carrier.levelDbuv < weakest.levelDbuv) weakest = carrier;
      if (!strongest || carrier.levelDbuv > strongest.levelDbuv) strongest = carrier;
    }
  }
  return weakest && strongest ? { weakest, strongest } : null;
}
