/** Turning the wheel towards the overview goes into the drawing, at the thing below the pointer. */
import { type RefObject, useEffect } from "react";
import { canvasView } from "../view.ts";
import { itemOf, partsAt } from "./items.ts";

/** So much of a turn, that a touch of the wheel does nothing [px]. */
const LEAST_TURN_PX = 60;
/** A pause after which a turn begins anew [ms]. */
const PAUSE_MS = 300;

export function useWheelIn(frame: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    let turned = 0;
    let last = 0;
    const onWheel = (event: WheelEvent) => {
      const scrolls = element.scrollHeight > element.clientHeight + 1;
      // Where there is something to scroll, the wheel does that, and zooms with Ctrl as everywhere.
      if (scrolls && !event.ctrlKey) return;
      event.preventDefault();
      turned = event.timeStamp - last > PAUSE_MS ? 0 : turned;
      last = event.timeStamp;
      // A pinch on a touchpad comes as a slow wheel with Ctrl.
      turned += event.ctrlKey ? event.deltaY * 6 : event.deltaY;
      if (turned > 0) turned = 0;
      if (turned > -LEAST_TURN_PX) return;
      turned = 0;
      const item =
        event.target && (itemOf(event.target) ?? element.querySelector<HTMLElement>("[tabindex='0']"));
      if (item) canvasView()?.enter(partsAt(item));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [frame]);
}
