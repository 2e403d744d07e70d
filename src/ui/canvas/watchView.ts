/** Chooses how much is drawn, from the view and what lies in it. */
import type { Design } from "../../design/design.ts";
import { detailFor, MOST_CARDS, MOST_STRIPS } from "./detail.ts";
import type { Size } from "./layout.ts";
import { setCanvas, useCanvas } from "./state.ts";
import { areaInView, partsInView, type Viewport, wiresAt } from "./viewMath.ts";

export function updateDetail(design: Design, view: Viewport, pane: Size): void {
  // Behind the overview no card is drawn.
  if (useCanvas.getState().showing === "overview") {
    setCanvas({ detail: "plan" });
    return;
  }
  // A small design can't crowd the view: nothing to count.
  const isSmall = design.parts.length <= MOST_CARDS && design.wires.length <= MOST_STRIPS;
  const seen = isSmall ? null : partsInView(design, areaInView(view, pane));
  setCanvas({
    detail: detailFor({
      zoom: view.zoom,
      partsInView: seen?.size ?? design.parts.length,
      wiresInView: seen ? wiresAt(design, seen) : design.wires.length,
    }),
  });
}
