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
  const weighing = bestMeasurement(design, worthWeighing(left, agreeing));
  for (;;) {
    const step = weighing.next();
    if (step.done)
      return { ...found, done: 1, of: 1, measurement: step.value && plainMeasurement(step.value) };
    yield { ...found, done: step.value.simulated, of: step.value.of };
  }
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

/** While several faults explain all that was seen, those that explain less are not worth a walk. */
function worthWeighing(left: readonly PlainSuspicion[], agreeing: readonly Fault[]): readonly Fault[] {
  const exact = new Set(left.filter((s) => s.match === "exact").flatMap((s) => s.faults));
  return exact.size > 1 ? agreeing.filter((f) => exact.has(f.id)) : agreeing;
}

function plainMeasurement(measurement: Measurement): PlainMeasurement {
  return {
    ...measurement,
    outcomes: measurement.outcomes.map((o) => ({ ...o, faults: o.faults.map((f) => f.id) })),
  };
}
