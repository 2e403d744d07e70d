import { Lightbulb } from "lucide-react";
import { HINTS } from "../../../remedies/training/case.ts";
import { addHint } from "../../../remedies/training/progress.ts";
import { caseWords } from "../../../sentences/training/caseWords.ts";
import { useTraining } from "../../../store/training.ts";
import { type CaseProps, useCaseProgress } from "./useCase.ts";

/** Hints, one by one; each costs. */
export function Hints({ session }: CaseProps) {
  const { hints } = caseWords(session.opened);
  const shown = useCaseProgress(session).hints;
  return (
    <section aria-label="Hints">
      <h2>Hints</h2>
      <ol className="hints" aria-live="polite">
        {hints.slice(0, shown).map((hint) => (
          <li key={hint}>{hint}</li>
        ))}
      </ol>
      {shown < hints.length ? (
        <button
          type="button"
          className="button"
          onClick={() => useTraining.getState().update(session.key, (progress) => addHint(progress, HINTS))}
        >
          <Lightbulb size={16} aria-hidden /> Hint {shown + 1} of {hints.length}
        </button>
      ) : (
        <p className="quiet small">No more hints.</p>
      )}
    </section>
  );
}
