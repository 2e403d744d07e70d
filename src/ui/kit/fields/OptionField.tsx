import { useId, useState } from "react";
import type { FieldMeta } from "../../../parts/fields.ts";
import { AnyField } from "./AnyField.tsx";
import type { FieldProps } from "./field.ts";
import "./fields.css";

type Props = {
  readonly meta: FieldMeta;
  readonly value: unknown;
  readonly onTry: FieldProps["onTry"];
  readonly onTakeBack: FieldProps["onTakeBack"];
};

/** An option with its label, help, the source of its typical value, and what is wrong with the last input. */
export function OptionField({ meta, value, onTry, onTakeBack }: Props) {
  const id = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const helpId = meta.help || meta.source ? `${id}-help` : undefined;
  const problemId = problem ? `${id}-problem` : undefined;
  const describedBy = [helpId, problemId].filter((x) => x !== undefined).join(" ") || undefined;
  return (
    <div className={meta.control === "switch" ? "option beside" : "option"}>
      <label className="option-label" htmlFor={id}>
        {meta.label}
      </label>
      <AnyField
        id={id}
        meta={meta}
        value={value}
        onTry={onTry}
        onTakeBack={onTakeBack}
        onProblem={setProblem}
        describedBy={describedBy}
      />
      {problem ? (
        <p className="field-problem" id={problemId} role="alert">
          {problem}
        </p>
      ) : null}
      {helpId ? (
        <p className="option-help" id={helpId}>
          {meta.help}
          {meta.source ? <span className="option-source"> Source: {meta.source}.</span> : null}
        </p>
      ) : null}
    </div>
  );
}
