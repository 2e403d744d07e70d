/** The canvas: parts, wires and their strips, and all that is done to them by hand. */
import { ReactFlowProvider } from "@xyflow/react";
import { useLayoutEffect, useRef, useState } from "react";
import { useApp } from "../../store/app.ts";
import { PreviewBar } from "../features/preview/PreviewBar.tsx";
import { useHasHighlight } from "../features/walk/highlight.ts";
import { useWalkHighlight } from "../features/walk/useWalkHighlight.ts";
import { WalkBar } from "../features/walk/WalkBar.tsx";
import { useCommandKeys } from "../shell/keys.ts";
import { boxOf } from "./boxes.ts";
import { CanvasBar } from "./CanvasBar.tsx";
import { CanvasDialogs } from "./CanvasDialogs.tsx";
import { Diagram } from "./Diagram.tsx";
import { EmptyHint } from "./EmptyHint.tsx";
import { Hatches } from "./Hatches.tsx";
import { boundsOf } from "./layout.ts";
import { Minimap } from "./Minimap.tsx";
import { OfferPopover } from "./OfferPopover.tsx";
import { sizeOf } from "./paneSize.ts";
import { SelectionBar } from "./SelectionBar.tsx";
import { useCanvas } from "./state.ts";
import { emptyView, openingView, type Viewport } from "./viewMath.ts";
import { updateDetail } from "./watchView.ts";
import "@xyflow/react/dist/base.css";
import "./canvas.css";
import "./cards.css";
import "./wires.css";
import "./bars.css";
import "./strip.css";
import "../features/walk/highlight.css";

export function Canvas() {
  const frame = useRef<HTMLDivElement>(null);
  const start = useStartView(frame);
  const detail = useCanvas((s) => s.detail);
  const isPreview = useApp((s) => s.preview !== null);
  const isWalked = useHasHighlight();
  useCommandKeys(frame);
  useWalkHighlight(frame);
  return (
    <div className="canvas" ref={frame} data-detail={detail} data-preview={isPreview} data-walk={isWalked}>
      <Hatches />
      {start && (
        <ReactFlowProvider>
          <Diagram start={start} frame={frame} />
          <Minimap />
        </ReactFlowProvider>
      )}
      <EmptyHint />
      <PreviewBar />
      <div className="canvas-bars">
        <WalkBar />
        <SelectionBar />
        <CanvasBar />
      </div>
      <CanvasDialogs />
      <OfferPopover />
    </div>
  );
}

/**
 * The view that shows the whole design, worked out from the size of the canvas before any part is drawn:
 * drawing first and fitting then would draw twice, once at a place nobody looks at.
 */
function useStartView(frame: React.RefObject<HTMLDivElement | null>): Viewport | null {
  const [start, setStart] = useState<Viewport | null>(null);
  useLayoutEffect(() => {
    if (!frame.current) return;
    const pane = sizeOf(frame.current);
    const { design } = useApp.getState().evaluation;
    const bounds = boundsOf(design.parts.map(boxOf));
    const view = bounds ? openingView(bounds, pane, design.parts.length) : emptyView(pane);
    updateDetail(design, view, pane);
    setStart(view);
  }, [frame]);
  return start;
}
