import { useMemo } from "react";
import { faults } from "../../../remedies/faults/list.ts";
import { faultSentence } from "../../../sentences/faults/faultWords.ts";
import { measurementSentence, readingWords } from "../../../sentences/faults/readingWords.ts";
import { exclusionWords } from "../../../sentences/training/outcomeWords.ts";
import { type PlainPath, usePracticePath } from "../../../store/practicePath.ts";
import { counted } from "../../kit/format.ts";
import type { CaseProps } from "./useCase.ts";

/** The best way through the case, step by step, with what each reading would have excluded. */
export function Debriefing({ session }: CaseProps) {
  const { opened } = session;
  const path = usePracticePath((s) => (s.opened === opened ? s.path : null));
  if (!path) return <p className="quiet small">The best way is being calculated.</p>;
  return (
    <details className="fault-more">
      <summary>The best way ({counted(path.steps.length, "measurement")})</summary>
      <p className="small">
        {counted(path.suspects.length, "fault")} would explain what the customer notices.
      </p>
      <ol className="small path-steps">
        {path.steps.map((step) => (
          <Step key={step.left.join()} session={session} step={step} />
        ))}
      </ol>
    </details>
  );
}

function Step({ session, step }: CaseProps & { readonly step: PlainPath["steps"][number] }) {
  const { design } = session.opened;
  const titles = useMemo(
    () => new Map(faults(design).map((f) => [f.id, faultSentence(design, f)])),
    [design],
  );
  const before = step.excluded.length + step.left.length;
  const names = (ids: readonly string[]) => ids.flatMap((id) => titles.get(id) ?? []);
  return (
    <li>
      <p>
        {measurementSentence(design, step.measurement)} Reading: <strong>{readingWords(step.reading)}</strong>
        .
      </p>
      <p>{exclusionWords(names(step.excluded))}</p>
      <ul>
        {step.measurement.outcomes.map(({ reading, faults: those }) => (
          <li key={those.join()}>
            {readingWords(reading)}: excludes {before - those.length} of {before}
          </li>
        ))}
      </ul>
    </li>
  );
}
