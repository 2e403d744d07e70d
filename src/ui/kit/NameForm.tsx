import { type ReactNode, useId, useState } from "react";
import { LIMITS } from "../../design/limits.ts";
import "./list.css";

type Props = {
  readonly label: string;
  readonly isUnseen?: boolean;
  /** The button that had the focus has just turned into this field. */
  readonly hasFocus?: boolean;
  readonly start: string;
  readonly button: ReactNode;
  readonly onName: (name: string) => void;
  readonly onGiveUp?: () => void;
};

/** One field for a name and its button. */
export function NameForm({ label, isUnseen, hasFocus, start, button, onName, onGiveUp }: Props) {
  const id = useId();
  const [draft, setDraft] = useState(start);
  return (
    <form
      className="name-form"
      // Escape gives up the renaming, not the whole dialog.
      data-takes-escape={onGiveUp ? true : undefined}
      onSubmit={(event) => {
        event.preventDefault();
        onName(draft);
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") onGiveUp?.();
      }}
    >
      <label htmlFor={id} className={isUnseen ? "unseen" : undefined}>
        {label}
      </label>
      <input
        id={id}
        className="field-input"
        value={draft}
        maxLength={LIMITS.variantNameLength}
        // biome-ignore lint/a11y/noAutofocus: see `hasFocus`.
        autoFocus={hasFocus ?? false}
        onChange={(event) => setDraft(event.target.value)}
      />
      <button type="submit" className="button">
        {button}
      </button>
    </form>
  );
}
