import { Eye, EyeOff } from "lucide-react";
import { useMemo } from "react";
import { partById } from "../../../design/lookup.ts";
import type { Fault } from "../../../remedies/faults/fault.ts";
import { type Consequence, whatFails } from "../../../remedies/faults/whatFails.ts";
import { faultSentence } from "../../../sentences/faults/faultWords.ts";
import { SERVICE_NAMES } from "../../../signal/carrier.ts";
import { useApp } from "../../../store/app.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { Message } from "../../kit/told/Message.tsx";
import { isShownFault, toggleFault } from "./actions.ts";
import { useDocumentState } from "./useDocumentState.ts";

/** So many findings say enough; the rest is in the verdict of the preview. */
const MOST_FINDINGS = 5;

/** Which sockets and receivers lose what under one fault, and which findings it would cause. */
export function Consequences({ fault }: { readonly fault: Fault }) {
  const sound = useDocumentState();
  const consequence = useMemo(() => whatFails(sound.evaluation.design, fault, sound), [fault, sound]);
  return (
    <div className="consequences">
      <Losses consequence={consequence} at="receiver" title="Receivers" />
      <Losses consequence={consequence} at="outlet" title="Outlets" />
      {consequence.lost.length === 0 ? (
        <p>Nobody would notice: every outlet and receiver gets what it gets now.</p>
      ) : null}
      <NewFindings consequence={consequence} />
      <PreviewButton fault={fault} />
    </div>
  );
}

type LossesProps = {
  readonly consequence: Consequence;
  readonly at: "receiver" | "outlet";
  readonly title: string;
};

function Losses({ consequence, at, title }: LossesProps) {
  const design = useApp((s) => s.design);
  const lost = consequence.lost.filter((s) => s.role === at);
  if (lost.length === 0) return null;
  return (
    <table className="losses">
      <caption>{title}</caption>
      <thead className="unseen">
        <tr>
          <th scope="col">Where</th>
          <th scope="col">Service</th>
          <th scope="col">What is left</th>
        </tr>
      </thead>
      <tbody>
        {lost.map((s) => (
          <tr key={s.part + s.service}>
            <th scope="row">
              <button type="button" className="link" onClick={() => selectFromPane({ parts: [s.part] })}>
                {partById(design, s.part)?.label ?? s.part}
              </button>
            </th>
            <td>{SERVICE_NAMES[s.service]}</td>
            <td>
              {s.got === 0 ? (
                <span className="badge error">nothing</span>
              ) : (
                <span className="badge warning">
                  {s.got} of {s.before}
                </span>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function NewFindings({ consequence: { findings, faulty } }: { readonly consequence: Consequence }) {
  const grave = findings.filter((f) => f.severity !== "note");
  if (grave.length === 0) return null;
  const rest = grave.length - MOST_FINDINGS;
  return (
    <details className="fault-more">
      <summary>Findings it would cause ({grave.length})</summary>
      <ul>
        {grave.slice(0, MOST_FINDINGS).map((f) => (
          <li key={f.id}>
            <Message finding={f} evaluation={faulty.evaluation} />
          </li>
        ))}
        {rest > 0 ? <li className="quiet">and {rest} more, in the verdict</li> : null}
      </ul>
    </details>
  );
}

/** Shows the fault on the canvas, or puts it away again. */
export function PreviewButton({ fault }: { readonly fault: Fault }) {
  const isShown = useApp((s) => isShownFault(s.preview, fault));
  const design = useApp((s) => s.preview?.document.evaluation.design ?? s.design);
  return (
    <button
      type="button"
      className="button small"
      aria-pressed={isShown}
      aria-label={`Show on the canvas: ${faultSentence(design, fault)}`}
      onClick={() => toggleFault(fault)}
    >
      {isShown ? <EyeOff size={15} aria-hidden /> : <Eye size={15} aria-hidden />} Show on the canvas
    </button>
  );
}
