import { Eye, EyeOff } from "lucide-react";
import { useMemo } from "react";
import { partById } from "../../../design/lookup.ts";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { Fault } from "../../../remedies/faults/fault.ts";
import { type Consequence, whatFails } from "../../../remedies/faults/whatFails.ts";
import { faultSentence } from "../../../sentences/faults/faultWords.ts";
import { serviceNameIn } from "../../../sentences/serviceWords.ts";
import { useApp } from "../../../store/app.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { Table } from "../../kit/Table.tsx";
import { Message } from "../../kit/told/Message.tsx";
import { isShownFault, toggleFault } from "./actions.ts";
import styles from "./Faults.module.css";
import { useDocumentState } from "./useDocumentState.ts";

/** So many findings say enough; the rest is in the verdict of the preview. */
const MOST_FINDINGS = 5;

/** Which sockets and receivers lose what under one fault, and which findings it would cause. */
export function Consequences({ fault }: { readonly fault: Fault }) {
  const sound = useDocumentState();
  const consequence = useMemo(() => whatFails(sound.evaluation.design, fault, sound), [fault, sound]);
  return (
    <div className={styles.consequences}>
      {consequence.lost.length === 0 ? (
        <p>Nobody would notice: every outlet and receiver gets what it gets now.</p>
      ) : (
        <Losses lost={consequence.lost} evaluation={sound.evaluation} />
      )}
      <NewFindings consequence={consequence} />
      <PreviewButton fault={fault} />
    </div>
  );
}

type LossesProps = { readonly lost: Consequence["lost"]; readonly evaluation: Evaluation };

/** Receivers first: they are what somebody looks at. */
function Losses({ lost, evaluation }: LossesProps) {
  const design = useApp((s) => s.design);
  const groups = PLACES.map(({ role, head }) => ({
    key: role,
    head,
    rows: lost.filter((s) => s.role === role),
  }));
  return (
    <Table
      label="Who loses what"
      groups={groups.filter(({ rows }) => rows.length > 0)}
      keyOf={({ part, service }) => `${part} ${service}`}
      columns={[
        {
          head: "Where",
          share: 50,
          cell: ({ part }) => (
            <button type="button" className="link" onClick={() => selectFromPane({ parts: [part] })}>
              {partById(design, part)?.label ?? part}
            </button>
          ),
        },
        { head: "Service", cell: ({ service }) => serviceNameIn(evaluation, service) },
        { head: "What is left", cell: (loss) => <Left loss={loss} /> },
      ]}
    />
  );
}

const PLACES = [
  { role: "receiver", head: "Receivers" },
  { role: "outlet", head: "Outlets" },
] as const;

function Left({ loss: { got, before } }: { readonly loss: Consequence["lost"][number] }) {
  if (got === 0) return <span className="badge error">nothing</span>;
  return (
    <span className="badge warning">
      {got} of {before}
    </span>
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
