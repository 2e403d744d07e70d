/** The canvas library with our cards and wires in it, and its events turned into edits of the design. */
import {
  type Edge,
  type EdgeTypes,
  type Node,
  type NodeTypes,
  ReactFlow,
  SelectionMode,
} from "@xyflow/react";
import { type MouseEvent, type RefObject, useMemo, useRef } from "react";
import { useApp } from "../../store/app.ts";
import { useShownDesign } from "../../store/hooks.ts";
import { boxesOf } from "./boxes.ts";
import { CanvasPart } from "./CanvasPart.tsx";
import { CanvasWire } from "./CanvasWire.tsx";
import { edgesOf, nodesOf, type PartNode, type WireEdge } from "./flowItems.ts";
import { isCableSelected, openFormAt } from "./forms.ts";
import { GuideLines } from "./GuideLines.tsx";
import { JoinLine } from "./JoinLine.tsx";
import { joinToPart, offerAt } from "./joining.ts";
import { GRID_PX } from "./layout.ts";
import { PlanLayer } from "./PlanLayer.tsx";
import { QuietAttribution } from "./QuietAttribution.tsx";
import { RemovedParts } from "./RemovedParts.tsx";
import { useCanvas } from "./state.ts";
import { useJoining } from "./useJoining.ts";
import { useMoving } from "./useMoving.ts";
import { useMultiTap } from "./useMultiTap.ts";
import { type Reveal, useReveal } from "./useReveal.ts";
import { useSelecting } from "./useSelecting.ts";
import { useView } from "./useView.ts";
import { LEAST_ZOOM, MOST_ZOOM, type Viewport } from "./viewMath.ts";

// Constants of the module, all of them: the library takes a new object for a new world (measured: three
// to seven times the work of a drag).
const NODE_TYPES: NodeTypes = { part: CanvasPart };
const EDGE_TYPES: EdgeTypes = { wire: CanvasWire };
const SNAP: [number, number] = [GRID_PX, GRID_PX];
/** Moves are told by the announcer, in our own words. */
const SPOKEN = {
  "node.a11yDescription.default": "",
  "node.a11yDescription.keyboardDisabled":
    "Enter selects, arrow keys move what is selected. Alt with an arrow key goes along the wires.",
  "node.a11yDescription.ariaLiveMessage": () => "",
  "edge.a11yDescription.default": "Enter selects. Alt with an arrow key goes to the parts at its ends.",
};
const ADDING_KEYS = ["Shift", "Meta", "Control"];

type Props = {
  readonly start: Viewport;
  readonly frame: RefObject<HTMLDivElement | null>;
};

export function Diagram({ start, frame }: Props) {
  const selecting = useCanvas((s) => s.selecting);
  const isPreview = useApp((s) => s.preview !== null);
  const view = useView(frame);
  const moving = useMoving(view.area);
  const reveal = useReveal(useShownDesign(), view.area);
  const { nodes, edges } = useItems(reveal, moving.dragged);
  const choosing = useSelecting();
  useJoining(frame);
  useMultiTap(selecting);
  return (
    <ReactFlow<PartNode, WireEdge>
      aria-label="Diagram of the signal chain"
      nodes={nodes}
      edges={edges}
      nodeTypes={NODE_TYPES}
      edgeTypes={EDGE_TYPES}
      ariaLabelConfig={SPOKEN}
      defaultViewport={start}
      minZoom={LEAST_ZOOM}
      maxZoom={MOST_ZOOM}
      onlyRenderVisibleElements
      elevateNodesOnSelect={false}
      snapToGrid
      snapGrid={SNAP}
      nodesDraggable={!isPreview}
      nodesConnectable={false}
      deleteKeyCode={null}
      selectionKeyCode="Shift"
      selectionMode={SelectionMode.Partial}
      multiSelectionKeyCode={ADDING_KEYS}
      selectionOnDrag={selecting}
      panOnDrag={!selecting}
      zoomOnDoubleClick={false}
      connectOnClick={false}
      attributionPosition="bottom-right"
      onMove={view.onMove}
      onNodesChange={(changes) => {
        choosing.onNodes(changes);
        moving.onNodes(changes);
      }}
      onEdgesChange={choosing.onEdges}
      onNodeDragStart={moving.onStart}
      onNodeDrag={moving.onDrag}
      onSelectionDragStart={moving.onSelectionStart}
      onNodeClick={finishJoint}
      onNodeDoubleClick={openForm}
      onPaneClick={(event) => onPane(event, view.toCanvas)}
    >
      {reveal !== "all" && <PlanLayer />}
      {isPreview && <RemovedParts />}
      <GuideLines />
      <JoinLine />
      <QuietAttribution />
    </ReactFlow>
  );
}

function useItems(reveal: Reveal, dragged: ReturnType<typeof useMoving>["dragged"]) {
  const design = useShownDesign();
  const selection = useApp((s) => s.selection);
  const lastNodes = useRef<ReadonlyMap<string, PartNode>>(new Map());
  const lastEdges = useRef<ReadonlyMap<string, WireEdge>>(new Map());
  return useMemo(() => {
    const all = nodesOf({ design, selection, dragged, before: lastNodes.current });
    lastNodes.current = all;
    const shown = reveal === "all" ? all : new Map([...all].filter(([id]) => reveal.has(id)));
    const wires = edgesOf({ design, selection, before: lastEdges.current, nodes: shown });
    lastEdges.current = wires;
    return { nodes: [...shown.values()], edges: [...wires.values()] };
  }, [design, selection, dragged, reveal]);
}

/** The second tap of a joint may go to a card instead of a port. */
function finishJoint(event: MouseEvent, node: Node | Edge): void {
  const { connecting, setConnecting } = useApp.getState();
  if (!connecting || connecting[0] === node.id) return;
  setConnecting(null);
  joinToPart(connecting, node.id, { x: event.clientX, y: event.clientY });
}

/** Twice on a cable changes its length, twice on a name the name; all of another pill is its name. */
function openForm(event: MouseEvent, node: Node): void {
  const isName = event.target instanceof Element && event.target.closest(".node-card-name, .pill") !== null;
  useApp.getState().select({ parts: [node.id] });
  if (isCableSelected()) openFormAt("length");
  else if (isName && useApp.getState().preview === null) openFormAt("name");
}

/** A tap beside everything asks for a part at the end of a joint that was begun; on the plan it takes the part there. */
function onPane(event: MouseEvent, toCanvas: (client: { x: number; y: number }) => { x: number; y: number }) {
  const { connecting, setConnecting, evaluation, select } = useApp.getState();
  const { design } = evaluation;
  if (connecting) {
    setConnecting(null);
    offerAt(connecting, { x: event.clientX, y: event.clientY });
  }
  if (useCanvas.getState().detail !== "plan") return;
  const at = toCanvas({ x: event.clientX, y: event.clientY });
  const index = boxesOf(design).findIndex(
    (b) => at.x >= b.x && at.x <= b.x + b.width && at.y >= b.y && at.y <= b.y + b.height,
  );
  const part = design.parts[index];
  if (part) select({ parts: [part.id] });
  else select({});
}
