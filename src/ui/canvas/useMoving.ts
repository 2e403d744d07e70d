/**
 * Dragging cards. While the pointer moves, places are kept here alone; the design learns them when the card
 * is let go, as one undo step. Nothing is evaluated per pointer move.
 */
import type { NodeChange, OnNodeDrag, SelectionDragHandler } from "@xyflow/react";
import { useCallback, useMemo, useRef, useState } from "react";
import type { Part } from "../../design/design.ts";
import { moveParts } from "../../design/edits/parts.ts";
import { partById } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { useApp } from "../../store/app.ts";
import { reveal } from "./adding.ts";
import { boxOf } from "./boxes.ts";
import { joinedByDrop } from "./dropJoin.ts";
import { type Dragged, NOT_DRAGGED, type PartNode } from "./flowItems.ts";
import { frameOf } from "./frames.ts";
import { alignTo } from "./guides.ts";
import { type Box, overlaps, type Point } from "./layout.ts";
import { insertWithRoom } from "./place.ts";
import { type MoveWay, movedIntoRoom, moveWayOf } from "./rooms.ts";
import { NO_GUIDES, setCanvas, useCanvas } from "./state.ts";
import { wireUnder } from "./wireUnder.ts";

type Neighbour = { readonly box: Box; readonly heights: readonly number[] };

export function useMoving(area: () => Box) {
  const [dragged, setDragged] = useState<Dragged>(NOT_DRAGGED);
  const latest = useRef<Dragged>(NOT_DRAGGED);
  const neighbours = useRef<readonly Neighbour[]>([]);

  const put = useCallback((next: Dragged) => {
    latest.current = next;
    setDragged(next);
  }, []);

  const onNodes = useCallback(
    (changes: NodeChange<PartNode>[]) => {
      const places = new Map<string, Point>();
      let isDragging = false;
      for (const change of changes) {
        if (change.type !== "position" || !change.position) continue;
        places.set(change.id, change.position);
        isDragging ||= change.dragging ?? false;
      }
      if (places.size === 0) return;
      if (isDragging) put(places.size === 1 ? lined(places, neighbours.current) : places);
      else {
        // A drag ends where the card was shown, which lining up may have changed; a key press has no drag.
        const isDrag = latest.current.size > 0;
        const ended = new Map([...places].map(([id, at]) => [id, latest.current.get(id) ?? at]));
        settle(ended, isDrag ? undefined : keyWay(ended));
        put(NOT_DRAGGED);
      }
    },
    [put],
  );

  const begin = useCallback(
    (ids: readonly string[]) => {
      neighbours.current = around(new Set(ids), area());
    },
    [area],
  );

  return useMemo(() => {
    const onStart: OnNodeDrag<PartNode> = (_, __, nodes) => begin(nodes.map((n) => n.id));
    const onSelectionStart: SelectionDragHandler<PartNode> = (_, nodes) => begin(nodes.map((n) => n.id));
    const onDrag: OnNodeDrag<PartNode> = (event, node, nodes) => {
      const at = pointerOf(event);
      const fits = nodes.length === 1 && at !== null && fitsIntoWire(node.id);
      setCanvas({ dropWire: fits && at ? wireUnder(at) : null });
    };
    return { dragged, onNodes, onStart, onSelectionStart, onDrag };
  }, [dragged, onNodes, begin]);
}

/** Which way a key has moved them. */
function keyWay(places: ReadonlyMap<string, Point>): readonly MoveWay[] | undefined {
  const [entry] = places;
  const from = entry && partById(useApp.getState().design, entry[0])?.at;
  return entry && from && [moveWayOf(entry[1].x - from[0], entry[1].y - from[1])];
}

/** Ends a move: into the wire below, or there, or in the nearest room where others lie there. */
function settle(places: ReadonlyMap<string, Point>, ways?: readonly MoveWay[]): void {
  const { design, change } = useApp.getState();
  const { dropWire } = useCanvas.getState();
  setCanvas({ dropWire: null, guides: NO_GUIDES });
  const [id] = places.keys();
  const part = dropWire !== null && id !== undefined ? partById(design, id) : undefined;
  if (part && dropWire !== null && change(insertWithRoom(design, part, dropWire))) return;
  const dropped = places.size === 1 && id !== undefined ? partById(design, id) : undefined;
  const at = dropped && places.get(dropped.id);
  if (dropped && at && isElsewhere(dropped, at)) {
    const { width, height } = boxOf(design, dropped);
    const joined = joinedByDrop(design, dropped, { x: at.x + width / 2, y: at.y + height / 2 });
    if (joined && change(joined)) return;
  }
  if (![...places].some(([key, at]) => isElsewhere(partById(design, key), at))) return;
  const free = movedIntoRoom(design, places, ways);
  const positions = new Map([...free].map(([key, { x, y }]) => [key, [x, y] as const]));
  const ids = [...places.keys()];
  change(moveParts(design, positions), { merge: `move ${ids.join(" ")}` });
  // They may have gone further than the hand or the key has led them.
  if (free !== places) reveal(ids);
}

function isElsewhere(part: Part | undefined, { x, y }: Point): boolean {
  return part !== undefined && (part.at[0] !== x || part.at[1] !== y);
}

/** Only a part that has a way through and stands alone can be led into a wire by dropping it there. */
function fitsIntoWire(id: string): boolean {
  const { evaluation } = useApp.getState();
  const record = evaluation.record(id);
  return (
    record !== undefined &&
    kindOf(record.part.kind)?.inline !== undefined &&
    Object.keys(record.joined).length === 0
  );
}

function lined(places: ReadonlyMap<string, Point>, others: readonly Neighbour[]): Dragged {
  const [entry] = places;
  const part = entry && partById(useApp.getState().design, entry[0]);
  if (!entry || !part) return places;
  const [id, at] = entry;
  const size = boxOf(useApp.getState().design, part);
  const aligned = alignTo({
    moving: { ...at, width: size.width, height: size.height },
    heights: heightsOf(id),
    others,
  });
  setCanvas({ guides: { x: aligned.guideX, y: aligned.guideY } });
  return new Map([[id, aligned.at]]);
}

function heightsOf(id: string): readonly number[] {
  const { design } = useApp.getState();
  const part = partById(design, id);
  return part ? [...new Set([...frameOf(design, part).ports.values()].map((p) => p.y))] : [];
}

function around(moving: ReadonlySet<string>, area: Box): readonly Neighbour[] {
  const { design } = useApp.getState();
  return design.parts
    .filter((p) => !moving.has(p.id) && overlaps(boxOf(design, p), area))
    .map((p) => ({ box: boxOf(design, p), heights: heightsOf(p.id) }));
}

function pointerOf(event: MouseEvent | TouchEvent | React.MouseEvent): Point | null {
  if ("touches" in event) {
    const [touch] = event.touches;
    return touch ? { x: touch.clientX, y: touch.clientY } : null;
  }
  return { x: event.clientX, y: event.clientY };
}
