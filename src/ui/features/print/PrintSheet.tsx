import { useEffect, useState } from "react";
import { createPortal, flushSync } from "react-dom";
import type { Design } from "../../../design/design.ts";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { Cause } from "../../../findings/finding.ts";
import { ESTIMATE_NOTICE } from "../../../parts/cautions.ts";
import { countsOf, followsLine } from "../../../sentences/cause.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { cureOf, explainFinding, messageOf } from "../../../sentences/finding.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { stateName, verdictSentence } from "../../../sentences/verdict.ts";
import { useApp } from "../../../store/app.ts";
import { boxesOf } from "../../canvas/boxes.ts";
import { boundsOf } from "../../canvas/layout.ts";
import { PrintDrawing } from "../../canvas/PrintDrawing.tsx";
import { currentQuestion } from "../../kit/asked/questionState.ts";
import { currentWalk } from "../../kit/asked/walking.ts";
import { pageAsked } from "../../kit/printPage.ts";
import { limitWords } from "../../kit/told/limitWords.ts";
import { levelOrigin } from "../origin/levelOrigin.ts";
import { PaperOrigin } from "../origin/PaperOrigin.tsx";
import { ServiceTable } from "../verdict/ServiceTable.tsx";
import { PaperWalk } from "../walk/PaperWalk.tsx";
import { shownWalk } from "../walk/walk.ts";

/**
 * What comes out on paper: the drawing, the verdicts and the causes. It exists only while printing,
 * so it costs nothing otherwise.
 */
export function PrintSheet() {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    // The browser takes its picture as soon as the event is over, so the sheet must stand by then.
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    window.addEventListener("beforeprint", before);
    window.addEventListener("afterprint", after);
    return () => {
      window.removeEventListener("beforeprint", before);
      window.removeEventListener("afterprint", after);
    };
  }, []);
  return isPrinting ? createPortal(pageAsked() ?? <Paper />, document.body) : null;
}

function Paper() {
  const { evaluation, report } = useApp.getState();
  const { design } = evaluation;
  const verdicts = [...report.verdicts].sort((a, b) => ROLES.indexOf(a.role) - ROLES.indexOf(b.role));
  const question = currentQuestion();
  const walking = currentWalk();
  const origin = question && levelOrigin(evaluation, question);
  return (
    <div className="paper">
      <section className={isWide(design) ? "paper-drawing sideways" : "paper-drawing"}>
        <h1>{design.title}</h1>
        <PrintDrawing evaluation={evaluation} report={report} />
        <p className="small">{ESTIMATE_NOTICE}</p>
      </section>
      {origin ? <PaperOrigin found={origin} which={question.which} /> : null}
      {walking ? <PaperWalk shown={shownWalk(evaluation, walking)} evaluation={evaluation} /> : null}
      <h2>Causes</h2>
      <p>{countsOf(report)}.</p>
      <ul>
        {report.causes.map((cause) => (
          <PaperCause key={cause.id} cause={cause} evaluation={evaluation} />
        ))}
      </ul>
      <h2>Receivers and outlets</h2>
      {verdicts.map((verdict) => (
        <section key={verdict.part} className="paper-item">
          <h3>
            {SIGNS[verdict.state]} {plainLabelOf(evaluation, verdict.part)}: {stateName(verdict)}
          </h3>
          <p>{verdictSentence(verdict, evaluation)}</p>
          {verdict.services.length > 0 ? <ServiceTable services={verdict.services} /> : null}
        </section>
      ))}
      <p className="small">
        Printed {new Date().toLocaleString()}. Work on mains, bonding, lightning protection and at height
        follows local codes and belongs to licensed people.
      </p>
    </div>
  );
}

/** A cause with its cure, and in short what follows from it. */
function PaperCause({ cause, evaluation }: { readonly cause: Cause; readonly evaluation: Evaluation }) {
  const { root, severity, findings } = cause;
  const cure = cureOf(root, evaluation);
  return (
    <li className="paper-item">
      <strong>{capital(severity)}</strong>: {messageOf(root, evaluation)}{" "}
      {cure === undefined ? null : (
        <>
          <strong>Cure:</strong> {cure}{" "}
        </>
      )}
      <span className="small">{limitWords(root)}</span>
      <br />
      {explainFinding(root, evaluation).customer}
      {followsLine(cause).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {findings.length > 1 ? (
        <ul>
          {findings.slice(1).map((finding) => (
            <li key={finding.id}>{messageOf(finding, evaluation)}</li>
          ))}
        </ul>
      ) : null}
    </li>
  );
}

/** On paper without colour. */
const SIGNS = { works: "✓", edge: "△", fails: "✗" } as const;

const ROLES = ["receiver", "outlet"] as const;

/** A drawing that is wider than it is high gets its sheet across. */
function isWide(design: Design): boolean {
  const bounds = boundsOf(boxesOf(design));
  return bounds !== null && bounds.width > bounds.height * 1.2;
}
