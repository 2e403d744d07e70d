/** The link budget of a dish: where it looks, what arrives at its feed, and how noisy that is. */
import { dbmToDbuv, dbToRatio } from "../rf/decibel.ts";
import { dishGainDbi } from "../rf/dish.ts";
import type { LookAngles } from "../rf/lookAngles.ts";
import { freeSpaceLossDb } from "../rf/path.ts";
import { skyNoiseKelvin } from "../rf/skyNoise.ts";
import { directionTo } from "./dishFeeds.ts";
import type { DishOptions } from "./dishOptions.ts";

/** How the dish has to stand: direction of the satellite, and the angle set on an offset dish's mount. */
export function dishAim(o: DishOptions): LookAngles & { readonly mountElevationDeg: number } {
  const angles = directionTo(o, o.orbitalPositionDegE);
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

/**
 * Noise temperature of a dish under rain [K].
 * Rain hides part of the sky's own noise and puts its own in place.
 * T = T_clear · 10^(−A/10) + 275 K · (1 − 10^(−A/10))
 */
export function feedKelvin(o: Pick<DishOptions, "antennaKelvin" | "rainLossDb">): number {
  return o.antennaKelvin * dbToRatio(-o.rainLossDb) + skyNoiseKelvin({ attenuationDb: o.rainLossDb });
}
