import { useMemo } from "react";
import type { Fault } from "../../../remedies/faults/fault.ts";
import { faults } from "../../../remedies/faults/list.ts";
import { FAULT_WORDS, faultSentence } from "../../../sentences/faults/faultWords.ts";
import { reasonSentences } from "../../../sentences/faults/reasonWords.ts";
import { useApp } from "../../../store/app.ts";
import { useFinder } from "../../../store/faultFinder.ts";
import type { PlainMeasurement, PlainSuspicion } from "../../../store/searchDiagnosis.ts";
import { plural } from "../../../words/plural.ts";
import { counted } from "../../kit/format.ts";
import { PreviewButton } from "./Consequences.tsx";
import styles from "./Faults.module.css";
import { NextMeasurement } from "./NextMeasurement.tsx";
import { TakenReadings } from "./TakenReadings.tsx";
import { useDocumentState } from "./useDocumentState.ts";

type Props = {
  readonly left: readonly PlainSuspicion[];
  readonly measurement: PlainMeasurement | null;
};

/** What is suspected, best first, and the measurement that tells most. */
export function FoundFaults({ left, measurement }: Props) {
  const design = useApp((s) => s.design);
  const isDone = useFinder((s) => s.status === "done");
  const byId = useMemo(() => new Map(faults(design).map((f) => [f.id, f] as const)), [design]);
  const exact = countOf(left, "exact");
  const near = countOf(left, "near");
  return (
    <>
      <TakenReadings />
      {measurement ? <NextMeasurement measurement={measurement} byId={byId} /> : null}
      <section className={styles.group}>
        <h3>{titleOf(exact, near)}</h3>
        {exact + near === 0 ? (
          <p className="quiet">
            There may be two faults at once, or a reading went wrong. Or the system is not built as drawn.
            Remove a reading, or look again at what works.
          </p>
        ) : null}
        {isDone && measurement === null && exact + near > 1 ? (
          <p className="quiet">No measurement tells these apart: look at them in this order.</p>
        ) : null}
        <ol className={styles.suspicions} aria-label="Suspected faults">
          {left.map((suspicion) => (
            <SuspicionItem key={suspicion.faults.join()} suspicion={suspicion} byId={byId} />
          ))}
        </ol>
      </section>
    </>
  );
}

function countOf(left: readonly PlainSuspicion[], match: PlainSuspicion["match"]): number {
  return left.reduce((sum, s) => sum + (s.match === match ? s.faults.length : 0), 0);
}

function titleOf(exact: number, near: number): string {
  if (exact + near === 0) return "No single fault explains this";
  if (exact === 0)
    return plural(near, {
      one: (n) => `No fault explains all of it; ${n} fault explains most of it`,
      other: (n) => `No fault explains all of it; ${n} faults explain most of it`,
    });
  const whole = counted(exact, "fault");
  return plural(near, {
    zero: `${whole} would explain all of it`,
    one: (n) => `${whole} would explain all of it, ${n} most of it`,
    other: (n) => `${whole} would explain all of it, ${n} most of it`,
  });
}

function sameLookWords(n: number): string {
  return plural(n, {
    one: (count) => `${count} more fault would look the same`,
    other: (count) => `${count} more faults would look the same`,
  });
}

type ById = ReadonlyMap<string, Fault>;

function SuspicionItem({ suspicion, byId }: { readonly suspicion: PlainSuspicion; readonly byId: ById }) {
  const [first, ...others] = suspicion.faults.flatMap((id) => byId.get(id) ?? []);
  const sound = useDocumentState();
  if (!first) return null;
  return (
    <li className={styles.suspicion}>
      <p>
        <strong>{faultSentence(sound.evaluation.design, first)}</strong>{" "}
        <span className={suspicion.match === "exact" ? "badge ok" : "badge note"}>
          {suspicion.match === "exact" ? "explains all of it" : "explains most of it"}
        </span>
      </p>
      {reasonSentences(suspicion.reasons, sound.evaluation).map((reason) => (
        <p key={reason} className="small">
          {reason}
        </p>
      ))}
      <p className="quiet small">{FAULT_WORDS[first.type].lesson}</p>
      <PreviewButton fault={first} />
      {others.length > 0 ? (
        <details className="fault-more">
          <summary>{sameLookWords(others.length)}</summary>
          <ul className={styles.list}>
            {others.map((fault) => (
              <li key={fault.id} className={styles.other}>
                <span>{faultSentence(sound.evaluation.design, fault)}</span>
                <PreviewButton fault={fault} />
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </li>
  );
}
