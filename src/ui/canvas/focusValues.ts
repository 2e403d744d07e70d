/** From the canvas to the values of what is selected there: the pane “Part” comes into view, its first value has the focus. */
import { afterLayout } from "../kit/afterLayout.ts";
import { showPane } from "../kit/panes.ts";

/** Of a choice by buttons, the one that is chosen; a part without values has its name. */
const FIELDS = ":is(input:not([type=radio]), input:checked, select):not(:disabled)";

export function focusValues(): void {
  showPane("part");
  afterLayout(() => {
    const pane = document.querySelector(".inspector");
    const field =
      pane?.querySelector<HTMLElement>(`.options ${FIELDS}`) ?? pane?.querySelector<HTMLElement>(FIELDS);
    field?.focus();
  });
}
