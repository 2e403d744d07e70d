import { Footprints, RotateCcw } from "lucide-react";
import { useEffect, useMemo, useRef } from "react";
import { isSolved } from "../../remedies/training/progress.ts";
import { scoreOf } from "../../remedies/training/score.ts";
import { tellSignal } from "../../sentences/walk/signal.ts";
import { SERVICE_NAMES } from "../../signal/carrier.ts";
import { useTraining } from "../../store/training.ts";
import { actualEvaluation } from "../../store/trainingMeter.ts";
import { counted } from "../format.ts";
import { openInEditor } from "./openInEditor.ts";
import { type CaseProps, levelOf, useCaseProgress } from "./useCase.ts";

/** The end of a case: the fault by name, what it was worth, the walk that shows it, and what to take home. */
export function CaseOutcome({ session }: CaseProps) {
  const { fault, case: chosen } = session.opened;
  const progress = useCaseProgress(session);
  const solved = isSolved(progress);
  const score = scoreOf(progress, levelOf(session));
  const heading = useRef<HTMLHeadingElement>(null);
  // The form that was just pressed is gone, and the focus with it.
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className={solved ? "outcome-box ok" : "outcome-box"} aria-label="Outcome">
      <div role="status">
        <h2 ref={heading} tabIndex={-1}>
          {solved ? `Right. ${counted(score.points, "point")}` : "This is the fault"}
        </h2>
      </div>
      <p>
        <strong>{fault.title}</strong>
      </p>
      {score.lost.length > 0 ? (
        <ul className="small">
          {score.lost.map(({ why, points }) => (
            <li key={why}>
              {counted(points, "point")} for {why}
            </li>
          ))}
        </ul>
      ) : null}
      <p className="lesson-line">{chosen.lesson}</p>
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

/** From the roof to the socket, with the fault in place. */
function Walk({ session }: CaseProps) {
  const { opened } = session;
  const { part, service } = opened.case.walk;
  const ways = useMemo(
    () => tellSignal(actualEvaluation(opened), { part, service }).ways,
    [opened, part, service],
  );
  if (ways.length === 0) return null;
  return (
    <details className="fault-more">
      <summary>Walk from the roof ({SERVICE_NAMES[service]})</summary>
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
