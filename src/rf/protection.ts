/** What an interferer costs: a noise-like digital signal inside the wanted bandwidth adds as noise. */
import { dbToRatio, ratioToDb } from "./decibel.ts";

/**
 * Carrier to noise and interference together [dB].
 * C/(N+I) = −10·log10(10^(−C/N/10) + 10^(−C/I/10))
 */
export function carrierToAllDb(options: { cnDb: number; ciDb: number }): number {
  return -ratioToDb(dbToRatio(-options.cnDb) + dbToRatio(-options.ciDb));
}

/**
 * How much of its C/N a carrier loses to an interferer [dB, positive].
 * An interferer as strong as the noise costs 3 dB. ΔL = 10·log10(1 + 10^((C/N − C/I)/10))
 */
export function lossOfCnDb(options: { cnDb: number; ciDb: number }): number {
  // Nothing interferes, or nothing was there to lose: the general formula would subtract infinities.
  if (options.ciDb === Number.POSITIVE_INFINITY || options.cnDb === Number.NEGATIVE_INFINITY) return 0;
  return ratioToDb(1 + dbToRatio(options.cnDb - options.ciDb));
}

/**
 * Spare C/N that a service must have before the interferer comes [dB].
 * Infinity where C/I is no better than the requirement: then it fails even without any noise.
 * ΔM = −10·log10(1 − 10^(−(C/I − required)/10))
 */
export function spareNeededDb(options: { ciDb: number; requiredDb: number }): number {
  const excessDb = options.ciDb - options.requiredDb;
  if (!(excessDb > 0)) return Number.POSITIVE_INFINITY;
  return -ratioToDb(1 - dbToRatio(-excessDb));
}

/** How bad a collision is, worst first. */
export type CollisionGrade = "dead" | "likely dead" | "costs margin" | "slight" | "negligible";

/** C/I above the requirement up to which each grade holds [dB]. */
const GRADES: readonly (readonly [CollisionGrade, number])[] = [
  ["dead", 0],
  ["likely dead", 3], // needs 3 dB of spare C/N or more
  ["costs margin", 10], // 0.5 to 3 dB
  ["slight", 20], // 0.04 to 0.5 dB
];

/** Grades a collision by what spare C/N it demands; the bounds are our choice, the cost is `spareNeededDb`. */
export function collisionGrade(options: { ciDb: number; requiredDb: number }): CollisionGrade {
  const excessDb = options.ciDb - options.requiredDb;
  for (const [grade, upToDb] of GRADES) if (excessDb <= upToDb) return grade;
  return "negligible";
}
