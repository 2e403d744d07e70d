import type { Evaluation } from "../../../evaluate/evaluation.ts";
import { type Symptom, symptomKey } from "../../../remedies/faults/symptoms.ts";
import { useFinder } from "../../../store/faultFinder.ts";
import styles from "./Faults.module.css";
import { PlaneGrid, planeColumns } from "./PlaneGrid.tsx";

/** So many places stand beside each other on a sheet of A4. */
const MOST_COLUMNS = 6;

type Props = { readonly evaluation: Evaluation; readonly symptoms: readonly Symptom[] };

/** The table of planes on paper: boxes to tick on site, with the marks that are set already. */
export function PaperPlanes({ evaluation, symptoms }: Props) {
  const columns = planeColumns(symptoms);
  const sheets = Array.from({ length: Math.ceil(columns.length / MOST_COLUMNS) }, (_, i) =>
    columns.slice(i * MOST_COLUMNS, (i + 1) * MOST_COLUMNS),
  );
  const wanted = new Set(symptoms.map(symptomKey));
  const { seen } = useFinder.getState();
  const mark = (key: string) => {
    const works = seen.get(key)?.works;
    if (!wanted.has(key)) return "–";
    return works === undefined ? "☐" : works === true ? "✓" : "✗";
  };
  return (
    <div className="paper">
      <h1>{evaluation.design.title}</h1>
      <p>Satellite planes: tune each transponder at each place. ✓ works, ✗ fails, ☐ not tried.</p>
      {sheets.map((places) => (
        <div key={places.join()} className={`paper-item ${styles.sheet}`}>
          <PlaneGrid
            isOnPaper
            evaluation={evaluation}
            columns={places}
            cell={(place) => mark(symptomKey(place))}
          />
        </div>
      ))}
    </div>
  );
}
