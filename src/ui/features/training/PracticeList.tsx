import { Play } from "lucide-react";
import { useEffect } from "react";
import type { Level, TrainingCase } from "../../../remedies/training/case.ts";
import { CASES } from "../../../remedies/training/cases.ts";
import { isSolved } from "../../../remedies/training/progress.ts";
import { guidedWords } from "../../../sentences/training/caseWords.ts";
import { progressOf, useTraining } from "../../../store/training.ts";
import { openGuided } from "./actions.ts";
import { LEVEL_WORDS, progressWords } from "./progressWords.ts";
import { RandomCaseForm } from "./RandomCaseForm.tsx";
import "./training.css";

const LEVELS: readonly Level[] = [1, 2, 3, 4, 5];

/** The guided cases from easy to hard, with how far each has come; and a random one. */
export function PracticeList({ onDone }: { readonly onDone: () => void }) {
  const progress = useTraining((s) => s.progress);
  const trouble = useTraining((s) => s.trouble);
  useEffect(() => void useTraining.getState().load(), []);
  const solved = CASES.filter((c) => isSolved(progressOf(progress, c.id))).length;
  return (
    <div className="practice-list">
      <p>
        Each case is an installation with one fault in it that you cannot see. Connect the meter, measure,
        then name the part and the fault. Your own design stays as it is.
      </p>
      <p className="practice-sum">
        <strong>
          {solved} of {CASES.length} solved
        </strong>
        <progress value={solved} max={CASES.length} aria-label="Cases solved" />
      </p>
      {trouble ? <p className="caution-line">{trouble}</p> : null}
      <RandomCaseForm onDone={onDone} />
      {LEVELS.map((level) => (
        <section key={level}>
          <h3>
            Level {level}: {LEVEL_WORDS[level]}
          </h3>
          <ul className="case-list">
            {CASES.filter((c) => c.level === level).map((chosen) => (
              <CaseRow key={chosen.id} chosen={chosen} />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

function CaseRow({ chosen }: { readonly chosen: TrainingCase }) {
  const progress = useTraining((s) => progressOf(s.progress, chosen.id));
  const { tone, words } = progressWords(progress);
  const { title, story } = guidedWords(chosen);
  const verb = tone === null ? "Begin" : "Open";
  return (
    <li className="case-row">
      <div>
        <strong>{title}</strong>
        <p className="quiet small">{story}</p>
      </div>
      <span className={tone ? `badge ${tone}` : "quiet small"}>{words}</span>
      <button
        type="button"
        className="button"
        aria-label={`${verb}: ${title}`}
        onClick={() => void openGuided(chosen)}
      >
        <Play size={15} aria-hidden /> {verb}
      </button>
    </li>
  );
}
