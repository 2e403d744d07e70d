/** The drawing of the editor: the diagram, and what hands do to it turned into edits of the design. */
import { type Edge, type Node, SelectionMode } from "@xyflow/react";
import type { MouseEvent, RefObject } from "react";
import { useApp } from "../../store/app.ts";
import { useShownDesign } from "../../store/hooks.ts";
import { boxesOf } from "./boxes.ts";
import { CanvasPart } from "./CanvasPart.tsx";
import { CanvasWire } from "./CanvasWire.tsx";
import { Diagram, type DiagramLook, spokenAs } from "./Diagram.tsx";
import { isCableSelected, openFormAt } from "./forms.ts";
import { GuideLines } from "./GuideLines.tsx";
import { JoinLine } from "./JoinLine.tsx";
import { joinToPart, offerAt } from "./joining.ts";
import { GRID_PX } from "./layout.ts";
import { PlanLayer } from "./PlanLayer.tsx";
import { RemovedParts } from "./RemovedParts.tsx";
import { useCanvas } from "./state.ts";
import { useJoining } from "./useJoining.ts";
import { useMoving } from "./useMoving.ts";
import { useMultiTap } from "./useMultiTap.ts";
import { useReveal } from "./useReveal.ts";
import { useSelecting } from "./useSelecting.ts";
import { useView } from "./useView.ts";
import type { Viewport } from "./viewMath.ts";

const LOOK: DiagramLook = {
  nodeTypes: { part: CanvasPart },
  edgeTypes: { wire: CanvasWire },
  onlyRenderVisibleElements: true,
  ariaLabelConfig: spokenAs({
    part: "Enter selects, arrow keys move what is selected. Alt with an arrow key goes along the wires.",
    wire: "Enter selects. Alt with an arrow key goes to the parts at its ends.",
  }),
};
const SNAP: [number, number] = [GRID_PX, GRID_PX];
const ADDING_KEYS = ["Shift", "Meta", "Control"];

type Props = {
  readonly start: Viewport;
  readonly frame: RefObject<HTMLDivElement | null>;
};

export function EditorDiagram({ start, frame }: Props) {
  const selecting = useCanvas((s) => s.selecting);
  const isPreview = useApp((s) => s.preview !== null);
  const design = useShownDesign();
  const selection = useApp((s) => s.selection);
  const view = useView(frame);
  const moving = useMoving(view.area);
  const shown = useReveal(design, view.area);
  const choosing = useSelecting();
  useJoining(frame);
  useMultiTap(selecting);
  return (
    <Diagram
      label="Diagram of the signal chain"
      look={LOOK}
      design={design}
      selection={selection}
      start={start}
      onMove={view.onMove}
      dragged={moving.dragged}
      shown={shown}
      hand={{
        snapToGrid: true,
        snapGrid: SNAP,
        nodesDraggable: !isPreview,
        selectionKeyCode: "Shift",
        selectionMode: SelectionMode.Partial,
        multiSelectionKeyCode: ADDING_KEYS,
        selectionOnDrag: selecting,
        panOnDrag: !selecting,
        onNodesChange: (changes) => {
          choosing.onNodes(changes);
          moving.onNodes(changes);
        },
        onEdgesChange: choosing.onEdges,
        onNodeDragStart: moving.onStart,
        onNodeDrag: moving.onDrag,
        onSelectionDragStart: moving.onSelectionStart,
        onNodeClick: finishJoint,
        onNodeDoubleClick: openForm,
        onPaneClick: (event) => onPane(event, view.toCanvas),
      }}
    >
      {shown !== "all" && <PlanLayer />}
      {isPreview && <RemovedParts />}
      <GuideLines />
      <JoinLine />
    </Diagram>
  );
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
