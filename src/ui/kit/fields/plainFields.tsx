import { Switch } from "radix-ui";
import { notTaken, useDraft } from "../useDraft.ts";
import type { FieldProps } from "./field.ts";

type Problem = { readonly onProblem: (problem: string | null) => void };

/** Choices stand side by side while they fit the narrowest pane, else in a list [characters]. */
const LINE_LENGTH = 36;

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
  const longest = Math.max(...choices.map((c) => c.label.length));
  if (!inTable && choices.length * longest <= LINE_LENGTH) {
    return (
      <fieldset id={id} className="segments" aria-label={meta.label} aria-describedby={describedBy}>
        {choices.map((choice) => (
          <label key={choice.value} className="segment">
            <input
              type="radio"
              className="unseen"
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

export function TextField(props: FieldProps & Problem) {
  const { id, meta, value, onTry, onTakeBack, onProblem, describedBy, inTable } = props;
  const good = String(value ?? "");
  const { input } = useDraft({
    value: good,
    onTry,
    onTakeBack,
    onProblem: (problem) => onProblem(problem === null ? null : notTaken(problem, `“${good}”`)),
  });
  return (
    <input
      id={id}
      className="field-input"
      aria-label={inTable ? meta.label : undefined}
      aria-describedby={describedBy}
      {...input}
    />
  );
}
