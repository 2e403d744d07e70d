import { LoaderCircle, Printer, Ruler } from "lucide-react";
import { useEffect } from "react";
import { partById } from "../../../design/lookup.ts";
import { ESTIMATE_NOTICE } from "../../../parts/cautions.ts";
import { useApp } from "../../../store/app.ts";
import { useConditions } from "../../../store/conditions.ts";
import type { JudgedConditions as Told } from "../../../store/searchConditions.ts";
import { openDialog } from "../../kit/panes.ts";
import { printPage } from "../../kit/printPage.ts";
import styles from "./Conditions.module.css";
import { ConditionsTable } from "./ConditionsTable.tsx";

/** One design in rain, in a lift, with masts on and off, with all receivers on and one alone. */
export function ConditionsForm() {
  const design = useApp((s) => s.design);
  const { status, document, progress, problem } = useConditions();
  // Judged while somebody looks, and again after an undo that happens meanwhile.
  useEffect(() => {
    if (design.parts.length > 0) useConditions.getState().start();
  }, [design]);
  useEffect(() => () => useConditions.getState().stop(), []);
  const table = document === design ? progress?.table : null;
  return (
    <div className={styles.conditions}>
      <div role="status">
        {table ? (
          <p className={styles.headline}>{table.headline}</p>
        ) : status === "failed" ? (
          <p className="field-problem">{problem}</p>
        ) : (
          <p>
            <LoaderCircle className="turning" size={15} aria-hidden /> Calculating
            {progress ? `: ${progress.done} of ${progress.of} conditions` : ""}…
          </p>
        )}
      </div>
      {table ? <Judged table={table} /> : null}
      <p className="quiet small">
        Conditions are tried one at a time, and the design stays as it is. The figure is what the tightest
        carrier has to spare, in dB; the worst of a row is bold.
      </p>
    </div>
  );
}

function Judged({ table }: { readonly table: Told }) {
  const design = useApp((s) => s.design);
  const labelOf = (part: string) => partById(design, part)?.label || part;
  return (
    <>
      <ConditionsTable table={table} labelOf={labelOf} />
      <Assumed table={table} />
      <div className={styles.tools}>
        <button
          type="button"
          className="button"
          onClick={() =>
            printPage(() => (
              <div className="paper">
                <div className={styles.conditions}>
                  <h1>{design.title}: conditions</h1>
                  <p>{table.headline}</p>
                  <ConditionsTable table={table} labelOf={labelOf} isOnPaper />
                  <Assumed table={table} />
                  <p className="small">{ESTIMATE_NOTICE}</p>
                </div>
              </div>
            ))
          }
        >
          <Printer size={16} aria-hidden /> Print this table
        </button>
        <button type="button" className="button" onClick={() => openDialog("settings")}>
          <Ruler size={16} aria-hidden /> Choose conditions…
        </button>
      </div>
    </>
  );
}

function Assumed({ table }: { readonly table: Told }) {
  return (
    <dl className={`${styles.assumed} small`}>
      {table.columns.map(({ column, name, sentence }) => (
        <div key={column}>
          <dt>{name}</dt>
          <dd>{sentence}</dd>
        </div>
      ))}
    </dl>
  );
}
