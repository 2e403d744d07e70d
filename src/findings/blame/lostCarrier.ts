/** Whose fault it is that a carrier arrives at a receiver and is still lost to noise or to what disturbs it. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { CarrierId } from "../../evaluate/trace.ts";
import type { Service } from "../../signal/carrier.ts";
import { tunerNoiseFigureDb, tunerNoiseUv2 } from "../tunerQuality.ts";
import { blameForNoise, disturbed, graver, type Quality, turnedLnb } from "./quality.ts";
import { placesServed } from "./served.ts";
import { type Stage, stagesTo } from "./stages.ts";

/** Followed from the first input at which the carrier arrives; undefined where it arrives at none. */
export function blameForLostCarrier(
  evaluation: Evaluation,
  at: { readonly receiver: PartId; readonly inputs: readonly string[] },
  lost: CarrierId,
  to: "noisy" | "disturbed",
): Quality | undefined {
  for (const port of at.inputs) {
    const stages = stagesTo(evaluation, { part: at.receiver, port }, lost);
    const last = stages.at(-1);
    if (!last) continue;
    const record = evaluation.record(at.receiver);
    const figureDb = (record && tunerNoiseFigureDb(record, port)) ?? 0;
    const { service, requiredDb, tunerShare } = atTuner(last, figureDb);
    const turned = turnedLnb(stages, Math.max(0, requiredDb - last.step.cniDb));
    if (to === "disturbed") return turned ?? disturbed(evaluation, stages);
    const cniDb = -10 * Math.log10(10 ** (-last.step.cniDb / 10) + tunerShare);
    const culprit = blameForNoise(stages, {
      missingDb: Math.max(0, requiredDb - cniDb),
      served: placesServed(evaluation, service, "C/N"),
      behind: tunerShare,
      weak: placesServed(evaluation, service, "too little"),
    });
    return graver(turned, culprit);
  }
  return undefined;
}

/** The carrier's service, what its modulation needs, and what the tuner's own noise is over it. */
function atTuner(
  { record, step, carrier }: Stage,
  noiseFigureDb: number,
): {
  readonly service: Service;
  readonly requiredDb: number;
  readonly tunerShare: number;
} {
  for (const band of record.outputs[step.to]?.bands ?? []) {
    const i = band.origin.key === carrier.origin ? band.grid.index.indexOf(carrier.index) : -1;
    if (i < 0) continue;
    const tunerShare = tunerNoiseUv2(band.grid, i, noiseFigureDb) / 10 ** (step.levelDbuv / 10);
    return { service: band.origin.service, requiredDb: band.grid.required[i] ?? 0, tunerShare };
  }
  return { service: "satellite", requiredDb: 0, tunerShare: 0 };
}
