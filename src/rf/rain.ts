/** Rain on the way down: attenuation exceeded for a share of the year, ITU-R P.618-13 §2.2.1.1. */
import { type RainPath, rainCoefficients } from "./rainCoefficients.ts";

/** Effective Earth radius for low paths [km]. */
const EFFECTIVE_EARTH_KM = 8500;

export type RainSite = RainPath & {
  readonly siteLatitudeDeg: number;
  readonly siteHeightKm: number;
  /** Mean rain height [km above sea]: ITU-R P.839 0 °C isotherm + 0.36 km; about 2.5 at 50° latitude. */
  readonly rainHeightKm: number;
  /** Rain rate exceeded for 0.01 % of a year [mm/h], ITU-R P.837. */
  readonly rainRateMmPerH: number;
};

/**
 * Rain attenuation exceeded for a share of an average year [dB, positive].
 * The method holds for 0.001 to 5 % of the time and up to 55 GHz; above 5 % rain no longer rules.
 * A site above the rain gives 0.
 * A_p = A_0.01·(p/0.01)^−(0.655 + 0.033·ln p − 0.045·ln A_0.01 − β·(1 − p)·sin θ)
 */
export function rainAttenuationDb(options: RainSite & { readonly timePercent: number }): number {
  const { elevationDeg, siteLatitudeDeg, timePercent } = options;
  const typical = rainAttenuation001Db(options);
  if (typical === 0) return 0;

  const sinElevation = Math.sin(rad(elevationDeg));
  const beta = latitudeTerm({ elevationDeg, siteLatitudeDeg, timePercent });
  const exponent =
    0.655 +
    0.033 * Math.log(timePercent) -
    0.045 * Math.log(typical) -
    beta * (1 - timePercent) * sinElevation;
  return typical * (timePercent / 0.01) ** -exponent;
}

/**
 * Share of an average year [%] for what is exceeded for a share of the worst month [%] (ITU-R P.841-4, world values, from
 * memory): p = 0.30·p_w^1.15. Holds between 0.001 and 3 % of the year.
 */
export function yearPercentOfWorstMonth(monthPercent: number): number {
  return 0.3 * monthPercent ** 1.15;
}

const rad = (deg: number): number => (deg * Math.PI) / 180;

/** Attenuation exceeded for 0.01 % of the year [dB]: steps 2 to 9 of the method. */
function rainAttenuation001Db(site: RainSite): number {
  const climbKm = site.rainHeightKm - site.siteHeightKm;
  // Above the rain (or within a millimetre of it), below the horizon, or in a desert: nothing to attenuate.
  if (!(climbKm > 1e-6) || !(site.elevationDeg > 0) || !(site.rainRateMmPerH > 0)) return 0;

  const elevation = rad(site.elevationDeg);
  const [sin, cos] = [Math.sin(elevation), Math.cos(elevation)];
  const frequencyGHz = site.frequencyMHz / 1000;
  const { k, alpha } = rainCoefficients(site);
  const dbPerKm = k * site.rainRateMmPerH ** alpha;

  // Slant path below the rain height; near the horizon the curve of the Earth limits it.
  const slantKm =
    site.elevationDeg >= 5
      ? climbKm / sin
      : (2 * climbKm) / (Math.sqrt(sin ** 2 + (2 * climbKm) / EFFECTIVE_EARTH_KM) + sin);
  const groundKm = slantKm * cos;

  // Rain cells are smaller than the path: first shortened along the ground ...
  const reduction =
    1 / (1 + 0.78 * Math.sqrt((groundKm * dbPerKm) / frequencyGHz) - 0.38 * (1 - Math.exp(-2 * groundKm)));
  const cellAngle = Math.atan2(climbKm, groundKm * reduction);
  const rainyKm = cellAngle > elevation ? (groundKm * reduction) / cos : climbKm / sin;

  // ... then adjusted along the slant.
  const tropics = Math.max(0, 36 - Math.abs(site.siteLatitudeDeg));
  const adjustment =
    1 /
    (1 +
      Math.sqrt(sin) *
        ((31 * (1 - Math.exp(-site.elevationDeg / (1 + tropics))) * Math.sqrt(rainyKm * dbPerKm)) /
          frequencyGHz ** 2 -
          0.45));
  return dbPerKm * rainyKm * adjustment;
}

/** β of step 10: rain nearer the equator is spread over the year in another way. */
function latitudeTerm(options: {
  elevationDeg: number;
  siteLatitudeDeg: number;
  timePercent: number;
}): number {
  const latitude = Math.abs(options.siteLatitudeDeg);
  if (options.timePercent >= 1 || latitude >= 36) return 0;
  const base = -0.005 * (latitude - 36);
  return options.elevationDeg >= 25 ? base : base + 1.8 - 4.25 * Math.sin(rad(options.elevationDeg));
}
