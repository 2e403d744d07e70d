/** What disturbs a transponder before any LNB: satellites beside its own, and rain that mixes polarisations. */
import { dbmToDbuv, dbToRatio } from "../rf/decibel.ts";
import { dishGainDbi } from "../rf/dish.ts";
import { directionsApartDeg } from "../rf/lookAngles.ts";
import { homeDishCrossDbi, homeDishDbi, stationDishDbi } from "../rf/offAxis.ts";
import { freeSpaceLossDb } from "../rf/path.ts";
import { rainCrossPolarDb } from "../rf/rainCrossPolar.ts";
import type { Band } from "../signal/band.ts";
import { leakShareOf, waveOf } from "../signal/leak.ts";
import { powerInside, powersOfBand } from "../signal/overlap.ts";
import { type DishFeed, directionTo } from "./dishFeeds.ts";
import type { DishOptions } from "./dishOptions.ts";
import type { RainNow } from "./rainMargin.ts";

/** Rain so hard is met for about this share of a year [%]: decides how the drops slant, by at most 10° here. */
const RAIN_SHARE_PERCENT = 0.01;

/** What weakens all that a feed receives, a neighbour like its own satellite [dB]: obstacles, and the rain of now. */
type Weather = { readonly hiddenDb: (frequencyMHz: number) => number; readonly rainDb: RainNow };

/** Bands of one feed with what disturbs them in the sky. */
export function disturbedInSky(
  bands: readonly Band[],
  o: DishOptions,
  feed: DishFeed,
  { hiddenDb, rainDb }: Weather,
): readonly Band[] {
  const neighbours = neighbourPower(o, feed);
  if (!neighbours && o.rainLossDb === 0) return bands;
  return bands.map((band) => {
    const wave = waveOf(band.origin);
    const interference = band.grid.centre.map((frequencyMHz) =>
      neighbours
        ? neighbours(frequencyMHz) * dbToRatio(-hiddenDb(frequencyMHz) - rainDb({ frequencyMHz, wave }))
        : 0,
    );
    if (o.rainLossDb > 0) {
      const crossed = bands.find(({ origin }) => waveOf(origin) === ACROSS[wave]);
      const power = crossed && powerInside(band.grid, crossed.grid, powersOfBand(crossed));
      power?.forEach((p, i) => {
        const frequencyMHz = band.grid.centre[i] ?? 0;
        interference[i] =
          (interference[i] ?? 0) +
          p * dbToRatio(-rainMixDb(rainDb({ frequencyMHz, wave: ACROSS[wave] }), feed, band, frequencyMHz));
      });
    }
    return { ...band, interference, ...leakShareOf(band, interference) };
  });
}

const ACROSS = { V: "H", H: "V", R: "L", L: "R" } as const;

/** What rain leaves between two polarisations [dB]; a circular wave is mixed most. `attenuationDb`: of the one that leaks. */
function rainMixDb(attenuationDb: number, { aim }: DishFeed, band: Band, frequencyMHz: number): number {
  return rainCrossPolarDb({
    frequencyMHz,
    attenuationDb,
    elevationDeg: aim.elevationDeg,
    tiltDeg: band.origin.circular ? 45 : aim.skewDeg,
    timePercent: RAIN_SHARE_PERCENT,
  });
}

/**
 * Power of all neighbours in a transponder at a frequency in a free and dry view [(µV)²]; undefined where none is to be heard.
 * Taken to send on every frequency, with both polarisations: one comes in by the dish's own pattern, one by that of the
 * other polarisation.
 */
function neighbourPower(o: DishOptions, feed: DishFeed): ((frequencyMHz: number) => number) | undefined {
  const heard = o.neighbours.flatMap(({ separationDeg, eirpDifferenceDb }) => {
    const aim = directionTo(o, feed.orbitalPositionDegE + separationDeg);
    return aim.elevationDeg > 0
      ? [
          {
            offAxisDeg: directionsApartDeg(feed.beam, aim),
            rangeKm: aim.rangeKm,
            eirpDbw: feed.eirpDbw + eirpDifferenceDb,
          },
        ]
      : [];
  });
  if (heard.length === 0) return undefined;
  return (frequencyMHz) => {
    const { diameterM, efficiency } = o;
    const beam = { diameterM, frequencyMHz, gainDbi: dishGainDbi({ diameterM, efficiency, frequencyMHz }) };
    let power = 0;
    for (const { offAxisDeg, rangeKm, eirpDbw } of heard) {
      const besideDbi =
        o.offAxisPattern === "station" ? stationDishDbi(beam, offAxisDeg) : homeDishDbi(beam, offAxisDeg);
      const gain = dbToRatio(besideDbi) + dbToRatio(homeDishCrossDbi(beam, offAxisDeg));
      const atDishDbw = eirpDbw - freeSpaceLossDb({ distanceKm: rangeKm, frequencyMHz }) - o.clearSkyLossDb;
      power += gain * dbToRatio(dbmToDbuv(atDishDbw + 30));
    }
    return power;
  };
}
