/** A part that is dragged out of the tray: over a wire it announces itself there, let go it goes there. */
import type { PartKind } from "../../../parts/contract.ts";
import { addAt, addIntoWire } from "../../canvas/adding.ts";
import type { Point } from "../../canvas/layout.ts";
import { setCanvas } from "../../canvas/state.ts";
import { canvasView } from "../../canvas/view.ts";

export function hoverAt(kind: PartKind | null, at: Point | null): void {
  setCanvas({ dropWire: kind && at ? wireFor(kind, at) : null });
}

export function dropAt(kind: PartKind, at: Point | null): void {
  setCanvas({ dropWire: null });
  const view = canvasView();
  if (!at || !view?.covers(at)) return;
  const wire = wireFor(kind, at);
  if (wire !== null) addIntoWire(kind.kind, wire);
  else addAt(kind.kind, view.toCanvas(at));
}

/** The wire at that place, for kinds with a way through. */
function wireFor(kind: PartKind, at: Point): string | null {
  const view = canvasView();
  return kind.inline && view?.covers(at) ? view.wireUnder(at) : null;
}
