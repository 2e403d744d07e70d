import type { ReactNode } from "react";

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
    <div className={className} role="group" aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}
