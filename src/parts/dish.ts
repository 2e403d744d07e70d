/** Dishes: one satellite in both polarisations, at the feed where the converter sits. */
import type { Band, Grid } from "../signal/band.ts";
import type { Wave } from "../signal/carrier.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { sourceBand } from "../signal/treat.ts";
import { numeral } from "../words/numbers.ts";
import { define, type PartKind, type Port, type SignalContext } from "./contract.ts";
import { C_DISH_OPTIONS, KA_DISH_OPTIONS } from "./dishBands.ts";
import {
  besideFocusLossDb,
  type DishFeed,
  feedPort,
  feedsOf,
  obstructionOf,
  rowsAtFeed,
} from "./dishFeeds.ts";
import { DISH_OPTIONS, type DishOptions } from "./dishOptions.ts";
import { dishAim, feedKelvin, feedLevelDbuv } from "./linkBudget.ts";
import { type TransponderRow, transponder } from "./planSatellite.ts";
import { rainNow } from "./rainMargin.ts";
import { disturbedInSky } from "./skyInterference.ts";

/** "20.0°E", "5.0°W". */
export function orbitalPosition(degE: number): string {
  return `${Math.abs(degE).toFixed(1)}°${degE < 0 ? "W" : "E"}`;
}

type Plan = { readonly rows: readonly (TransponderRow & { eirpOffsetDb: number })[]; readonly grid: Grid };
const plans = new WeakMap<object, Map<number, ReadonlyMap<Wave, Plan>>>();
const WAVES: readonly Wave[] = ["V", "H", "R", "L"];

/** What arrives at a feed, by wave. */
function planOf(transponders: DishOptions["transponders"], feed: number): ReadonlyMap<Wave, Plan> {
  const byFeed = remembered(plans, transponders, () => new Map<number, ReadonlyMap<Wave, Plan>>());
  return remembered(byFeed, feed, () => {
    const listed = rowsAtFeed(transponders, feed);
    return new Map(
      WAVES.flatMap((wave) => {
        const rows = listed.filter((row) => row.polarisation === wave);
        return rows.length > 0 ? [[wave, { rows, grid: makeGrid(rows.map(transponder)) }] as const] : [];
      }),
    );
  });
}

/** One band for each polarisation; none from a satellite that is below the horizon. */
function skyBands(o: DishOptions, id: string, feed: DishFeed): readonly Band[] {
  const { elevationDeg, rangeKm } = feed.aim;
  if (elevationDeg <= 0) return [];
  const satellite = feed.satelliteName.trim() || orbitalPosition(feed.orbitalPositionDegE);
  const rainDb = rainNow(o, feed);
  const hiddenDb = (frequencyMHz: number) => obstructionOf(o, feed.aim, frequencyMHz)?.lossDb ?? 0;
  const bands = [...planOf(o.transponders, feed.number)].map(([wave, { rows, grid }]) =>
    sourceBand({
      origin: {
        key: `${id}/${feed.number > 1 ? feed.number : ""}${wave}`,
        service: "satellite",
        part: id,
        satellite,
        polarisation: wave === "V" || wave === "R" ? "V" : "H",
        ...(wave === "R" || wave === "L" ? { circular: true } : {}),
      },
      grid,
      levelDbuv: ({ airMHz }, i) =>
        feedLevelDbuv(
          { ...o, eirpDbw: feed.eirpDbw, rainLossDb: rainDb({ frequencyMHz: airMHz, wave }) },
          { frequencyMHz: airMHz, rangeKm },
        ) -
        besideFocusLossDb(o, feed, airMHz) -
        hiddenDb(airMHz) +
        (rows[i]?.eirpOffsetDb ?? 0),
      noiseKelvin: ({ airMHz }) => feedKelvin({ ...o, rainLossDb: rainDb({ frequencyMHz: airMHz, wave }) }),
    }),
  );
  return disturbedInSky(bands, o, feed, { hiddenDb, rainDb });
}

const FOCUS: Port = { id: "sky", side: "out", medium: "sky", label: "feed", role: "beam" };

function sidePort(number: number): Port {
  return { ...FOCUS, id: feedPort(number), label: `feed ${number}` };
}

const EVERY_DISH = {
  family: "receive",
  prefix: "dish",
  symbol: "dish",
  caption: (o: DishOptions) => {
    const { azimuthDeg, elevationDeg } = dishAim(o);
    const where = o.satelliteName.trim() || orbitalPosition(o.orbitalPositionDegE);
    const aim =
      elevationDeg > 0
        ? `az ${numeral(azimuthDeg, 0)}° el ${numeral(elevationDeg, 0)}°`
        : "below the horizon";
    return `${numeral(o.diameterM, 2)} m · ${where} · ${aim}`;
  },
  ports: (o: DishOptions) => [FOCUS, ...o.sideFeeds.map((_, i) => sidePort(i + 2))],
  signal: (o: DishOptions, { id }: SignalContext) => ({
    emits: feedsOf(o).map((feed) => ({ port: feed.port, bands: skyBands(o, id, feed) })),
  }),
  cautions: ["height", "bonding"],
} as const;

const KEYWORDS = ["satellite", "antenna", "reflector", "parabolic"];

const DISH = define({
  ...EVERY_DISH,
  kind: "dish",
  name: "Dish",
  summary: "Collects one satellite’s signal for the LNB at its feed.",
  keywords: [...KEYWORDS, "Ku band"],
  trade: { job: "dish", price: 50, workMinutes: 60 },
  options: DISH_OPTIONS,
});

const DISH_C = define({
  ...EVERY_DISH,
  kind: "dish-c-band",
  name: "Dish for C band",
  summary: `A large dish for satellites at ${numeral(3.4)} to ${numeral(4.2)} GHz, with their usual levels.`,
  keywords: [...KEYWORDS, "C band", "4 GHz", "mesh", "prime focus"],
  trade: { job: "dish", price: 200, workMinutes: 180, isRare: true, satelliteBand: "C" },
  options: C_DISH_OPTIONS,
});

const DISH_KA = define({
  ...EVERY_DISH,
  kind: "dish-ka-band",
  name: "Dish for Ka band",
  summary: `A dish for satellites at ${numeral(17.3)} to 22 GHz, with their usual levels.`,
  keywords: [...KEYWORDS, "Ka band", "20 GHz"],
  trade: { job: "dish", price: 80, workMinutes: 60, isRare: true, satelliteBand: "Ka" },
  options: KA_DISH_OPTIONS,
});

export const DISHES: readonly PartKind[] = [DISH, DISH_C, DISH_KA];
