import { Printer, Waypoints, X } from "lucide-react";
import { useEffect, useMemo, useRef } from "react";
import { useApp } from "../../../store/app.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import type { Question } from "../../kit/asked/question.ts";
import { closeQuestion } from "../../kit/asked/questionState.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { useSize } from "../../kit/useSize.ts";
import { endWords } from "./endWords.ts";
import { Legend } from "./Legend.tsx";
import { LevelDiagram } from "./LevelDiagram.tsx";
import { type LevelOrigin, levelOrigin } from "./levelOrigin.ts";
import { OriginPlace } from "./OriginPlace.tsx";
import { StepTable } from "./StepTable.tsx";
import "./origin.css";

/** How a level came about: the way of one carrier from its source to here, step by step. */
export function OriginPane({ question }: { readonly question: Question }) {
  const evaluation = useApp((s) => s.evaluation);
  const found = useMemo(() => levelOrigin(evaluation, question), [evaluation, question]);
  const heading = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each new question takes the focus, an edit does not.
  useEffect(() => heading.current?.focus(), [question]);
  return (
    <section
      className="origin"
      aria-label="How this level came about"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        closeQuestion();
      }}
    >
      <header className="origin-head">
        <div className="origin-title">
          <h2 ref={heading} tabIndex={-1}>
            How this level came about
          </h2>
          {found ? <OriginPlace found={found} which={question.which} /> : null}
        </div>
        {found ? (
          <IconButton
            icon={Waypoints}
            name="Show the whole way on the canvas"
            onPress={() => selectFromPane({ parts: [...new Set(found.steps.map((s) => s.part))] })}
          />
        ) : null}
        {found ? <IconButton icon={Printer} name="Print" onPress={() => window.print()} /> : null}
        <IconButton icon={X} name="Close, back to where it was asked" onPress={closeQuestion} />
      </header>
      {found ? <Way found={found} /> : <p className="empty">This carrier does not get here any more.</p>}
    </section>
  );
}

function Way({ found }: { readonly found: LevelOrigin }) {
  const [attach, size] = useSize();
  return (
    <div className="origin-body">
      <div className="origin-words">
        {endWords(found).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <div className="origin-figure">
        <div className="origin-plot" ref={attach}>
          {size && size.width > 120 ? (
            <LevelDiagram answer={found} width={size.width} height={size.height} />
          ) : null}
        </div>
        <Legend answer={found} />
      </div>
      <div className="origin-steps">
        <StepTable answer={found} />
      </div>
      {found.userBand === undefined ? null : (
        <p className="quiet small">
          On a user band C/N is that of the worst transponder that may come there. This one is shown.
        </p>
      )}
    </div>
  );
}
