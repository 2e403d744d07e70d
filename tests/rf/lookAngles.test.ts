import fc from "fast-check";
import { ecfToLookAngles } from "satellite.js";
import { describe, expect, test } from "vitest";
import { GEOSTATIONARY_RADIUS_KM, lookAngles } from "../../src/rf/lookAngles.ts";

const rad = (deg: number): number => (deg * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;

/** The same satellite, seen through the look angles of the satellite.js package. */
function bySatelliteJs(place: Parameters<typeof lookAngles>[0]) {
  const longitude = rad(place.satelliteLongitudeDeg);
  const seen = ecfToLookAngles(
    {
      latitude: rad(place.siteLatitudeDeg),
      longitude: rad(place.siteLongitudeDeg),
      height: place.siteHeightKm,
    },
    {
      x: GEOSTATIONARY_RADIUS_KM * Math.cos(longitude),
      y: GEOSTATIONARY_RADIUS_KM * Math.sin(longitude),
      z: 0,
    },
  );
  return {
    azimuthDeg: (deg(seen.azimuth) + 360) % 360,
    elevationDeg: deg(seen.elevation),
    rangeKm: seen.rangeSat,
  };
}

describe("elevation agrees with the ITU-R Study Group 3 validation examples", () => {
  test.each([
    { latitude: 51.5, longitude: -0.14, satellite: 1, heightKm: 0.0314, elevationDeg: 31.07699124 },
    { latitude: 33.94, longitude: 18.43, satellite: 1, heightKm: 0, elevationDeg: 46.35969261 },
    { latitude: 22.9, longitude: -43.23, satellite: -100, heightKm: 0, elevationDeg: 22.27833468 },
    { latitude: 25.78, longitude: -80.22, satellite: -100, heightKm: 0.0086, elevationDeg: 52.67898486 },
    { latitude: 28.717, longitude: 77.3, satellite: 100, heightKm: 0.2094, elevationDeg: 48.24117054 },
    { latitude: 9.05, longitude: 38.7, satellite: 100, heightKm: 2.5399, elevationDeg: 20.14335809 },
  ])("$latitude°, $longitude° towards $satellite°", (row) => {
    const seen = lookAngles({
      siteLatitudeDeg: row.latitude,
      siteLongitudeDeg: row.longitude,
      siteHeightKm: row.heightKm,
      satelliteLongitudeDeg: row.satellite,
    });
    expect(Math.abs(seen.elevationDeg - row.elevationDeg)).toBeLessThan(5e-5);
  });
});

describe("textbook and public examples, which take the Earth as a sphere", () => {
  // Roddy, Satellite Communications, Ex. 3.1 and 3.2: 35° N 100° W, satellite 90° W: 37 215 km, elevation 48°.
  test("35° N, 100° W towards 90° W (Roddy)", () => {
    const seen = lookAngles({
      siteLatitudeDeg: 35,
      siteLongitudeDeg: -100,
      siteHeightKm: 0,
      satelliteLongitudeDeg: -90,
    });
    expect(Math.round(seen.elevationDeg)).toBe(48);
    // On the ellipsoid the site lies 7 km nearer to the Earth's centre, and its vertical leans 0.18°.
    expect(Math.abs(seen.rangeKm - 37_215)).toBeLessThan(15);
  });

  // Pratt, Satellite Communications, Ex. 2.2.1 (from memory): 52° N, 0°, satellite 66° E: el 5.85°, az 109.33°.
  test("52° N, 0° towards 66° E (Pratt)", () => {
    const seen = lookAngles({
      siteLatitudeDeg: 52,
      siteLongitudeDeg: 0,
      siteHeightKm: 0,
      satelliteLongitudeDeg: 66,
    });
    expect(Math.abs(seen.elevationDeg - 5.85)).toBeLessThan(0.05);
    expect(Math.abs(seen.azimuthDeg - 109.33)).toBeLessThan(0.05);
  });

  // Elevation table in the tests of the SNS3 satellite simulator: satellite at 33° E, spherical Earth.
  test.each([
    { latitude: 50, longitude: 0, elevationDeg: 24.723918 },
    { latitude: 60, longitude: 0, elevationDeg: 16.450908 },
    { latitude: 0, longitude: 0, elevationDeg: 51.609653 },
    { latitude: 70, longitude: -20, elevationDeg: 3.1913676 },
    { latitude: 50, longitude: 10, elevationDeg: 28.648396 },
    { latitude: 40, longitude: -10, elevationDeg: 26.277592 },
    { latitude: 10, longitude: 30, elevationDeg: 77.720429 },
    { latitude: 0, longitude: 30, elevationDeg: 86.4657 },
  ])("$latitude°, $longitude° towards 33° E lies within what the ellipsoid changes", (row) => {
    const seen = lookAngles({
      siteLatitudeDeg: row.latitude,
      siteLongitudeDeg: row.longitude,
      siteHeightKm: 0,
      satelliteLongitudeDeg: 33,
    });
    // Geodetic and geocentric vertical differ by up to 0.19°, of which 0.04° remain in elevation.
    expect(Math.abs(seen.elevationDeg - row.elevationDeg)).toBeLessThan(0.05);
  });
});

describe("azimuth, elevation and range agree with the satellite.js package", () => {
  test("at sites and satellites all over the globe", () => {
    const site = fc.record({
      siteLatitudeDeg: fc.double({ min: -89, max: 89, noNaN: true }),
      siteLongitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
      siteHeightKm: fc.double({ min: 0, max: 4, noNaN: true }),
      satelliteLongitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
    });
    fc.assert(
      fc.property(site, (place) => {
        const seen = lookAngles(place);
        const other = bySatelliteJs(place);
        expect(seen.elevationDeg).toBeCloseTo(other.elevationDeg, 5);
        expect(seen.rangeKm).toBeCloseTo(other.rangeKm, 3);
        // Around the zenith any azimuth is right; and 359.99… equals 0.00….
        if (Math.abs(seen.elevationDeg) > 89.9) return;
        expect(Math.cos(rad(seen.azimuthDeg - other.azimuthDeg))).toBeCloseTo(1, 8);
      }),
    );
  });
});

describe("skew", () => {
  const at = (siteLatitudeDeg: number, siteLongitudeDeg: number, satelliteLongitudeDeg: number): number =>
    lookAngles({ siteLatitudeDeg, siteLongitudeDeg, siteHeightKm: 0, satelliteLongitudeDeg }).skewDeg;

  // Spherical astronomy: the tilt between zenith and celestial pole at hour angle H and declination 0 is the
  // parallactic angle, tan q = sin H / tan φ, positive towards the west; here with its sign turned.
  test.each([
    { latitude: 52, longitude: 0, satellite: 29 },
    { latitude: 60, longitude: -1, satellite: 12 },
    { latitude: 40, longitude: -4, satellite: 18 },
    { latitude: -34, longitude: 18, satellite: 35 },
  ])(
    "$latitude°, $longitude° towards $satellite° E: the angle between two directions at the satellite",
    (row) => {
      expect(at(row.latitude, row.longitude, row.satellite)).toBeCloseTo(byVectors(row), 1);
    },
  );

  test("is none for a satellite due south, and opposite for mirrored satellites", () => {
    expect(at(50, 10, 10)).toBe(0);
    expect(at(50, 10, 25)).toBeCloseTo(-at(50, 10, -5), 9);
    expect(at(50, 10, 25)).toBeGreaterThan(0);
  });

  test("is 90° on the equator, and none right below the satellite", () => {
    expect(at(0, 10, 25)).toBe(90);
    expect(at(0, 10, -5)).toBe(-90);
    expect(at(0, 10, 10)).toBe(0);
  });
});

/**
 * Skew from geometry alone: the Earth's axis (the satellite's vertical polarisation) and the zenith, both projected
 * onto the plane across the line of sight; the turn from one to the other, anticlockwise for the observer, folded
 * into ±90° since a polarisation plane has no direction. Zenith of a sphere, hence the tolerance.
 */
function byVectors(row: { latitude: number; longitude: number; satellite: number }): number {
  type Vector = readonly [number, number, number];
  const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const cross = (a: Vector, b: Vector): Vector => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
  const [phi, delta] = [rad(row.latitude), rad(row.satellite - row.longitude)];
  const zenith: Vector = [Math.cos(phi), 0, Math.sin(phi)];
  const axis: Vector = [0, 0, 1];
  // A far satellite at the same hour angle: direction from the Earth's centre, as the parallactic angle has it.
  const sight: Vector = [Math.cos(delta), Math.sin(delta), 0];
  const across = (v: Vector): Vector => {
    const along = dot(v, sight);
    return [v[0] - along * sight[0], v[1] - along * sight[1], v[2] - along * sight[2]];
  };
  const [from, to] = [across(zenith), across(axis)];
  // Seen along the line of sight, a right-handed turn about it is clockwise.
  const clockwise = deg(Math.atan2(dot(cross(from, to), sight), dot(from, to)));
  const anticlockwise = -clockwise;
  return anticlockwise > 90 ? anticlockwise - 180 : anticlockwise < -90 ? anticlockwise + 180 : anticlockwise;
}
