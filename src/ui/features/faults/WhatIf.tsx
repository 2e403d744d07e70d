import { useMemo } from "react";
import type { Fault } from "../../../remedies/faults/fault.ts";
import { faults } from "../../../remedies/faults/list.ts";
import { FAULT_WORDS, faultSentence } from "../../../sentences/faults/faultWords.ts";
import { useApp } from "../../../store/app.ts";
import { type Subject, useFaultsView } from "../../kit/asked/whatFails.ts";
import { showFault } from "./actions.ts";
import { Consequences } from "./Consequences.tsx";
import styles from "./Faults.module.css";
import { faultGroups, subjectWords } from "./subjectFaults.ts";

/** One part or wire, the single faults that it can have, and what the chosen one does. */
export function WhatIf() {
  const design = useApp((s) => s.design);
  const subject = useFaultsView((s) => s.subject);
  const all = useMemo(() => faults(design), [design]);
  const name = subject && subjectWords(design, subject);
  return (
    <>
      <SubjectField />
      {subject && name ? (
        <FaultChoices key={subject.id} all={all} subject={subject} name={name} />
      ) : (
        <p className="quiet">
          Choose a part here, or press “What if this one fails?” at a selected part or wire. The design stays
          as it is.
        </p>
      )}
    </>
  );
}

function SubjectField() {
  const design = useApp((s) => s.design);
  const subject = useFaultsView((s) => s.subject);
  const wireName = subject?.type === "wire" ? subjectWords(design, subject) : undefined;
  const partId = subject?.type === "part" ? subject.id : "";
  return (
    <label className="faults-field">
      <span>What if something fails at</span>
      <select
        className="field-input"
        value={partId}
        onChange={(event) => {
          useApp.getState().closePreview();
          useFaultsView.setState({ subject: { type: "part", id: event.target.value }, chosen: null });
        }}
      >
        {partId === "" ? <option value="">{wireName ?? "Choose a part…"}</option> : null}
        {design.parts.map((part) => (
          <option key={part.id} value={part.id}>
            {part.label || part.id}
          </option>
        ))}
      </select>
    </label>
  );
}

type ChoicesProps = { readonly all: readonly Fault[]; readonly subject: Subject; readonly name: string };

function FaultChoices({ all, subject, name }: ChoicesProps) {
  const design = useApp((s) => s.design);
  const groups = useMemo(() => faultGroups(design, all, subject), [design, all, subject]);
  if (groups.length === 0)
    return <p className="quiet">There is no single fault to try at {name}: nothing is connected to it.</p>;
  return groups.map((group) => (
    <section key={group.title} className={styles.group}>
      <h3>{group.title}</h3>
      <ul className={styles.list}>
        {group.faults.map((fault) => (
          <FaultItem key={fault.id} fault={fault} />
        ))}
      </ul>
    </section>
  ));
}

function FaultItem({ fault }: { readonly fault: Fault }) {
  const design = useApp((s) => s.preview?.document.evaluation.design ?? s.design);
  const isChosen = useFaultsView((s) => s.chosen === fault.id);
  const choose = () => {
    useFaultsView.setState({ chosen: isChosen ? null : fault.id });
    if (isChosen) useApp.getState().closePreview();
    else showFault(fault);
  };
  return (
    <li className={isChosen ? `${styles.item} ${styles.chosen}` : styles.item}>
      <button type="button" className={styles.press} aria-expanded={isChosen} onClick={choose}>
        {faultSentence(design, fault)}
      </button>
      {isChosen ? (
        <div className={styles.body}>
          <Consequences fault={fault} />
          <p className="quiet small">{FAULT_WORDS[fault.type].lesson}</p>
        </div>
      ) : null}
    </li>
  );
}
