/** After a list, a form or a deletion the focus goes on where the eye is: to what is selected, else to the canvas. */
import { useApp } from "../../store/app.ts";

/** Waits a moment, since a card that has just been added is drawn with the next frame. */
export function focusSelected(): void {
  requestAnimationFrame(() => requestAnimationFrame(focusNow));
}

/** The same where the focus has gone with what had it, as after an undo; elsewhere it stays. */
export function keepFocus(): void {
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      if (document.activeElement === document.body || document.activeElement === null) focusNow();
    }),
  );
}

function focusNow(): void {
  // A dialog or a list that has opened meanwhile keeps it.
  if (document.querySelector("[role=dialog], [role=menu]")) return;
  const { parts, wires } = useApp.getState().selection;
  const [part] = parts;
  const [wire] = wires;
  const target =
    (part !== undefined && elementOf(".react-flow__node", part)) ||
    (wire !== undefined && elementOf(".react-flow__edge", wire)) ||
    document.querySelector<HTMLElement>(".canvas .react-flow__pane, .canvas .react-flow");
  if (target instanceof SVGElement || target instanceof HTMLElement) {
    if (!target.hasAttribute("tabindex")) target.setAttribute("tabindex", "-1");
    target.focus({ preventScroll: true });
  }
}

function elementOf(selector: string, id: string): Element | null {
  return document.querySelector(`${selector}[data-id="${CSS.escape(id)}"]`);
}
