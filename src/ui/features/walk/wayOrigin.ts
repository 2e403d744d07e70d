/** A walked carrier as the diagram and the table of steps take it: what a pressed figure shows, and what becomes of it at the end. */

import type { Evaluation } from "../../../evaluate/evaluation.ts";
import { profileOf } from "../../../findings/limits.ts";
import { merShown } from "../../../sentences/merWords.ts";
import type { ToldWay } from "../../../sentences/walk/signal.ts";
import { serviceName } from "../../../signal/carrier.ts";
import { carrierToDb } from "../../../signal/readout.ts";
import { numeral } from "../../../words/numbers.ts";
import type { WalkState } from "../../kit/asked/walking.ts";
import { type LevelOrigin, type OriginStep, originStep, worstLoss } from "../origin/levelOrigin.ts";
import type { WalkRoute } from "./stops.ts";

/** One step for each stop of the route. */
export function wayOrigin(
  evaluation: Evaluation,
  way: ToldWay,
  route: WalkRoute,
  walking: WalkState,
): LevelOrigin {
  const onTheWay = way.steps.map(
    (step, n): OriginStep => ({
      ...originStep(evaluation, step, way.steps[n - 1]),
      ...(step.within ? { within: step.within } : {}),
    }),
  );
  const steps = [...onTheWay, ...route.stops.slice(onTheWay.length).map(() => lastStep(way, route))];
  const gone = onTheWay.find((step) => step.cutHere)?.label;
  const loss = worstLoss(steps.filter((s) => Number.isFinite(s.cniDb)));
  return {
    carrier: `${way.name}, ${serviceName({ ...way, service: walking.service })}`,
    place: walking.place.label,
    steps,
    requiredDb: way.requiredDb,
    mer: merShown(
      evaluation,
      { service: walking.service, part: way.steps[0]?.part ?? "" },
      steps.at(-1)?.cniDb ?? Number.NEGATIVE_INFINITY,
    ),
    profileName: profileOf(evaluation.design).name,
    ...(way.limits ? { limits: way.limits } : {}),
    ...(way.userBand === undefined ? {} : { userBand: way.userBand }),
    ...(gone === undefined ? {} : { gone }),
    ...(loss ? { loss } : {}),
  };
}

/** Behind the last output: the receiver with its tuner, or the part that hands nothing on. */
function lastStep({ end, steps, requiredDb }: ToldWay, { stops }: WalkRoute): OriginStep {
  const stop = stops.at(-1);
  const before = steps.at(-1);
  const place = { part: stop?.part ?? "", label: stop?.label ?? "", centreMHz: before?.centreMHz ?? 0 };
  if (!end || !before)
    return {
      ...place,
      did: ["hands nothing on"],
      levelDbuv: Number.NEGATIVE_INFINITY,
      cnDb: Number.NEGATIVE_INFINITY,
      ciDb: Number.NEGATIVE_INFINITY,
      cniDb: Number.NEGATIVE_INFINITY,
      cutHere: true,
    };
  // The tuner adds noise and leaves the interference as it is.
  const noise = 10 ** (-end.cniDb / 10) - 10 ** (-before.ciDb / 10);
  return {
    ...place,
    did: [`its tuner adds noise (noise figure ${numeral(end.tunerFigureDb, 4)} dB)`],
    levelDbuv: end.levelDbuv,
    cnDb: carrierToDb(0, noise),
    ciDb: before.ciDb,
    cniDb: end.cniDb,
    cutHere: end.cniDb < requiredDb,
    ...(before.within ? { within: before.within } : {}),
  };
}
