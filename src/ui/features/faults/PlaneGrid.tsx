import type { ComponentProps, ReactNode } from "react";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import { type PlaneTest, planeTests } from "../../../remedies/faults/planeTests.ts";
import {
  planePlace,
  type Symptom,
  type SymptomPlace,
  symptomKey,
} from "../../../remedies/faults/symptoms.ts";
import { planeName } from "../../../sentences/faults/reasonWords.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { megahertz } from "../../kit/format.ts";

type Props = Pick<ComponentProps<"table">, "className" | "onKeyDown"> & {
  readonly evaluation: Evaluation;
  readonly columns: readonly string[];
  /** What stands where a plane and a place meet. */
  readonly cell: (place: SymptomPlace, test: PlaneTest) => ReactNode;
};

/** Planes, each with a transponder to try, by the places they are told apart at. */
export function PlaneGrid({ evaluation, columns, cell, ...table }: Props) {
  return (
    <table {...table}>
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
        {planeTests(evaluation).map((test) => (
          <tr key={symptomKey(planePlace("", test.plane))}>
            <th scope="row">
              {planeName(test.plane, evaluation)}
              <span className="quiet small">{transponderWords(test)}</span>
            </th>
            {columns.map((id) => (
              <td key={id}>{cell(planePlace(id, test.plane), test)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Receivers and sockets that planes are told apart at, receivers first. */
export function planeColumns(symptoms: readonly Symptom[]): readonly string[] {
  const at = (role: Symptom["role"]) =>
    symptoms.filter((s) => s.plane !== undefined && s.role === role).map((s) => s.part);
  return [...new Set([...at("receiver"), ...at("outlet")])];
}

/** "try 11 778 MHz, horizontal" */
function transponderWords({ plane, carrier }: PlaneTest): string {
  return `try ${megahertz(Math.round(carrier.airMHz))} MHz, ${plane.polarisation === "H" ? "horizontal" : "vertical"}`;
}
