import { useState } from "react";
import type { Part } from "../../design/design.ts";
import { rename } from "../../design/edits/parts.ts";
import { useApp } from "../../store/app.ts";

/** The part's own name; an empty or overlong one is refused at the field, and the old name stays. */
export function LabelField({ part }: { readonly part: Part }) {
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <div>
      <input
        className="field-input label-input"
        aria-label="Name of this part"
        aria-invalid={problem !== null}
        aria-describedby={problem ? "label-problem" : undefined}
        value={draft ?? part.label}
        onChange={(event) => {
          setDraft(event.target.value);
          const { design, change } = useApp.getState();
          const edit = rename(design, part.id, event.target.value);
          if (edit.ok) change(edit, { merge: `label ${part.id}` });
          setProblem(edit.ok ? null : edit.reason);
        }}
        onBlur={() => setDraft(null)}
      />
      {problem ? (
        <p id="label-problem" className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
    </div>
  );
}
