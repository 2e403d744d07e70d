/** How one carrier of a band stands, as strips, wires and sentences show it. */
import { isWanted } from "../../findings/collisions.ts";
import { dbToRatio, ratioToDb } from "../../rf/decibel.ts";
import { type CollisionGrade, collisionGrade } from "../../rf/protection.ts";
import type { Band } from "../../signal/band.ts";
import { disturbanceUv2 } from "../../signal/readout.ts";

/**
 * "live": usable. "touched": a collision costs it margin. "hit": what disturbs takes it, or very likely does.
 * What every dish, LNB and switch lets through of other signals is no collision: it counts in C/N, and is only shown
 * where it takes the carrier.
 * What nobody here wants, a distant transmitter or a phone mast, has nothing to lose.
 * "cut": filtered away. "idle": a switch stands elsewhere now, so it is an alternative.
 */
export type CarrierState = "live" | "touched" | "hit" | "idle" | "cut";

export function carrierState(band: Band, i: number): CarrierState {
  if (band.cut[i] !== 0) return "cut";
  if (!band.selected) return "idle";
  if (!isWanted(band.origin.service)) return "live";
  const interference = disturbanceUv2(band, i);
  if (interference <= 0) return "live";
  const grade = gradeUnder(band, i, interference);
  if (grade === "dead" || grade === "likely dead") return "hit";
  if (grade !== "costs margin") return "live";
  const leaked = (band.leakShare?.[i] ?? 0) * dbToRatio(band.level[i] ?? 0);
  return gradeUnder(band, i, interference - leaked) === "costs margin" ? "touched" : "live";
}

function gradeUnder(band: Band, i: number, interferenceUv2: number): CollisionGrade {
  if (interferenceUv2 <= 0) return "negligible";
  const ciDb = (band.level[i] ?? Number.NEGATIVE_INFINITY) - ratioToDb(interferenceUv2);
  return collisionGrade({ ciDb, requiredDb: band.grid.required[i] ?? 0 });
}
