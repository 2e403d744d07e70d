/** The case at hand with its progress; only drawn while one is open. */
import { askedKey } from "../../../remedies/faults/requestChoice.ts";
import { planValueRule } from "../../../remedies/training/case.ts";
import {
  addPlanValue,
  type CaseProgress,
  hasPlanValue,
  isClosed,
} from "../../../remedies/training/progress.ts";
import { progressOf, useTraining } from "../../../store/training.ts";
import { type PracticeSession, usePractice } from "../../../store/trainingSession.ts";

export type CaseProps = { readonly session: PracticeSession };

export function useCaseProgress({ key }: PracticeSession): CaseProgress {
  return useTraining((s) => progressOf(s.progress, key));
}

export function useIsClosed(session: PracticeSession): boolean {
  return isClosed(useCaseProgress(session));
}

/** Whether the plan's value stands beside the reading, and how to look it up where that has its price. */
export function usePlanValue(session: PracticeSession) {
  const progress = useCaseProgress(session);
  const { place, quantity, asked } = usePractice();
  const rule = planValueRule(session.opened.case.level);
  const measured = { part: place?.[0] ?? "", port: place?.[1] ?? "", quantity, asked: askedKey(asked) };
  const isShown = rule === "shown" || isClosed(progress) || hasPlanValue(progress, measured);
  const lookUp =
    rule === "at a price"
      ? () => useTraining.getState().update(session.key, (before) => addPlanValue(before, measured))
      : null;
  return { isShown, lookUp };
}
