/** The wire that follows the pointer while a joint is being made, why it may not go where it is, and the port nearby. */
import { type ReactFlowState, useStore, ViewportPortal } from "@xyflow/react";
import type { Box } from "./layout.ts";
import { type Pulled, usePulled } from "./pulled.ts";
import { routePath } from "./route.ts";
import { useScreenPixel } from "./useScreenPixel.ts";
import "./hand.css";

const zoomOf = (s: ReactFlowState) => s.transform[2];

export function JoinLine() {
  const { wire, near } = usePulled();
  // What is read, and what is hit, keeps its size on the screen, however far away one stands.
  const zoom = useStore(zoomOf);
  const style = useScreenPixel();
  if (!wire && !near) return null;
  return (
    <ViewportPortal>
      <svg className="join-layer" style={style} aria-hidden="true">
        {wire?.card && <AimedCard box={wire.card} status={wire.status} zoom={zoom} />}
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

/** Beyond the edge of a card, so that also a small one of a plan is seen within it [px on the screen]. */
const AROUND_PX = 5;

function AimedCard(props: { readonly box: Box; readonly status: Pulled["status"]; readonly zoom: number }) {
  const { box, status, zoom } = props;
  const around = AROUND_PX / zoom;
  return (
    <rect
      className="join-card"
      data-status={status}
      x={box.x - around}
      y={box.y - around}
      width={box.width + 2 * around}
      height={box.height + 2 * around}
      rx={around}
    />
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
