import { MouseSensor, TouchSensor, useSensor, useSensors } from "@dnd-kit/core";
import { useCallback, useEffect, useRef } from "react";
import type { Point } from "../../canvas/layout.ts";

/**
 * A mouse drags after a few pixels, so that a click stays a click; a finger drags after resting a moment,
 * so that a swipe scrolls the tray.
 */
export function useTraySensors() {
  return useSensors(
    useSensor(MouseSensor, { activationConstraint: { distance: 6 } }),
    useSensor(TouchSensor, { activationConstraint: { delay: 180, tolerance: 8 } }),
  );
}

/**
 * Where the pointer is [px in the window], null before it moved. Asked of its own events: what the library tells of a drag
 * is as old as the last drawing, and on a slow device a part would land where the pointer no longer is.
 */
export function usePointer(): () => Point | null {
  const at = useRef<Point | null>(null);
  useEffect(() => {
    const note = (event: MouseEvent | TouchEvent) => {
      const { clientX, clientY } = "changedTouches" in event ? (event.changedTouches[0] ?? NOWHERE) : event;
      at.current = { x: clientX, y: clientY };
    };
    const stop = new AbortController();
    // Before the library hears of it, and lets go.
    for (const kind of NOTED)
      window.addEventListener(kind, note, { capture: true, passive: true, signal: stop.signal });
    return () => stop.abort();
  }, []);
  return useCallback(() => at.current, []);
}

const NOTED = ["mousedown", "mousemove", "mouseup", "touchstart", "touchmove", "touchend"] as const;
const NOWHERE = { clientX: 0, clientY: 0 } as const;
