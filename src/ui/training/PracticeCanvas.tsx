/**
 * The plan of a case: cards, ports and bare wires. No strip, no verdict, no colour that would tell what is wrong:
 * that is for the meter. Tapping a wire or a port hangs the meter there, tapping a card casts the suspicion on it.
 */
import { type EdgeTypes, type NodeTypes, ReactFlow, ReactFlowProvider } from "@xyflow/react";
import { useLayoutEffect, useMemo, useRef, useState } from "react";
import { type PortRef, wireId } from "../../design/design.ts";
import { isSamePort, wireAt } from "../../design/lookup.ts";
import { type Session, usePractice } from "../../store/trainingSession.ts";
import { boxOf } from "../canvas/boxes.ts";
import { edgesOf, nodesOf, type PartNode, type WireEdge } from "../canvas/flowItems.ts";
import { boundsOf, type Size } from "../canvas/layout.ts";
import { sizeOf } from "../canvas/paneSize.ts";
import { emptyView, LEAST_ZOOM, MOST_ZOOM, opening, type Viewport } from "../canvas/viewMath.ts";
import { PlanCard } from "./PlanCard.tsx";
import { PlanWire } from "./PlanWire.tsx";
import { hangMeter, suspectPart } from "./picking.ts";
import type { CaseProps } from "./useCase.ts";
import "@xyflow/react/dist/base.css";
import "../canvas/canvas.css";
import "../canvas/cards.css";
import "../canvas/wires.css";
import "../canvas/strip.css";

// Constants of the module: the library takes a new object for a new world.
const NODE_TYPES: NodeTypes = { part: PlanCard };
const EDGE_TYPES: EdgeTypes = { wire: PlanWire };
const NONE = new Map<string, never>();

export function PracticeCanvas({ session }: CaseProps) {
  const frame = useRef<HTMLDivElement>(null);
  const [start, setStart] = useState<Viewport | null>(null);
  useLayoutEffect(() => {
    if (frame.current) setStart(startView(session, sizeOf(frame.current)));
  }, [session]);
  return (
    <div className="canvas practice-plan" ref={frame} data-detail="near">
      {start ? (
        <ReactFlowProvider>
          <Plan session={session} start={start} />
        </ReactFlowProvider>
      ) : null}
    </div>
  );
}

function startView({ opened }: Session, pane: Size): Viewport {
  const { parts } = opened.design;
  const bounds = boundsOf(parts.map(boxOf));
  return bounds ? opening(bounds, pane, parts.length) : emptyView(pane);
}

function Plan({ session, start }: CaseProps & { readonly start: Viewport }) {
  const { design } = session.opened;
  const { nodes, edges } = usePlan(session);
  const pickWire = (id: string) => {
    const wire = design.wires.find((w) => wireId(w) === id);
    if (wire) hangMeter(nearestEnd(wire.from, wire.to));
  };
  return (
    <ReactFlow<PartNode, WireEdge>
      aria-label="Plan of the installation"
      nodes={nodes}
      edges={edges}
      nodeTypes={NODE_TYPES}
      edgeTypes={EDGE_TYPES}
      defaultViewport={start}
      minZoom={LEAST_ZOOM}
      maxZoom={MOST_ZOOM}
      nodesDraggable={false}
      nodesConnectable={false}
      edgesReconnectable={false}
      connectOnClick={false}
      deleteKeyCode={null}
      selectionKeyCode={null}
      multiSelectionKeyCode={null}
      zoomOnDoubleClick={false}
      attributionPosition="top-left"
      // The keyboard selects what has the focus, as a tap does: both arrive as a change.
      onNodesChange={(changes) => {
        for (const change of changes) if (change.type === "select" && change.selected) suspectPart(change.id);
      }}
      onEdgesChange={(changes) => {
        for (const change of changes) if (change.type === "select" && change.selected) pickWire(change.id);
      }}
    />
  );
}

/** A wire that carries the meter already keeps it at the end where it hangs. */
function nearestEnd(from: PortRef, to: PortRef): PortRef {
  const { place } = usePractice.getState();
  return place && isSamePort(place, to) ? to : from;
}

function usePlan(session: Session): { readonly nodes: PartNode[]; readonly edges: WireEdge[] } {
  const { design } = session.opened;
  const suspect = usePractice((s) => s.suspect);
  const place = usePractice((s) => s.place);
  return useMemo(() => {
    const wire = place && wireAt(design, place);
    const selection = { parts: suspect ? [suspect] : [], wires: wire ? [wireId(wire)] : [] };
    const nodes = nodesOf({ design, selection, dragged: NONE, before: NONE });
    const edges = edgesOf({ design, selection, before: NONE, nodes });
    return { nodes: [...nodes.values()], edges: [...edges.values()] };
  }, [design, suspect, place]);
}
