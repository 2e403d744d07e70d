/** Lines on which a dragged card lies level with others. */
import { ViewportPortal } from "@xyflow/react";
import { useCanvas } from "./state.ts";

const FAR_PX = 100_000;

export function GuideLines() {
  const { x, y } = useCanvas((s) => s.guides);
  if (x === null && y === null) return null;
  return (
    <ViewportPortal>
      <svg className="guide-lines" width={1} height={1} aria-hidden="true">
        {x !== null && <path className="guide-line" d={`M${x} ${-FAR_PX}V${FAR_PX}`} />}
        {y !== null && <path className="guide-line" d={`M${-FAR_PX} ${y}H${FAR_PX}`} />}
      </svg>
    </ViewportPortal>
  );
}
