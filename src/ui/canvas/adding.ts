/** Adding a part from the tray: where it goes, and that it is selected then. */
import { addPart, newPart } from "../../design/edits/parts.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { useApp } from "../../store/app.ts";
import { frameOf } from "./frames.ts";
import type { Point } from "./layout.ts";
import { freePlace, insertWithRoom, snapped } from "./place.ts";
import { canvasView } from "./view.ts";

/** Into the selected wire where the part fits there, otherwise into the middle of what is seen. */
export function addKind(kind: string): void {
  const { design, selection } = useApp.getState();
  const [wire] = selection.wires;
  const intoWire = wire !== undefined && selection.wires.length === 1 && selection.parts.length === 0;
  if (intoWire && kindOf(kind)?.inline) {
    addIntoWire(kind, wire);
    return;
  }
  const part = newPart(design, kind, [0, 0]);
  if (!part) return;
  const centre = canvasView()?.centre() ?? { x: 0, y: 0 };
  place(kind, freePlace(design, part, centre));
}

/** With the middle of its card at a place on the canvas. */
export function addAt(kind: string, at: Point): void {
  const { design } = useApp.getState();
  const part = newPart(design, kind, [0, 0]);
  if (!part) return;
  const { width, height } = frameOf(design, part);
  place(kind, [snapped(at.x - width / 2), snapped(at.y - height / 2)]);
}

export function addIntoWire(kind: string, wire: string): void {
  const { design, change, select } = useApp.getState();
  const part = newPart(design, kind, [0, 0]);
  if (part && change(insertWithRoom(design, part, wire))) select({ parts: [part.id] });
}

function place(kind: string, at: readonly [number, number]): void {
  const { design, change, select } = useApp.getState();
  const part = newPart(design, kind, at);
  if (part && change(addPart(design, part))) select({ parts: [part.id] });
}
