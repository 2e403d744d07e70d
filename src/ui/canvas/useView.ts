/** Where one looks on the canvas of the editor: the view of its drawing, and the overview in its place. */
import type { Viewport as FlowViewport, ReactFlowInstance } from "@xyflow/react";
import { type RefObject, useCallback, useEffect, useMemo, useRef } from "react";
import { useApp } from "../../store/app.ts";
import { useShownDesign } from "../../store/hooks.ts";
import { LEVEL_ZOOMS } from "./detail.ts";
import { boundsOf, isWithin } from "./layout.ts";
import { itemOfParts, partsOfItem, skeletonOf } from "./overview/skeleton.ts";
import { hasOverview, leavesDrawing, opensAsOverview } from "./overview/whenOverview.ts";
import { focusSelected } from "./selectedFocus.ts";
import {
  focusCard,
  isFocusIn,
  readableStart,
  turnToDrawing,
  turnToOverview,
  useDrawingWhenNeeded,
} from "./showing.ts";
import { setCanvas, useCanvas } from "./state.ts";
import { useDiagramView } from "./useDiagramView.ts";
import { type KeptInView, useRoomChange } from "./useRoomChange.ts";
import { attachCanvas, type CanvasView } from "./view.ts";
import { boxesAround, editorFirstView, fittingView, zoomedBy } from "./viewMath.ts";
import { updateDetail } from "./watchView.ts";
import { wireUnder } from "./wireUnder.ts";

const designNow = () => useApp.getState().evaluation.design;
const isOverview = () => useCanvas.getState().showing === "overview";

const SELECTED: KeptInView = {
  box: () => {
    const { parts, wires } = useApp.getState().selection;
    return boundsOf(boxesAround(designNow(), parts, wires));
  },
  refocus: focusSelected,
};

export function useView(frame: RefObject<HTMLDivElement | null>) {
  const { flow, paneSize, go, onMove: follow, view: drawing } = useDiagramView(frame, designNow);

  const lastZoom = useRef(1);
  const onMove = useCallback(
    (by: MouseEvent | TouchEvent | null, view: FlowViewport) => {
      const isOut = by !== null && view.zoom < lastZoom.current;
      lastZoom.current = view.zoom;
      if (isOut && leavesDrawing(designNow(), paneSize(), view.zoom)) turnToOverview();
      follow(by, view);
    },
    [paneSize, follow],
  );

  const view = useMemo((): CanvasView => {
    const show: CanvasView["show"] = (box) => {
      turnToDrawing();
      go(fittingView(box, paneSize(), 1), false);
    };
    const enter: CanvasView["enter"] = (parts) => {
      const hadFocus = isFocusIn(".overview");
      const box = parts.length > 0 ? boundsOf(boxesAround(designNow(), parts, [])) : null;
      const target = box ?? readableStart(designNow(), paneSize());
      turnToDrawing();
      if (target) show(target);
      const [first] = parts;
      if (hadFocus && first !== undefined) focusCard(first);
    };
    return {
      ...drawing,
      show,
      enter,
      fit: () => {
        if (opensAsOverview(designNow(), paneSize())) {
          turnToOverview();
          return;
        }
        turnToDrawing();
        drawing.fit();
      },
      open: () => {
        // Where nothing is laid out there is nothing to choose.
        const isSeen = (frame.current?.clientWidth ?? 0) > 0;
        const opensSo = isSeen && opensAsOverview(designNow(), paneSize());
        setCanvas({ showing: opensSo ? "overview" : "drawing", item: null });
        go(editorFirstView(designNow(), paneSize()), false);
      },
      showOverview: () => {
        if (hasOverview(designNow(), paneSize())) turnToOverview();
      },
      seen: (parts) => {
        if (isOverview()) enter(parts);
      },
      showIfReadable: (box) => {
        turnToDrawing();
        const whole = fittingView(box, paneSize());
        if (whole.zoom >= LEVEL_ZOOMS.small) go(whole, false);
      },
      nudge: (box) => {
        if (isOverview()) show(box);
        else drawing.nudge(box);
      },
      zoomBy: (factor) => {
        if (isOverview()) {
          const { item } = useCanvas.getState();
          if (factor > 1) enter(item === null ? [] : partsOfItem(skeletonOf(designNow()), item));
          return;
        }
        const { zoom } = zoomedBy(flow.getViewport(), paneSize(), factor);
        if (factor < 1 && leavesDrawing(designNow(), paneSize(), zoom)) turnToOverview();
        else drawing.zoomBy(factor);
      },
      wireUnder,
    };
  }, [flow, go, paneSize, drawing, frame]);

  useEffect(() => attachCanvas(view), [view]);
  useDrawingWhenNeeded();
  useFollow(view, flow, paneSize);
  useRoomChange(frame, go, SELECTED);
  return { onMove, area: drawing.area, toCanvas: drawing.toCanvas };
}

/** Looks at a design that was opened, and at what some pane asks to be shown. */
function useFollow(
  view: CanvasView,
  flow: ReactFlowInstance,
  paneSize: () => { width: number; height: number },
): void {
  const opened = useApp((s) => s.opened);
  const framing = useApp((s) => s.framing);
  const design = useShownDesign();

  // biome-ignore lint/correctness/useExhaustiveDependencies: each opened design is fitted once
  useEffect(() => {
    view.open();
  }, [opened, view]);

  useEffect(() => {
    if (!framing) return;
    if (useCanvas.getState().showing === "overview") {
      // What the overview shows is pointed out there; a wire, or a cable on the way, is seen in the drawing alone.
      const item = itemOfParts(skeletonOf(useApp.getState().evaluation.design), framing.parts);
      if (item !== null && framing.wires.length === 0) {
        setCanvas({ item });
        return;
      }
    }
    const boxes = boxesAround(useApp.getState().evaluation.design, framing.parts, framing.wires);
    const bounds = boundsOf(boxes);
    if (!bounds) return;
    const readable = flow.getZoom() >= 0.6;
    // Somebody who can see it already should not lose their bearings.
    if (!isWithin(bounds, view.area()) || !readable) view.show(bounds);
  }, [framing, view, flow]);

  useEffect(() => {
    updateDetail(design, flow.getViewport(), paneSize());
  }, [design, flow, paneSize]);
}
