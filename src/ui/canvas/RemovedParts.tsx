import { ViewportPortal } from "@xyflow/react";
import { useApp } from "../../store/app.ts";
import { boxOf } from "./boxes.ts";

/** Parts that the preview takes away, struck through where they were. */
export function RemovedParts() {
  const removed = useApp((s) => s.preview?.removed);
  const before = useApp((s) => s.design);
  return (
    <ViewportPortal>
      {removed?.map((part) => {
        const { x, y, width, height } = boxOf(before, part);
        return (
          <div key={part.id} className="gone-part" style={{ left: x, top: y, width, height }}>
            <span>
              <span className="unseen">Removed: </span>
              {part.label}
            </span>
          </div>
        );
      })}
    </ViewportPortal>
  );
}
