/** One part on the walk of a signal, and what is left behind it. */

import type { PartId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { findCarrier, type TraceStep, traceCarrier } from "../../evaluate/trace.ts";
import { ratioToDb } from "../../rf/decibel.ts";
import { carrierToDb } from "../../signal/readout.ts";
import type { Limits } from "../limits.ts";
import type { Choice } from "./choice.ts";
import { powersAt } from "./powers.ts";

/** Like a step of a trace, but on a user band with the carrier's own noise, not that of the worst one held. */
export type WayStep = TraceStep & {
  /** In the carrier's noise bandwidth [dBµV]; absent where there is none. */
  readonly noiseDbuv?: number;
  readonly interferenceDbuv?: number;
  /** C/(N+I) above what the modulation needs [dB]; negative: lost. */
  readonly marginDb: number;
  /**
   * Where the level may lie here, so that it comes out within the limits at the end [dBµV]; absent before a
   * gain control, which makes the level at the end its own.
   */
  readonly within?: { readonly minDbuv: number; readonly maxDbuv: number };
};

/** Steps from the source to an output. */
export function stepsTo(
  evaluation: Evaluation,
  at: { readonly part: PartId; readonly port: string },
  choice: Choice,
  o: { readonly userBand?: number | undefined; readonly limits?: Limits | undefined },
): readonly WayStep[] {
  const trace = traceCarrier(evaluation, at, choice.carrier, o.userBand);
  const last = trace.at(-1);
  return trace.map((step) => {
    const bands = evaluation.record(step.part)?.outputs[step.to]?.bands ?? [];
    const place = findCarrier(bands, choice.carrier, o.userBand);
    const levelled = o.limits && last && step.userBand === last.userBand;
    const toEndDb = (last?.levelDbuv ?? 0) - step.levelDbuv;
    return {
      ...step,
      ...(place
        ? qualityOf(powersAt(place, choice.carrier), choice.requiredDb)
        : { marginDb: step.cniDb - choice.requiredDb }),
      ...(levelled && o.limits
        ? { within: { minDbuv: o.limits.minDbuv - toEndDb, maxDbuv: o.limits.maxDbuv - toEndDb } }
        : {}),
    };
  });
}

function qualityOf({ levelDbuv, noise, interference }: ReturnType<typeof powersAt>, requiredDb: number) {
  const cniDb = carrierToDb(levelDbuv, noise + interference);
  return {
    cnDb: carrierToDb(levelDbuv, noise),
    ciDb: carrierToDb(levelDbuv, interference),
    cniDb,
    marginDb: cniDb - requiredDb,
    ...(noise > 0 ? { noiseDbuv: ratioToDb(noise) } : {}),
    ...(interference > 0 ? { interferenceDbuv: ratioToDb(interference) } : {}),
  };
}
