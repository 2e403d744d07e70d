/** The wire that follows the pointer while a joint is being made, and why it may not go where it is. */
import { type ConnectionLineComponentProps, type ReactFlowState, useStore } from "@xyflow/react";
import { joinRefusal } from "./joining.ts";
import { routePath } from "./route.ts";

const zoomOf = (s: ReactFlowState) => s.transform[2];

export function JoinLine(props: ConnectionLineComponentProps) {
  const { fromX, fromY, toX, toY, fromHandle, toHandle, connectionStatus } = props;
  // The reason is read at its own size, however far away one stands.
  const zoom = useStore(zoomOf);
  const middle = (fromX + toX) / 2;
  const path = routePath([
    { x: fromX, y: fromY },
    { x: middle, y: fromY },
    { x: middle, y: toY },
    { x: toX, y: toY },
  ]);
  const reason =
    connectionStatus === "invalid" && toHandle?.id && fromHandle.id
      ? joinRefusal([fromHandle.nodeId, fromHandle.id], [toHandle.nodeId, toHandle.id])
      : null;
  return (
    <g className="join-line" data-status={connectionStatus ?? "open"}>
      <path className="join-path" d={path} />
      {reason && (
        <g transform={`translate(${toX} ${toY}) scale(${1 / zoom})`}>
          <foreignObject x={14} y={14} width={280} height={120} className="join-reason-frame">
            <div className="join-reason">{reason}</div>
          </foreignObject>
        </g>
      )}
    </g>
  );
}
