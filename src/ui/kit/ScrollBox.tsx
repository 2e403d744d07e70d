import type { KeyboardEvent, ReactNode } from "react";

type Props = {
  /** What is scrolled, for a screen reader. */
  readonly label: string;
  readonly className: string;
  readonly children: ReactNode;
};

/** Figures that may be wider than their pane: with the focus, the arrow keys scroll them sideways. */
export function ScrollBox({ label, className, children }: Props) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for what is filled in, and this is only read.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: without the focus the keys could not scroll it.
    <div className={className} role="group" aria-label={label} tabIndex={0} onKeyDown={keepArrows}>
      {children}
    </div>
  );
}

/** What scrolls sideways by its arrow keys keeps them from a pane around it that steps by them. */
function keepArrows(event: KeyboardEvent<HTMLDivElement>): void {
  const { currentTarget: box, target, key } = event;
  const isWider = box.scrollWidth > box.clientWidth;
  if (target === box && isWider && (key === "ArrowLeft" || key === "ArrowRight")) event.stopPropagation();
}
