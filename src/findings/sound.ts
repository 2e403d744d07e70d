/** How the FM stations sound that a receiver gets. */
import { FM_STEPS, type FmStep, fmStep } from "../rf/fmQuality.ts";
import { FM_HEARD_BELOW_DB } from "./blocking.ts";
import type { CarrierResult, GotCarrier } from "./carrierResult.ts";
import type { SoundFacts } from "./finding.ts";
import type { WantedCarrier } from "./wanted.ts";

/** The poorest step of the stations got; undefined where none is. */
export function soundOf(
  wanted: readonly WantedCarrier[],
  results: ReadonlyMap<string, CarrierResult>,
): SoundFacts | undefined {
  const counts = new Map<FmStep, number>();
  for (const { key, carrier } of wanted) {
    const result = results.get(key);
    const step = result?.got ? stepOf(result, carrier.mode) : undefined;
    if (step) counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  const step = FM_STEPS.find((one) => counts.has(one));
  return step && { step, count: counts.get(step) ?? 0 };
}

/** A neighbour that is within the range in which FM is merely heard is heard in it. */
function stepOf({ cnDb, headroom }: GotCarrier, mode: string): FmStep | undefined {
  const isClear = (headroom?.besideDb ?? FM_HEARD_BELOW_DB) >= FM_HEARD_BELOW_DB;
  return fmStep({ cnDb, stereo: mode !== "fm-mono", isClear });
}
