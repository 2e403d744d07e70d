import { BookA, BookOpenText, Copy } from "lucide-react";
import { useMemo } from "react";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { Finding } from "../../../findings/finding.ts";
import { explainFinding } from "../../../sentences/finding.ts";
import { glossaryTermsOf } from "../../../sentences/glossary.ts";
import { useApp } from "../../../store/app.ts";
import { openRuleBook } from "../../kit/asked/book.ts";
import { openGlossary } from "../../kit/asked/glossary.ts";
import { FindingPicture } from "./FindingPicture.tsx";
import "./explain.css";

type Props = {
  readonly finding: Finding;
  readonly evaluation: Evaluation;
  /** Inside the rule book its own links lead on. */
  readonly hasLinks?: boolean;
};

/** Why a finding is one: for the customer, for the trade and for the meter, with the spectrum concerned. */
export function ExplanationView({ finding, evaluation, hasLinks = true }: Props) {
  const explained = useMemo(() => explainFinding(finding, evaluation), [finding, evaluation]);
  if (!explained) return <p className="quiet small">This version has nothing more to say about it.</p>;
  const terms = glossaryTermsOf(finding.rule);
  return (
    <div className="explanation">
      <h4>For the customer</h4>
      <div className="explanation-customer">
        <p>{explained.customer}</p>
        <button
          type="button"
          className="button icon bare"
          aria-label="Copy the sentence for the customer"
          title="Copy the sentence for the customer"
          onClick={() => void copy(explained.customer)}
        >
          <Copy size={16} aria-hidden />
        </button>
      </div>
      {explained.picture ? <FindingPicture picture={explained.picture} evaluation={evaluation} /> : null}
      <h4>For the trade</h4>
      <p>{explained.trade}</p>
      <h4>To confirm it on site</h4>
      <p>{explained.measure}</p>
      {terms.length > 0 ? (
        <nav className="chips" aria-label="In the glossary">
          {terms.map((term) => (
            <button key={term} type="button" className="chip" onClick={() => openGlossary(term)}>
              <BookA size={14} aria-hidden /> {term}
            </button>
          ))}
        </nav>
      ) : null}
      {hasLinks ? (
        <nav className="chips" aria-label="In the rule book">
          <button type="button" className="chip" onClick={() => openRuleBook(explained.rule)}>
            <BookOpenText size={14} aria-hidden /> Rule: {explained.title}
          </button>
          {explained.neighbours.map(({ id, title }) => (
            <button key={id} type="button" className="chip" onClick={() => openRuleBook(id)}>
              {title}
            </button>
          ))}
        </nav>
      ) : null}
    </div>
  );
}

async function copy(text: string): Promise<void> {
  const { notify } = useApp.getState();
  try {
    await navigator.clipboard.writeText(text);
    notify("The sentence is on the clipboard.");
  } catch {
    notify(
      "This browser does not let pages write to the clipboard. Select the sentence and copy it.",
      "warning",
    );
  }
}
