/** Lights the way of a walk on the canvas, keeps its present stop in view, and lets the arrow keys take steps there. */
import { useEffect } from "react";
import { useApp } from "../../../store/app.ts";
import { boxOf } from "../../canvas/boxes.ts";
import { clearHighlight, highlightRoute } from "../../canvas/highlight.ts";
import { type Box, boundsOf } from "../../canvas/layout.ts";
import { useCanvas } from "../../canvas/state.ts";
import { canvasView } from "../../canvas/view.ts";
import { afterLayout } from "../../kit/afterLayout.ts";
import { currentWalk, endWalk } from "../../kit/asked/walking.ts";
import { handleWalkKey } from "./steps.ts";
import { type ShownWalk, useShownWalk } from "./walk.ts";

export function useWalkHighlight(): void {
  const shown = useShownWalk();
  const route = shown?.route;
  const stop = shown?.stop ?? 0;
  useEffect(() => {
    if (route && route.stops.length > 0) highlightRoute(route, stop);
    else clearHighlight();
  }, [route, stop]);
  useEffect(() => clearHighlight, []);

  const part = route?.stops[stop]?.part;
  const way = shown && wayKey(shown);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another way is shown whole once; an edit leaves the view alone.
  useEffect(() => {
    const show = () => {
      const whole = boxAround(route?.stops.map((s) => s.part) ?? []);
      if (whole) canvasView()?.showIfReadable(whole);
      const spot = boxAround(part === undefined ? [] : [part]);
      if (spot) canvasView()?.nudge(spot);
    };
    return afterLayout(show);
  }, [way]);
  useEffect(() => {
    // Whoever walks along in the overview stays there: it brings the step into view by itself.
    if (useCanvas.getState().showing === "overview") return;
    const spot = boxAround(part === undefined ? [] : [part]);
    if (spot) canvasView()?.nudge(spot);
  }, [part]);

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const target = event.target instanceof Element ? event.target : null;
      const onCanvas = target === document.body || target?.closest(".canvas") != null;
      if (!currentWalk() || !onCanvas || target?.closest("input, textarea, select, [role=dialog]")) return;
      const { selection, preview, connecting } = useApp.getState();
      const isFree = selection.parts.length + selection.wires.length === 0 && !preview && !connecting;
      if (event.key === "Escape" && isFree) endWalk();
      else if (!handleWalkKey(event.key)) return;
      // Before the canvas library sees it: it would move a focused card.
      event.preventDefault();
      event.stopPropagation();
    };
    window.addEventListener("keydown", onKey, { capture: true });
    return () => window.removeEventListener("keydown", onKey, { capture: true });
  }, []);
}

/** Names what is walked, whatever becomes of it. */
function wayKey({ walking, ...shown }: ShownWalk): string {
  const which =
    shown.view === "signal"
      ? `${walking.service} ${shown.way?.carrier.origin}#${shown.way?.carrier.index}`
      : (walking.branch ?? "");
  return `${walking.view} ${walking.place.key} ${which}`;
}

function boxAround(ids: readonly string[]): Box | null {
  const { design, record } = useApp.getState().evaluation;
  return boundsOf(
    ids.flatMap((id) => {
      const found = record(id);
      return found ? [boxOf(design, found.part)] : [];
    }),
  );
}
