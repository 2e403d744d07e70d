/** Length and grade of a cable, changed at its place on the wire as one step, which Escape takes back. */

import type { PartId } from "../../design/design.ts";
import { partById } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { describedOptions, optionMeaning } from "../../parts/meanings.ts";
import { useApp } from "../../store/app.ts";
import { PartOptionField } from "./PartOptionField.tsx";

type Props = {
  readonly part: PartId;
  /** Key of the step. */
  readonly step: string;
  readonly onDone: () => void;
};

export function CableForm({ part: id, step, onDone }: Props) {
  const part = useApp((s) => partById(s.design, id));
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return null;
  const keys = [optionMeaning(kind, "length"), optionMeaning(kind, "grade")];
  return (
    <form
      className="offer-form"
      onSubmit={(event) => {
        event.preventDefault();
        onDone();
      }}
    >
      {keys.map((key) => {
        const meta = key === undefined ? undefined : describedOptions(kind).get(key);
        if (key === undefined || !meta) return null;
        // Here the arrow keys go by whole metres: a run is measured, not trimmed.
        const { help: _, source: __, ...plain } = meta;
        return (
          <PartOptionField
            key={key}
            part={id}
            option={key}
            meta={meta.means === "length" ? { ...plain, step: 1 } : plain}
            value={part.options[key]}
            step={step}
          />
        );
      })}
      <button type="submit" className="button main">
        Done
      </button>
    </form>
  );
}
