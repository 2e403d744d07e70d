/**
 * When a pane opens over part of the canvas, the middle of the view stays the middle, and what is selected
 * stays in view: it is mostly a selection that opens the pane.
 */
import { useReactFlow } from "@xyflow/react";
import { type RefObject, useEffect } from "react";
import { useApp } from "../../store/app.ts";
import { boundsOf, type Size } from "./layout.ts";
import { sizeOf } from "./paneSize.ts";
import { focusSelected } from "./selectedFocus.ts";
import { boxesAround, nudgedIntoView, type Viewport } from "./viewMath.ts";

export function useRoomChange(frame: RefObject<HTMLDivElement | null>, go: (view: Viewport) => void): void {
  const flow = useReactFlow();
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    let before: Size = sizeOf(element);
    const observer = new ResizeObserver(() => {
      const now = sizeOf(element);
      if (now.width === before.width && now.height === before.height) return;
      const { x, y, zoom } = flow.getViewport();
      const centred = {
        x: x + (now.width - before.width) / 2,
        y: y + (now.height - before.height) / 2,
        zoom,
      };
      before = now;
      const { evaluation, selection } = useApp.getState();
      const bounds = boundsOf(boxesAround(evaluation.design, selection.parts, selection.wires));
      go(bounds ? nudgedIntoView(centred, bounds, now) : centred);
      // What had the focus may have been out of view for a frame, and was not drawn.
      const { activeElement } = document;
      if (bounds && (activeElement === document.body || activeElement === element)) focusSelected();
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [frame, flow, go]);
}
