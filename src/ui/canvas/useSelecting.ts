/** Turns what the library says about clicks and selection boxes into the selection of the store. */
import type { EdgeChange, NodeChange } from "@xyflow/react";
import { useMemo } from "react";
import { useApp } from "../../store/app.ts";
import type { PartNode, WireEdge } from "./flowItems.ts";

export function useSelecting() {
  return useMemo(
    () => ({
      onNodes: (changes: NodeChange<PartNode>[]) => {
        const { selection, select } = useApp.getState();
        const parts = applied(selection.parts, changes);
        if (parts) select({ parts, wires: selection.wires });
      },
      onEdges: (changes: EdgeChange<WireEdge>[]) => {
        const { selection, select } = useApp.getState();
        const wires = applied(selection.wires, changes);
        if (wires) select({ parts: selection.parts, wires });
      },
    }),
    [],
  );
}

function applied(ids: readonly string[], changes: (NodeChange<PartNode> | EdgeChange<WireEdge>)[]) {
  const next = new Set(ids);
  let isTold = false;
  for (const change of changes) {
    if (change.type !== "select") continue;
    isTold = true;
    if (change.selected) next.add(change.id);
    else next.delete(change.id);
  }
  return isTold ? [...next] : null;
}
