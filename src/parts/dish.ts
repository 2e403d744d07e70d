/** The dish: a satellite's link budget, from its EIRP to the level at the converter's feed. */
import { z } from "zod";
import { dbmToDbuv, dbToRatio } from "../rf/decibel.ts";
import { dishGainDbi } from "../rf/dish.ts";
import { type LookAngles, lookAngles } from "../rf/lookAngles.ts";
import { freeSpaceLossDb } from "../rf/path.ts";
import type { Band, Grid } from "../signal/band.ts";
import type { Polarisation } from "../signal/carrier.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { sourceBand } from "../signal/treat.ts";
import { modeChoices } from "./aerials.ts";
import { define } from "./contract.ts";
import { choice, number, rows, text } from "./fields.ts";
import {
  DEFAULT_TRANSPONDERS,
  ROLL_OFFS,
  SKY_FROM_MHZ,
  SKY_TO_MHZ,
  type TransponderRow,
  transponder,
} from "./planSatellite.ts";

const TRANSPONDER_ROW = z.object({
  frequencyMHz: number({
    label: "Frequency",
    unit: "MHz",
    min: SKY_FROM_MHZ,
    max: SKY_TO_MHZ,
    step: 0.25,
    default: 11_778,
  }),
  polarisation: choice({
    label: "Polarisation",
    choices: [
      { value: "V", label: "Vertical" },
      { value: "H", label: "Horizontal" },
    ],
    default: "V",
  }),
  symbolRateMsps: number({
    label: "Symbol rate",
    unit: "MBd",
    min: 1,
    max: 60,
    step: 0.1,
    default: 27.5,
    source: "usual for a whole transponder, from memory",
  }),
  mode: choice({
    label: "Modulation",
    help: "Decides the C/N that the transponder needs.",
    choices: modeChoices("dvbs-", "dvbs2-"),
    default: "dvbs-qpsk-3/4",
  }),
  rollOff: choice({
    label: "Roll-off",
    help: "Occupied width is symbol rate × (1 + roll-off). The widest is a safe guess.",
    choices: ROLL_OFFS.map((value) => ({ value, label: value })),
    default: "0.35",
    source: "EN 300 421 (DVB-S: 0.35 only), from memory",
    advanced: true,
  }),
  eirpOffsetDb: number({
    label: "EIRP offset",
    unit: "dB",
    help: "How much stronger or weaker this transponder is than the satellite's common EIRP.",
    min: -20,
    max: 10,
    step: 0.5,
    default: 0,
  }),
});

const OPTIONS = z.object({
  diameterM: number({
    label: "Diameter",
    unit: "m",
    help: "Of an offset dish: the width, its shorter axis.",
    min: 0.3,
    max: 5,
    step: 0.05,
    default: 0.6,
    source: "usual for a house, from memory",
  }),
  orbitalPositionDegE: number({
    label: "Orbital position",
    unit: "°E",
    help: "Longitude of the satellite; west is negative.",
    min: -180,
    max: 180,
    step: 0.1,
    default: 20,
    source: "invented",
  }),
  satelliteName: text({
    label: "Name of the satellite",
    help: "Shown on strips and in tables; its orbital position if left empty.",
    maxLength: 24,
    default: "",
  }),
  eirpDbw: number({
    label: "EIRP",
    unit: "dBW",
    help: "Of one transponder towards your site, from the satellite's footprint map.",
    min: 30,
    max: 65,
    step: 0.5,
    default: 51,
    source: "typical for a European beam (50 to 54), from memory",
  }),
  siteLatitudeDeg: number({
    label: "Latitude of the site",
    unit: "°N",
    help: "South is negative.",
    min: -85,
    max: 85,
    step: 0.1,
    default: 50,
    source: "invented",
  }),
  siteLongitudeDeg: number({
    label: "Longitude of the site",
    unit: "°E",
    help: "West is negative.",
    min: -180,
    max: 180,
    step: 0.1,
    default: 10,
    source: "invented",
  }),
  pointingLossDb: number({
    label: "Pointing loss",
    unit: "dB",
    help: "What a not quite perfect alignment costs.",
    min: 0,
    max: 20,
    step: 0.1,
    default: 0.5,
    source: "common planning value, from memory",
  }),
  rainLossDb: number({
    label: "Rain loss now",
    unit: "dB",
    help: "0 under a clear sky. Rain weakens the signal and adds its own noise.",
    min: 0,
    max: 30,
    step: 0.5,
    default: 0,
  }),
  efficiency: number({
    label: "Efficiency",
    help: "Share of the dish's area that works.",
    min: 0.3,
    max: 0.85,
    step: 0.01,
    default: 0.65,
    source: "typical of offset dishes (0.60 to 0.75), from memory",
    advanced: true,
  }),
  offsetAngleDeg: number({
    label: "Offset angle",
    unit: "°",
    help: "How much steeper an offset dish looks than it stands; 0 for a centre-fed one. For the alignment only.",
    min: 0,
    max: 35,
    step: 0.5,
    default: 25,
    source: "typical (20 to 28), from memory; see the maker's sheet",
    advanced: true,
  }),
  clearSkyLossDb: number({
    label: "Clear-sky loss",
    unit: "dB",
    help: "Air and cloud without rain.",
    min: 0,
    max: 5,
    step: 0.1,
    default: 0.3,
    source: "textbook link budgets at 12 GHz",
    advanced: true,
  }),
  antennaKelvin: number({
    label: "Antenna temperature",
    unit: "K",
    help: "Noise that the dish picks up from sky and ground under a clear sky.",
    min: 5,
    max: 290,
    step: 1,
    default: 35,
    source: "typical above 20° elevation, from memory",
    advanced: true,
  }),
  siteHeightM: number({
    label: "Height of the site",
    unit: "m",
    help: "Above sea level.",
    min: 0,
    max: 5000,
    step: 10,
    default: 100,
    advanced: true,
  }),
  transponders: rows({
    label: "Transponders",
    help: "The satellite's plan.",
    row: TRANSPONDER_ROW,
    maxRows: 200,
    default: DEFAULT_TRANSPONDERS,
    source: "invented regular plan of 80 transponders",
  }),
});

export type DishOptions = z.output<typeof OPTIONS>;

/** How the dish has to stand: direction of the satellite, and the angle set on an offset dish's mount. */
export function dishAim(o: DishOptions): LookAngles & { readonly mountElevationDeg: number } {
  const angles = lookAngles({
    siteLatitudeDeg: o.siteLatitudeDeg,
    siteLongitudeDeg: o.siteLongitudeDeg,
    siteHeightKm: o.siteHeightM / 1000,
    satelliteLongitudeDeg: o.orbitalPositionDegE,
  });
  return { ...angles, mountElevationDeg: angles.elevationDeg - o.offsetAngleDeg };
}

/**
 * Level at the feed of a dish [dBµV into 75 Ω].
 * Far below what a meter shows anywhere: only the converter's 50 to 60 dB make it a level for a cable.
 * C = EIRP − free-space loss + dish gain − clear-sky, rain and pointing loss
 */
export function feedLevelDbuv(
  o: Pick<
    DishOptions,
    "eirpDbw" | "diameterM" | "efficiency" | "clearSkyLossDb" | "rainLossDb" | "pointingLossDb"
  >,
  at: { readonly frequencyMHz: number; readonly rangeKm: number },
): number {
  const { frequencyMHz, rangeKm } = at;
  const receivedDbw =
    o.eirpDbw -
    freeSpaceLossDb({ distanceKm: rangeKm, frequencyMHz }) +
    dishGainDbi({ diameterM: o.diameterM, efficiency: o.efficiency, frequencyMHz }) -
    (o.clearSkyLossDb + o.rainLossDb + o.pointingLossDb);
  return dbmToDbuv(receivedDbw + 30);
}

/** Temperature of rain as a source of noise [K] (ITU-R P.618 takes 275 K, from memory). */
const RAIN_KELVIN = 275;

/**
 * Noise temperature of a dish under rain of A dB [K].
 * Rain hides part of the sky's own noise and puts its own in place.
 * T = T_clear · 10^(−A/10) + 275 K · (1 − 10^(−A/10))
 */
export function feedKelvin(o: Pick<DishOptions, "antennaKelvin" | "rainLossDb">): number {
  const through = dbToRatio(-o.rainLossDb);
  return o.antennaKelvin * through + RAIN_KELVIN * (1 - through);
}

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
  summary: "Collects one satellite's signal for the converter at its feed.",
  keywords: ["satellite", "antenna", "reflector", "parabolic", "Ku band"],
  prefix: "dish",
  options: OPTIONS,
  symbol: "dish",
  caption: (o) => {
    const { azimuthDeg, elevationDeg } = dishAim(o);
    const where = o.satelliteName.trim() || orbitalPosition(o.orbitalPositionDegE);
    const aim =
      elevationDeg > 0 ? `az ${azimuthDeg.toFixed(0)}° el ${elevationDeg.toFixed(0)}°` : "below the horizon";
    return `${o.diameterM.toFixed(2)} m · ${where} · ${aim}`;
  },
  ports: () => [{ id: "sky", side: "out", medium: "sky", label: "feed" }],
  signal: (o, { id }) => ({ emits: [{ port: "sky", bands: skyBands(o, id) }] }),
  cautions: ["height", "bonding"],
});
