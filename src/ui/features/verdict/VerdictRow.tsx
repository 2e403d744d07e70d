import { ChevronDown, ChevronUp } from "lucide-react";
import { memo, useId, useState } from "react";
import type { Verdict } from "../../../findings/finding.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { verdictSentence } from "../../../sentences/verdict.ts";
import { useApp } from "../../../store/app.ts";
import { usePart } from "../../../store/hooks.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { WalkButtons } from "../../kit/asked/WalkButtons.tsx";
import { stateLook } from "../../kit/told/stateLook.ts";
import { ServiceTable } from "./ServiceTable.tsx";

/** A receiver or an outlet: works or not in one sentence, and on request what it gets of each service. */
export const VerdictRow = memo(function VerdictRow({ verdict }: { readonly verdict: Verdict }) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  const label = usePart(verdict.part)?.label || verdict.part;
  const sentence = useApp((s) => verdictSentence(verdict, s.evaluation));
  const { Icon, word, tone } = stateLook(verdict);
  return (
    <li className="verdict-row">
      <div className="verdict-line">
        <button
          type="button"
          className="verdict-press"
          onClick={() => selectFromPane({ parts: [verdict.part] })}
        >
          <span className={`verdict-mark ${tone}`}>
            <Icon size={16} aria-hidden />
            <span className="unseen">{capital(word)}: </span>
          </span>
          <span className="verdict-words">
            <strong>{label}</strong>
            <span>{sentence}</span>
          </span>
        </button>
        {verdict.services.length > 0 ? (
          <button
            type="button"
            className="button icon bare"
            aria-label={`Services of ${label}`}
            aria-expanded={isOpen}
            aria-controls={id}
            onClick={() => setOpen(!isOpen)}
          >
            {isOpen ? <ChevronUp size={16} aria-hidden /> : <ChevronDown size={16} aria-hidden />}
          </button>
        ) : null}
      </div>
      <div id={id} className="verdict-details" hidden={!isOpen}>
        {isOpen ? (
          <>
            <ServiceTable services={verdict.services} part={verdict.part} />
            <WalkButtons part={verdict.part} />
          </>
        ) : null}
      </div>
    </li>
  );
});
