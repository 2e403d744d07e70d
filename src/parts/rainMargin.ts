/** How much rain a dish and its converter stand before transponders fail. */
import { dbToRatio, ratioToDb } from "../rf/decibel.ts";
import { rainAttenuationDb } from "../rf/rain.ts";
import { skyNoiseKelvin } from "../rf/skyNoise.ts";
import type { DishOptions } from "./dishOptions.ts";
import { dishAim } from "./linkBudget.ts";

/** Shares of an average year that are looked at [%]: from 4 days down to 5 minutes. */
export const RAIN_SHARES = [1, 0.3, 0.1, 0.03, 0.01, 0.001] as const;

export type RainRow = {
  /** Share of the year for which it rains at least so hard [%]. */
  readonly timePercent: number;
  /** Attenuation by rain [dB]. */
  readonly attenuationDb: number;
  /** What C/N loses: attenuation, and the noise that the rain radiates into the dish [dB]. */
  readonly lossOfCnDb: number;
};

/**
 * Rain by share of the year, at one frequency and polarisation (ITU-R P.618-13 with P.838-3).
 * `systemKelvin`: noise temperature of dish and converter under a clear sky; the quieter they are,
 * the more the rain's own noise costs. Rain that `rainLossDb` already reckons with is not taken off.
 */
export function rainTable(
  o: DishOptions,
  at: { readonly frequencyMHz: number; readonly polarisation: "V" | "H"; readonly systemKelvin: number },
): readonly RainRow[] {
  const { elevationDeg } = dishAim(o);
  return RAIN_SHARES.map((timePercent) => {
    const attenuationDb = rainAttenuationDb({
      elevationDeg,
      frequencyMHz: at.frequencyMHz,
      tiltDeg: at.polarisation === "V" ? 90 : 0,
      siteLatitudeDeg: o.siteLatitudeDeg,
      siteHeightKm: o.siteHeightM / 1000,
      rainHeightKm: o.rainHeightKm,
      rainRateMmPerH: o.rainRateMmPerH,
      timePercent,
    });
    const clear = o.antennaKelvin * (1 - dbToRatio(-attenuationDb));
    const hotter = at.systemKelvin + skyNoiseKelvin({ attenuationDb }) - clear;
    const noisierDb = ratioToDb(Math.max(1, hotter / Math.max(1, at.systemKelvin)));
    return { timePercent, attenuationDb, lossOfCnDb: attenuationDb + noisierDb };
  });
}

/** Of a wave against the horizon; a circular one has the mean of both. */
const TILT_DEG = { H: 0, V: 90, L: 45, R: 45 } as const;

/**
 * Rain that weakens the plan of a dish for a share of an average year [dB]: of its transponders, that which rain takes
 * most from. A dish that looks below the horizon, or has no plan, loses nothing.
 */
export function planRainDb(o: DishOptions, timePercent: number): number {
  const { elevationDeg } = dishAim(o);
  const losses = o.transponders.map(({ frequencyMHz, polarisation }) =>
    rainAttenuationDb({
      elevationDeg,
      frequencyMHz,
      tiltDeg: TILT_DEG[polarisation],
      siteLatitudeDeg: o.siteLatitudeDeg,
      siteHeightKm: o.siteHeightM / 1000,
      rainHeightKm: o.rainHeightKm,
      rainRateMmPerH: o.rainRateMmPerH,
      timePercent,
    }),
  );
  return Math.max(0, ...losses);
}

/** Share of an average year for which a margin is too small [%]; null when it stands the worst looked at. */
export function outagePercent(rows: readonly RainRow[], marginDb: number): number | null {
  const failing = rows.filter((row) => row.lossOfCnDb > marginDb);
  return failing.length > 0 ? Math.max(...failing.map((row) => row.timePercent)) : null;
}
