/** The case at hand with its progress; only drawn while one is open. */
import type { Level } from "../../remedies/training/case.ts";
import { type CaseProgress, isClosed } from "../../remedies/training/progress.ts";
import { progressOf, useTraining } from "../../store/training.ts";
import type { PracticeSession } from "../../store/trainingSession.ts";

export type CaseProps = { readonly session: PracticeSession };

export function useCaseProgress({ key }: PracticeSession): CaseProgress {
  return useTraining((s) => progressOf(s.progress, key));
}

export function useIsClosed(session: PracticeSession): boolean {
  return isClosed(useCaseProgress(session));
}

export function levelOf({ opened }: PracticeSession): Level {
  return opened.case.level;
}
