/** The dish: one satellite in both polarisations, at the feed where the converter sits. */
import type { Band, Grid } from "../signal/band.ts";
import type { Polarisation } from "../signal/carrier.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { sourceBand } from "../signal/treat.ts";
import { numeral } from "../words/numbers.ts";
import { define } from "./contract.ts";
import { DISH_OPTIONS, type DishOptions } from "./dishOptions.ts";
import { dishAim, feedKelvin, feedLevelDbuv } from "./linkBudget.ts";
import { type TransponderRow, transponder } from "./planSatellite.ts";

/** "20.0°E", "5.0°W". */
export function orbitalPosition(degE: number): string {
  return `${Math.abs(degE).toFixed(1)}°${degE < 0 ? "W" : "E"}`;
}

type Half = { readonly rows: readonly (TransponderRow & { eirpOffsetDb: number })[]; readonly grid: Grid };
const plans = new WeakMap<object, Record<Polarisation, Half>>();

function planOf(transponders: DishOptions["transponders"]): Record<Polarisation, Half> {
  return remembered(plans, transponders, () => {
    const half = (polarisation: Polarisation): Half => {
      const rows = transponders.filter((row) => row.polarisation === polarisation);
      return { rows, grid: makeGrid(rows.map(transponder)) };
    };
    return { V: half("V"), H: half("H") };
  });
}

/** One band for each polarisation; none from a satellite that is below the horizon. */
function skyBands(o: DishOptions, id: string): readonly Band[] {
  const { elevationDeg, rangeKm } = dishAim(o);
  if (elevationDeg <= 0) return [];
  const satellite = o.satelliteName.trim() || orbitalPosition(o.orbitalPositionDegE);
  const plan = planOf(o.transponders);
  const bands: Band[] = [];
  for (const polarisation of ["V", "H"] as const) {
    const { rows, grid } = plan[polarisation];
    if (rows.length === 0) continue;
    bands.push(
      sourceBand({
        origin: { key: `${id}/${polarisation}`, service: "satellite", part: id, satellite, polarisation },
        grid,
        levelDbuv: (carrier, i) =>
          feedLevelDbuv(o, { frequencyMHz: carrier.airMHz, rangeKm }) + (rows[i]?.eirpOffsetDb ?? 0),
        noiseKelvin: feedKelvin(o),
      }),
    );
  }
  return bands;
}

export const DISH = define({
  kind: "dish",
  family: "receive",
  name: "Dish",
  summary: "Collects one satellite’s signal for the LNB at its feed.",
  keywords: ["satellite", "antenna", "reflector", "parabolic", "Ku band"],
  prefix: "dish",
  trade: { job: "dish", price: 50, workMinutes: 60 },
  options: DISH_OPTIONS,
  symbol: "dish",
  caption: (o) => {
    const { azimuthDeg, elevationDeg } = dishAim(o);
    const where = o.satelliteName.trim() || orbitalPosition(o.orbitalPositionDegE);
    const aim =
      elevationDeg > 0
        ? `az ${numeral(azimuthDeg, 0)}° el ${numeral(elevationDeg, 0)}°`
        : "below the horizon";
    return `${numeral(o.diameterM, 2)} m · ${where} · ${aim}`;
  },
  ports: () => [{ id: "sky", side: "out", medium: "sky", label: "feed", role: "beam" }],
  signal: (o, { id }) => ({ emits: [{ port: "sky", bands: skyBands(o, id) }] }),
  cautions: ["height", "bonding"],
});
