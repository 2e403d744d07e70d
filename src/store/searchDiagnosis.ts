/**
 * Looking for the fault, step by step, in plain data: what would explain what was seen, what of it agrees with
 * the readings, and which measurement tells the rest apart. Faults go by their ids, since they cannot be copied.
 */
import type { Design } from "../design/design.ts";
import {
  bestMeasurement,
  consistentWith,
  type Measurement,
  type Taken,
} from "../remedies/faults/bestMeasurement.ts";
import { diagnose, type Suspicion } from "../remedies/faults/diagnose.ts";
import type { Fault } from "../remedies/faults/fault.ts";
import { faults } from "../remedies/faults/list.ts";
import type { Observation } from "../remedies/faults/symptoms.ts";

export type DiagnosisTask = {
  readonly type: "diagnosis";
  readonly design: Design;
  readonly observations: readonly Observation[];
  /** What the same observations led to before; null: nobody has looked yet. */
  readonly known: readonly PlainSuspicion[] | null;
  readonly taken: readonly Taken[];
};

export type PlainSuspicion = Omit<Suspicion, "faults"> & { readonly faults: readonly string[] };

export type PlainOutcome = Omit<Measurement["outcomes"][number], "faults"> & {
  readonly faults: readonly string[];
};
export type PlainMeasurement = Omit<Measurement, "outcomes"> & { readonly outcomes: readonly PlainOutcome[] };

export type DiagnosisProgress = {
  readonly stage: "faults" | "readings" | "measurement";
  readonly done: number;
  readonly of: number;
  /** All that the observations leave; null until it is known. */
  readonly suspicions: readonly PlainSuspicion[] | null;
  /** Of these, what the readings leave; null until it is known. */
  readonly left: readonly PlainSuspicion[] | null;
  readonly measurement: PlainMeasurement | null;
};

/** So many faults are weighed against a reading before others have their turn. */
const CHUNK = 6;

const START: DiagnosisProgress = {
  stage: "faults",
  done: 0,
  of: 1,
  suspicions: null,
  left: null,
  measurement: null,
};

export function* searchDiagnosis(task: DiagnosisTask): Generator<DiagnosisProgress, DiagnosisProgress, void> {
  const { design, taken } = task;
  const suspicions = task.known ?? (yield* explanations(task));
  const byId = new Map(faults(design).map((fault) => [fault.id, fault] as const));
  const all = suspicions.flatMap((s) => s.faults.flatMap((id) => byId.get(id) ?? []));

  let agreeing: readonly Fault[] = all;
  for (const [n, one] of taken.entries()) {
    const kept: Fault[] = [];
    for (let i = 0; i < agreeing.length; i += CHUNK) {
      kept.push(...consistentWith(design, agreeing.slice(i, i + CHUNK), one));
      yield { ...START, stage: "readings", suspicions, done: n + i / agreeing.length, of: taken.length };
    }
    agreeing = kept;
  }
  const left = taken.length === 0 ? suspicions : onlyWith(suspicions, new Set(agreeing.map((f) => f.id)));

  const found = { ...START, stage: "measurement", suspicions, left } as const;
  // Where several explain all that was seen, they come first; what tells those apart may not be known either.
  const exact = new Set(left.filter((s) => s.match === "exact").flatMap((s) => s.faults));
  const likely = agreeing.filter((fault) => exact.has(fault.id));
  for (const candidates of [likely, agreeing]) {
    const weighing = bestMeasurement(design, candidates);
    let step = weighing.next();
    for (; !step.done; step = weighing.next())
      yield { ...found, done: step.value.simulated, of: step.value.of };
    if (step.value) return { ...found, done: 1, of: 1, measurement: plainMeasurement(step.value) };
  }
  return { ...found, done: 1, of: 1 };
}

function* explanations({
  design,
  observations,
}: DiagnosisTask): Generator<DiagnosisProgress, readonly PlainSuspicion[], void> {
  const run = diagnose(design, observations);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value.map((s) => ({ ...s, faults: s.faults.map((f) => f.id) }));
    yield { ...START, done: step.value.tried, of: step.value.of };
  }
}

function onlyWith(
  suspicions: readonly PlainSuspicion[],
  ids: ReadonlySet<string>,
): readonly PlainSuspicion[] {
  return suspicions.flatMap((s) => {
    const kept = s.faults.filter((id) => ids.has(id));
    return kept.length > 0 ? [{ ...s, faults: kept }] : [];
  });
}

/** In data that can be copied to another thread. */
export function plainMeasurement(measurement: Measurement): PlainMeasurement {
  return {
    ...measurement,
    outcomes: measurement.outcomes.map((o) => ({ ...o, faults: o.faults.map((f) => f.id) })),
  };
}
