import { Switch } from "radix-ui";
import { useState } from "react";
import type { FieldProps } from "./field.ts";

type Problem = { readonly onProblem: (problem: string | null) => void };

/** A few choices stand side by side, many in a list. */
const SIDE_BY_SIDE = 3;
const SHORT_WORDS = 26;

export function ChoiceField({
  id,
  meta,
  value,
  onTry,
  onProblem,
  describedBy,
  inTable,
}: FieldProps & Problem) {
  const choices = meta.choices ?? [];
  const take = (next: string) => onProblem(onTry(next));
  const words = choices.reduce((sum, c) => sum + c.label.length, 0);
  if (!inTable && choices.length <= SIDE_BY_SIDE && words <= SHORT_WORDS) {
    return (
      <fieldset className="segments" aria-label={meta.label} aria-describedby={describedBy}>
        {choices.map((choice, i) => (
          <label key={choice.value} className="segment">
            <input
              type="radio"
              className="unseen"
              id={i === 0 ? id : undefined}
              name={id}
              value={choice.value}
              checked={choice.value === value}
              onChange={() => take(choice.value)}
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </fieldset>
    );
  }
  return (
    <select
      id={id}
      className="field-input"
      aria-label={inTable ? meta.label : undefined}
      aria-describedby={describedBy}
      value={String(value)}
      onChange={(event) => take(event.target.value)}
    >
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  );
}

export function SwitchField({
  id,
  meta,
  value,
  onTry,
  onProblem,
  describedBy,
  inTable,
}: FieldProps & Problem) {
  return (
    <Switch.Root
      id={id}
      className="switch"
      aria-label={inTable ? meta.label : undefined}
      aria-describedby={describedBy}
      checked={value === true}
      onCheckedChange={(next) => onProblem(onTry(next))}
    >
      <Switch.Thumb className="switch-thumb" />
    </Switch.Root>
  );
}

export function TextField({ id, meta, value, onTry, onProblem, describedBy, inTable }: FieldProps & Problem) {
  const [draft, setDraft] = useState<string | null>(null);
  const [isWrong, setWrong] = useState(false);
  return (
    <input
      id={id}
      className="field-input"
      aria-label={inTable ? meta.label : undefined}
      aria-invalid={isWrong}
      aria-describedby={describedBy}
      value={draft ?? String(value ?? "")}
      onChange={(event) => {
        setDraft(event.target.value);
        const problem = onTry(event.target.value);
        setWrong(problem !== null);
        onProblem(problem);
      }}
      onBlur={() => {
        setDraft(null);
        setWrong(false);
      }}
    />
  );
}
