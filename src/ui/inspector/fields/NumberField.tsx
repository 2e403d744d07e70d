import { Minus, Plus } from "lucide-react";
import { useState } from "react";
import type { FieldProps } from "./field.ts";
import { readNumeral, stepOf, stepped, writeNumeral } from "./numeral.ts";

/**
 * A number with its unit. What is typed is tried at once; while it can't be taken, the design keeps the last
 * good value, and the field returns to it when left.
 */
export function NumberField({
  id,
  meta,
  value,
  onTry,
  onProblem,
  describedBy,
  inTable,
}: FieldProps & { readonly onProblem: (problem: string | null) => void }) {
  const good = typeof value === "number" ? value : 0;
  const [draft, setDraft] = useState<string | null>(null);
  const [isWrong, setWrong] = useState(false);
  const step = stepOf(meta);

  const attempt = (text: string) => {
    setDraft(text);
    const typed = readNumeral(text);
    const problem = typed === null ? `“${text}” is not a number.` : onTry(typed);
    setWrong(problem !== null);
    onProblem(
      problem === null ? null : `${withoutStop(problem)}. Kept ${writeNumeral(good)}${unitOf(meta)}.`,
    );
  };
  const go = (times: number) => {
    const next = stepped({ value: good, step, times, min: meta.min, max: meta.max });
    setDraft(null);
    setWrong(false);
    onProblem(onTry(next));
  };

  return (
    <span className={inTable ? "number-field in-table" : "number-field"}>
      <input
        id={id}
        className="field-input number"
        inputMode="decimal"
        autoComplete="off"
        role="spinbutton"
        aria-label={inTable ? meta.label : undefined}
        aria-valuenow={good}
        aria-valuemin={meta.min}
        aria-valuemax={meta.max}
        aria-valuetext={`${writeNumeral(good)}${unitOf(meta)}`}
        aria-invalid={isWrong}
        aria-describedby={describedBy}
        value={draft ?? writeNumeral(good)}
        onChange={(event) => attempt(event.target.value)}
        onBlur={() => {
          setDraft(null);
          setWrong(false);
        }}
        onKeyDown={(event) => {
          const times = STEPS[event.key];
          if (times === undefined) return;
          event.preventDefault();
          go(times);
        }}
      />
      {meta.unit && !inTable ? <span className="unit">{meta.unit}</span> : null}
      {inTable ? null : (
        // The keyboard has the arrow keys for this; two more stops per field would only be in the way.
        <span className="steppers">
          <button
            type="button"
            className="button icon"
            tabIndex={-1}
            aria-label={`Less ${meta.label}`}
            onClick={() => go(-1)}
          >
            <Minus size={16} aria-hidden />
          </button>
          <button
            type="button"
            className="button icon"
            tabIndex={-1}
            aria-label={`More ${meta.label}`}
            onClick={() => go(1)}
          >
            <Plus size={16} aria-hidden />
          </button>
        </span>
      )}
    </span>
  );
}

const STEPS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

function unitOf(meta: FieldProps["meta"]): string {
  return meta.unit ? ` ${meta.unit}` : "";
}

function withoutStop(sentence: string): string {
  return sentence.replace(/[.\s]+$/, "");
}
