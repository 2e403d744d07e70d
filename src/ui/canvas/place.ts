/** Edits that also care for room on the canvas: where a new part goes, and who moves aside for it. */
import type { Design, Part, PartId, PortRef } from "../../design/design.ts";
import { wireId } from "../../design/design.ts";
import type { Attached, Attachment } from "../../design/edits/attach.ts";
import { attach } from "../../design/edits/attach.ts";
import { done, type Edit } from "../../design/edits/edit.ts";
import { insertIntoWire } from "../../design/edits/insert.ts";
import { addPart, moveParts } from "../../design/edits/parts.ts";
import { partById, partsBeyond, portOf } from "../../design/lookup.ts";
import { boxesOf, boxOf } from "./boxes.ts";
import { frameOf } from "./frames.ts";
import { boundsOf, type Point } from "./layout.ts";
import { boxIn, COLUMN_GAP_PX, freeBelow, portIn, snapped, withRoom } from "./rooms.ts";

export { COLUMN_GAP_PX, snapped } from "./rooms.ts";

/** The edit itself, and room for whatever it made larger. */
export function roomy(before: Design, edit: Edit): Edit {
  return edit.ok ? done(withRoom(before, edit.design), edit.notes) : edit;
}

/** A free place for a card whose middle should be at `centre`: there, or as little below as possible. */
export function freePlace(design: Design, part: Part, centre: Point): readonly [number, number] {
  const { width, height } = frameOf(design, part);
  const x = snapped(centre.x - width / 2);
  return [x, freeBelow(boxesOf(design), { x, y: centre.y - height / 2, width, height })];
}

/** Adds a part with its middle at a place, or as little below as there is room. */
export function addInRoom(design: Design, part: Part, centre: Point): Edit {
  return roomy(design, addPart(design, { ...part, at: freePlace(design, part, centre) }));
}

export type PlacedAttachment =
  | (Edit & { readonly ok: true; readonly added: readonly Attached[] })
  | (Edit & { readonly ok: false });

/** Hangs new parts on a port: each in the lane of the port it hangs on, in the next column. */
export function attachInLane(design: Design, to: PortRef, attachment: Attachment): PlacedAttachment {
  const edit = attach(design, to, attachment);
  if (!edit.ok) return edit;
  let now = edit.design;
  const waiting = new Set(edit.added.map(({ part }) => part));
  for (const each of edit.added) {
    waiting.delete(each.part);
    now = inLane(now, each, waiting);
  }
  return { ...done(withRoom(design, now), edit.notes), added: edit.added };
}

/** Brings a part beside the one it hangs on, level with that port. `waiting`: parts without a place yet. */
export function inLane(
  design: Design,
  { part: id, port, to }: Attached,
  waiting: ReadonlySet<PartId>,
): Design {
  const beside = boxIn(design, to[0]);
  const end = portIn(design, to);
  const own = portIn(design, [id, port]);
  const box = boxIn(design, id);
  const part = partById(design, id);
  if (!beside || !end || !own || !box || !part) return design;
  const leads = portOf(part, port)?.side === "in";
  const x = snapped(leads ? beside.x + beside.width + COLUMN_GAP_PX : beside.x - COLUMN_GAP_PX - box.width);
  const others = design.parts.filter((p) => p.id !== id && !waiting.has(p.id)).map((p) => boxOf(design, p));
  const y = freeBelow(others, { ...box, x, y: end.y - (own.y - box.y) });
  const moved = moveParts(design, new Map([[id, [x, y]]]));
  return moved.ok ? moved.design : design;
}

/**
 * Puts a part into a wire. It comes to lie on the wire, half-way; where the gap is too narrow, the row that follows
 * moves to the right, as far as its own gaps are too narrow for that, and nothing else does.
 */
export function insertWithRoom(design: Design, part: Part, wire: string): Edit {
  const inserted = insertIntoWire(design, part, wire);
  if (!inserted.ok) return inserted;
  const joint = design.wires.find((w) => wireId(w) === wire);
  const now = inserted.design;
  const joined = joint && now.wires.find((w) => w.to[0] === joint.to[0] && w.to[1] === joint.to[1]);
  const before = joint && boxIn(now, joint.from[0]);
  const after = joint && boxIn(now, joint.to[0]);
  const box = boxIn(now, part.id);
  const end = joint && portIn(now, joint.to);
  const own = joined && portIn(now, [part.id, wayIn(now, part.id, joint) ?? joined.from[1]]);
  if (!joint || !before || !after || !box || !end || !own) return inserted;

  const fromX = before.x + before.width;
  const gap = after.x - fromX;
  const shift = gap > 0 ? snapped(Math.max(0, box.width + 2 * COLUMN_GAP_PX - gap)) : 0;
  const spread = moveParts(now, shiftedRow(now, joint.to[0], shift, part.id));
  if (!spread.ok) return spread;
  const x = snapped((fromX + after.x + shift - box.width) / 2);
  const others = spread.design.parts.filter((p) => p.id !== part.id).map((p) => boxOf(spread.design, p));
  const level = snapped(end.y - (own.y - box.y));
  const y = coversNone(others, { ...box, x, y: level }) ? level : freeBelow(others, { ...box, x, y: level });
  const placed = moveParts(spread.design, new Map([[part.id, [x, y]]]));
  return placed.ok ? done(withRoom(design, placed.design), inserted.notes) : placed;
}

function wayIn(design: Design, id: PartId, joint: { readonly from: PortRef }): string | undefined {
  return design.wires.find((w) => w.from.join() === joint.from.join() && w.to[0] === id)?.to[1];
}

function coversNone(others: readonly ReturnType<typeof boxOf>[], box: ReturnType<typeof boxOf>): boolean {
  return others.every(
    (b) =>
      b.x >= box.x + box.width ||
      box.x >= b.x + b.width ||
      b.y >= box.y + box.height ||
      box.y >= b.y + b.height,
  );
}

/** What follows a part that moves to the right: each follower moves on only as far as its gap is too narrow. */
function shiftedRow(
  design: Design,
  start: PartId,
  shift: number,
  inserted: PartId,
): ReadonlyMap<PartId, readonly [number, number]> {
  const shifts = new Map<PartId, number>(shift > 0 ? [[start, shift]] : []);
  const downstream = partsBeyond(design.wires, [start], "downstream");
  const wires = design.wires.filter(({ from, to }) => downstream.has(from[0]) && to[0] !== inserted);
  // A part is looked at again whenever what leads to it moves further.
  const waiting = [...shifts.keys()];
  for (let left = 20 * design.parts.length; waiting.length > 0 && left > 0; left -= 1) {
    const id = waiting.shift() ?? "";
    const box = boxIn(design, id);
    for (const { to } of wires.filter(({ from }) => from[0] === id)) {
      const next = boxIn(design, to[0]);
      if (!box || !next || next.x < box.x + box.width) continue;
      const slack = Math.max(0, next.x - (box.x + box.width) - COLUMN_GAP_PX);
      const needed = snapped(Math.max(0, (shifts.get(id) ?? 0) - slack));
      if (needed <= (shifts.get(to[0]) ?? 0)) continue;
      shifts.set(to[0], needed);
      waiting.push(to[0]);
    }
  }
  return new Map(
    design.parts
      .filter(({ id }) => shifts.has(id))
      .map(({ id, at }) => [id, [at[0] + (shifts.get(id) ?? 0), at[1]]]),
  );
}

/**
 * Top left corner for pasted parts, none of which is to cover anything: straight below where they were copied from,
 * or with their middle at a place, and as far down as there is room for all of them.
 */
export function pastePlace(
  design: Design,
  fragment: Pick<Design, "parts" | "wires">,
  centre: Point | null,
): readonly [number, number] {
  const copied: Design = { title: "", parts: fragment.parts, wires: fragment.wires };
  const boxes = boxesOf(copied);
  const bounds = boundsOf(boxes);
  if (!bounds) return [0, 0];
  const x = centre ? snapped(centre.x - bounds.width / 2) : bounds.x;
  let y = centre ? snapped(centre.y - bounds.height / 2) : bounds.y;
  const others = boxesOf(design);
  for (;;) {
    const moved = boxes.map((b) => ({ ...b, x: b.x + x - bounds.x, y: b.y + y - bounds.y }));
    const pushes = moved.map((box) => freeBelow(others, box) - snapped(box.y));
    const most = Math.max(...pushes);
    if (most <= 0) return [x, y];
    y += most;
  }
}
