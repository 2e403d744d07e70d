/** Length and grade of a cable, changed at its place on the wire. Each visit is one step back. */
import { useId, useRef, useState } from "react";
import type { PartId } from "../../design/design.ts";
import { partById } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { describedOptions, optionMeaning } from "../../parts/meanings.ts";
import { useApp } from "../../store/app.ts";
import { changeOption } from "./optionEdits.ts";

let visits = 0;

export function CableForm({ part: id, onDone }: { readonly part: PartId; readonly onDone: () => void }) {
  const part = useApp((s) => partById(s.design, id));
  const kind = part && kindOf(part.kind);
  const visit = useRef(0);
  visit.current ||= ++visits;
  if (!part || !kind) return null;
  const length = optionMeaning(kind, "length");
  const grade = optionMeaning(kind, "grade");
  const set = (key: string, value: unknown) =>
    changeOption([id], key, value, { merge: `cable ${visit.current}`, lasts: true });
  return (
    <form
      className="offer-form"
      onSubmit={(event) => {
        event.preventDefault();
        onDone();
      }}
    >
      {length !== undefined && (
        <LengthField
          value={Number(part.options[length])}
          unit={describedOptions(kind).get(length)?.unit ?? ""}
          onTry={(value) => set(length, value)}
        />
      )}
      {grade !== undefined && (
        <GradeField
          value={String(part.options[grade])}
          choices={describedOptions(kind).get(grade)?.choices ?? []}
          onTry={(value) => set(grade, value)}
        />
      )}
      <button type="submit" className="button main">
        Done
      </button>
    </form>
  );
}

/** The arrow keys change it by one metre. */
function LengthField(props: {
  readonly value: number;
  readonly unit: string;
  readonly onTry: (value: number) => string | null;
}) {
  const id = useId();
  const [text, setText] = useState(`${props.value}`);
  const [problem, setProblem] = useState<string | null>(null);
  const attempt = (next: string) => {
    setText(next);
    const value = next.trim() === "" ? Number.NaN : Number(next.replace(",", "."));
    setProblem(Number.isFinite(value) ? props.onTry(value) : "A length is a number of metres.");
  };
  return (
    <>
      <label className="offer-title" htmlFor={id}>
        Length [{props.unit}]
      </label>
      <input
        id={id}
        className="field-input number"
        inputMode="decimal"
        autoComplete="off"
        role="spinbutton"
        aria-valuenow={props.value}
        aria-invalid={problem !== null}
        aria-describedby={problem ? `${id}-problem` : undefined}
        value={text}
        onChange={(event) => attempt(event.target.value)}
        onKeyDown={(event) => {
          const step = { ArrowUp: 1, ArrowDown: -1 }[event.key];
          if (step === undefined) return;
          event.preventDefault();
          attempt(`${Math.max(1, props.value + step)}`);
        }}
      />
      {problem && (
        <p className="field-problem" role="alert" id={`${id}-problem`}>
          {problem}
        </p>
      )}
    </>
  );
}

function GradeField(props: {
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly onTry: (value: string) => void;
}) {
  const id = useId();
  return (
    <>
      <label className="offer-title" htmlFor={id}>
        Grade
      </label>
      <select
        id={id}
        className="field-input"
        value={props.value}
        onChange={(event) => props.onTry(event.target.value)}
      >
        {props.choices.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </>
  );
}
