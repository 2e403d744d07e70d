/** A short tour on a house that fails: a card that points and waits, and never stands in the way of the page. */
import { X } from "lucide-react";
import { useEffect, useRef } from "react";
import type { Proposal } from "../../../remedies/proposal.ts";
import { announce } from "../../../store/announcements.ts";
import { useApp } from "../../../store/app.ts";
import { useCures } from "../../../store/cures.ts";
import { findCures } from "../../kit/asked/findCures.ts";
import { endTour, focusTour, useTour } from "../../kit/asked/tour.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { showPane } from "../../kit/panes.ts";
import { Spotlight } from "./Spotlight.tsx";
import styles from "./Tour.module.css";
import { TOUR_EXAMPLE, TOUR_STEPS, type TourStep, tourFacts, tourTarget, tourWords } from "./tourSteps.ts";

export type TourActions = {
  readonly openExample: (key: string) => Promise<boolean>;
  readonly applyCure: (proposal: Proposal) => void;
  readonly openNew: () => Promise<void>;
};

export function Tour(actions: TourActions) {
  const number = useTour((s) => s.step);
  const step = number === null ? undefined : TOUR_STEPS[number];
  return number === null || step === undefined ? null : <Card number={number} step={step} {...actions} />;
}

type CardProps = TourActions & { readonly number: number; readonly step: TourStep };

function Card({ number, step, openExample, applyCure, openNew }: CardProps) {
  const card = useRef<HTMLElement>(null);
  const { design, evaluation, report } = useApp();
  const [first] = useCures((s) => s.proposals);
  const isCured = useWatchedCure(step);
  useEffect(() => {
    void openExample(TOUR_EXAMPLE);
    const timer = setTimeout(() => focusTour(card.current), DIALOG_GOES_MS);
    return () => clearTimeout(timer);
  }, [openExample]);
  const facts = tourFacts(evaluation, report);
  const { title, text } = tourWords(step, facts, { design, report });
  useEffect(() => {
    bringIntoView(step);
  }, [step]);
  useEffect(() => announce(`${title}. ${text}`), [title, text]);
  const isLast = step === "done";
  return (
    <>
      <Spotlight target={tourTarget(step, facts)} />
      <section
        ref={card}
        className={styles.card}
        tabIndex={-1}
        aria-label="Tour"
        onKeyDown={(event) => {
          if (event.key !== "Escape") return;
          event.stopPropagation();
          endTour();
        }}
      >
        <header className={styles.head}>
          <h2>{title}</h2>
          <span className="quiet small">
            {number + 1} of {TOUR_STEPS.length}
          </span>
          <IconButton icon={X} name="End the tour" onPress={endTour} />
        </header>
        <p>{text}</p>
        <div className="button-row">
          {number > 0 && !isLast ? (
            <button type="button" className="button" onClick={() => goTo(number - 1)}>
              Back
            </button>
          ) : null}
          {isLast ? (
            <>
              <button type="button" className="button main" onClick={endTour}>
                End the tour
              </button>
              <button
                type="button"
                className="button"
                onClick={() => {
                  endTour();
                  void openNew();
                }}
              >
                New design
              </button>
            </>
          ) : step === "apply" ? (
            <button
              type="button"
              className="button main"
              disabled={!first && !isCured}
              onClick={() => first && applyCure(first)}
            >
              {first ? "Apply the first cure" : "Searching…"}
            </button>
          ) : (
            <button type="button" className="button main" onClick={() => goTo(number + 1)}>
              Next
            </button>
          )}
        </div>
      </section>
    </>
  );
}

/** A dialog that closes gives the focus back a moment later [ms]. */
const DIALOG_GOES_MS = 100;

function goTo(step: number): void {
  useTour.setState({ step });
}

/** Once a cure is applied, by the tour or by hand, the tour is at its end. */
function useWatchedCure(step: TourStep): boolean {
  const isCured = useApp(
    ({ report }) => report.verdicts.length > 0 && report.verdicts.every((v) => v.state !== "fails"),
  );
  useEffect(() => {
    if (isCured && step === "apply") goTo(TOUR_STEPS.indexOf("done"));
  }, [isCured, step]);
  return isCured;
}

function bringIntoView(step: TourStep): void {
  const { evaluation, report, frame } = useApp.getState();
  const { receiver, way } = tourFacts(evaluation, report);
  if (step === "receiver" && receiver !== null) frame({ parts: [receiver] });
  if (step === "wire") frame({ parts: [...way] });
  if (step === "cause" || step === "done") showPane("verdict");
  if (step === "apply") showPane("cures");
  if (step === "cures") void findCures();
}
