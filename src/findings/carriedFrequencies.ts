/** Where in the spectrum the outlets of a design get anything: there receivers can disturb each other. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import { type Service, WANTED_SERVICES } from "../signal/carrier.ts";
import { isLive } from "../signal/readout.ts";

const WANTED: ReadonlySet<Service> = new Set(WANTED_SERVICES);

type Range = { readonly fromMHz: number; readonly toMHz: number };

/**
 * The lowest and the highest live carrier of every service that any outlet gets inside a range [MHz], rising. A user band
 * counts at its own frequency. Cable loses least at the low end, filters may do so at either.
 */
export function carriedFrequencies({ records }: Evaluation, { fromMHz, toMHz }: Range): readonly number[] {
  const ends = new Map<Service, { lowMHz: number; highMHz: number }>();
  // Bands that were not filtered share what says so, and with it their frequencies.
  const seen = new Set<object>();
  for (const { kind, outputs } of records) {
    if (!kind.delivery) continue;
    for (const { bands } of Object.values(outputs))
      for (const band of bands) {
        const { service } = band.origin;
        const { grid, cut } = band;
        if (!WANTED.has(service) || seen.has(cut)) continue;
        seen.add(cut);
        if (grid.toMHz < fromMHz || grid.fromMHz > toMHz) continue;
        grid.centre.forEach((f, i) => {
          if (f < fromMHz || f > toMHz || !isLive(band, i)) return;
          const known = ends.get(service);
          if (!known) ends.set(service, { lowMHz: f, highMHz: f });
          else if (f < known.lowMHz) known.lowMHz = f;
          else if (f > known.highMHz) known.highMHz = f;
        });
      }
  }
  const all = [...ends.values()].flatMap(({ lowMHz, highMHz }) => [lowMHz, highMHz]);
  return [...new Set(all)].sort((a, b) => a - b);
}
