/** Who drives a part too hard. */

import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { extreme } from "../extreme.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst } from "../rule.ts";
import { askWhole } from "../watched.ts";
import { isByGain } from "./choose.ts";
import { type Blamed, dishField } from "./culprit.ts";
import { declaredGainDb, exceeding } from "./shortcomings.ts";
import { isAmplifier, type Stage, stagesTo } from "./stages.ts";

/**
 * The same finding with the culprit first: an amplifier before the driven part. Nobody takes a source in hand for what
 * it sends: then the driven part takes more than it should, and the source is named beside it.
 */
export function blameForOverload(evaluation: Evaluation, draft: Draft<"overload">): Draft<"overload"> {
  const record = evaluation.record(draft.at.part);
  const over = (draft.value ?? 0) - (draft.limit ?? 0);
  if (!record) return draft;
  if (draft.facts.because === "gain") {
    const knob = knobBefore(evaluation, loudestWay(evaluation, record), over);
    if (!knob) return draft;
    const parts = culpritFirst(knob.step.part, draft.parts);
    return { ...draft, parts, facts: { ...draft.facts, because: "input" } };
  }
  if (draft.facts.because !== "input") return draft;
  const culprit = driverOf(evaluation, record, over);
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
  const knob = knobBefore(evaluation, stages, over);
  if (knob) return asDriver(knob, over);
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
  return stage && asDriver(stage, over);
}

function asDriver(stage: Stage, over: number): Blamed {
  const { part, to, levelDbuv } = stage.step;
  const amplifies = isAmplifier(stage);
  return {
    part,
    port: to,
    does: amplifies ? "high gain" : "strong source",
    excessDb: exceeding(stage)?.excessDb ?? over,
    amount: amplifies ? declaredGainDb(stage) : levelDbuv,
    ...dishField(stage.record),
  };
}

/**
 * The amplifier to turn down instead of the part that is driven, at the end of `stages`: where that has no knob, as a
 * multiswitch, or where several amplifiers beside each other are driven too far by one before them all.
 */
export function knobBefore(
  evaluation: Evaluation,
  stages: readonly Stage[],
  over: number,
): Stage | undefined {
  const last = stages.at(-1);
  const before = stages.slice(0, -1).filter((s) => isAmplifier(s) && declaredGainDb(s) >= over);
  if (!last || over <= 0 || before.length === 0) return undefined;
  if (!isAmplifier(last)) return extreme(before, declaredGainDb);
  return before.findLast((stage) => {
    const gainDb = declaredGainDb(stage);
    return askWhole(evaluation, (whole) => drivesSeveral(whole, stage.step.part, gainDb));
  });
}

/** Whether two amplifiers or more beside each other, first behind this one, are driven too far, none by more than its gain. */
function drivesSeveral(whole: Evaluation, part: PartId, gainDb: number): boolean {
  const driven = whole.records.flatMap((record) => {
    const over = overOf(record);
    const way = over > 0 ? loudestWay(whole, record) : [];
    const last = way.at(-1);
    const behind = way.slice(way.findIndex(({ step }) => step.part === part) + 1, -1);
    const isFirst = behind.length < way.length - 1 && !behind.some((s) => overOf(s.record) > 0);
    return last && isFirst && isAmplifier(last) ? [over] : [];
  });
  return driven.length > 1 && driven.every((over) => over <= gainDb);
}

/** How much too far the hardest driven way of a part is driven [dB]. */
function overOf({ drives }: PartRecord): number {
  return Math.max(0, ...drives.map((d) => d.levelDbuv - d.allowedDbuv));
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
