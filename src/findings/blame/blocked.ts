/** Whose fault it is that a tuner is blocked. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type Blocked, type BlockedAt, blockedAt } from "../blockedCarriers.ts";
import { isWanted } from "../collisions.ts";
import { extreme } from "../extreme.ts";
import type { Blamed } from "./culprit.ts";
import { blameForLean } from "./lean.ts";
import { blameForExcess } from "./level.ts";
import { type Stage, stagesTo } from "./stages.ts";

/**
 * Of too much in all: who amplifies the strongest carrier, or sends it. Of a neighbour: what sets the two apart. A
 * signal that nobody wants is kept out where it first drives a part too hard, or else where it comes in.
 */
export function blameForBlocked(evaluation: Evaluation, receiver: PartId, at: BlockedAt): Blamed | undefined {
  const record = evaluation.record(receiver);
  const blocked = record && blockedAt(record, at);
  if (!blocked) return undefined;
  const spot = { part: receiver, port: at.port };
  const stages = stagesTo(evaluation, spot, blocked.by);
  if (!isWanted(blocked.by.service)) return keptOutAt(stages);
  if (at.by === "beside") return apart(evaluation, spot, blocked);
  const missingDb = blocked.value - blocked.limit;
  return blameForExcess(evaluation, stages, { service: blocked.by.service, missingDb });
}

function keptOutAt(stages: readonly Stage[]): Blamed | undefined {
  const [source] = stages;
  for (const { record, step } of stages) {
    const drive = extreme(record.drives, (d) => d.levelDbuv - d.allowedDbuv);
    const excessDb = drive ? drive.levelDbuv - drive.allowedDbuv : 0;
    if (drive && excessDb > 0)
      return { part: step.part, port: step.to, does: "overdriven", excessDb, amount: drive.ratioDb };
  }
  if (!source) return undefined;
  const { part, to, levelDbuv } = source.step;
  return { part, port: to, does: "lets in", excessDb: 0, amount: levelDbuv };
}

function apart(
  evaluation: Evaluation,
  spot: { readonly part: PartId; readonly port: string },
  { by, wanted }: Blocked,
): Blamed | undefined {
  return blameForLean(evaluation, spot, { above: by, below: wanted });
}
