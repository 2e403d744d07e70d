/** The wire that follows the pointer while a joint is being made, why it may not go where it is, and the port nearby. */
import { type ReactFlowState, useStore, ViewportPortal } from "@xyflow/react";
import { usePulled } from "./pulled.ts";
import { routePath } from "./route.ts";
import "./hand.css";

const zoomOf = (s: ReactFlowState) => s.transform[2];

export function JoinLine() {
  const { wire, near } = usePulled();
  // What is read, and what is hit, keeps its size on the screen, however far away one stands.
  const zoom = useStore(zoomOf);
  if (!wire && !near) return null;
  return (
    <ViewportPortal>
      <svg className="join-layer" aria-hidden="true">
        {wire && <PulledWire />}
        {near && <circle className="port-near" cx={near.x} cy={near.y} r={9 / zoom} strokeWidth={2 / zoom} />}
      </svg>
      {wire?.reason && (
        <div
          className="join-reason"
          style={{ transform: `translate(${wire.end.x}px, ${wire.end.y}px) scale(${1 / zoom})` }}
        >
          {wire.reason}
        </div>
      )}
    </ViewportPortal>
  );
}

function PulledWire() {
  const wire = usePulled((s) => s.wire);
  if (!wire) return null;
  const { start, end, status } = wire;
  const middle = (start.x + end.x) / 2;
  const path = routePath([start, { x: middle, y: start.y }, { x: middle, y: end.y }, end]);
  return (
    <g className="join-line" data-status={status}>
      <path className="join-path" d={path} />
    </g>
  );
}
