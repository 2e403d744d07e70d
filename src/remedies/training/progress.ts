/** How far a trainee has come, as plain data; every step makes a new one. */
import { z } from "zod";
import { FAULT_TYPES, type FaultType } from "../faults/fault.ts";
import { QUANTITIES, type Quantity } from "../faults/reading.ts";

export type TakenMeasurement = {
  readonly part: string;
  readonly port: string;
  readonly quantity: Quantity;
  /** What the receivers were made to ask for meanwhile (`askedKey`); empty: what they ask for anyway. */
  readonly asked: string;
  /** The plan's value was looked up beside it, where that has its price. */
  readonly planValue?: true | undefined;
};

export type NamedFault = {
  readonly part: string;
  readonly type: FaultType;
};

export type CaseProgress = {
  /** Each place, quantity and request once: looking again costs nothing. */
  readonly measured: readonly TakenMeasurement[];
  /** Every fault that was named, in order, with what came of it. */
  readonly named: readonly Named[];
  readonly hints: number;
  /** Gave up and was shown it. */
  readonly shown: boolean;
  /** Measurements that the best way needs; absent until it is calculated. */
  readonly par?: number | undefined;
  /** What the readings proved when the case was solved. */
  readonly evidence?: Evidence | undefined;
};

export type NamedVerdict = "right" | "alike" | "part" | "wrong";

export type Named = NamedFault & {
  readonly verdict: NamedVerdict;
  /** A reading taken before that excludes it. */
  readonly against?: TakenMeasurement | undefined;
};

/** Faults that explain what is noticed, and how many of them the readings leave; the true one counts in both. */
export type Evidence = { readonly suspects: number; readonly left: number };

/** Progress of all cases, by case id or "random-<seed>". */
export type TrainingProgress = Readonly<Record<string, CaseProgress>>;

export const NO_PROGRESS: CaseProgress = { measured: [], named: [], hints: 0, shown: false };

export function isSolved(progress: CaseProgress): boolean {
  return progress.named.some((n) => n.verdict === "right");
}

/** Closed: solved, or given up. What comes afterwards is no longer counted. */
export function isClosed(progress: CaseProgress): boolean {
  return progress.shown || isSolved(progress);
}

function isSameMeasured(a: TakenMeasurement, b: TakenMeasurement): boolean {
  return a.part === b.part && a.port === b.port && a.quantity === b.quantity && a.asked === b.asked;
}

export function addMeasured(progress: CaseProgress, measured: TakenMeasurement): CaseProgress {
  if (progress.measured.some((m) => isSameMeasured(m, measured)) || isClosed(progress)) return progress;
  return { ...progress, measured: [...progress.measured, measured] };
}

/** The plan's value for a reading that was taken; each counts once. */
export function addPlanValue(progress: CaseProgress, of: TakenMeasurement): CaseProgress {
  const isNew = progress.measured.some((m) => isSameMeasured(m, of) && !m.planValue);
  if (!isNew || isClosed(progress)) return progress;
  return {
    ...progress,
    measured: progress.measured.map((m) => (isSameMeasured(m, of) ? { ...m, planValue: true } : m)),
  };
}

export function hasPlanValue({ measured }: CaseProgress, of: TakenMeasurement): boolean {
  return measured.some((m) => isSameMeasured(m, of) && m.planValue === true);
}

export function addNamed(
  progress: CaseProgress,
  named: NamedFault,
  verdict: NamedVerdict,
  against?: TakenMeasurement,
): CaseProgress {
  const known = progress.named.some((n) => n.part === named.part && n.type === named.type);
  if (known || isClosed(progress)) return progress;
  const added: Named = { ...named, verdict, ...(against ? { against } : {}) };
  return { ...progress, named: [...progress.named, added] };
}

/** What was calculated of the case itself; a second time changes nothing. */
export function withPar(progress: CaseProgress, par: number): CaseProgress {
  return progress.par === par ? progress : { ...progress, par };
}

export function withEvidence(progress: CaseProgress, evidence: Evidence): CaseProgress {
  return progress.evidence ? progress : { ...progress, evidence };
}

export function addHint(progress: CaseProgress, hintsOfCase: number): CaseProgress {
  if (isClosed(progress) || progress.hints >= hintsOfCase) return progress;
  return { ...progress, hints: progress.hints + 1 };
}

export function giveUp(progress: CaseProgress): CaseProgress {
  return isClosed(progress) ? progress : { ...progress, shown: true };
}

/** Puts the progress of one case into that of all. */
export function withProgress(all: TrainingProgress, id: string, progress: CaseProgress): TrainingProgress {
  return all[id] === progress ? all : { ...all, [id]: progress };
}

const MOST_KEY_LENGTH = 60;

const measuredSchema = z.object({
  part: z.string(),
  port: z.string(),
  quantity: z.enum([...QUANTITIES]),
  asked: z.string(),
  planValue: z.literal(true).optional(),
});

const STORED = z.object({
  measured: z.array(measuredSchema).max(1000),
  named: z
    .array(
      z.object({
        part: z.string(),
        type: z.enum([...FAULT_TYPES]),
        verdict: z.enum(["right", "alike", "part", "wrong"]),
        against: measuredSchema.optional(),
      }),
    )
    .max(1000),
  hints: z.int().min(0).max(100),
  shown: z.boolean(),
  par: z.int().min(0).max(1000).optional(),
  evidence: z.object({ suspects: z.int().min(1).max(10_000), left: z.int().min(1).max(10_000) }).optional(),
});

/** Reads kept progress, case by case; a case that is damaged or from another version is left out. */
export function readProgress(kept: unknown): TrainingProgress {
  return Object.fromEntries(
    caseEntries(kept).flatMap(([key, value]) => {
      const parsed = STORED.safeParse(value);
      return parsed.success && key.length <= MOST_KEY_LENGTH ? [[key, parsed.data] as const] : [];
    }),
  );
}

/** What is kept in the place of `before`; cases there that this version cannot read stay as they are. */
export function writeProgress(all: TrainingProgress, before?: unknown): Readonly<Record<string, unknown>> {
  const readable = readProgress(before);
  const others = caseEntries(before).filter(([key]) => !Object.hasOwn(readable, key));
  return { ...Object.fromEntries(others), ...all };
}

/** Former versions kept all cases as one text. */
function caseEntries(kept: unknown): readonly (readonly [string, unknown])[] {
  if (typeof kept === "string") {
    try {
      return caseEntries(Object(JSON.parse(kept)));
    } catch {
      return [];
    }
  }
  return typeof kept === "object" && kept !== null ? Object.entries(kept) : [];
}
