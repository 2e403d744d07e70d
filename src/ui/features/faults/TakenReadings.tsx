import { X } from "lucide-react";
import { askedKey } from "../../../remedies/faults/requestChoice.ts";
import { measurementSentence, readingWords } from "../../../sentences/faults/readingWords.ts";
import { useApp } from "../../../store/app.ts";
import { useFinder } from "../../../store/faultFinder.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import styles from "./Faults.module.css";

/** What was read so far; each can be removed. */
export function TakenReadings() {
  const taken = useFinder((s) => s.taken);
  const design = useApp((s) => s.preview?.document.evaluation.design ?? s.design);
  if (taken.length === 0) return null;
  return (
    <section className={styles.group}>
      <h3>Read so far</h3>
      <ul className={styles.taken}>
        {taken.map(({ at, reading, asked = null }, i) => (
          <li key={`${at.join("/")} ${reading.quantity} ${askedKey(asked)}`}>
            <span>
              {measurementSentence(design, { at, quantity: reading.quantity, asked })}{" "}
              <strong>{readingWords(reading)}</strong>
            </span>
            <IconButton
              icon={X}
              name={`Remove reading: ${readingWords(reading)}`}
              onPress={() => useFinder.getState().takeBack(i)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
