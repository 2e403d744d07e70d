/** How the FM stations sound that a receiver gets, or an outlet hands on. */
import { FM_STEPS, type FmStep, fmStep } from "../rf/fmQuality.ts";
import { cniDb } from "../signal/readout.ts";
import { FM_HEARD_BELOW_DB } from "./blocking.ts";
import type { CarrierResult, GotCarrier } from "./carrierResult.ts";
import type { SoundFacts } from "./finding.ts";
import type { HandedOn } from "./handedOn.ts";
import type { WantedCarrier } from "./wanted.ts";

/** The poorest step of the stations got; undefined where none is. */
export function soundOf(
  wanted: readonly WantedCarrier[],
  results: ReadonlyMap<string, CarrierResult>,
): SoundFacts | undefined {
  return poorest(
    wanted.flatMap(({ key, carrier }) => {
      const result = results.get(key);
      return (result?.got && stepOf(result, carrier.mode)) || [];
    }),
  );
}

/**
 * The same of the carriers that an outlet hands on, each by a key of its own: by C/(N+I) alone, since what stands beside
 * a station is heard or not by the radio's filter.
 */
export function soundHandedOn(carriers: ReadonlyMap<string, HandedOn>): SoundFacts | undefined {
  return poorest(
    [...carriers.values()].flatMap(({ band, i }) => {
      const mode = band.grid.plan[band.grid.index[i] ?? 0]?.mode;
      return fmStep({ cnDb: cniDb(band, i), stereo: mode !== "fm-mono", isClear: true }) ?? [];
    }),
  );
}

function poorest(steps: readonly FmStep[]): SoundFacts | undefined {
  const step = FM_STEPS.find((one) => steps.includes(one));
  return step && { step, count: steps.filter((one) => one === step).length };
}

/** A neighbour that is within the range in which FM is merely heard is heard in it. */
function stepOf({ cnDb, headroom }: GotCarrier, mode: string): FmStep | undefined {
  const isClear = (headroom?.besideDb ?? FM_HEARD_BELOW_DB) >= FM_HEARD_BELOW_DB;
  return fmStep({ cnDb, stereo: mode !== "fm-mono", isClear });
}
