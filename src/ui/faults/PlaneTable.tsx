import { Check, Printer, X } from "lucide-react";
import type { KeyboardEvent } from "react";
import { type PlaneTest, planeTests } from "../../remedies/faults/planeTests.ts";
import { planePlace, type Symptom, type SymptomPlace, symptomKey } from "../../remedies/faults/symptoms.ts";
import { planeName } from "../../sentences/faults/reasonWords.ts";
import { plainLabelOf } from "../../sentences/phrases.ts";
import { type Seen, useFinder } from "../../store/faultFinder.ts";
import { megahertz } from "../format.ts";
import { ScrollBox } from "../kit/ScrollBox.tsx";
import { printPage } from "../print/page.ts";
import { PaperPlanes } from "./PaperPlanes.tsx";
import { useDocumentState } from "./useDocumentState.ts";

/** Planes × receivers and sockets, with one transponder to try for each plane; a press goes on to the next mark. */
export function PlaneTable({ symptoms }: { readonly symptoms: readonly Symptom[] }) {
  const { evaluation } = useDocumentState();
  const tests = planeTests(evaluation);
  const columns = planeColumns(symptoms);
  if (columns.length === 0) return null;
  const wanted = new Set(symptoms.map(symptomKey));
  return (
    <details className="fault-more">
      <summary>Satellite planes, one transponder each</summary>
      <p className="small">
        Tune each transponder at each place. Press a box once for “works”, twice for “fails”.
      </p>
      <ScrollBox label="Satellite planes" className="plane-scroll">
        <table className="plane-table" onKeyDown={moveFocus}>
          <thead>
            <tr>
              <th scope="col">Plane and transponder</th>
              {columns.map((id) => (
                <th key={id} scope="col">
                  {plainLabelOf(evaluation, id)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {tests.map((test) => (
              <tr key={symptomKey(planePlace("", test.plane))}>
                <th scope="row">
                  {planeName(test.plane, evaluation)}
                  <span className="quiet small">{transponderWords(test)}</span>
                </th>
                {columns.map((id) => {
                  const place = planePlace(id, test.plane);
                  const name = `${plainLabelOf(evaluation, id)}, ${planeName(test.plane, evaluation)}`;
                  return (
                    <td key={id}>
                      {wanted.has(symptomKey(place)) ? <PlaneMark place={place} name={name} /> : "–"}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
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

/** Receivers and sockets that planes are told apart at, receivers first. */
export function planeColumns(symptoms: readonly Symptom[]): readonly string[] {
  const at = (role: Symptom["role"]) =>
    symptoms.filter((s) => s.plane !== undefined && s.role === role).map((s) => s.part);
  return [...new Set([...at("receiver"), ...at("outlet")])];
}

/** "try 11 778 MHz, horizontal" */
export function transponderWords({ plane, carrier }: PlaneTest): string {
  return `try ${megahertz(Math.round(carrier.airMHz))} MHz, ${plane.polarisation === "H" ? "horizontal" : "vertical"}`;
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
      className="seen-mark"
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

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Arrow keys go from box to box. */
function moveFocus(event: KeyboardEvent<HTMLTableElement>): void {
  const step = STEPS[event.key];
  const cell = event.target instanceof HTMLElement ? event.target.closest("td") : null;
  const row = cell?.parentElement;
  if (!step || !cell || !(row instanceof HTMLTableRowElement)) return;
  const to = event.currentTarget.rows[row.rowIndex + step[0]]?.cells[cell.cellIndex + step[1]];
  to?.querySelector("button")?.focus();
  event.preventDefault();
}
