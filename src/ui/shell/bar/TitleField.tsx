import { useId } from "react";
import { retitle } from "../../../design/edits/parts.ts";
import { useApp } from "../../../store/app.ts";
import { notTaken, useDraft } from "../../kit/useDraft.ts";

/** A title changes the list of designs and the page's name with it: it waits for a pause [ms]. */
const PAUSE_MS = 700;

/** Title of the open design. `opened`: which opening it belongs to, so that no title goes to the next design. */
export function TitleField({ opened }: { readonly opened: number }) {
  const id = useId();
  const title = useApp((s) => s.design.title);
  const { problem, input } = useDraft({
    value: title,
    pauseMs: PAUSE_MS,
    onTry: (text, visit) => {
      const app = useApp.getState();
      if (app.opened !== opened) return null;
      const edit = retitle(app.design, text);
      if (!edit.ok) return edit.reason;
      app.change(edit, { merge: visit, lasts: true });
      return null;
    },
    onTakeBack: (visit) => useApp.getState().takeBack(visit),
  });
  return (
    <span className="title-field">
      <input
        className="title-input"
        aria-label="Title of the design"
        aria-describedby={problem ? id : undefined}
        {...input}
        onKeyDown={(event) => {
          input.onKeyDown(event);
          if (event.key === "Enter") event.currentTarget.blur();
        }}
      />
      {problem ? (
        <span id={id} className="field-problem" role="alert">
          {notTaken(problem, `“${title}”`)}
        </span>
      ) : null}
    </span>
  );
}
