/** The canvas: parts, wires and their strips, and all that is done to them by hand. */
import { ReactFlowProvider } from "@xyflow/react";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { useApp } from "../../store/app.ts";
import { afterLayout } from "../kit/afterLayout.ts";
import { useSize } from "../kit/useSize.ts";
import { CanvasBar } from "./CanvasBar.tsx";
import { CanvasDialogs } from "./CanvasDialogs.tsx";
import { CanvasMenu } from "./CanvasMenu.tsx";
import { EditorDiagram } from "./EditorDiagram.tsx";
import { EmptyHint } from "./EmptyHint.tsx";
import { useHasHighlight } from "./highlight.ts";
import { Minimap } from "./Minimap.tsx";
import { OfferPopover } from "./OfferPopover.tsx";
import { Overview } from "./overview/Overview.tsx";
import { opensAsOverview } from "./overview/whenOverview.ts";
import { sizeOf } from "./paneSize.ts";
import { PreviewBar } from "./preview/PreviewBar.tsx";
import { SelectionBar } from "./SelectionBar.tsx";
import { setCanvas, useCanvas } from "./state.ts";
import { useClipboard } from "./useClipboard.ts";
import { useStartView } from "./useDiagramView.ts";
import { editorFirstView } from "./viewMath.ts";
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
  const start = useStartView(frame, designNow, chooseShowing, editorFirstView);
  const detail = useCanvas((s) => s.detail);
  const isPreview = useApp((s) => s.preview !== null);
  const isWalked = useHasHighlight();
  useClipboard();
  const isOverview = useCanvas((s) => s.showing === "overview");
  const isDrawn = useDrawn(start !== null, isOverview);
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
          // What is drawn over the drawing has a size of its own, whatever the zoom below it.
          data-detail={isOverview ? "near" : detail}
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
              {isDrawn && (
                <ReactFlowProvider>
                  <EditorDiagram start={start} frame={frame} />
                  <Minimap />
                </ReactFlowProvider>
              )}
            </div>
          )}
          {isOverview && pane && <Overview pane={pane} isBarOver={!isBarElsewhere || isWalked} />}
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

/** The drawing comes with the first picture, or below an overview right after it: what is looked at comes first. */
function useDrawn(hasStart: boolean, isOverview: boolean): boolean {
  const [isDrawn, setDrawn] = useState(false);
  if (hasStart && !isOverview && !isDrawn) setDrawn(true);
  useEffect(() => (isDrawn ? undefined : afterLayout(() => setDrawn(true))), [isDrawn]);
  return isDrawn;
}

/** The part or wire that an element of the canvas belongs to. */
function itemOf(target: EventTarget): string | null {
  const item = target instanceof Element ? target.closest("[data-id]") : null;
  return item?.getAttribute("data-id") ?? null;
}

/** Whether the pane begins with the overview. */
function chooseShowing(pane: HTMLElement): void {
  const isSeen = pane.clientWidth > 0;
  setCanvas({ showing: isSeen && opensAsOverview(designNow(), sizeOf(pane)) ? "overview" : "drawing" });
}

function designNow() {
  return useApp.getState().evaluation.design;
}
