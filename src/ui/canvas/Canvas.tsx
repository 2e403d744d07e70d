/** The canvas: parts, wires and their strips, and all that is done to them by hand. */
import { ReactFlowProvider } from "@xyflow/react";
import { type ReactNode, useLayoutEffect, useRef, useState } from "react";
import { useApp } from "../../store/app.ts";
import { useSize } from "../kit/useSize.ts";
import { boxesOf } from "./boxes.ts";
import { CanvasBar } from "./CanvasBar.tsx";
import { CanvasDialogs } from "./CanvasDialogs.tsx";
import { CanvasMenu } from "./CanvasMenu.tsx";
import { Diagram } from "./Diagram.tsx";
import { EmptyHint } from "./EmptyHint.tsx";
import { useHasHighlight } from "./highlight.ts";
import { boundsOf } from "./layout.ts";
import { Minimap } from "./Minimap.tsx";
import { OfferPopover } from "./OfferPopover.tsx";
import { Overview } from "./overview/Overview.tsx";
import { opensAsOverview } from "./overview/whenOverview.ts";
import { sizeOf } from "./paneSize.ts";
import { PreviewBar } from "./preview/PreviewBar.tsx";
import { SelectionBar } from "./SelectionBar.tsx";
import { setCanvas, useCanvas } from "./state.ts";
import { useClipboard } from "./useClipboard.ts";
import { emptyView, openingView, type Viewport } from "./viewMath.ts";
import { updateDetail } from "./watchView.ts";
import "@xyflow/react/dist/base.css";
import "./canvas.css";
import "./cards.css";
import "./wires.css";
import "./bars.css";
import "./strip.css";
import "./highlight.css";

type Props = {
  /** What floats beside the bar of what is selected. */
  readonly children?: ReactNode;
  /** What it shows while nothing is drawn. */
  readonly empty?: ReactNode;
  /** Whether its buttons stand elsewhere. */
  readonly isBarElsewhere?: boolean;
};

export function Canvas({ children, empty, isBarElsewhere = false }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const start = useStartView(frame);
  const detail = useCanvas((s) => s.detail);
  const isPreview = useApp((s) => s.preview !== null);
  const isWalked = useHasHighlight();
  useClipboard();
  const isOverview = useCanvas((s) => s.showing === "overview");
  const [attach, pane] = useSize();
  const follow = (event: { readonly target: EventTarget }) => setCanvas({ near: itemOf(event.target) });
  return (
    <>
      <CanvasMenu>
        {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is for what is filled in. */}
        <div
          className="canvas"
          ref={frame}
          role="group"
          aria-label="Canvas"
          tabIndex={-1}
          data-detail={detail}
          data-preview={isPreview}
          data-walk={isWalked}
          onPointerOver={follow}
          onPointerLeave={() => setCanvas({ near: null })}
          onFocus={follow}
        >
          <EmptyHint>{empty}</EmptyHint>
          {start && (
            // The drawing keeps its place and its view below the overview.
            <div className="drawing" ref={attach} inert={isOverview} data-covered={isOverview}>
              <ReactFlowProvider>
                <Diagram start={start} frame={frame} />
                <Minimap />
              </ReactFlowProvider>
            </div>
          )}
          {isOverview && pane && <Overview pane={pane} isBarOver={!isBarElsewhere} />}
          <PreviewBar />
          <div className="canvas-bars">
            {children}
            {isBarElsewhere ? null : (
              <>
                <SelectionBar />
                <CanvasBar />
              </>
            )}
          </div>
        </div>
      </CanvasMenu>
      <CanvasDialogs />
      <OfferPopover />
    </>
  );
}

/** The part or wire that an element of the canvas belongs to. */
function itemOf(target: EventTarget): string | null {
  const item = target instanceof Element ? target.closest("[data-id]") : null;
  return item?.getAttribute("data-id") ?? null;
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
    const bounds = boundsOf(boxesOf(design));
    const view = bounds ? openingView(bounds, pane, design.parts.length) : emptyView(pane);
    const isSeen = frame.current.clientWidth > 0;
    setCanvas({ showing: isSeen && opensAsOverview(design, pane) ? "overview" : "drawing" });
    updateDetail(design, view, pane);
    setStart(view);
  }, [frame]);
  return start;
}
