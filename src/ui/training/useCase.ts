/** The case at hand with its progress; only drawn while one is open. */
import type { Level } from "../../remedies/training/case.ts";
import { type CaseProgress, isClosed } from "../../remedies/training/progress.ts";
import { progressOf, useTraining } from "../../store/training.ts";
import type { Session } from "../../store/trainingSession.ts";

export type CaseProps = { readonly session: Session };

export function useCaseProgress({ key }: Session): CaseProgress {
  return useTraining((s) => progressOf(s.progress, key));
}

export function useIsClosed(session: Session): boolean {
  return isClosed(useCaseProgress(session));
}

export function levelOf({ opened }: Session): Level {
  return opened.case.level;
}
