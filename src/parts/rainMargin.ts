/** How much rain a dish and its converter stand before transponders fail. */
import { dbToRatio, ratioToDb } from "../rf/decibel.ts";
import { rainAttenuationDb } from "../rf/rain.ts";
import { skyNoiseKelvin } from "../rf/skyNoise.ts";
import type { Wave } from "../signal/carrier.ts";
import { type DishFeed, feedsOf, rowsAtFeed } from "./dishFeeds.ts";
import type { DishOptions } from "./dishOptions.ts";
import { dishAim } from "./linkBudget.ts";

/** Shares of an average year that are looked at [%]: from 4 days down to 5 minutes. */
export const RAIN_SHARES = [1, 0.3, 0.1, 0.03, 0.01, 0.001] as const;

export type RainRow = {
  /** Share of the year for which it rains at least so hard [%]. */
  readonly timePercent: number;
  /** Attenuation by rain [dB]. */
  readonly attenuationDb: number;
  /** What C/(N+I) loses: attenuation, and the noise that the rain radiates into the dish [dB]. */
  readonly lossOfCnDb: number;
};

/** What stands against a carrier under a clear sky, as shares of all of it [0..1], together 1. */
export type Against = {
  /** Noise of sky, dish and converter: the carrier falls below it, and it grows. */
  readonly sky: number;
  /** What comes from the sky with the carrier, and falls with it: neighbours, the other polarisation. */
  readonly falling: number;
  /** Noise of what follows, products of amplifiers, what gets in from outside: rain does nothing to it. */
  readonly behind: number;
};

const NOISE_ALONE: Against = { sky: 1, falling: 0, behind: 0 };

/**
 * Rain by share of the year, at one frequency and polarisation (ITU-R P.618-13 with P.838-3).
 * `systemKelvin`: noise temperature of dish and converter under a clear sky; the quieter they are,
 * the more the rain's own noise costs. `feed`: absent, the one in the focus. Rain that `rainLossDb` already reckons with is not taken off.
 */
export function rainTable(
  o: DishOptions,
  at: {
    readonly frequencyMHz: number;
    readonly polarisation: "V" | "H";
    readonly systemKelvin: number;
    readonly against?: Against;
    readonly feed?: DishFeed;
  },
): readonly RainRow[] {
  const { sky, falling, behind } = at.against ?? NOISE_ALONE;
  const { elevationDeg } = at.feed?.aim ?? dishAim(o);
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
    const noisier = Math.max(1, hotter / Math.max(1, at.systemKelvin));
    const weaker = dbToRatio(attenuationDb);
    const lossOfCnDb = ratioToDb(weaker * (sky * noisier + behind) + falling);
    return { timePercent, attenuationDb, lossOfCnDb };
  });
}

/** Of a wave against the horizon; a circular one has the mean of both. */
const TILT_DEG = { H: 0, V: 90, L: 45, R: 45 } as const;

type Heard = { readonly frequencyMHz: number; readonly wave: Wave };

/** Rain that a transponder at a feed loses for a share of an average year [dB]. */
function rainAt(
  o: DishOptions,
  { aim }: DishFeed,
  { frequencyMHz, wave }: Heard,
  timePercent: number,
): number {
  return rainAttenuationDb({
    elevationDeg: aim.elevationDeg,
    frequencyMHz,
    tiltDeg: TILT_DEG[wave],
    siteLatitudeDeg: o.siteLatitudeDeg,
    siteHeightKm: o.siteHeightM / 1000,
    rainHeightKm: o.rainHeightKm,
    rainRateMmPerH: o.rainRateMmPerH,
    timePercent,
  });
}

/**
 * Rain that weakens the plan of a dish for a share of an average year [dB]: of the transponders of all its satellites, that which
 * rain takes most from. A dish that looks below the horizon, or has no plan, loses nothing.
 */
export function planRainDb(o: DishOptions, timePercent: number): number {
  const losses = feedsOf(o).flatMap((feed) =>
    rowsAtFeed(o.transponders, feed.number).map(({ frequencyMHz, polarisation }) =>
      rainAt(o, feed, { frequencyMHz, wave: polarisation }, timePercent),
    ),
  );
  return Math.max(0, ...losses);
}

/** What the rain of now takes from a transponder [dB]. */
export type RainNow = (at: Heard) => number;

/**
 * The rain of now at a feed, by transponder: a dish's own figure is that of the one hit hardest, and the others lose as much less
 * as they do in rain that is met as often (ITU-R P.618): lower frequencies, upright waves, satellites that stand higher.
 */
export function rainNow(o: DishOptions, feed: DishFeed): RainNow {
  if (o.rainLossDb === 0) return () => 0;
  const hardest = RAIN_SHARES.map((share) => ({ share, db: planRainDb(o, share) }));
  const far = ({ db }: { readonly db: number }) => Math.abs(Math.log(db / o.rainLossDb));
  const [like] = hardest.filter(({ db }) => db > 0).sort((a, b) => far(a) - far(b));
  // Where it never rains by the figures of the site, all lose alike.
  if (!like) return () => o.rainLossDb;
  return (at) => (o.rainLossDb * rainAt(o, feed, at, like.share)) / like.db;
}

/** Share of an average year for which a margin is too small [%]; null when it stands the worst looked at. */
export function outagePercent(rows: readonly RainRow[], marginDb: number): number | null {
  const failing = rows.filter((row) => row.lossOfCnDb > marginDb);
  return failing.length > 0 ? Math.max(...failing.map((row) => row.timePercent)) : null;
}
