import { CircleAlert, Info, TriangleAlert } from "lucide-react";
import { memo, useId, useRef } from "react";
import type { Finding, Severity } from "../../findings/finding.ts";
import { cureOf } from "../../sentences/finding.ts";
import { useApp } from "../../store/app.ts";
import { CureButton } from "../cures/CureButton.tsx";
import { ExplanationView } from "../explain/ExplanationView.tsx";
import { useExplained, useScrollIntoSight } from "../explain/explainedState.ts";
import { WhyButton } from "../explain/WhyButton.tsx";
import { counted } from "../format.ts";
import { selectFromPane } from "../reveal.ts";
import { limitWords } from "./limitWords.ts";
import { Message } from "./Message.tsx";

const SEVERITIES: readonly {
  readonly severity: Severity;
  readonly icon: typeof Info;
}[] = [
  { severity: "error", icon: CircleAlert },
  { severity: "warning", icon: TriangleAlert },
  { severity: "note", icon: Info },
];

/** Findings grouped by severity, worst first. */
export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0) {
    return <p className="quiet verdict-heading">Nothing to find fault with.</p>;
  }
  return (
    <section aria-label="Findings">
      {SEVERITIES.map(({ severity, icon: Icon }) => {
        const own = findings.filter((f) => f.severity === severity);
        if (own.length === 0) return null;
        return (
          <details key={severity} className="finding-group" open={severity !== "note" || own.length <= 3}>
            <summary className={`finding-heading ${severity}`}>
              <Icon size={16} aria-hidden /> {counted(own.length, severity)}
            </summary>
            <ul className="finding-list">
              {own.map((finding) => (
                <FindingItem key={finding.id} finding={finding} />
              ))}
            </ul>
          </details>
        );
      })}
    </section>
  );
}

/** One finding; pressing it shows the culprit on the canvas, and its explanation opens below it. */
export const FindingItem = memo(function FindingItem({ finding }: { readonly finding: Finding }) {
  const { parts, wires } = finding;
  const id = useId();
  const isOpen = useExplained(finding);
  const row = useRef<HTMLLIElement>(null);
  useScrollIntoSight(finding, row);
  const led = parts.length > 0 || wires.length > 0;
  const limits = limitWords(finding);
  const cure = useApp((s) => cureOf(finding, s.evaluation));
  return (
    <li className={`finding ${finding.severity}`} ref={row}>
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
      <div className="finding-tools">
        <WhyButton finding={finding} isOpen={isOpen} controls={id} />
        <CureButton finding={finding} />
      </div>
      {isOpen ? (
        <div id={id}>
          <PresentExplanation finding={finding} />
        </div>
      ) : null}
    </li>
  );
});

/** Watches the evaluation only while it is open, so that closed rows stay as they are. */
function PresentExplanation({ finding }: { readonly finding: Finding }) {
  const evaluation = useApp((s) => s.evaluation);
  return <ExplanationView finding={finding} evaluation={evaluation} />;
}
