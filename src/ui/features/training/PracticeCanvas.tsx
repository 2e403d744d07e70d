/**
 * The plan of a case: the diagram with bare cards and wires. No strip, no verdict, no colour that would tell what is
 * wrong: that is for the meter. Pressing a wire or a port connects the meter there, pressing a card suspects the part.
 */
import { ReactFlowProvider } from "@xyflow/react";
import { type RefObject, useCallback, useEffect, useMemo, useRef } from "react";
import { type Design, type PortRef, wireId } from "../../../design/design.ts";
import { isSamePort, partById, wireAt } from "../../../design/lookup.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { boxOf } from "../../canvas/boxes.ts";
import { ViewButtons } from "../../canvas/CanvasBar.tsx";
import { Diagram, type DiagramHand, type DiagramLook, spokenAs } from "../../canvas/Diagram.tsx";
import { isWithin } from "../../canvas/layout.ts";
import { setCanvas, useCanvas, useCardDetail } from "../../canvas/state.ts";
import { useDiagramView, useStartView } from "../../canvas/useDiagramView.ts";
import { type KeptInView, useRoomChange } from "../../canvas/useRoomChange.ts";
import { attachDiagram } from "../../canvas/view.ts";
import { firstView, type Viewport } from "../../canvas/viewMath.ts";
import { PlanCard } from "./PlanCard.tsx";
import { PlanWire } from "./PlanWire.tsx";
import { connectMeter, suspectPart } from "./picking.ts";
import type { CaseProps } from "./useCase.ts";

const LOOK: DiagramLook = {
  nodeTypes: { part: PlanCard },
  edgeTypes: { wire: PlanWire },
  // The Tab key alone leads from part to part.
  onlyRenderVisibleElements: false,
  ariaLabelConfig: spokenAs({ part: "Enter suspects this part.", wire: "Enter connects the meter here." }),
};

const HAND: DiagramHand = {
  nodesDraggable: false,
  selectionKeyCode: null,
  multiSelectionKeyCode: null,
  // The keyboard selects what has the focus, as a tap does: both arrive as a change.
  onNodesChange: (changes) => {
    for (const change of changes) if (change.type === "select" && change.selected) suspectPart(change.id);
  },
  onEdgesChange: (changes) => {
    for (const change of changes) if (change.type === "select" && change.selected) pickWire(change.id);
  },
};

/** Where the meter is connected stays in view, else the suspected part. */
const PICKED: KeptInView = {
  box: () => {
    const { session, place, suspect } = usePractice.getState();
    return session && boxOfPart(session.opened.design, place?.[0] ?? suspect);
  },
};

export function PracticeCanvas({ session }: CaseProps) {
  const { design } = session.opened;
  const frame = useRef<HTMLDivElement>(null);
  const planNow = useCallback(() => design, [design]);
  const start = useStartView(frame, planNow, showDrawing, firstView);
  const detail = useCardDetail();
  const isFar = useCanvas((s) => s.detail === "plan");
  return (
    <div className="canvas practice-plan" ref={frame} data-detail={detail} data-far={isFar}>
      {start ? (
        <ReactFlowProvider>
          <Plan session={session} start={start} frame={frame} planNow={planNow} />
        </ReactFlowProvider>
      ) : null}
      <div className="canvas-bars">
        <div className="canvas-bar" role="toolbar" aria-label="View">
          <ViewButtons />
        </div>
      </div>
    </div>
  );
}

/** There is no overview of a case. */
function showDrawing(): void {
  setCanvas({ showing: "drawing" });
}

type PlanProps = CaseProps & {
  readonly start: Viewport;
  readonly frame: RefObject<HTMLElement | null>;
  readonly planNow: () => Design;
};

function Plan({ session, start, frame, planNow }: PlanProps) {
  const { design } = session.opened;
  const suspect = usePractice((s) => s.suspect);
  const place = usePractice((s) => s.place);
  const { view, go, onMove } = useDiagramView(frame, planNow);
  useEffect(() => attachDiagram(view), [view]);
  useRoomChange(frame, go, PICKED);
  const placed = place?.[0] ?? null;
  useEffect(() => {
    for (const part of [placed, suspect]) {
      const box = boxOfPart(planNow(), part);
      // Whoever can see it already should not lose their bearings.
      if (box && !isWithin(box, view.area())) view.nudge(box);
    }
  }, [view, planNow, placed, suspect]);
  const selection = useMemo(() => {
    const wire = place && wireAt(design, place);
    return { parts: suspect ? [suspect] : [], wires: wire ? [wireId(wire)] : [] };
  }, [design, suspect, place]);
  return (
    <Diagram
      label="Plan of the installation"
      look={LOOK}
      design={design}
      selection={selection}
      start={start}
      onMove={onMove}
      hand={HAND}
    />
  );
}

function boxOfPart(design: Design, id: string | null) {
  const part = id === null ? undefined : partById(design, id);
  return part ? boxOf(design, part) : null;
}

function pickWire(id: string): void {
  const { session } = usePractice.getState();
  const wire = session?.opened.design.wires.find((w) => wireId(w) === id);
  if (wire) connectMeter(nearestEnd(wire.from, wire.to));
}

/** A wire that carries the meter already keeps it at the end where it hangs. */
function nearestEnd(from: PortRef, to: PortRef): PortRef {
  const { place } = usePractice.getState();
  return place && isSamePort(place, to) ? to : from;
}
