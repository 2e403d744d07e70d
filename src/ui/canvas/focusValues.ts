/**
 * From the canvas to the values of what is selected there, and back: the pane “Part” comes into view, its first value has
 * the focus. From there Shift+Tab goes back where one came from, from every value Escape.
 */
import { useEffect } from "react";
import { afterLayout } from "../kit/afterLayout.ts";
import { showPane } from "../kit/panes.ts";
import { focusSelected } from "./selectedFocus.ts";
import { canvasView } from "./view.ts";

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
    if (field) {
      field.focus();
      leadBack(field);
    } else if (looks > 1) lookFor(looks - 1);
  });
}

/** Only until it is left: what stands before it in the pane is reached in the usual way then. */
function leadBack(field: HTMLElement): void {
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== "Tab" || !event.shiftKey) return;
    event.preventDefault();
    focusSelected();
  };
  field.addEventListener("keydown", onKey);
  field.addEventListener("blur", () => field.removeEventListener("keydown", onKey), { once: true });
}

/** Escape in a value, where it has nothing to take back, goes to what is selected on the canvas. */
export function useEscapeToCanvas(): void {
  useEffect(() => {
    // Before the field hears it: afterwards it has nothing to take back any more.
    const onKey = (event: KeyboardEvent) => {
      const value = event.target instanceof Element ? event.target.closest(VALUES) : null;
      if (event.key !== "Escape" || !value || !canvasView()) return;
      if (!value.matches("[data-takes-escape]")) focusSelected();
    };
    window.addEventListener("keydown", onKey, { capture: true });
    return () => window.removeEventListener("keydown", onKey, { capture: true });
  }, []);
}

const VALUES = ".inspector :is(input, select, textarea, [role=switch])";
