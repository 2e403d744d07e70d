/** Joining by dragging a wire from port to port, or to any card. */
import type { Connection, OnConnectEnd, OnConnectStart } from "@xyflow/react";
import { useMemo } from "react";
import type { PortRef } from "../../design/design.ts";
import { useApp } from "../../store/app.ts";
import type { WireEdge } from "./flowItems.ts";
import { joinPorts, joinRefusal, joinToPart } from "./joining.ts";
import { joinTargetKeys } from "./state.ts";

export function useJoining() {
  return useMemo(() => {
    const onConnectStart: OnConnectStart = (_, { nodeId, handleId }) => {
      if (nodeId && handleId) useApp.getState().setConnecting([nodeId, handleId]);
    };

    const onConnect = (joint: Connection) => {
      const ends = endsOf(joint);
      if (ends) joinPorts(...ends);
    };

    const onConnectEnd: OnConnectEnd = (event, state) => {
      const { connecting, setConnecting, notify } = useApp.getState();
      setConnecting(null);
      if (!connecting || state.isValid) return;
      const { toHandle } = state;
      if (toHandle?.id) {
        const to: PortRef = [toHandle.nodeId, toHandle.id];
        const reason =
          to[0] === connecting[0] && to[1] === connecting[1] ? null : joinRefusal(connecting, to);
        if (reason) notify(reason, "warning");
        return;
      }
      const card = cardUnder(event);
      if (card) joinToPart(connecting, card);
    };

    const isValidConnection = (joint: Connection | WireEdge): boolean => {
      const { connecting, design } = useApp.getState();
      const ends = endsOf(joint);
      if (!connecting || !ends) return false;
      const [from, to] = ends;
      const other = from[0] === connecting[0] && from[1] === connecting[1] ? to : from;
      return joinTargetKeys(design, connecting).has(other.join("/"));
    };

    return { onConnectStart, onConnect, onConnectEnd, isValidConnection };
  }, []);
}

function endsOf(joint: Connection | WireEdge): readonly [PortRef, PortRef] | null {
  const { source, sourceHandle, target, targetHandle } = joint;
  if (!sourceHandle || !targetHandle) return null;
  return [
    [source, sourceHandle],
    [target, targetHandle],
  ];
}

function cardUnder(event: MouseEvent | TouchEvent): string | null {
  const point = "changedTouches" in event ? event.changedTouches[0] : event;
  if (!point) return null;
  const card = document.elementFromPoint(point.clientX, point.clientY)?.closest(".react-flow__node");
  return card instanceof HTMLElement ? (card.dataset.id ?? null) : null;
}
