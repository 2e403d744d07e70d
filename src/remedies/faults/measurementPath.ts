/** The best way from what is noticed to the fault: the most telling measurement each time, with true readings. */
import type { Design } from "../../design/design.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import { bestMeasurement, consistentWith, type Measurement } from "./bestMeasurement.ts";
import { diagnose } from "./diagnose.ts";
import type { Fault } from "./fault.ts";
import { measure } from "./measure.ts";
import type { Reading } from "./reading.ts";
import { askingFor } from "./requestChoice.ts";
import { type Observation, symptomsOf } from "./symptoms.ts";

export type PathStep = {
  readonly measurement: Measurement;
  /** What the meter really shows there. */
  readonly reading: Reading;
  /** Faults that were possible before and are not after this reading. */
  readonly excluded: readonly Fault[];
  readonly left: readonly Fault[];
};

export type MeasurementPath = {
  /** Faults that explain all that is noticed, before anything is measured. */
  readonly suspects: readonly Fault[];
  readonly steps: readonly PathStep[];
};

export type PathProgress = {
  readonly stage: "faults" | "measurement";
  readonly done: number;
  readonly of: number;
};

/** Longer ways than this tell hardly more: what is left by then is left to the eyes. */
const MOST_STEPS = 12;

/** What whoever lives there sees of a fault: services at receivers, as they are. */
export function noticedAt(design: Design, fault: Fault): readonly Observation[] {
  const sound = evaluate(design);
  const now = evaluate(fault.apply(design), sound);
  return symptomsOf({ evaluation: now }, { evaluation: sound })
    .filter((s) => s.role === "receiver")
    .map(({ part, service, state }) => ({
      part,
      service,
      works: state === "partial" ? "partial" : state === "works",
    }));
}

/** Played to the end: until one fault is left, or nothing that can be measured tells the rest apart. */
export function* measurementPath(design: Design, fault: Fault): Generator<PathProgress, MeasurementPath> {
  const faulty = fault.apply(design);
  const searching = diagnose(design, noticedAt(design, fault));
  let search = searching.next();
  for (; !search.done; search = searching.next())
    yield { stage: "faults", done: search.value.tried, of: search.value.of };
  const suspects = search.value.filter((s) => s.match === "exact").flatMap((s) => s.faults);
  const steps: PathStep[] = [];
  let left: readonly Fault[] = suspects;
  while (left.length > 1 && steps.length < MOST_STEPS) {
    const weighing = bestMeasurement(design, left);
    let step = weighing.next();
    for (; !step.done; step = weighing.next())
      yield { stage: "measurement", done: step.value.simulated, of: step.value.of };
    const measurement = step.value;
    if (!measurement) break;
    const { at, quantity, asked } = measurement;
    const reading = measure(design, evaluate(askingFor(faulty, asked)), at, quantity);
    if (!reading) break;
    const before = left;
    left = consistentWith(design, before, { at, reading, asked });
    const kept = new Set(left);
    steps.push({ measurement, reading, excluded: before.filter((f) => !kept.has(f)), left });
    if (left.length === before.length) break;
  }
  return { suspects, steps };
}
