/** Changing between the drawing and the overview of it, with the keyboard's focus going along. */
import { useEffect } from "react";
import type { Design } from "../../design/design.ts";
import { useApp } from "../../store/app.ts";
import { boxesOf, boxOf } from "./boxes.ts";
import { type Box, boundsOf, type Size } from "./layout.ts";
import { LEAST_DRAWING_ZOOM } from "./overview/sizes.ts";
import { skeletonOf } from "./overview/skeleton.ts";
import { setCanvas } from "./state.ts";
import { canvasView } from "./view.ts";
import { fittingView } from "./viewMath.ts";

export function turnToOverview(): void {
  setCanvas({ showing: "overview", focusFollows: isFocusIn(".react-flow"), detail: "plan" });
}

export function turnToDrawing(): void {
  setCanvas({ showing: "drawing" });
}

export function isFocusIn(selector: string): boolean {
  return document.activeElement?.closest(selector) != null;
}

/** Cards come back a few per frame. */
const MOST_FRAMES = 40;

export function focusCard(part: string): void {
  let frames = 0;
  const look = () => {
    const card = document.querySelector<HTMLElement>(`.react-flow__node[data-id="${CSS.escape(part)}"]`);
    if (card) card.focus({ preventScroll: true });
    else if (frames++ < MOST_FRAMES) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** All of a design where its cards can be read then, else where its signals begin; null for an empty one. */
export function readableStart(design: Design, pane: Size): Box | null {
  const whole = boundsOf(boxesOf(design));
  if (!whole || fittingView(whole, pane).zoom >= LEAST_DRAWING_ZOOM) return whole;
  const { cards } = skeletonOf(design);
  const first = design.parts.find((part) => part.id === cards[0]?.id) ?? design.parts[0];
  if (!first) return whole;
  const { x, y } = boxOf(design, first);
  const [width, height] = [pane.width, pane.height];
  return { x: x - width / 4, y: y - height / 2, width, height };
}

/** Joining by two presses, and a part that was added, are seen in the drawing alone. */
export function useDrawingWhenNeeded(): void {
  useEffect(
    () =>
      useApp.subscribe((now, before) => {
        if (now.connecting && !before.connecting) turnToDrawing();
        if (now.opened !== before.opened || now.design === before.design) return;
        const known = new Set(before.design.parts.map((part) => part.id));
        const added = now.design.parts.filter((part) => !known.has(part.id)).map((part) => part.id);
        if (added.length > 0) canvasView()?.seen(added);
      }),
    [],
  );
}
