/** After a list or a form on the canvas the focus goes on where the eye is: to what is selected, else to the canvas. */
import { useApp } from "../../store/app.ts";
import { afterLayout } from "../kit/afterLayout.ts";
import { focusCanvas } from "../kit/focusKeeper.ts";
import { focusItem } from "./focusItem.ts";

/** Waits a moment, since a card that has just been added is drawn with the next frame. */
export function focusSelected(): void {
  afterLayout(focusNow);
}

function focusNow(): void {
  // A dialog or a list that has opened meanwhile keeps it.
  if (document.querySelector("[role=dialog], [role=menu]")) return;
  const { parts, wires } = useApp.getState().selection;
  const [part] = parts;
  const [wire] = wires;
  if (part !== undefined) focusItem({ part });
  else if (wire !== undefined) focusItem({ wire });
  else focusCanvas();
}
