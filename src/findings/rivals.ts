/** Of two terrestrial signals on one frequency of one wire, which is meant. */
import type { Band } from "../signal/band.ts";
import { remembered } from "../signal/remember.ts";
import { exclusive } from "../signal/treat.ts";

const TERRESTRIAL: ReadonlySet<string> = new Set(["tv", "dab", "fm"]);

/**
 * Whether a stronger signal of the same service lies on this carrier's frequency: no cable brings both, and whoever
 * counts what is there (`wantedCarriers` for a receiver) counts the stronger alone. Of equal ones the first stays.
 */
export function outdoneOn(bands: readonly Band[]): (band: Band, i: number) => boolean {
  const strongest = new Map<string, Map<number, { readonly band: Band; readonly levelDbuv: number }[]>>();
  for (const band of bands) {
    const { service } = band.origin;
    if (!TERRESTRIAL.has(service) || band.isFloor) continue;
    const byFrequency = remembered(strongest, service, () => new Map());
    for (const [i, levelDbuv] of band.level.entries()) {
      if (band.cut[i]) continue;
      remembered(byFrequency, band.grid.centre[i] ?? 0, () => []).push({ band, levelDbuv });
    }
  }
  return (band, i) => {
    const there = strongest.get(band.origin.service)?.get(band.grid.centre[i] ?? 0) ?? [];
    if (there.length < 2) return false;
    const own = there.findIndex((one) => one.band === band);
    const levelDbuv = band.level[i] ?? 0;
    return there.some(
      (one, n) =>
        one.band.origin.key !== band.origin.key &&
        !exclusive(one.band, band) &&
        (one.levelDbuv > levelDbuv || (one.levelDbuv === levelDbuv && n < own)),
    );
  };
}
