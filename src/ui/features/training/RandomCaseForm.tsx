import { Dices, Play } from "lucide-react";
import { useState } from "react";
import { HIGHEST_SEED } from "../../../remedies/training/randomCase.ts";
import { useApp } from "../../../store/app.ts";
import { numeral } from "../../../words/numbers.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { freshSeed, openRandom, seedOf } from "./actions.ts";

/** A case from the open design: the same seed hides the same fault, for everybody who has the design. */
export function RandomCaseForm({ onDone }: { readonly onDone: () => void }) {
  const design = useApp((s) => s.design);
  const [text, setText] = useState(() => String(freshSeed()));
  const [problem, setProblem] = useState<string | null>(null);
  const seed = seedOf(text);
  const begin = async () => {
    if (seed === null) return;
    const trouble = await openRandom(design, seed);
    setProblem(trouble);
    if (trouble === null) onDone();
  };
  return (
    <form
      className="random-case"
      onSubmit={(event) => {
        event.preventDefault();
        void begin();
      }}
    >
      <h3>A random fault in “{design.title}”</h3>
      <p className="small">Made from the design that is open now. Its link opens the same case for others.</p>
      <div className="random-line">
        <label>
          Seed{" "}
          <input
            className="field-input"
            inputMode="numeric"
            value={text}
            aria-invalid={seed === null}
            onChange={(event) => setText(event.target.value)}
          />
        </label>
        <IconButton bordered icon={Dices} name="Another seed" onPress={() => setText(String(freshSeed()))} />
        <button type="submit" className="button main" disabled={seed === null}>
          <Play size={15} aria-hidden /> Begin
        </button>
      </div>
      {seed === null ? (
        <p className="field-problem" role="alert">
          A seed is a whole number from 0 to {numeral(HIGHEST_SEED)}.
        </p>
      ) : null}
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
    </form>
  );
}
