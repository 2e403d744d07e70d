/** Bands of sources that state how clean their carriers are. */

import { REFERENCE_KELVIN } from "../rf/noise.ts";
import type { Band, Grid } from "../signal/band.ts";
import type { Origin } from "../signal/carrier.ts";
import { sourceBand } from "../signal/treat.ts";

/** Carriers with a stated C/N; never cleaner than a matched line allows. `levelDbuv`: by entry of the plan. */
export function bandOfQuality(o: {
  readonly origin: Origin;
  readonly grid: Grid;
  readonly levelDbuv: (entry: number) => number;
  readonly cnDb: number;
}): Band {
  const { origin, grid } = o;
  const band = sourceBand({
    origin,
    grid,
    levelDbuv: (_, entry) => o.levelDbuv(entry),
    noiseKelvin: REFERENCE_KELVIN,
  });
  const noise = band.noise.map((thermal, i) =>
    Math.max(thermal, 10 ** (((band.level[i] ?? 0) - o.cnDb) / 10)),
  );
  return { ...band, noise };
}
