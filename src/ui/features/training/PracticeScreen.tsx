import { ArrowLeft, Check, Link2 } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import { scoreOf } from "../../../remedies/training/score.ts";
import { caseWords } from "../../../sentences/training/caseWords.ts";
import { useApp } from "../../../store/app.ts";
import { linkAddress } from "../../kit/addressRequest.ts";
import { counted } from "../../kit/format.ts";
import { leavePractice } from "./actions.ts";
import { CaseOutcome } from "./CaseOutcome.tsx";
import { Hints } from "./Hints.tsx";
import { Meter } from "./Meter.tsx";
import { Notes } from "./Notes.tsx";
import { PracticeCanvas } from "./PracticeCanvas.tsx";
import { SuspicionForm } from "./SuspicionForm.tsx";
import { useAssessment } from "./useAssessment.ts";
import { type CaseProps, useCaseProgress, useIsClosed } from "./useCase.ts";
import "./training.css";

/** One case on a screen of its own: the plan without strips and verdict, the meter, notes, suspicion and hints. */
export function PracticeScreen({ session }: CaseProps) {
  const { level } = session.opened.case;
  const { title, story } = caseWords(session.opened);
  useAssessment(session);
  const isDone = useIsClosed(session);
  const heading = useRef<HTMLHeadingElement>(null);
  // The whole screen has changed: whoever listens should hear where they are.
  useEffect(() => heading.current?.focus(), []);
  return (
    <div className="practice">
      <header className="practice-bar">
        <button type="button" className="button" onClick={leavePractice}>
          <ArrowLeft size={16} aria-hidden /> Leave
        </button>
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        <span className="badge note">Level {level}</span>
        <Standing session={session} />
        <CopyLink session={session} />
      </header>
      <div className="practice-body">
        <main className="practice-canvas" aria-label="Plan of the installation">
          <PracticeCanvas session={session} />
        </main>
        <aside className="practice-side" aria-label="Your work on the case">
          <section>
            <h2>What the customer says</h2>
            <p className="story">{story}</p>
          </section>
          {isDone ? <CaseOutcome session={session} /> : null}
          <Meter session={session} />
          <Notes session={session} />
          {isDone ? null : <SuspicionForm session={session} />}
          {isDone ? null : <Hints session={session} />}
        </aside>
      </div>
    </div>
  );
}

/** Measurements against what the case can be solved with, and what that is worth. */
function Standing({ session }: CaseProps) {
  const progress = useCaseProgress(session);
  const score = scoreOf(progress);
  return (
    <p className="standing" role="status">
      {counted(progress.measured.length, "measurement")}
      {progress.par === undefined ? null : <span className="quiet"> (can do in {progress.par})</span>}
      {score.points > 0 ? <strong> {counted(score.points, "point")}</strong> : null}
    </p>
  );
}

function CopyLink({ session }: CaseProps) {
  const [copied, setCopied] = useState(false);
  const copy = async () => {
    const link = linkAddress(window.location.href, session.fragment);
    try {
      await navigator.clipboard.writeText(link);
      setCopied(true);
    } catch {
      useApp
        .getState()
        .notify("The browser did not allow copying: the address of this page is the link.", "warning");
    }
  };
  return (
    <button type="button" className="button" onClick={copy}>
      {copied ? <Check size={16} aria-hidden /> : <Link2 size={16} aria-hidden />}
      <span className="copy-words" aria-live="polite">
        {copied ? "Copied" : "Copy link"}
      </span>
    </button>
  );
}
