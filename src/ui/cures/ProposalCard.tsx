import { Check, Eye, EyeOff, GitCompareArrows, Layers } from "lucide-react";
import { memo } from "react";
import type { Finding } from "../../findings/finding.ts";
import type { Proposal } from "../../remedies/search.ts";
import { useApp } from "../../store/app.ts";
import { usePrices } from "../../store/prices.ts";
import { compareWithPresent } from "../compare/comparedState.ts";
import { Message } from "../verdict/Message.tsx";
import { applyProposal, keepAsVariant, proposalDesign, titleOf, togglePreview } from "./actions.ts";
import { costWords } from "./costWords.ts";
import { proofMarks } from "./proofWords.ts";

/** One change that is proved: what to do, why, what it costs, what it cures and brings. */
export const ProposalCard = memo(function ProposalCard({ proposal }: { readonly proposal: Proposal }) {
  const currency = usePrices((s) => s.currency);
  const design = proposalDesign(proposal);
  const isShown = useApp((s) => s.preview?.design === design);
  const { steps, proof, cost, changes, givesUp } = proposal;
  return (
    <li className={isShown ? "proposal shown" : "proposal"}>
      <ol className="proposal-steps" data-many={steps.length > 1}>
        {steps.map((step) => (
          <li key={step.idea + step.title}>
            <strong>{step.title}</strong>
            <span className="quiet small">{step.reason}</span>
          </li>
        ))}
      </ol>
      <p className="proposal-cost">{costWords(cost, currency)}</p>
      <p className="proposal-marks">
        {proofMarks(proof).map(({ tone, words }) => (
          <span key={words} className={`badge ${tone}`}>
            {words}
          </span>
        ))}
      </p>
      {givesUp.map((sentence) => (
        <p key={sentence} className="small">
          {sentence}
        </p>
      ))}
      <div className="button-row">
        <button
          type="button"
          className="button"
          aria-pressed={isShown}
          aria-label={`Preview: ${titleOf(proposal)}`}
          onClick={() => togglePreview(proposal)}
        >
          {isShown ? <EyeOff size={16} aria-hidden /> : <Eye size={16} aria-hidden />} Preview
        </button>
        <button
          type="button"
          className="button main"
          aria-label={`Apply: ${titleOf(proposal)}`}
          onClick={() => applyProposal(proposal)}
        >
          <Check size={16} aria-hidden /> Apply
        </button>
      </div>
      <details className="proposal-more">
        <summary>What it changes and cures</summary>
        <h4>Changes</h4>
        <ul>
          {changes.map((change) => (
            <li key={change}>{change}</li>
          ))}
        </ul>
        <FindingLines title="Cures" findings={proof.cured} />
        <FindingLines title="Brings" findings={proof.caused} />
        <div className="button-row">
          <button
            type="button"
            className="button"
            onClick={() => compareWithPresent(design, "With this cure")}
          >
            <GitCompareArrows size={16} aria-hidden /> Before and after…
          </button>
          <button type="button" className="button" onClick={() => keepAsVariant(proposal)}>
            <Layers size={16} aria-hidden /> Keep as a variant
          </button>
        </div>
      </details>
    </li>
  );
});

function FindingLines({
  title,
  findings,
}: {
  readonly title: string;
  readonly findings: readonly Finding[];
}) {
  if (findings.length === 0) return null;
  return (
    <>
      <h4>{title}</h4>
      <ul>
        {findings.map((f) => (
          <li key={f.id}>
            <span className="quiet">{f.severity}:</span> <Message finding={f} />
          </li>
        ))}
      </ul>
    </>
  );
}
