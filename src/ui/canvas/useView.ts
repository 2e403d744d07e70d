/** Where one looks: follows the library's view, and moves it when asked to. */
import { type Viewport as FlowViewport, useReactFlow } from "@xyflow/react";
import { type RefObject, useCallback, useEffect, useMemo, useRef } from "react";
import { useApp } from "../../store/app.ts";
import { useShownDesign } from "../../store/hooks.ts";
import { boxesOf } from "./boxes.ts";
import { type Box, boundsOf, type Point } from "./layout.ts";
import { itemOfParts, partsOfItem, skeletonOf } from "./overview/skeleton.ts";
import { hasOverview, leavesDrawing, opensAsOverview } from "./overview/whenOverview.ts";
import { sizeOf } from "./paneSize.ts";
import {
  focusCard,
  isFocusIn,
  readableStart,
  turnToDrawing,
  turnToOverview,
  useDrawingWhenNeeded,
} from "./showing.ts";
import { setCanvas, useCanvas } from "./state.ts";
import { useRoomChange } from "./useRoomChange.ts";
import { attachView, type CanvasView, canvasView } from "./view.ts";
import {
  areaInView,
  boxesAround,
  emptyView,
  fittingView,
  LEAST_ZOOM,
  MOST_ZOOM,
  nudgedIntoView,
  openingView,
  type Viewport,
} from "./viewMath.ts";
import { updateDetail } from "./watchView.ts";
import { wireUnder } from "./wireUnder.ts";

/** Below this, cards show hardly more than a colour (see `detailFor`). */
const LEAST_NAMED_ZOOM = 0.4;

const partCount = () => useApp.getState().evaluation.design.parts.length;

const GLIDE = { duration: 260 };

export function useView(frame: RefObject<HTMLDivElement | null>) {
  const flow = useReactFlow();

  const paneSize = useCallback(
    () => (frame.current ? sizeOf(frame.current) : { width: 800, height: 600 }),
    [frame],
  );
  const lastZoom = useRef(1);
  const onMove = useCallback(
    (by: MouseEvent | TouchEvent | null, view: FlowViewport) => {
      const { design } = useApp.getState().evaluation;
      const isOut = by !== null && view.zoom < lastZoom.current;
      lastZoom.current = view.zoom;
      if (isOut && leavesDrawing(design, paneSize(), view.zoom)) turnToOverview();
      updateDetail(design, view, paneSize());
    },
    [paneSize],
  );
  const area = useCallback((): Box => areaInView(flow.getViewport(), paneSize()), [flow, paneSize]);
  const toCanvas = useCallback(
    (client: Point) => flow.screenToFlowPosition(client, { snapToGrid: false }),
    [flow],
  );

  // What is to be drawn there is settled before the view goes there, so that it is never drawn twice.
  const go = useCallback(
    (target: Viewport, glide = false) => {
      updateDetail(useApp.getState().evaluation.design, target, paneSize());
      const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
      // While it is printed the canvas has no size, and a glide would divide by it.
      const isSeen = (frame.current?.clientWidth ?? 0) > 0;
      flow.setViewport(target, glide && isSeen && !calm ? GLIDE : {});
    },
    [flow, paneSize, frame],
  );

  const view = useMemo((): CanvasView => {
    return {
      fit: () => {
        if (opensAsOverview(useApp.getState().evaluation.design, paneSize())) {
          turnToOverview();
          return;
        }
        turnToDrawing();
        const bounds = boundsOf(boxesOf(useApp.getState().evaluation.design));
        // A glide over a thousand parts would draw all that it passes.
        const isSmall = useApp.getState().evaluation.design.parts.length < 120;
        if (bounds) go(fittingView(bounds, paneSize()), isSmall);
      },
      open: (box) => {
        // Where nothing is laid out there is nothing to choose.
        const isSeen = (frame.current?.clientWidth ?? 0) > 0;
        const isOverview = isSeen && opensAsOverview(useApp.getState().evaluation.design, paneSize());
        setCanvas({ showing: isOverview ? "overview" : "drawing", item: null });
        go(box ? openingView(box, paneSize(), partCount()) : emptyView(paneSize()), false);
      },
      show: (box) => {
        turnToDrawing();
        go(fittingView(box, paneSize(), 1), false);
      },
      enter: (parts) => {
        const { design } = useApp.getState().evaluation;
        const hadFocus = isFocusIn(".overview");
        turnToDrawing();
        const box = parts.length > 0 ? boundsOf(boxesAround(design, parts, [])) : null;
        const target = box ?? readableStart(design, paneSize());
        if (target) go(fittingView(target, paneSize(), 1), false);
        const [first] = parts;
        if (hadFocus && first !== undefined) focusCard(first);
      },
      showOverview: () => {
        if (hasOverview(useApp.getState().evaluation.design, paneSize())) turnToOverview();
      },
      seen: (parts) => {
        if (useCanvas.getState().showing === "overview") canvasView()?.enter(parts);
      },
      showIfReadable: (box) => {
        turnToDrawing();
        const whole = fittingView(box, paneSize());
        if (whole.zoom >= LEAST_NAMED_ZOOM) go(whole, false);
      },
      nudge: (box) => {
        if (useCanvas.getState().showing === "overview") {
          canvasView()?.show(box);
          return;
        }
        const before = flow.getViewport();
        const after = nudgedIntoView(before, box, paneSize());
        if (after.x !== before.x || after.y !== before.y) go(after, true);
      },
      zoomBy: (factor) => {
        const { design } = useApp.getState().evaluation;
        if (useCanvas.getState().showing === "overview") {
          const { item } = useCanvas.getState();
          if (factor > 1) canvasView()?.enter(item === null ? [] : partsOfItem(skeletonOf(design), item));
          return;
        }
        const { x, y, zoom } = flow.getViewport();
        const { width, height } = paneSize();
        const next = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, zoom * factor));
        if (factor < 1 && leavesDrawing(design, paneSize(), next)) {
          turnToOverview();
          return;
        }
        const k = next / zoom;
        go({ x: width / 2 - (width / 2 - x) * k, y: height / 2 - (height / 2 - y) * k, zoom: next }, true);
      },
      toCanvas,
      toWindow: (at) => flow.flowToScreenPosition({ ...at }),
      centre: () => {
        const seen = area();
        return { x: seen.x + seen.width / 2, y: seen.y + seen.height / 2 };
      },
      covers: ({ x, y }) => {
        const box = frame.current?.getBoundingClientRect();
        return box !== undefined && x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
      },
      wireUnder,
    };
  }, [flow, go, paneSize, toCanvas, area, frame]);

  useEffect(() => attachView(view), [view]);
  useDrawingWhenNeeded();
  useFollow(view, area, paneSize);
  useRoomChange(frame, go);
  return { onMove, area, toCanvas };
}

/** Looks at a design that was opened, and at what some pane asks to be shown. */
function useFollow(
  view: CanvasView,
  area: () => Box,
  paneSize: () => { width: number; height: number },
): void {
  const opened = useApp((s) => s.opened);
  const framing = useApp((s) => s.framing);
  const design = useShownDesign();
  const flow = useReactFlow();

  // biome-ignore lint/correctness/useExhaustiveDependencies: each opened design is fitted once
  useEffect(() => {
    const bounds = boundsOf(boxesOf(useApp.getState().evaluation.design));
    view.open(bounds);
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
    const seen = area();
    const readable = flow.getZoom() >= 0.6;
    const inside =
      bounds.x >= seen.x &&
      bounds.y >= seen.y &&
      bounds.x + bounds.width <= seen.x + seen.width &&
      bounds.y + bounds.height <= seen.y + seen.height;
    // Somebody who can see it already should not lose their bearings.
    if (!inside || !readable) view.show(bounds);
  }, [framing, view, area, flow]);

  useEffect(() => {
    updateDetail(design, flow.getViewport(), paneSize());
  }, [design, flow, paneSize]);
}
