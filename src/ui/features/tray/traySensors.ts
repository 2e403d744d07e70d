import {
  type DragEndEvent,
  type DragMoveEvent,
  MouseSensor,
  TouchSensor,
  useSensor,
  useSensors,
} from "@dnd-kit/core";
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

/** Where the pointer is now [px in the window]. */
export function pointOf({ activatorEvent, delta }: DragMoveEvent | DragEndEvent): Point | null {
  const start =
    typeof TouchEvent !== "undefined" && activatorEvent instanceof TouchEvent
      ? activatorEvent.touches[0]
      : activatorEvent instanceof MouseEvent
        ? activatorEvent
        : undefined;
  return start ? { x: start.clientX + delta.x, y: start.clientY + delta.y } : null;
}
