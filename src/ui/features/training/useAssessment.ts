import { useEffect } from "react";
import { evidenceOf } from "../../../remedies/training/judge.ts";
import { isSolved, withEvidence, withPar } from "../../../remedies/training/progress.ts";
import { parOf, suspectsOf, usePracticePath } from "../../../store/practicePath.ts";
import { useTraining } from "../../../store/training.ts";
import type { PracticeSession } from "../../../store/trainingSession.ts";
import { useCaseProgress } from "./useCase.ts";

/** Has par calculated beside the page, and once the case is solved weighs what the readings proved. */
export function useAssessment(session: PracticeSession): void {
  const { opened, key } = session;
  const { measured, ...progress } = useCaseProgress(session);
  const path = usePracticePath((s) => (s.opened === opened ? s.path : null));
  const isWeighed = progress.evidence !== undefined;
  const solved = isSolved({ measured, ...progress });
  useEffect(() => {
    usePracticePath.getState().start(opened);
    return () => usePracticePath.getState().stop();
  }, [opened]);
  useEffect(() => {
    if (path) useTraining.getState().update(key, (before) => withPar(before, parOf(path)));
  }, [path, key]);
  useEffect(() => {
    if (!path || !solved || isWeighed) return;
    const evidence = evidenceOf(opened, suspectsOf(opened, path), measured);
    useTraining.getState().update(key, (before) => withEvidence(before, evidence));
  }, [path, solved, isWeighed, opened, key, measured]);
}
