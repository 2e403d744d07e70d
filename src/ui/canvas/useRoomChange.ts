/**
 * When a pane opens over part of the canvas, the middle of the view stays the middle, and what is selected
 * stays in view: it is mostly a selection that opens the pane.
 */
import { useReactFlow } from "@xyflow/react";
import { type RefObject, useEffect } from "react";
import type { Box, Size } from "./layout.ts";
import { sizeOf } from "./paneSize.ts";
import { nudgedIntoView, type Viewport } from "./viewMath.ts";

/** A constant of its module. */
export type KeptInView = {
  /** What stays in view, if anything. */
  readonly box: () => Box | null;
  /** Gives the focus back to it: out of view for a frame, it was not drawn. */
  readonly refocus?: () => void;
};

export function useRoomChange(
  frame: RefObject<HTMLElement | null>,
  go: (view: Viewport) => void,
  held: KeptInView,
): void {
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
      const box = held.box();
      go(box ? nudgedIntoView(centred, box, now) : centred);
      const { activeElement } = document;
      if (box && (activeElement === document.body || activeElement === element)) held.refocus?.();
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [frame, flow, go, held]);
}
