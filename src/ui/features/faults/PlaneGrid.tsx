import type { ReactNode } from "react";
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
import { polarisationName } from "../../../sentences/planes.ts";
import { megahertz } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";
import styles from "./Faults.module.css";

type Props = {
  readonly evaluation: Evaluation;
  readonly columns: readonly string[];
  readonly isOnPaper?: boolean;
  /** What stands where a plane and a place meet. */
  readonly cell: (place: SymptomPlace, test: PlaneTest) => ReactNode;
};

/** On paper the planes take so much of the width [%], and the places share the rest. */
const NAME_SHARE = 24;

/** Planes, each with a transponder to try, by the places they are told apart at. */
export function PlaneGrid({ evaluation, columns, isOnPaper = false, cell }: Props) {
  return (
    <Table
      label="Satellite planes"
      isGrid
      isOnPaper={isOnPaper}
      rows={planeTests(evaluation)}
      keyOf={({ plane }) => symptomKey(planePlace("", plane))}
      columns={[
        {
          head: "Plane and transponder",
          share: isOnPaper ? NAME_SHARE : undefined,
          cell: (test) => (
            <>
              {planeName(test.plane, evaluation)}
              <span className={`quiet small ${styles.transponder}`}>{transponderWords(test)}</span>
            </>
          ),
        },
        ...columns.map((id) => ({
          key: id,
          head: plainLabelOf(evaluation, id),
          share: isOnPaper ? (100 - NAME_SHARE) / columns.length : undefined,
          cell: (test: PlaneTest) => cell(planePlace(id, test.plane), test),
        })),
      ]}
    />
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
  return `try ${megahertz(Math.round(carrier.airMHz))} MHz, ${polarisationName(plane)}`;
}
