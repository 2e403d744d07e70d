/** Where one looks at a diagram: follows the library’s view, and moves it when asked to. */
import { useReactFlow } from "@xyflow/react";
import { type RefObject, useCallback, useLayoutEffect, useMemo, useState } from "react";
import type { Design } from "../../design/design.ts";
import { boxesOf } from "./boxes.ts";
import { type Box, boundsOf, type Size } from "./layout.ts";
import { sizeOf } from "./paneSize.ts";
import type { DiagramView } from "./view.ts";
import { areaInView, nudgedIntoView, type Viewport, wholeView, zoomedBy } from "./viewMath.ts";
import { updateDetail } from "./watchView.ts";

const GLIDE = { duration: 260 };
/** A glide over more parts than this would draw all that it passes. */
const MOST_GLIDE_PARTS = 120;

/** @param designNow the design that is drawn, asked for at each move; the same function at every call */
export function useDiagramView(frame: RefObject<HTMLElement | null>, designNow: () => Design) {
  const flow = useReactFlow();

  const paneSize = useCallback(
    (): Size => (frame.current ? sizeOf(frame.current) : { width: 800, height: 600 }),
    [frame],
  );
  // What is to be drawn there is settled before the view goes there, so that it is never drawn twice.
  const go = useCallback(
    (target: Viewport, glide = false) => {
      updateDetail(designNow(), target, paneSize());
      const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
      // While it is printed the canvas has no size, and a glide would divide by it.
      const isSeen = (frame.current?.clientWidth ?? 0) > 0;
      flow.setViewport(target, glide && isSeen && !calm ? GLIDE : {});
    },
    [flow, paneSize, frame, designNow],
  );
  const onMove = useCallback(
    (_: unknown, view: Viewport) => updateDetail(designNow(), view, paneSize()),
    [designNow, paneSize],
  );
  const view = useMemo((): DiagramView => {
    const area = (): Box => areaInView(flow.getViewport(), paneSize());
    return {
      hasParts: () => designNow().parts.length > 0,
      fit: () => {
        const bounds = boundsOf(boxesOf(designNow()));
        if (bounds) go(wholeView(bounds, paneSize()), designNow().parts.length < MOST_GLIDE_PARTS);
      },
      zoomBy: (factor) => go(zoomedBy(flow.getViewport(), paneSize(), factor), true),
      nudge: (box) => {
        const before = flow.getViewport();
        const after = nudgedIntoView(before, box, paneSize());
        if (after.x !== before.x || after.y !== before.y) go(after, true);
      },
      area,
      toCanvas: (client) => flow.screenToFlowPosition({ ...client }, { snapToGrid: false }),
      toWindow: (at) => flow.flowToScreenPosition({ ...at }),
      centre: () => {
        const seen = area();
        return { x: seen.x + seen.width / 2, y: seen.y + seen.height / 2 };
      },
      covers: ({ x, y }) => {
        const box = frame.current?.getBoundingClientRect();
        return box !== undefined && x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
      },
    };
  }, [flow, go, paneSize, frame, designNow]);
  return { flow, paneSize, go, onMove, view };
}

/**
 * The first view of a design, worked out from the size of the pane before any part is drawn: drawing first and fitting
 * then would draw twice, once at a place nobody looks at.
 *
 * @param before what is settled about the pane first; the same function at every call
 * @param first where to look; the same function at every call
 */
export function useStartView(
  frame: RefObject<HTMLElement | null>,
  designNow: () => Design,
  before: (pane: HTMLElement) => void,
  first: (design: Design, pane: Size) => Viewport,
): Viewport | null {
  const [start, setStart] = useState<Viewport | null>(null);
  useLayoutEffect(() => {
    if (!frame.current) return;
    before(frame.current);
    const pane = sizeOf(frame.current);
    const view = first(designNow(), pane);
    updateDetail(designNow(), view, pane);
    setStart(view);
  }, [frame, designNow, before, first]);
  return start;
}
