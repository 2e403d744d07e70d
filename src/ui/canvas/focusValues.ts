/** From the canvas to the values of what is selected there: the pane “Part” comes into view, its first value has the focus. */
import { afterLayout } from "../kit/afterLayout.ts";
import { showPane } from "../kit/panes.ts";

/** Of a choice by buttons, the one that is chosen. */
const FIELDS = ":is(input:not([type=radio]), input:checked, select):not(:disabled)";
/** So often it is looked for, two frames apart: a pane that was folded is drawn first. */
const MOST_LOOKS = 20;

export function focusValues(): void {
  showPane("part");
  lookFor(MOST_LOOKS);
}

function lookFor(looks: number): void {
  afterLayout(() => {
    const pane = document.querySelector(".inspector");
    // A part without values has its name.
    const field =
      pane?.querySelector<HTMLElement>(`.options ${FIELDS}`) ?? pane?.querySelector<HTMLElement>(FIELDS);
    if (field) field.focus();
    else if (looks > 1) lookFor(looks - 1);
  });
}
