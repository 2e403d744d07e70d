import { Gauge } from "lucide-react";
import { useState } from "react";
import type { Design } from "../../../design/design.ts";
import type { Fault } from "../../../remedies/faults/fault.ts";
import type { Reading } from "../../../remedies/faults/reading.ts";
import { faultSentence } from "../../../sentences/faults/faultWords.ts";
import { measurementSentence, readingWords } from "../../../sentences/faults/readingWords.ts";
import { useApp } from "../../../store/app.ts";
import { useFinder } from "../../../store/faultFinder.ts";
import type { PlainMeasurement } from "../../../store/searchDiagnosis.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import styles from "./Faults.module.css";

type Props = { readonly measurement: PlainMeasurement; readonly byId: ReadonlyMap<string, Fault> };

/** The measurement that splits what is left best: where, what each reading would mean, and a place for the reading. */
export function NextMeasurement({ measurement, byId }: Props) {
  const { at, asked, planned, onRoof, outcomes } = measurement;
  const design = useApp((s) => s.preview?.document.evaluation.design ?? s.design);
  const take = (reading: Reading) => useFinder.getState().take({ at, reading, asked });
  return (
    <section className={styles.measurement} aria-label="Best next measurement">
      <h3>
        <Gauge size={16} aria-hidden /> Best next measurement
      </h3>
      <p>
        <strong>{measurementSentence(design, measurement)}</strong>{" "}
        <button type="button" className="link" onClick={() => selectFromPane({ parts: [at[0]] })}>
          Show where
        </button>
      </p>
      {onRoof ? (
        <p className="caution-line">
          This one is on the roof: work at height is for whoever is trained and equipped for it.
        </p>
      ) : null}
      <p className="small">
        As planned it would be: {planned ? readingWords(planned) : "nothing"}. What do you read?
      </p>
      <ul className={styles.outcomes}>
        {outcomes.map((outcome) => (
          <li key={outcome.faults.join()}>
            <button type="button" className={styles.outcome} onClick={() => take(outcome.reading)}>
              <strong>{readingWords(outcome.reading)}</strong>
              <span className="small">{meaning(design, outcome.faults, byId)}</span>
            </button>
          </li>
        ))}
      </ul>
      <p className="small">Anything else: it is none of these faults, or more than one at once.</p>
      {measurement.quantity === "volts" ? <VoltsField onTake={take} /> : null}
    </section>
  );
}

/** "then: The plug is off … (and 3 more)" */
function meaning(design: Design, ids: readonly string[], byId: Props["byId"]): string {
  const [first] = ids.flatMap((id) => byId.get(id) ?? []);
  const rest = ids.length - 1;
  return `then: ${first ? faultSentence(design, first) : ""}${rest > 0 ? ` And ${rest} more.` : ""}`;
}

/** A voltage may lie between what any single fault gives. */
function VoltsField({ onTake }: { readonly onTake: (reading: Reading) => void }) {
  const [text, setText] = useState("");
  const volts = Number(text.replace(",", "."));
  const isGood = text.trim() !== "" && Number.isFinite(volts) && volts >= 0 && volts <= 60;
  return (
    <form
      className={styles.volts}
      onSubmit={(event) => {
        event.preventDefault();
        if (!isGood) return;
        const reading: Reading = { quantity: "volts", volts: Math.round(volts * 10) / 10 };
        onTake(reading);
      }}
    >
      <label>
        Or exactly{" "}
        <input
          className="field-input"
          inputMode="decimal"
          value={text}
          aria-invalid={text !== "" && !isGood}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <span>V</span>
      <button type="submit" className="button" disabled={!isGood}>
        Take it
      </button>
    </form>
  );
}
