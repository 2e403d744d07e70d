/** A part's name, changed where the part stands. Enter takes it, Escape leaves it as it was. */
import { useId, useState } from "react";
import type { PartId } from "../../design/design.ts";
import { rename } from "../../design/edits/parts.ts";
import { partById } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";

export function RenameForm({ part, onDone }: { readonly part: PartId; readonly onDone: () => void }) {
  const id = useId();
  const before = partById(useApp.getState().design, part)?.label ?? "";
  const [text, setText] = useState(before);
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <form
      className="offer-form"
      onSubmit={(event) => {
        event.preventDefault();
        const { design, change } = useApp.getState();
        const edit = rename(design, part, text);
        if (!edit.ok) return setProblem(edit.reason);
        onDone();
        change(edit);
      }}
    >
      <label className="offer-title" htmlFor={id}>
        Name
      </label>
      <input
        id={id}
        className="field-input"
        value={text}
        autoComplete="off"
        aria-invalid={problem !== null}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onChange={(event) => setText(event.target.value)}
      />
      {problem && (
        <p className="field-problem" role="alert" id={`${id}-problem`}>
          {problem}
        </p>
      )}
      <button type="submit" className="button main">
        Rename
      </button>
    </form>
  );
}
