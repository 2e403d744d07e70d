/** Lines on which a dragged card lies level with others. */
import { ViewportPortal } from "@xyflow/react";
import { useCanvas } from "./state.ts";
import { useScreenPixel } from "./useScreenPixel.ts";

const FAR_PX = 100_000;

export function GuideLines() {
  const { x, y } = useCanvas((s) => s.guides);
  return x === null && y === null ? null : <Lines x={x} y={y} />;
}

function Lines({ x, y }: { readonly x: number | null; readonly y: number | null }) {
  const style = useScreenPixel();
  return (
    <ViewportPortal>
      <svg className="guide-lines" style={style} width={1} height={1} aria-hidden="true">
        {x !== null && <path className="guide-line" d={`M${x} ${-FAR_PX}V${FAR_PX}`} />}
        {y !== null && <path className="guide-line" d={`M${-FAR_PX} ${y}H${FAR_PX}`} />}
      </svg>
    </ViewportPortal>
  );
}
