/**
 * A whole design at a glance, in the place of the drawing: the head, the parts that feed places, and each place with
 * its strip and its result. Fitted to the pane, without a zoom of its own.
 */
import { type KeyboardEvent, type MouseEvent, useEffect, useMemo, useRef } from "react";
import { useShownDesign } from "../../../store/hooks.ts";
import type { Size } from "../layout.ts";
import { setCanvas, useCanvas } from "../state.ts";
import { canvasView } from "../view.ts";
import { Boxes } from "./Boxes.tsx";
import { Cells } from "./Cells.tsx";
import { Facade } from "./Facade.tsx";
import { goByKey, itemOf, partsAt, useFirstStop } from "./items.ts";
import { overviewFor } from "./overviewFor.ts";
import { isStripItem, skeletonOf } from "./skeleton.ts";
import { useWheelIn } from "./useWheelIn.ts";
import "./overview.css";

type Props = {
  readonly pane: Size;
  /** Whether the buttons of the canvas, or of a walk, float over its lower left corner. */
  readonly isBarOver: boolean;
};

export function Overview({ pane, isBarOver }: Props) {
  const frame = useRef<HTMLElement>(null);
  const design = useShownDesign();
  const skeleton = skeletonOf(design);
  const { width, height } = pane;
  const plan = useMemo(
    () => overviewFor(skeleton, { width, height, isBarOver }),
    [skeleton, width, height, isBarOver],
  );
  useFirstStop(skeleton);
  useWheelIn(frame);
  useTakenFocus(frame);
  return (
    // Arrow keys and double clicks of all that is in it; each thing is a button of its own.
    <section
      ref={frame}
      className="overview"
      aria-label="Overview of the design"
      data-level={plan.level}
      onKeyDown={onKey}
      onDoubleClick={onDoubleClick}
    >
      {plan.level === "cells" ? (
        <Cells skeleton={skeleton} />
      ) : (
        <div
          className="overview-sheet"
          style={{
            width: plan.layout.width,
            height: plan.layout.height,
            transform: `translate(${plan.left}px, ${plan.top}px) scale(${plan.scale})`,
          }}
        >
          {plan.level === "boxes" ? (
            <Boxes skeleton={skeleton} layout={plan.layout} />
          ) : (
            <Facade skeleton={skeleton} layout={plan.layout} />
          )}
        </div>
      )}
    </section>
  );
}

function onKey(event: KeyboardEvent<HTMLElement>): void {
  if (goByKey(event)) return;
  const item = itemOf(event.target);
  const isPlain = !event.ctrlKey && !event.metaKey && !event.altKey;
  // A strip opens by it, as any button does.
  if (!item || event.key !== "Enter" || !isPlain || isStripItem(item.dataset.item ?? "")) return;
  event.preventDefault();
  canvasView()?.enter(partsAt(item));
}

function onDoubleClick(event: MouseEvent): void {
  const item = itemOf(event.target);
  if (item) canvasView()?.enter(partsAt(item));
}

/** Whoever was in the drawing with the keyboard goes on here. */
function useTakenFocus(frame: React.RefObject<HTMLElement | null>): void {
  const isTaken = useCanvas((s) => s.focusFollows);
  useEffect(() => {
    if (!isTaken) return;
    setCanvas({ focusFollows: false });
    frame.current?.querySelector<HTMLElement>("[data-item][tabindex='0']")?.focus();
  }, [isTaken, frame]);
}
