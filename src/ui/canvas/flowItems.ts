/**
 * The design as the nodes and edges that the canvas library takes. An item is the same object as long as
 * nothing about it changed, since the library looks at every new one again.
 */
import { type Edge, type Node, Position } from "@xyflow/react";
import { type Design, type Part, wireId } from "../../design/design.ts";
import { portsOf } from "../../design/lookup.ts";
import type { Selection } from "../../store/app.ts";
import { type Frame, frameOf } from "./frames.ts";
import type { Point } from "./layout.ts";

export type PartNode = Node<Record<string, never>, "part">;
export type WireEdge = Edge<Record<string, never>, "wire">;

/** Where parts that are being dragged are now; the design learns it when they are let go. */
export type Dragged = ReadonlyMap<string, Point>;
export const NOT_DRAGGED: Dragged = new Map();

export function nodesOf(options: {
  readonly design: Design;
  readonly selection: Selection;
  readonly dragged: Dragged;
  readonly before: ReadonlyMap<string, PartNode>;
}): Map<string, PartNode> {
  const { design, selection, dragged, before } = options;
  const selected = new Set(selection.parts);
  const nodes = new Map<string, PartNode>();
  for (const part of design.parts) {
    const position = dragged.get(part.id) ?? { x: part.at[0], y: part.at[1] };
    const old = before.get(part.id);
    const isSelected = selected.has(part.id);
    const frame = nodeFrame(frameOf(design, part), part);
    nodes.set(
      part.id,
      old &&
        old.selected === isSelected &&
        old.position.x === position.x &&
        old.position.y === position.y &&
        old.handles === frame.handles
        ? old
        : {
            id: part.id,
            type: "part",
            data: {},
            position,
            selected: isSelected,
            ...onTop(isSelected),
            ...frame,
          },
    );
  }
  return nodes;
}

/** What is selected may reach beyond its card, and is moved over others. */
function onTop(isSelected: boolean): { readonly zIndex?: number } {
  return isSelected ? { zIndex: 1 } : {};
}

type NodeFrame = Pick<PartNode, "width" | "height" | "measured" | "handles" | "domAttributes">;

const nodeFrames = new WeakMap<Frame, Map<string, NodeFrame>>();

/**
 * Size and ports of a part, told to the library in advance so that it never has to measure.
 * Kept by look and not by part: a part that only moved keeps its frame.
 */
function nodeFrame(look: Frame, part: Part): NodeFrame {
  let byPart = nodeFrames.get(look);
  if (!byPart) {
    byPart = new Map();
    nodeFrames.set(look, byPart);
  }
  let frame = byPart.get(part.id);
  if (!frame) {
    const size = { width: look.width, height: look.height };
    const names = ["words", "walk"].map((what) => `card-${part.id}-${what}`);
    frame = {
      ...size,
      measured: size,
      handles: portsOf(part).map((port) => {
        const isInput = port.side === "in";
        const place = look.ports.get(port.id) ?? { x: 0, y: 0 };
        return {
          id: port.id,
          type: isInput ? ("target" as const) : ("source" as const),
          position: isInput ? Position.Left : Position.Right,
          // As the library would measure it: a port is one pixel, centred on the edge (see cards.css).
          x: place.x - 0.5,
          y: place.y - 0.5,
          width: 1,
          height: 1,
        };
      }),
      domAttributes: { "aria-labelledby": names.join(" "), "aria-roledescription": "part" },
    };
    byPart.set(part.id, frame);
  }
  return frame;
}

export function edgesOf(options: {
  readonly design: Design;
  readonly selection: Selection;
  readonly before: ReadonlyMap<string, WireEdge>;
  /** Cards that are shown; a wire is shown when both its ends are. */
  readonly nodes: ReadonlyMap<string, PartNode>;
}): Map<string, WireEdge> {
  const { design, selection, before, nodes } = options;
  const selected = new Set(selection.wires);
  const edges = new Map<string, WireEdge>();
  for (const wire of design.wires) {
    const id = wireId(wire);
    if (!nodes.has(wire.from[0]) || !nodes.has(wire.to[0])) continue;
    const isSelected = selected.has(id);
    const old = before.get(id);
    edges.set(id, old && old.selected === isSelected ? old : edge(id, wire, isSelected));
  }
  return edges;
}

function edge(id: string, wire: Design["wires"][number], selected: boolean): WireEdge {
  return {
    id,
    type: "wire",
    data: {},
    source: wire.from[0],
    sourceHandle: wire.from[1],
    target: wire.to[0],
    targetHandle: wire.to[1],
    selected,
    // The words are in the wire's own title and follow its spectrum.
    domAttributes: { "aria-labelledby": `wire-${id}-words`, "aria-roledescription": "wire" },
  };
}
