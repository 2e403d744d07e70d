import type { ReactNode } from "react";
import type { Question } from "./question.ts";
import { showOrigin } from "./questionState.ts";

/** A figure that, when pressed, shows how it came about. `question` is only worked out then. */
export function LevelFigure({
  about,
  question,
  children,
}: {
  /** What the figure is, for a screen reader: "Level of C22". */
  readonly about: string;
  readonly question: () => Question | null;
  readonly children: ReactNode;
}) {
  return (
    <button
      type="button"
      className="figure-press number"
      title="How this came about"
      onClick={(event) => {
        event.stopPropagation();
        const asked = question();
        if (asked) showOrigin(asked);
      }}
    >
      <span className="unseen">{about}: </span>
      {children}
      <span className="unseen">, how it came about</span>
    </button>
  );
}
