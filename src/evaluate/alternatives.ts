/**
 * How many alternatives are worked out. Switches in cascade multiply: ten of four positions make a million of
 * settings, of which a real system uses a few. What is set now is always worked out; of the rest, so many.
 */
import type { Band } from "../signal/band.ts";
import { conditionsKey } from "../signal/treat.ts";

/**
 * Settings of switches beside what is set now that are kept on one wire. Four satellites behind a position switch
 * make 16, sixteen satellites 64.
 */
export const MOST_ALTERNATIVES = 64;

/** Switches in a row whose settings are kept apart: LNB, position switch and two multiswitches make four. */
export const MOST_SWITCHES_IN_A_ROW = 12;

/** Bands without the settings that are too many; a setting goes with all its bands, in the order of the ports. */
export function fewAlternatives(bands: readonly Band[]): {
  readonly kept: readonly Band[];
  /** How many settings were left out. */
  readonly left: number;
} {
  if (bands.length <= MOST_ALTERNATIVES) return { kept: bands, left: 0 };
  const settings = new Set<string>();
  for (const band of bands) if (!band.selected) settings.add(conditionsKey(band));
  const left = settings.size - MOST_ALTERNATIVES;
  if (left <= 0) return { kept: bands, left: 0 };
  const kept = new Set([...settings].slice(0, MOST_ALTERNATIVES));
  return { kept: bands.filter((band) => band.selected || kept.has(conditionsKey(band))), left };
}
