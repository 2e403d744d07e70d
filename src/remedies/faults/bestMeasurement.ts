/** The one measurement that splits what is still suspected best. */
import type { Design, PortRef } from "../../design/design.ts";
import { isSamePort } from "../../design/lookup.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { alike } from "./alike.ts";
import { type Fault, likelihoodOf } from "./fault.ts";
import { measure } from "./measure.ts";
import { type MeasuringPoint, pointsOf } from "./points.ts";
import { QUANTITIES, type Quantity, type Reading } from "./reading.ts";
import { askingFor, type RequestChoice, requestsOf } from "./requestChoice.ts";

/** One reading that would be taken, and the faults that would give it. */
export type Outcome = {
  readonly reading: Reading;
  readonly faults: readonly Fault[];
};

export type Measurement = {
  readonly at: PortRef;
  readonly quantity: Quantity;
  /** What the receivers must ask for meanwhile; null: what they ask for now. */
  readonly asked: RequestChoice | null;
  /** The roof: only for whoever is trained and equipped for it. */
  readonly onRoof: boolean;
  /** Where no fault is: the reading of the plan. */
  readonly planned: Reading | null;
  /** Expected readings, the likeliest first. */
  readonly outcomes: readonly Outcome[];
  /** What it tells on average [bits]. */
  readonly bits: number;
};

export type WeighingProgress = { readonly simulated: number; readonly of: number };

/** Candidates beyond these are the least likely ones; they are left for a second round. */
const MOST_CANDIDATES = 60;
/** A walk to the loft should tell at least so much more than staying in the room [bits]. */
const BITS_PER_EFFORT = 0.15;
/** Below this a measurement tells nothing [bits]. */
const LEAST_BITS = 0.01;

/**
 * Simulates every candidate and weighs every measurement by information gain, the commoner faults counting more.
 * First with what the receivers ask for now; if that tells nothing, with other requests.
 * Yields after each simulation; returns null when no measurement tells the candidates apart.
 */
export function* bestMeasurement(
  design: Design,
  candidates: readonly Fault[],
): Generator<WeighingProgress, Measurement | null> {
  const chosen = [...candidates].sort((a, b) => likelihoodOf(b) - likelihoodOf(a)).slice(0, MOST_CANDIDATES);
  if (chosen.length < 2) return null;
  const requests: readonly (RequestChoice | null)[] = [null, ...requestsOf(design)];
  const of = chosen.length * requests.length;
  let simulated = 0;
  for (const asked of requests) {
    const sound = evaluate(askingFor(design, asked));
    const simulations: Simulation[] = [];
    for (const fault of chosen) {
      simulations.push({
        fault,
        evaluation: evaluate(askingFor(fault.apply(design), asked), sound),
      });
      simulated += 1;
      yield { simulated, of };
    }
    const best = mostTelling(design, simulations);
    if (best) return advice(design, best, asked, sound);
  }
  return null;
}

type Best = { readonly value: number; readonly point: MeasuringPoint; readonly split: Split };

function mostTelling(design: Design, simulations: readonly Simulation[]): Best | undefined {
  let best: Best | undefined;
  for (const point of pointsOf(design))
    for (const quantity of QUANTITIES) {
      const split = splitBy(design, simulations, point, quantity);
      const value = split.bits - BITS_PER_EFFORT * point.effort;
      if (split.bits > LEAST_BITS && (!best || value > best.value + 1e-9)) best = { value, point, split };
    }
  return best;
}

function advice(
  design: Design,
  { point, split }: Best,
  asked: RequestChoice | null,
  sound: Evaluation,
): Measurement {
  return {
    at: point.at,
    quantity: split.quantity,
    asked,
    onRoof: point.effort === 2,
    planned: meantFor(point, measure(design, sound, point.at, split.quantity)),
    outcomes: split.outcomes,
    bits: split.bits,
  };
}

type Simulation = { readonly fault: Fault; readonly evaluation: Evaluation };
type Split = { readonly quantity: Quantity; readonly bits: number; readonly outcomes: readonly Outcome[] };

function splitBy(
  design: Design,
  simulations: readonly Simulation[],
  point: MeasuringPoint,
  quantity: Quantity,
): Split {
  const bins: { reading: Reading; faults: Fault[]; weight: number }[] = [];
  let total = 0;
  for (const { fault, evaluation } of simulations) {
    const shown = meantFor(point, measure(design, evaluation, point.at, quantity));
    if (!shown) continue;
    const weight = likelihoodOf(fault);
    total += weight;
    const bin = bins.find((b) => alike(b.reading, shown));
    if (bin) {
      bin.faults.push(fault);
      bin.weight += weight;
    } else bins.push({ reading: shown, faults: [fault], weight });
  }
  bins.sort((a, b) => b.weight - a.weight);
  // Shannon's entropy of the outcomes: what one learns on average by seeing one of them.
  const bits = bins.reduce((sum, { weight }) => sum - (weight / total) * Math.log2(weight / total), 0);
  return {
    quantity,
    bits,
    outcomes: bins.map(({ reading, faults }) => ({ reading, faults })),
  };
}

/** At a socket one measures what the socket is for: what leaks into it from its neighbour is nobody's advice. */
function meantFor({ services }: MeasuringPoint, shown: Reading | null): Reading | null {
  if (!shown || !services || !("carriers" in shown)) return shown;
  return { ...shown, carriers: shown.carriers.filter((c) => services.includes(c.service)) };
}

export type Taken = {
  readonly at: PortRef;
  readonly reading: Reading;
  /** What the receivers asked for meanwhile; absent or null: what the design says. */
  readonly asked?: RequestChoice | null;
};

/** Candidates that would have shown what was measured. */
export function consistentWith(
  design: Design,
  candidates: readonly Fault[],
  { at, reading: taken, asked = null }: Taken,
): readonly Fault[] {
  const sound = evaluate(askingFor(design, asked));
  // Compared by what is advised to be measured there, so that an expected reading agrees with the faults that give it.
  const point = pointsOf(design).find((p) => isSamePort(p.at, at));
  const meant = (shown: Reading | null) => (point ? meantFor(point, shown) : shown);
  const read = meant(taken);
  return candidates.filter((fault) => {
    const evaluation = evaluate(askingFor(fault.apply(design), asked), sound);
    const shown = meant(measure(design, evaluation, at, taken.quantity));
    return shown !== null && read !== null && alike(shown, read);
  });
}
