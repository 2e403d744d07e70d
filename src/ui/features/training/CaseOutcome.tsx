import { Footprints, RotateCcw } from "lucide-react";
import { useEffect, useMemo, useRef } from "react";
import { isSolved } from "../../../remedies/training/progress.ts";
import { scoreOf } from "../../../remedies/training/score.ts";
import { faultSentence } from "../../../sentences/faults/faultWords.ts";
import { serviceNameIn } from "../../../sentences/serviceWords.ts";
import { caseWords } from "../../../sentences/training/caseWords.ts";
import { lossSentence } from "../../../sentences/training/outcomeWords.ts";
import { tellSignal } from "../../../sentences/walk/signal.ts";
import { useTraining } from "../../../store/training.ts";
import { actualEvaluation } from "../../../store/trainingMeter.ts";
import { counted } from "../../kit/format.ts";
import { Debriefing } from "./Debriefing.tsx";
import { openInEditor } from "./openInEditor.ts";
import { type CaseProps, useCaseProgress } from "./useCase.ts";

/** The end of a case: the fault by name, what it was worth, the walk that shows it, and what to take home. */
export function CaseOutcome({ session }: CaseProps) {
  const { opened } = session;
  const { design, fault } = opened;
  const progress = useCaseProgress(session);
  const solved = isSolved(progress);
  const score = scoreOf(progress);
  const heading = useRef<HTMLHeadingElement>(null);
  // The form that was just pressed is gone, and the focus with it.
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className={solved ? "outcome-box ok" : "outcome-box"} aria-label="Outcome">
      <div role="status">
        <h2 ref={heading} tabIndex={-1}>
          {outcomeTitle(solved, score.points)}
        </h2>
      </div>
      <p>
        <strong>{faultSentence(design, fault)}</strong>
      </p>
      {score.lost.length > 0 ? (
        <ul className="small">
          {score.lost.map((loss) => (
            <li key={loss.why}>{lossSentence(loss, progress)}</li>
          ))}
        </ul>
      ) : null}
      <p className="lesson-line">{caseWords(opened).lesson}</p>
      <Debriefing session={session} />
      <Walk session={session} />
      <div className="button-row">
        <button type="button" className="button" onClick={() => void openInEditor(session)}>
          <Footprints size={16} aria-hidden /> Walk it on the canvas
        </button>
        <button type="button" className="button" onClick={() => useTraining.getState().forget(session.key)}>
          <RotateCcw size={15} aria-hidden /> Work on it again
        </button>
      </div>
    </section>
  );
}

function outcomeTitle(solved: boolean, points: number): string {
  if (solved) return `Right. ${counted(points, "point")}`;
  return points > 0
    ? `This is the fault. ${counted(points, "point")} for the right part`
    : "This is the fault";
}

/** From the roof to the socket, with the fault in place. */
function Walk({ session }: CaseProps) {
  const { opened } = session;
  const { part, service } = opened.case.walk;
  const evaluation = actualEvaluation(opened);
  const ways = useMemo(() => tellSignal(evaluation, { part, service }).ways, [evaluation, part, service]);
  if (ways.length === 0) return null;
  return (
    <details className="fault-more">
      <summary>Walk from the roof ({serviceNameIn(evaluation, service)})</summary>
      {ways.map((way) => (
        <div key={way.name} className="walk-lines">
          <h3>{way.name}</h3>
          <ol className="small">
            {way.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
        </div>
      ))}
    </details>
  );
}
