import { Minus, Plus } from "lucide-react";
import { notTaken, useDraft } from "../useDraft.ts";
import type { FieldProps } from "./field.ts";
import { readNumeral, stepOf, stepped, writeNumeral } from "./numeral.ts";

/** A number with its unit. What is typed is tried at once; while it cannot be taken, the last good value counts. */
export function NumberField({
  id,
  meta,
  value,
  onTry,
  onTakeBack,
  onProblem,
  describedBy,
  inTable,
}: FieldProps & { readonly onProblem: (problem: string | null) => void }) {
  const good = typeof value === "number" ? value : 0;
  const { input, put, leave } = useDraft({
    value: writeNumeral(good),
    onTry: (text, visit) => {
      const typed = readNumeral(text);
      return typed === null ? `“${text}” is not a number.` : onTry(typed, visit);
    },
    onTakeBack,
    onProblem: (problem) =>
      onProblem(problem === null ? null : notTaken(problem, `${writeNumeral(good)}${unitOf(meta)}`)),
  });
  const next = (times: number) =>
    stepped({ value: good, step: stepOf(meta), times, min: meta.min, max: meta.max });
  const press = (times: number) => {
    leave();
    onProblem(onTry(next(times)));
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
        aria-describedby={describedBy}
        {...input}
        onKeyDown={(event) => {
          const times = STEPS[event.key];
          if (times === undefined) return input.onKeyDown(event);
          event.preventDefault();
          put(writeNumeral(next(times)));
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
            onClick={() => press(-1)}
          >
            <Minus size={16} aria-hidden />
          </button>
          <button
            type="button"
            className="button icon"
            tabIndex={-1}
            aria-label={`More ${meta.label}`}
            onClick={() => press(1)}
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
