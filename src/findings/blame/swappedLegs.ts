/** A tap or riser plate from whose branch the line goes on, while its through output feeds one place. */
import type { PortRef } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { Shortcoming } from "./shortcomings.ts";
import { wayGainDb } from "./shortcomings.ts";
import type { Stage } from "./stages.ts";

/** What it takes from the line, or gives too much to the place, by being wired the wrong way. */
export function swappedLegs(evaluation: Evaluation, { record, step }: Stage): Shortcoming | undefined {
  const legs = mixedUp(evaluation, record);
  if (!legs || step.from === null || step.gainDb === null) return undefined;
  const { trunk, branch } = legs;
  if (step.to !== trunk.id && step.to !== branch.id) return undefined;
  const other = step.to === trunk.id ? branch.id : trunk.id;
  const { from, centreMHz, gainDb } = step;
  const swappedDb = wayGainDb(record.treatment.paths ?? [], { from, to: other, centreMHz });
  if (swappedDb === undefined) return undefined;
  return { does: "legs swapped", excessDb: Math.abs(swappedDb - gainDb), amount: gainDb };
}

/** Whether a tap or riser plate is wired the wrong way. */
export function hasSwappedLegs(evaluation: Evaluation, record: PartRecord): boolean {
  return mixedUp(evaluation, record) !== undefined;
}

/** The through output that feeds one place, and the branch from which the line goes on; undefined where that is not so. */
function mixedUp(evaluation: Evaluation, record: PartRecord) {
  const trunk = record.ports.find((p) => p.side === "out" && p.role === "trunk");
  const branches = record.ports.filter((p) => p.role === "tap" || p.role === "socket");
  const branch = trunk && branches.find((p) => leadsTo(evaluation, record.joined[p.id]) === "line");
  if (!branch || leadsTo(evaluation, record.joined[trunk.id]) !== "place") return undefined;
  return { trunk, branch };
}

/** Past whatever has one way on: more of the line, a place where somebody watches, or neither. */
function leadsTo(evaluation: Evaluation, start: PortRef | undefined): "line" | "place" | undefined {
  let end = start;
  // No way is longer than there are parts.
  for (let guard = evaluation.records.length; end && guard > 0; guard--) {
    const record: PartRecord | undefined = evaluation.record(end[0]);
    if (!record) return undefined;
    const { job } = record.kind.trade;
    if (job === "tap" || job === "riser plate") return "line";
    if (record.kind.reception || record.kind.delivery) return "place";
    const [only, ...others] = record.ports.filter((p) => p.side === "out");
    if (!only || others.length > 0) return undefined;
    end = record.joined[only.id];
  }
  return undefined;
}
