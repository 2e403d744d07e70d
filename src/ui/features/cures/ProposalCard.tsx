import { Check, GitCompareArrows, Layers } from "lucide-react";
import { memo } from "react";
import type { Finding } from "../../../findings/finding.ts";
import type { Proof } from "../../../remedies/proof.ts";
import type { Proposal } from "../../../remedies/proposal.ts";
import { stepReason, stepTitle } from "../../../sentences/cures/step.ts";
import { namesIn } from "../../../sentences/cures/told.ts";
import { givenUpWords } from "../../../sentences/cures/work.ts";
import { useCures } from "../../../store/cures.ts";
import { usePrices } from "../../../store/prices.ts";
import { plural } from "../../../words/plural.ts";
import { compareWithPresent } from "../../kit/asked/compared.ts";
import { costWords } from "../../kit/told/costWords.ts";
import { Message } from "../../kit/told/Message.tsx";
import { PreviewChange, useIsPreviewed } from "../../kit/told/PreviewChange.tsx";
import { WorkList } from "../../kit/told/WorkList.tsx";
import { Afterwards } from "./Afterwards.tsx";
import { applyProposal, keepAsVariant, proposalDesign, titleOf } from "./actions.ts";
import { proofMarks } from "./proofWords.ts";

/** One change that is proved: what to do, why, what it costs, what it cures and brings. */
export const ProposalCard = memo(function ProposalCard({ proposal }: { readonly proposal: Proposal }) {
  const currency = usePrices((s) => s.currency);
  const design = proposalDesign(proposal);
  const isShown = useIsPreviewed(design);
  const document = useCures((s) => s.document) ?? proposal.design;
  const { steps, proof, cost, work, givesUp } = proposal;
  const names = namesIn(document, proposal.design);
  return (
    <li className={isShown ? "proposal tried shown" : "proposal tried"}>
      <ol className="proposal-steps" data-many={steps.length > 1}>
        {steps.map((step) => (
          <li key={stepTitle(step, names)}>
            <strong>{stepTitle(step, names)}</strong>
            <span className="quiet small">{stepReason(step, names)}</span>
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
      {givesUp.map((given) => (
        <p key={given.part} className="small">
          {givenUpWords(given, names)}
        </p>
      ))}
      <div className="button-row">
        <PreviewChange title={titleOf(proposal)} design={design} name={`Preview: ${titleOf(proposal)}`} />
        <button
          type="button"
          className="button main"
          aria-label={`Apply: ${titleOf(proposal)}`}
          onClick={() => applyProposal(proposal)}
        >
          <Check size={16} aria-hidden /> Apply
        </button>
      </div>
      <details className="tried-more">
        <summary>Work, and what it cures</summary>
        <h4>Work</h4>
        <WorkList work={work} before={document} after={proposal.design} />
        <Afterwards cured={proof.cured} />
        <CuredLines proof={proof} />
        <FindingLines title="New or graver" findings={proof.caused} />
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

/** What is cured, cause by cause; of what followed from them only the number. */
function CuredLines({ proof: { cured, causesCured } }: { readonly proof: Proof }) {
  const causes = cured.filter((f) => causesCured.includes(f.id));
  if (causes.length === 0) return <FindingLines title="Cures" findings={cured} />;
  const more = cured.length - causes.length;
  return (
    <>
      <FindingLines title="Cures" findings={causes} />
      {more > 0 ? <p className="quiet small">{plural(more, MORE_GONE)}</p> : null}
    </>
  );
}

const MORE_GONE = {
  one: (n: string) => `With that goes ${n} more finding.`,
  other: (n: string) => `With that go ${n} more findings.`,
};

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
