/** Two polarisations on one frequency: how well a feed tells them apart, and what comes through of the other one. */
import { dbToRatio, ratioToDb } from "./decibel.ts";

/** Shares of power that a feed takes of what it is meant for, and of the other polarisation [0..1]. */
export type PolarisationShares = { readonly wanted: number; readonly other: number };

/**
 * A linear feed that is turned by an angle against the wave.
 * The wanted polarisation loses 20·log10(cos δ) dB, a perfect feed keeps the other 20·log10(cot δ) dB below it. What the feed
 * itself lets across (`crossPolarDb`, positive) comes at any phase: as powers, which is typical.
 */
export function turnedFeedShares(o: {
  readonly turnedDeg: number;
  readonly crossPolarDb: number;
}): PolarisationShares {
  const angle = (o.turnedDeg * Math.PI) / 180;
  const [cos2, sin2] = [Math.cos(angle) ** 2, Math.sin(angle) ** 2];
  const leak = dbToRatio(-o.crossPolarDb);
  return { wanted: cos2 + leak * sin2, other: sin2 + leak * cos2 };
}

/** Carrier over the other polarisation at equal levels [dB]: +∞ for a perfect feed that stands right. */
export function crossPolarCiDb({ wanted, other }: PolarisationShares): number {
  return ratioToDb(wanted / other);
}

/**
 * The same where what the turned feed and its own leak let across add as voltages [dB]: the worst phase.
 * −20·log10(tan δ + 10^(−XPD/20))
 */
export function worstCrossPolarCiDb(o: {
  readonly turnedDeg: number;
  readonly crossPolarDb: number;
}): number {
  const tan = Math.tan((o.turnedDeg * Math.PI) / 180);
  return -20 * Math.log10(tan + 10 ** (-o.crossPolarDb / 20));
}

/** Share of a circular wave in a linear feed, or of a linear wave in a circular one: −3.01 dB, whichever way it turns. */
export const HALF_SHARE = 0.5;

/**
 * How well a circular feed tells left from right [dB], from its axial ratio [dB]; a perfect circle (0 dB) gives +∞.
 * 20·log10((r + 1)/(r − 1)), r = 10^(AR/20)
 */
export function axialRatioCrossPolarDb(axialRatioDb: number): number {
  const r = 10 ** (axialRatioDb / 20);
  return 20 * Math.log10((r + 1) / (r - 1));
}
