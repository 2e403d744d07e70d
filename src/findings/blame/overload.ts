/** Who drives a part too hard. */

import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { extreme } from "../extreme.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst } from "../rule.ts";
import { isByGain } from "./choose.ts";
import { type Blamed, dishField } from "./culprit.ts";
import { isAmplifier } from "./level.ts";
import { declaredGainDb, exceeding } from "./shortcomings.ts";
import { type Stage, stagesTo } from "./stages.ts";

/**
 * The same finding with the culprit first: an amplifier before the driven part. Nobody takes a source in hand for what
 * it sends: then the driven part takes more than it should, and the source is named beside it.
 */
export function blameForOverload(evaluation: Evaluation, draft: Draft<"overload">): Draft<"overload"> {
  const record = evaluation.record(draft.at.part);
  if (!record || draft.facts.because !== "input") return draft;
  const culprit = driverOf(evaluation, record, (draft.value ?? 0) - (draft.limit ?? 0));
  if (!culprit) return draft;
  const [driven] = draft.parts;
  const parts =
    culprit.does === "strong source"
      ? culpritFirst(driven, [culprit.part, ...draft.parts])
      : culpritFirst(culprit.part, draft.parts);
  return { ...draft, parts };
}

/** The culprit of the products that a part makes: itself, unless it gets more than it could take without any gain. */
export function sourceOfOverload(evaluation: Evaluation, record: PartRecord): Blamed | undefined {
  const drive = extreme(record.drives, (d) => d.levelDbuv - d.allowedDbuv);
  if (!drive) return undefined;
  const over = drive.levelDbuv - drive.allowedDbuv;
  const itself: Blamed = {
    part: record.part.id,
    port: drive.port,
    does: "overdriven",
    excessDb: Math.max(0, over),
    amount: drive.ratioDb,
  };
  const stages = loudestWay(evaluation, record);
  const last = stages.at(-1);
  // Driven far, it amplifies less than it would: that is no merit of its own.
  if (last && isByGain(declaredGainDb(last), over)) return itself;
  return driverOf(evaluation, record, over) ?? itself;
}

/** Before a part: the amplifier with most gain, or a source that by itself gives far too much. */
function driverOf(evaluation: Evaluation, record: PartRecord, over: number): Blamed | undefined {
  const before = loudestWay(evaluation, record).slice(0, -1);
  const amplifier = extreme(before.filter(isAmplifier), declaredGainDb);
  const source = before[0];
  const sourceExcess = source ? (exceeding(source)?.excessDb ?? 0) : 0;
  const isAmplifiers = amplifier && (declaredGainDb(amplifier) >= over || sourceExcess < over / 2);
  const stage = isAmplifiers ? amplifier : source;
  if (!stage) return undefined;
  const { part, to, levelDbuv } = stage.step;
  return {
    part,
    port: to,
    does: stage === amplifier ? "high gain" : "strong source",
    excessDb: exceeding(stage)?.excessDb ?? over,
    amount: stage === amplifier ? declaredGainDb(stage) : levelDbuv,
    ...dishField(stage.record),
  };
}

/** The way of the strongest carrier that leaves a part. */
function loudestWay(evaluation: Evaluation, record: PartRecord): readonly Stage[] {
  let loudest: { port: string; origin: string; index: number; level: number } | undefined;
  for (const [port, { bands }] of Object.entries(record.outputs))
    for (const band of bands) {
      if (band.stack || band.isFloor) continue;
      band.level.forEach((level, i) => {
        if (!loudest || level > loudest.level)
          loudest = { port, origin: band.origin.key, index: band.grid.index[i] ?? 0, level };
      });
    }
  return loudest ? stagesTo(evaluation, { part: record.part.id, port: loudest.port }, loudest) : [];
}
