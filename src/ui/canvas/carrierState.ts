/** How one carrier of a band stands, as strips, wires and sentences show it. */
import { ratioToDb } from "../../rf/decibel.ts";
import { collisionGrade } from "../../rf/protection.ts";
import type { Band } from "../../signal/band.ts";
import { disturbanceUv2 } from "../../signal/readout.ts";

/**
 * "live": usable. "touched": a collision costs it margin. "hit": a collision takes it, or very likely does.
 * "cut": filtered away. "idle": a switch stands elsewhere now, so it is an alternative.
 */
export type CarrierState = "live" | "touched" | "hit" | "idle" | "cut";

export function carrierState(band: Band, i: number): CarrierState {
  if (band.cut[i] !== 0) return "cut";
  if (!band.selected) return "idle";
  const interference = disturbanceUv2(band, i);
  if (interference <= 0) return "live";
  const ciDb = (band.level[i] ?? Number.NEGATIVE_INFINITY) - ratioToDb(interference);
  const grade = collisionGrade({ ciDb, requiredDb: band.grid.required[i] ?? 0 });
  if (grade === "dead" || grade === "likely dead") return "hit";
  return grade === "costs margin" ? "touched" : "live";
}
