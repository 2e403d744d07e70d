import { Check, CircleSlash2, type LucideIcon, X } from "lucide-react";
import { type Symptom, symptomKey } from "../../../remedies/faults/symptoms.ts";
import { symptomName } from "../../../sentences/faults/reasonWords.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { type Seen, useFinder } from "../../../store/faultFinder.ts";
import styles from "./Faults.module.css";
import { useDocumentState } from "./useDocumentState.ts";

type Props = { readonly title: string; readonly symptoms: readonly Symptom[] };

/** One row for each service at each place, to be marked as it is seen; what is not marked was not looked at. */
export function SeenTable({ title, symptoms }: Props) {
  const { evaluation } = useDocumentState();
  return (
    <fieldset className={styles.seen}>
      <legend>{title}</legend>
      {symptoms.map((symptom, i) => {
        const label = plainLabelOf(evaluation, symptom.part);
        const name = symptomName(symptom, evaluation);
        const isSame = symptoms[i - 1]?.part === symptom.part;
        return (
          <div key={symptomKey(symptom)} className={styles.seenRow} data-first={!isSame}>
            <span className={isSame ? "unseen" : styles.seenPlace}>{label}</span>
            <span className={styles.seenService}>{upperFirst(name)}</span>
            <Marks symptom={symptom} name={`${label}, ${name}`} />
          </div>
        );
      })}
    </fieldset>
  );
}

const CHOICES: readonly {
  readonly value: Seen;
  readonly name: string;
  readonly tone: string;
  readonly icon: LucideIcon;
}[] = [
  { value: true, name: "works", tone: "ok", icon: Check },
  { value: "partial", name: "works in part", tone: "warning", icon: CircleSlash2 },
  { value: false, name: "fails", tone: "error", icon: X },
];

function Marks({ symptom, name }: { readonly symptom: Symptom; readonly name: string }) {
  const works = useFinder((s) => s.seen.get(symptomKey(symptom))?.works);
  return (
    <span className={styles.marks}>
      {CHOICES.map(({ value, name: state, tone, icon: Icon }) => (
        <button
          key={state}
          type="button"
          className={styles.mark}
          data-tone={tone}
          aria-pressed={works === value}
          aria-label={`${name} ${state}`}
          title={state}
          onClick={() => useFinder.getState().see(symptom, works === value ? null : value)}
        >
          <Icon size={16} aria-hidden />
        </button>
      ))}
    </span>
  );
}

function upperFirst(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
