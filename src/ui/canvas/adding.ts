/** Adding parts: where they go, what they are joined to, and that they are selected and in view then. */
import type { PartId, PortRef } from "../../design/design.ts";
import { type Attachment, freePorts } from "../../design/edits/attach.ts";
import type { Edit } from "../../design/edits/edit.ts";
import { newPart } from "../../design/edits/parts.ts";
import { isSamePort, partById, portOf } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { type Selection, useApp } from "../../store/app.ts";
import { joinedByDrop } from "./dropJoin.ts";
import { focusedItem } from "./focusItem.ts";
import { boundsOf, type Point } from "./layout.ts";
import { openOffer } from "./offer.ts";
import { addInRoom, attachInLane, insertWithRoom } from "./place.ts";
import { boxIn, portIn } from "./rooms.ts";
import { canvasView } from "./view.ts";

/** Into the selected wire where the part fits there, otherwise into the middle of what is seen. */
export function addKind(kind: string): void {
  const { selection } = useApp.getState();
  const [wire] = selection.wires;
  const intoWire = wire !== undefined && selection.wires.length === 1 && selection.parts.length === 0;
  if (intoWire && kindOf(kind)?.inline) {
    addIntoWire(kind, wire);
    return;
  }
  const { design } = useApp.getState();
  const part = newPart(design, kind, [0, 0]);
  const centre = canvasView()?.centre() ?? { x: 0, y: 0 };
  if (part) take(addInRoom(design, part, centre), [part.id]);
}

/** With the middle of its card at a place on the canvas; beside a free port that fits, joined to it. */
export function addAt(kind: string, at: Point): void {
  const { design } = useApp.getState();
  const part = newPart(design, kind, [0, 0]);
  if (part) take(joinedByDrop(design, part, at) ?? addInRoom(design, part, at), [part.id]);
}

export function addIntoWire(kind: string, wire: string): void {
  const { design } = useApp.getState();
  const part = newPart(design, kind, [0, 0]);
  if (part) take(insertWithRoom(design, part, wire), [part.id]);
}

/** Hangs parts on a port. What is selected then is where one goes on: the last that has an output left, else all. */
export function addConnected(from: PortRef, attachment: Attachment): void {
  const { design } = useApp.getState();
  const edit = attachInLane(design, from, attachment);
  const added = edit.ok ? edit.added.map(({ part }) => part) : [];
  const open = added.filter((id) => edit.ok && openOutputs(id, edit.design).length > 0);
  take(edit, open.length > 0 ? open.slice(-1) : added);
}

/**
 * Asks what to hang on the selected parts: at once where one output is free or a chain goes on, by port where there are
 * several. With nothing selected it offers the ports of the card that has the focus, what a reception begins with, and
 * every free output.
 */
export function askForConnected(): void {
  const { design, selection } = useApp.getState();
  const ports = selection.parts.flatMap((id) => freePorts(design, id));
  const outputs = ports.filter(isOutput);
  const [next] = outputs.length > 0 ? outputs : ports;
  if (next && (outputs.length === 1 || ports.length === 1 || selection === lastAdded)) openPartsFor(next);
  else if (next) openOffer({ about: "ports", of: ports, others: null }, placeOf(next));
  else {
    const focused = focusedItem();
    const of = focused && "part" in focused ? freePorts(design, focused.part) : [];
    const all = design.parts.flatMap(({ id }) => freePorts(design, id)).filter(isOutput);
    const others = all.filter((ref) => !of.some((own) => isSamePort(own, ref)));
    openOffer({ about: "ports", of, others }, placeOf(of[0]));
  }
}

/** Opens the list of what fits a port, beside it. */
export function openPartsFor(from: PortRef): void {
  reveal([from[0]]);
  openOffer({ about: "parts", from }, placeOf(from));
}

/** What was selected by adding: whoever goes on from there with a chain is not asked which port, it is the first. */
let lastAdded: Selection | null = null;

function take(edit: Edit, select: readonly PartId[]): void {
  const { change, select: choose } = useApp.getState();
  if (!change(edit)) return;
  choose({ parts: select });
  lastAdded = useApp.getState().selection;
  reveal(edit.ok ? select : []);
}

/** Brings parts into view, as near as before. */
export function reveal(ids: readonly PartId[]): void {
  const { design } = useApp.getState();
  const box = boundsOf(ids.flatMap((id) => boxIn(design, id) ?? []));
  if (box) canvasView()?.nudge(box);
}

function isOutput([id, port]: PortRef): boolean {
  const part = partById(useApp.getState().design, id);
  return part !== undefined && portOf(part, port)?.side === "out";
}

function openOutputs(id: PartId, design: Parameters<typeof freePorts>[0]): readonly PortRef[] {
  const part = partById(design, id);
  return freePorts(design, id).filter(([, port]) => part && portOf(part, port)?.side === "out");
}

/** Where in the window a port lies; for none, the middle of the canvas. */
function placeOf(ref: PortRef | undefined): Point {
  const view = canvasView();
  const at = ref ? portIn(useApp.getState().design, ref) : view?.centre();
  return view && at ? view.toWindow(at) : { x: window.innerWidth / 2, y: window.innerHeight / 3 };
}
