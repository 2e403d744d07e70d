/** Whether the pane shows the whole design at a glance or the drawing of it. */
import { useShownDesign } from "../../store/hooks.ts";
import { placesIn, skeletonOf } from "./overview/skeleton.ts";
import { setCanvas, useCanvas } from "./state.ts";
import { canvasView } from "./view.ts";

export function ViewSwitch() {
  const showing = useCanvas((s) => s.showing);
  const design = useShownDesign();
  if (placesIn(skeletonOf(design)).length === 0) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: two buttons of one toolbar, no fields of a form
    <div className="view-switch" role="group" aria-label="View">
      <button
        type="button"
        aria-pressed={showing === "overview"}
        onClick={() => canvasView()?.showOverview()}
      >
        Overview
      </button>
      <button
        type="button"
        aria-pressed={showing === "drawing"}
        onClick={() => {
          if (showing !== "overview") return;
          // Until the drawing is there, it is shown as it will begin.
          const view = canvasView();
          if (view) view.enter([]);
          else setCanvas({ showing: "drawing" });
        }}
      >
        Drawing
      </button>
    </div>
  );
}
