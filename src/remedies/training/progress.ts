/** How far a trainee has come, as plain data; every step makes a new one. */
import { z } from "zod";
import { FAULT_TYPE_KEYS, type FaultType } from "../faults/fault.ts";
import { QUANTITIES, type Quantity } from "../faults/reading.ts";

export type Measured = {
  readonly part: string;
  readonly port: string;
  readonly quantity: Quantity;
  /** What the receivers were made to ask for meanwhile; empty: what they ask for anyway. */
  readonly asked: string;
};

export type NamedFault = {
  readonly part: string;
  readonly type: FaultType;
};

export type CaseProgress = {
  /** Each place, quantity and request once: looking again costs nothing. */
  readonly measured: readonly Measured[];
  /** Every suspicion that was named, in order, with what came of it. */
  readonly named: readonly (NamedFault & { readonly verdict: Verdict })[];
  readonly hints: number;
  /** Gave up and was shown it. */
  readonly shown: boolean;
};

/** "right": solved. "part": the right part, another fault. "wrong": neither. */
export type Verdict = "right" | "part" | "wrong";

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

export function addMeasured(progress: CaseProgress, measured: Measured): CaseProgress {
  const known = progress.measured.some(
    (m) =>
      m.part === measured.part &&
      m.port === measured.port &&
      m.quantity === measured.quantity &&
      m.asked === measured.asked,
  );
  if (known || isClosed(progress)) return progress;
  return { ...progress, measured: [...progress.measured, measured] };
}

export function addNamed(progress: CaseProgress, named: NamedFault, verdict: Verdict): CaseProgress {
  const known = progress.named.some((n) => n.part === named.part && n.type === named.type);
  if (known || isClosed(progress)) return progress;
  return { ...progress, named: [...progress.named, { ...named, verdict }] };
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

const STORED = z.object({
  measured: z
    .array(
      z.object({
        part: z.string(),
        port: z.string(),
        quantity: z.enum([...QUANTITIES]),
        asked: z.string(),
      }),
    )
    .max(1000),
  named: z
    .array(
      z.object({
        part: z.string(),
        type: z.enum([...FAULT_TYPE_KEYS]),
        verdict: z.enum(["right", "part", "wrong"]),
      }),
    )
    .max(1000),
  hints: z.int().min(0).max(100),
  shown: z.boolean(),
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
