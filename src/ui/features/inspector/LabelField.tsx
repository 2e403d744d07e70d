import { useId } from "react";
import type { Part } from "../../../design/design.ts";
import { rename } from "../../../design/edits/parts.ts";
import { useApp } from "../../../store/app.ts";
import { notTaken, useDraft } from "../../kit/useDraft.ts";

/** The part's own name; an empty or overlong one is refused at the field, and the old name stays. */
export function LabelField({ part }: { readonly part: Part }) {
  const id = useId();
  const { problem, input } = useDraft({
    value: part.label,
    onTry: (text, visit) => {
      const { design, change } = useApp.getState();
      const edit = rename(design, part.id, text);
      if (!edit.ok) return edit.reason;
      change(edit, { merge: visit, lasts: true });
      return null;
    },
    onTakeBack: (visit) => useApp.getState().takeBack(visit),
  });
  return (
    <div>
      <input
        className="field-input label-input"
        aria-label="Name of this part"
        aria-describedby={problem ? id : undefined}
        {...input}
      />
      {problem ? (
        <p id={id} className="field-problem" role="alert">
          {notTaken(problem, `“${part.label}”`)}
        </p>
      ) : null}
    </div>
  );
}
