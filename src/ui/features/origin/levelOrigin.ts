/** How a level came about, in words and figures: what the pane, the diagram and the paper show. */

import type { Evaluation } from "../../../evaluate/evaluation.ts";
import {
  type CarrierId,
  type FoundCarrier,
  findCarrier,
  type TraceStep,
  traceCarrier,
} from "../../../evaluate/trace.ts";
import { type Limits, limitsFor, profileOf } from "../../../findings/limits.ts";
import { rippleAlong, type WayRipple } from "../../../findings/ripple.ts";
import { ownPowers } from "../../../findings/stackedReception.ts";
import { tunerNoiseFigureDb, tunerNoiseUv2 } from "../../../findings/tunerQuality.ts";
import { type MerShown, merShown } from "../../../sentences/merWords.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { carrierToDb, disturbanceUv2 } from "../../../signal/readout.ts";
import { bandTitle } from "../../canvas/bands.ts";
import type { Question } from "../../kit/asked/question.ts";
import { stepWords } from "./stepWords.ts";

export type OriginStep = {
  readonly part: string;
  readonly label: string;
  /** What the part did, one short phrase each. */
  readonly did: readonly string[];
  readonly centreMHz: number;
  readonly levelDbuv: number;
  readonly cnDb: number;
  readonly ciDb: number;
  readonly cniDb: number;
  readonly cutHere: boolean;
  /** How far mismatch on the way may move the level here [dB, both positive]; from crest to crest of most of it [MHz]. */
  readonly ripple?: WayRipple;
  /** Where the level may lie here to come out within the limits at the end [dBµV]; known on a walk. */
  readonly within?: { readonly minDbuv: number; readonly maxDbuv: number };
};

export type LevelOrigin = {
  /** "C22, Terrestrial TV". */
  readonly carrier: string;
  /** "Plate 1, TV". */
  readonly place: string;
  /** At least one, from the source on. */
  readonly steps: readonly OriginStep[];
  /** C/N that the carrier needs [dB]. */
  readonly requiredDb: number;
  /** What a meter shows as MER beside C/(N+I) at the end. */
  readonly mer: MerShown;
  /** Level that an outlet should have, where the profile sets one. */
  readonly limits?: Limits;
  readonly profileName: string;
  readonly userBand?: number;
  /** At a receiver: its tuner, and C/(N+I) behind the tuner's own noise [dB]. */
  readonly tuner?: { readonly noiseFigureDb: number; readonly cniDb: number };
  /** Label of the part that takes it away, where one does. */
  readonly gone?: string;
  /** Part where most of C/(N+I) is lost, if anything worth a word is. */
  readonly loss?: { readonly label: string; readonly db: number };
};

/** Losses of C/(N+I) below this are not worth a word [dB]. */
const WORTH_A_WORD_DB = 0.5;

/** The answer, or null when the carrier does not get there. */
export function levelOrigin(evaluation: Evaluation, question: Question): LevelOrigin | null {
  const { carrier, userBand } = question;
  const place = evaluation.record(question.at.part);
  const port = place?.ports.find((p) => p.id === question.at.port);
  // A wire has no loss: what arrives at an input is what leaves the port before it.
  const end = port?.side === "in" ? place?.joined[port.id] : [question.at.part, question.at.port];
  if (!place || !port || end?.[0] === undefined || end[1] === undefined) return null;
  const at = { part: end[0], port: end[1] };
  const here = findCarrier(evaluation.record(at.part)?.outputs[at.port]?.bands ?? [], carrier, userBand);
  const trace = traceCarrier(evaluation, at, carrier, userBand);
  const [first] = trace;
  const source =
    first && findCarrier(evaluation.record(first.part)?.outputs[first.to]?.bands ?? [], carrier, userBand);
  if (!here || !source) return null;

  const planned = source.band.grid.plan[carrier.index];
  const profile = profileOf(evaluation.design);
  const limits = limitsFor(profile, here.band.origin.service, planned?.mode ?? "");
  const ripples = rippleAlong(evaluation, trace);
  const steps = trace.map((step, n): OriginStep => {
    const ripple = ripples[n];
    return { ...originStep(evaluation, step, trace[n - 1]), ...(ripple ? { ripple } : {}) };
  });
  const loss = worstLoss(steps);
  const figureDb = tunerNoiseFigureDb(place, port.id);
  const gone = steps.find((step) => step.cutHere)?.label;
  const tuner =
    figureDb === undefined
      ? undefined
      : { noiseFigureDb: figureDb, cniDb: behindTunerDb(here, carrier, figureDb) };
  const cniDb = tuner?.cniDb ?? steps.at(-1)?.cniDb ?? Number.NEGATIVE_INFINITY;
  return {
    carrier: `${planned?.name ?? "Carrier"}, ${bandTitle(source.band)}`,
    place: `${place.part.label || place.part.id}, ${port.label}`,
    steps,
    requiredDb: source.band.grid.required[source.i] ?? 0,
    mer: merShown(evaluation, source.band.origin, cniDb),
    profileName: profile.name,
    ...(limits ? { limits } : {}),
    ...(userBand === undefined ? {} : { userBand }),
    ...(tuner ? { tuner } : {}),
    ...(gone === undefined ? {} : { gone }),
    ...(loss ? { loss } : {}),
  };
}

export function originStep(
  evaluation: Evaluation,
  step: TraceStep,
  before: TraceStep | undefined,
): OriginStep {
  const { part, centreMHz, levelDbuv, cnDb, ciDb, cniDb, cutHere } = step;
  const label = plainLabelOf(evaluation, part);
  return { part, label, did: stepWords(step, before), centreMHz, levelDbuv, cnDb, ciDb, cniDb, cutHere };
}

/** On a user band it is that of the carrier itself, where the steps on the line show those of the worst that it may hold. */
function behindTunerDb({ band, i }: FoundCarrier, carrier: CarrierId, noiseFigureDb: number): number {
  const { levelDbuv, noise, interference } = powersOf({ band, i }, carrier);
  return carrierToDb(levelDbuv, noise + interference + tunerNoiseUv2(band.grid, i, noiseFigureDb));
}

function powersOf({ band, i }: FoundCarrier, { origin, index }: CarrierId): ReturnType<typeof ownPowers> {
  const { stack } = band;
  for (const held of stack?.holds ?? []) {
    const at = held.origin.key === origin ? held.grid.index.indexOf(index) : -1;
    if (stack && at >= 0) return ownPowers({ band, stack, held, i: at }, i);
  }
  return { levelDbuv: band.level[i] ?? 0, noise: band.noise[i] ?? 0, interference: disturbanceUv2(band, i) };
}

/** The step that costs most C/(N+I), if any costs enough for a word. */
export function worstLoss(steps: readonly OriginStep[]): LevelOrigin["loss"] {
  let worst: { label: string; db: number } | undefined;
  steps.forEach((step, n) => {
    const db = (steps[n - 1]?.cniDb ?? step.cniDb) - step.cniDb;
    if (Number.isFinite(db) && db >= WORTH_A_WORD_DB && db > (worst?.db ?? 0))
      worst = { label: step.label, db };
  });
  return worst;
}
