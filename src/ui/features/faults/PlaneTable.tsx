import { Check, Printer, X } from "lucide-react";
import { type Symptom, type SymptomPlace, symptomKey } from "../../../remedies/faults/symptoms.ts";
import { planeName } from "../../../sentences/faults/reasonWords.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { type Seen, useFinder } from "../../../store/faultFinder.ts";
import { printPage } from "../../kit/printPage.ts";
import styles from "./Faults.module.css";
import { PaperPlanes } from "./PaperPlanes.tsx";
import { PlaneGrid, planeColumns } from "./PlaneGrid.tsx";
import { useDocumentState } from "./useDocumentState.ts";

/** Planes × receivers and sockets, with one transponder to try for each plane; a press goes on to the next mark. */
export function PlaneTable({ symptoms }: { readonly symptoms: readonly Symptom[] }) {
  const { evaluation } = useDocumentState();
  const columns = planeColumns(symptoms);
  if (columns.length === 0) return null;
  const wanted = new Set(symptoms.map(symptomKey));
  return (
    <details className="fault-more">
      <summary>Satellite planes, one transponder each</summary>
      <p className="small">
        Tune each transponder at each place. Press a box once for “works”, twice for “fails”.
      </p>
      <div className={styles.planes}>
        <PlaneGrid
          evaluation={evaluation}
          columns={columns}
          cell={(place, { plane }) => {
            if (!wanted.has(symptomKey(place))) return "–";
            const name = `${plainLabelOf(evaluation, place.part)}, ${planeName(plane, evaluation)}`;
            return <PlaneMark place={place} name={name} />;
          }}
        />
      </div>
      <button
        type="button"
        className="button small"
        onClick={() => printPage(() => <PaperPlanes evaluation={evaluation} symptoms={symptoms} />)}
      >
        <Printer size={15} aria-hidden /> Print table
      </button>
    </details>
  );
}

const NEXT = { "not tried": true, works: false, fails: null } as const;
const TONES = { "not tried": undefined, works: "ok", fails: "error" } as const;

function stateOf(works: Seen | undefined): keyof typeof NEXT {
  if (works === undefined) return "not tried";
  return works === true ? "works" : "fails";
}

function PlaneMark({ place, name }: { readonly place: SymptomPlace; readonly name: string }) {
  const state = useFinder((s) => stateOf(s.seen.get(symptomKey(place))?.works));
  return (
    <button
      type="button"
      className={styles.mark}
      data-tone={TONES[state]}
      aria-pressed={state !== "not tried"}
      aria-label={`${name}: ${state}`}
      title={state}
      onClick={() => useFinder.getState().see(place, NEXT[state])}
    >
      {state === "works" ? <Check size={16} aria-hidden /> : null}
      {state === "fails" ? <X size={16} aria-hidden /> : null}
    </button>
  );
}
