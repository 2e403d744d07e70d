/** Modulations as choices of an option field. */
import { MODE_KEYS, MODES } from "../rf/thresholds.ts";

/** Modes of one system as choices, in the order of the table of thresholds. */
export function modeChoices(...systems: readonly string[]): { value: string; label: string }[] {
  return MODE_KEYS.filter((key) => systems.some((system) => key.startsWith(system))).map((key) => ({
    value: key,
    label: MODES[key].name,
  }));
}
