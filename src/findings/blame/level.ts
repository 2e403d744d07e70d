/** Who makes a level too low or too high at a place. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Service } from "../../signal/carrier.ts";
import { extreme } from "../extreme.ts";
import type { Draft } from "../finding.ts";
import { withAmplified } from "./amplified.ts";
import { type About, asCulprit, canGive, isByGain, type Suspect, worstOf } from "./choose.ts";
import type { Blamed } from "./culprit.ts";
import { knobBefore } from "./overload.ts";
import { placesServed } from "./served.ts";
import { sharedLack } from "./sharedLack.ts";
import { declaredGainDb, exceeding, heldDbuv, lacking } from "./shortcomings.ts";
import { isAmplifier, type Stage, stagesTo } from "./stages.ts";
import { swappedLegs } from "./swappedLegs.ts";
import { wrongOrder } from "./tapOrder.ts";

/** What a part lacks must be at least this share of what is missing at the place, to be called its cause. */
const LEAST_SHARE = 0.25;

/** The culprit of a level beyond its limit; undefined where the carrier cannot be followed. */
export function blameForLevel(
  evaluation: Evaluation,
  draft: Draft<"level-limits"> | Draft<"stacking-input">,
): Blamed | undefined {
  const { at, facts, value = 0, limit = 0 } = draft;
  const { service, port, side } = at;
  if (!service || port === undefined) return undefined;
  const way = stagesTo(evaluation, { part: at.part, port }, facts.worst);
  const missingDb = Math.abs(value - limit);
  if (side === "too much") return blameForExcess(evaluation, way, { service, missingDb });
  const stages = levelled(way);
  const swapped = swappedAmong(evaluation, stages);
  const order = ordered(evaluation, stages, { side: "too little", missingDb, swapped });
  if (order) return order;
  const about = { missingDb, served: placesServed(evaluation, service, "too little") };
  return withAmplified(tooLittle(stages, swapped, about), stages);
}

/** The culprit of too much level at the end of a way. */
export function blameForExcess(
  evaluation: Evaluation,
  way: readonly Stage[],
  { service, missingDb }: { readonly service: Service; readonly missingDb: number },
): Blamed | undefined {
  const stages = levelled(way);
  const swapped = swappedAmong(evaluation, stages);
  const order = ordered(evaluation, stages, { side: "too much", missingDb, swapped });
  if (order) return order;
  return tooMuch(evaluation, stages, {
    missingDb,
    served: placesServed(evaluation, service, "too much"),
    swapped,
  });
}

/** Taps in the wrong order, unless the legs of one are mixed up: then nobody knows yet. */
function ordered(
  evaluation: Evaluation,
  stages: readonly Stage[],
  o: {
    readonly side: "too little" | "too much";
    readonly missingDb: number;
    readonly swapped: readonly Suspect[];
  },
): Blamed | undefined {
  if (o.swapped.length > 0) return undefined;
  return wrongOrder(evaluation, stages, { side: o.side, leastDb: o.missingDb * LEAST_SHARE });
}

function swappedAmong(evaluation: Evaluation, stages: readonly Stage[]): readonly Suspect[] {
  return suspectsAmong(stages, (stage) => swappedLegs(evaluation, stage));
}

/** From the last automatic gain control on: what lies before it does not change the level behind it. */
export function levelled(stages: readonly Stage[]): readonly Stage[] {
  const isHeld = ({ step, record }: Stage) => heldDbuv(record.treatment.paths ?? [], step) !== undefined;
  // Behind a converter all steps are of a user band, so the first of these is where the level is made.
  const first = stages.findIndex(({ step }) => step.userBand !== undefined);
  const from = first < 0 ? stages.findLastIndex(isHeld) : first;
  return from < 0 ? stages : stages.slice(from);
}

function suspectsAmong(stages: readonly Stage[], look: typeof lacking): readonly Suspect[] {
  return stages.flatMap((stage) => {
    const shortcoming = look(stage);
    return shortcoming ? [{ stage, shortcoming }] : [];
  });
}

function tooLittle(stages: readonly Stage[], swapped: readonly Suspect[], about: About): Blamed | undefined {
  const suspects = [...swapped, ...suspectsAmong(stages, lacking)].filter(
    ({ shortcoming }) => shortcoming.excessDb >= about.missingDb * LEAST_SHARE,
  );
  return (
    worstOf(suspects, about) ??
    sparing(stages, about.missingDb) ??
    sharedLack(stages, about.served) ??
    greatestLoss(stages)
  );
}

/** An amplifier that could be turned up by what is missing and still be within its rated output. */
function sparing(stages: readonly Stage[], missingDb: number): Blamed | undefined {
  const amplifiers = stages.filter((stage) => isAmplifier(stage) && canGive(stage, missingDb));
  // The last one: what is before it, and its neighbours behind it, stay as they are.
  const stage = amplifiers.at(-1);
  if (!stage) return undefined;
  return asCulprit({
    stage,
    shortcoming: { does: "low gain", excessDb: missingDb, amount: stage.step.gainDb ?? 0 },
  });
}

/** Whether a part is driven past its rated output. */
function isDriven({ record }: Stage): boolean {
  return record.drives.some((d) => d.levelDbuv > d.allowedDbuv);
}

/** Where nothing is wrong: what takes most away. */
function greatestLoss(stages: readonly Stage[]): Blamed | undefined {
  const stage = extreme(
    stages.filter(({ step }) => step.from !== null && (step.gainDb ?? 0) < 0),
    ({ step }) => -(step.gainDb ?? 0),
  );
  if (!stage) {
    const source = stages[0];
    return (
      source &&
      asCulprit({
        stage: source,
        shortcoming: { does: "weak source", excessDb: 0, amount: source.step.levelDbuv },
      })
    );
  }
  const { job } = stage.record.kind.trade;
  const { gainDb } = stage.step;
  const does =
    job === "cable"
      ? ("long cable" as const)
      : job === "tap" || job === "riser plate"
        ? ("high tap loss" as const)
        : job === "splitter"
          ? ("splits" as const)
          : ("loses" as const);
  const length = stage.record.options.lengthM;
  return asCulprit({
    stage,
    shortcoming: {
      does,
      excessDb: 0,
      amount: gainDb ?? 0,
      ...(does === "long cable" && typeof length === "number" ? { lengthM: length } : {}),
    },
  });
}

function tooMuch(
  evaluation: Evaluation,
  stages: readonly Stage[],
  { swapped, ...about }: About & { readonly swapped: readonly Suspect[] },
): Blamed | undefined {
  const amplifying: readonly Suspect[] = stages.filter(isAmplifier).map((stage) => ({
    stage,
    shortcoming: {
      does: "high gain",
      excessDb: stage.step.gainDb ?? 0,
      amount: declaredGainDb(stage),
    },
  }));
  // An amplifier that is driven too far goes first, whatever a strong source adds: without its gain nothing is too much.
  const driven = amplifying.filter(
    ({ stage }) => isDriven(stage) && isByGain(declaredGainDb(stage), about.missingDb),
  );
  const [first] = driven;
  if (swapped.length === 0 && first) {
    // One before several of them, if there is one: nobody turns a dozen knobs instead of one.
    const knob = knobBefore(evaluation, stages.slice(0, stages.indexOf(first.stage) + 1), about.missingDb);
    return worstOf(knob ? amplifying.filter(({ stage }) => stage === knob) : driven, about);
  }
  const others = suspectsAmong(
    stages.filter((stage) => !isAmplifier(stage)),
    exceeding,
  );
  const order = [...swapped, ...amplifying, ...others].sort(
    (a, b) => stages.indexOf(a.stage) - stages.indexOf(b.stage),
  );
  // A dish gives what the sky gives; how much of it goes down the line is the converter's doing.
  const source = stages.find(({ record }) => record.kind.family === "convert") ?? stages[0];
  return (
    worstOf(order, about) ??
    (source &&
      asCulprit({
        stage: source,
        shortcoming: {
          does: "strong source",
          excessDb: about.missingDb,
          amount: source.step.levelDbuv,
        },
      }))
  );
}
