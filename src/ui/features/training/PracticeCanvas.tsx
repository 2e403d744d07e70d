/**
 * The plan of a case: cards, ports and bare wires. No strip, no verdict, no colour that would tell what is wrong:
 * that is for the meter. Tapping a wire or a port hangs the meter there, tapping a card casts the suspicion on it.
 */
import { type EdgeTypes, type NodeTypes, ReactFlow, ReactFlowProvider } from "@xyflow/react";
import { useLayoutEffect, useMemo, useRef, useState } from "react";
import type { Design } from "../../../design/design.ts";
import { type PortRef, wireId } from "../../../design/design.ts";
import { isSamePort, wireAt } from "../../../design/lookup.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { boxesOf } from "../../canvas/boxes.ts";
import { edgesOf, nodesOf, type PartNode, type WireEdge } from "../../canvas/flowItems.ts";
import { boundsOf, type Size } from "../../canvas/layout.ts";
import { sizeOf } from "../../canvas/paneSize.ts";
import { QuietAttribution } from "../../canvas/QuietAttribution.tsx";
import { emptyView, fittingView, LEAST_ZOOM, MOST_ZOOM, type Viewport } from "../../canvas/viewMath.ts";
import { PlanBar } from "./PlanBar.tsx";
import { PlanCard } from "./PlanCard.tsx";
import { PlanWire } from "./PlanWire.tsx";
import { connectMeter, suspectPart } from "./picking.ts";
import { followPlanZoom, usePlanDetail } from "./planDetail.ts";
import type { CaseProps } from "./useCase.ts";
import "@xyflow/react/dist/base.css";
import "../../canvas/canvas.css";
import "../../canvas/cards.css";
import "../../canvas/wires.css";
import "../../canvas/strip.css";

// Constants of the module: the library takes a new object for a new world.
const NODE_TYPES: NodeTypes = { part: PlanCard };
const EDGE_TYPES: EdgeTypes = { wire: PlanWire };
const NONE = new Map<string, never>();
/** At less than this nobody can tap a connector. */
const LEAST_START_ZOOM = 0.65;
const MARGIN_PX = 36;

export function PracticeCanvas({ session }: CaseProps) {
  const frame = useRef<HTMLDivElement>(null);
  const [start, setStart] = useState<Viewport | null>(null);
  const detail = usePlanDetail((s) => s.detail);
  const plan = session.opened.design;
  useLayoutEffect(() => {
    if (!frame.current) return;
    const view = startView(plan, sizeOf(frame.current));
    setStart(view);
    followPlanZoom(view.zoom);
  }, [plan]);
  return (
    <div className="canvas practice-plan" ref={frame} data-detail={detail}>
      {start ? (
        <ReactFlowProvider>
          <Plan session={session} plan={plan} start={start} />
          <PlanBar plan={plan} />
        </ReactFlowProvider>
      ) : null}
    </div>
  );
}

/** All of it while that can be read, otherwise its beginning on the roof side. */
function startView(plan: Design, pane: Size): Viewport {
  const bounds = boundsOf(boxesOf(plan));
  if (!bounds) return emptyView(pane);
  const whole = fittingView(bounds, pane);
  if (whole.zoom >= LEAST_START_ZOOM) return whole;
  const zoom = LEAST_START_ZOOM;
  const fitsDown = bounds.height * zoom <= pane.height - 2 * MARGIN_PX;
  return {
    x: MARGIN_PX - bounds.x * zoom,
    y: fitsDown ? pane.height / 2 - (bounds.y + bounds.height / 2) * zoom : MARGIN_PX - bounds.y * zoom,
    zoom,
  };
}

type PlanProps = CaseProps & {
  readonly plan: Design;
  readonly start: Viewport;
};

function Plan({ session, plan, start }: PlanProps) {
  const { design } = session.opened;
  const { nodes, edges } = usePlan(plan);
  const pickWire = (id: string) => {
    const wire = design.wires.find((w) => wireId(w) === id);
    if (wire) connectMeter(nearestEnd(wire.from, wire.to));
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
      attributionPosition="bottom-right"
      onMove={(_, { zoom }) => followPlanZoom(zoom)}
      // The keyboard selects what has the focus, as a tap does: both arrive as a change.
      onNodesChange={(changes) => {
        for (const change of changes) if (change.type === "select" && change.selected) suspectPart(change.id);
      }}
      onEdgesChange={(changes) => {
        for (const change of changes) if (change.type === "select" && change.selected) pickWire(change.id);
      }}
    >
      <QuietAttribution />
    </ReactFlow>
  );
}

/** A wire that carries the meter already keeps it at the end where it hangs. */
function nearestEnd(from: PortRef, to: PortRef): PortRef {
  const { place } = usePractice.getState();
  return place && isSamePort(place, to) ? to : from;
}

function usePlan(design: Design): { readonly nodes: PartNode[]; readonly edges: WireEdge[] } {
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
