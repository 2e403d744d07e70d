/** The map of the whole design in a corner; a click or a drag on it moves the view there. */
import { type ReactFlowState, useReactFlow, useStore } from "@xyflow/react";
import { type PointerEvent, useDeferredValue, useRef } from "react";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { useApp } from "../../store/app.ts";
import { boxesOf } from "./boxes.ts";
import { type Box, boundsOf } from "./layout.ts";
import { boxPath, PlanDrawing } from "./PlanDrawing.tsx";
import { useCanvas } from "./state.ts";
import { areaInView } from "./viewMath.ts";

const MARGIN_PX = 120;

/** Open on request only: it would hide what lies below it. */
export function Minimap() {
  const isOpen = useCanvas((s) => s.mapOpen);
  const isEmpty = useApp((s) => s.evaluation.design.parts.length === 0);
  if (isEmpty || !isOpen) return null;
  return (
    <div className="minimap">
      <OpenMap />
    </div>
  );
}

function OpenMap() {
  // The map may come and lag a little later; the canvas may not.
  const current = useApp((s) => s.evaluation);
  const evaluation = useDeferredValue<Evaluation | null>(current, null);
  return evaluation && <MapPaper evaluation={evaluation} />;
}

function MapPaper({ evaluation }: { readonly evaluation: Evaluation }) {
  const bounds = boundsOf(boxesOf(evaluation.design)) ?? { x: 0, y: 0, width: 1, height: 1 };
  const around: Box = {
    x: bounds.x - MARGIN_PX,
    y: bounds.y - MARGIN_PX,
    width: bounds.width + 2 * MARGIN_PX,
    height: bounds.height + 2 * MARGIN_PX,
  };
  const viewBox = `${around.x} ${around.y} ${around.width} ${around.height}`;
  return (
    <div className="minimap-paper">
      <svg className="minimap-plan" viewBox={viewBox} role="img" aria-label="Map of the design">
        <PlanDrawing evaluation={evaluation} />
      </svg>
      <ViewFrame viewBox={viewBox} />
    </div>
  );
}

const transformOf = (s: ReactFlowState) => s.transform;
const widthOf = (s: ReactFlowState) => s.width;
const heightOf = (s: ReactFlowState) => s.height;

/** What is seen now. On a layer of its own: it moves with every frame of a pan, the plan below does not. */
function ViewFrame({ viewBox }: { readonly viewBox: string }) {
  const [x, y, zoom] = useStore(transformOf);
  const width = useStore(widthOf);
  const height = useStore(heightOf);
  const { setCenter } = useReactFlow();
  const svg = useRef<SVGSVGElement>(null);
  const go = (event: PointerEvent) => {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix) return;
    const place = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    setCenter(place.x, place.y, { zoom });
  };
  return (
    <svg
      ref={svg}
      className="minimap-view"
      viewBox={viewBox}
      aria-hidden="true"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        go(event);
      }}
      onPointerMove={(event) => {
        if (event.buttons !== 0) go(event);
      }}
    >
      <path className="minimap-window" d={boxPath(areaInView({ x, y, zoom }, { width, height }))} />
    </svg>
  );
}
