/** Whether an input has a tuner for a carrier at all, and tunes where the carrier is. */
import type { ReceiverInput } from "../parts/contract.ts";
import type { Band } from "../signal/band.ts";
import { isCableMode } from "../signal/carrier.ts";
import type { LostCarrier } from "./carrierResult.ts";

/** Why a carrier cannot be tuned, whatever its level; undefined where it can. */
export function whyNotTuned(input: ReceiverInput, { grid }: Band, i: number): LostCarrier | undefined {
  const mode = grid.plan[grid.index[i] ?? 0]?.mode ?? "";
  const system = input.systems?.find(({ modes }) => mode.startsWith(modes));
  if (system && !system.range)
    return {
      got: false,
      why: "out of range",
      reason: { kind: "no tuner for it", system: isCableMode(mode) ? "DVB-C" : "DVB-T2" },
    };
  const { fromMHz, toMHz } = system?.range ?? { fromMHz: input.tunesFromMHz, toMHz: input.tunesToMHz };
  const f = grid.centre[i] ?? 0;
  if (f >= fromMHz && f <= toMHz) return undefined;
  return { got: false, why: "out of range", reason: { kind: "outside tuning range", fromMHz, toMHz } };
}
