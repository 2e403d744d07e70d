import { CornerDownRight } from "lucide-react";
import { memo, type ReactNode, useId, useRef } from "react";
import type { Finding } from "../../../findings/finding.ts";
import { cureOf } from "../../../sentences/finding.ts";
import { useApp } from "../../../store/app.ts";
import { useCauseOf } from "../../../store/hooks.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { CureButton } from "../../kit/asked/CureButton.tsx";
import { useExplained, useScrollIntoSight } from "../../kit/asked/explained.ts";
import { WhyButton } from "../../kit/asked/WhyButton.tsx";
import { limitWords } from "../../kit/told/limitWords.ts";
import { Message } from "../../kit/told/Message.tsx";
import { ExplanationView } from "../explain/ExplanationView.tsx";

type Props = {
  readonly finding: Finding;
  /** Whether its cause stands above it already. */
  readonly isFolded?: boolean;
  /** What follows from it. */
  readonly children?: ReactNode;
};

/**
 * One finding; pressing it shows the culprit on the canvas, and its explanation opens below it. What follows from
 * something else names that instead of a cure: it goes when its cause goes.
 */
export const FindingItem = memo(function FindingItem(props: Props) {
  const { finding, isFolded = false, children } = props;
  const { parts, wires } = finding;
  const cause = useCauseOf(finding);
  const origin = cause && cause.root.id !== finding.id ? cause.root : undefined;
  // As a cause it counts as grave as the worst that follows from it.
  const severity = cause && !origin ? cause.severity : finding.severity;
  const id = useId();
  const isOpen = useExplained(finding);
  const row = useRef<HTMLLIElement>(null);
  useScrollIntoSight(finding, row);
  const led = parts.length > 0 || wires.length > 0;
  // Beneath its cause a finding is short; its explanation has the figures.
  const limits = isFolded ? undefined : limitWords(finding);
  const cure = useApp((s) => (origin ? undefined : cureOf(finding, s.evaluation)));
  return (
    <li className={`finding ${severity}`} ref={row}>
      <button
        type="button"
        className="finding-press"
        disabled={!led}
        onClick={() => selectFromPane({ parts, wires })}
      >
        <span>
          <Message finding={finding} />
        </span>
        {cure ? <span className="finding-cure">{cure}</span> : null}
        {limits ? <span className="finding-limit">{limits}</span> : null}
      </button>
      {origin && !isFolded ? <FollowsFrom origin={origin} /> : null}
      <div className="finding-tools">
        <WhyButton finding={finding} isOpen={isOpen} controls={id} />
        {origin ? null : <CureButton finding={finding} />}
      </div>
      {isOpen ? (
        <div id={id}>
          <PresentExplanation finding={finding} />
        </div>
      ) : null}
      {children}
    </li>
  );
});

/** Leads from what suffers to what it suffers from. */
function FollowsFrom({ origin }: { readonly origin: Finding }) {
  return (
    <p className="finding-origin small">
      <CornerDownRight size={14} aria-hidden /> follows from:{" "}
      <button
        type="button"
        className="link"
        onClick={() => selectFromPane({ parts: [origin.parts[0]], wires: origin.wires })}
      >
        <Message finding={origin} />
      </button>
    </p>
  );
}

/** Watches the evaluation only while it is open, so that closed rows stay as they are. */
function PresentExplanation({ finding }: { readonly finding: Finding }) {
  const evaluation = useApp((s) => s.evaluation);
  return <ExplanationView finding={finding} evaluation={evaluation} />;
}
