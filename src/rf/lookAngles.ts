/** Where a geostationary satellite stands in the sky of a site. */

/** Semi-major axis [km] and flattening of the Earth's ellipsoid (WGS 84). */
const EARTH_RADIUS_KM = 6378.137;
const EARTH_FLATTENING = 1 / 298.257223563;

/** Radius of the geostationary orbit [km]. */
export const GEOSTATIONARY_RADIUS_KM = 42_164.17;

export type SitePosition = {
  /** North is positive. */
  readonly siteLatitudeDeg: number;
  /** East is positive. */
  readonly siteLongitudeDeg: number;
  readonly siteHeightKm: number;
};

export type LookAngles = {
  /** Clockwise from true north, 0 to 360. A compass needs the local declination taken off. */
  readonly azimuthDeg: number;
  /** Above the horizon, without refraction; negative: below the horizon, no reception. */
  readonly elevationDeg: number;
  /**
   * Turn of the converter [degrees], seen by somebody who looks at the satellite: positive is anticlockwise.
   * It is 0 when the satellite stands due south or north, and 90 at most (for a site on the equator).
   * A satellite whose polarisation planes are tilted in orbit adds its own tilt to this.
   */
  readonly skewDeg: number;
  /** Distance to the satellite [km]. */
  readonly rangeKm: number;
};

const rad = (deg: number): number => (deg * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;

/**
 * Azimuth, elevation, skew and range of a geostationary satellite.
 * On the ellipsoid: the vector site → satellite, turned into east, north and up at the site. A plain
 * sphere would be off by up to 0.035° in elevation.
 * skew = atan(sin Δ / tan latitude), Δ = satellite's longitude − site's longitude
 */
export function lookAngles(options: SitePosition & { readonly satelliteLongitudeDeg: number }): LookAngles {
  const latitude = rad(options.siteLatitudeDeg);
  const delta = rad(options.satelliteLongitudeDeg - options.siteLongitudeDeg);
  const [sinLat, cosLat] = [Math.sin(latitude), Math.cos(latitude)];

  // The site in a frame that turns with it: x outward in the plane of its meridian, y east, z north.
  const eccentricity2 = EARTH_FLATTENING * (2 - EARTH_FLATTENING);
  const normalKm = EARTH_RADIUS_KM / Math.sqrt(1 - eccentricity2 * sinLat ** 2);
  const siteX = (normalKm + options.siteHeightKm) * cosLat;
  const siteZ = (normalKm * (1 - eccentricity2) + options.siteHeightKm) * sinLat;

  const x = GEOSTATIONARY_RADIUS_KM * Math.cos(delta) - siteX;
  const east = GEOSTATIONARY_RADIUS_KM * Math.sin(delta);
  const north = -x * sinLat - siteZ * cosLat;
  const up = x * cosLat - siteZ * sinLat;

  return {
    azimuthDeg: (deg(Math.atan2(east, north)) + 360) % 360,
    elevationDeg: deg(Math.atan2(up, Math.hypot(east, north))),
    skewDeg: skewDeg(latitude, delta),
    rangeKm: Math.hypot(east, north, up),
  };
}

/** Angle between two directions in the sky [degrees], as somebody on the ground sees it. */
export function directionsApartDeg(
  a: Pick<LookAngles, "azimuthDeg" | "elevationDeg">,
  b: Pick<LookAngles, "azimuthDeg" | "elevationDeg">,
): number {
  const [up, other] = [rad(a.elevationDeg), rad(b.elevationDeg)];
  const turn = rad(a.azimuthDeg - b.azimuthDeg);
  const cos = Math.sin(up) * Math.sin(other) + Math.cos(up) * Math.cos(other) * Math.cos(turn);
  return deg(Math.acos(Math.min(1, Math.max(-1, cos))));
}

/** Below the satellite itself, every direction of the polarisation is as good: 0. On the equator: ±90. */
function skewDeg(latitude: number, delta: number): number {
  const slope = Math.tan(latitude);
  if (slope === 0) return 90 * Math.sign(Math.sin(delta));
  return deg(Math.atan(Math.sin(delta) / slope));
}
