import { Footprints, X } from "lucide-react";
import { endWalk } from "../../kit/asked/walking.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { StepButtons } from "./StepBar.tsx";
import { useWalkHighlight } from "./useWalkHighlight.ts";
import { useShownWalk } from "./walk.ts";

/**
 * On the canvas while a walk is made, which it lights there: the steps within reach of a thumb, even with the pane put
 * away. Where they are within reach already (`isElsewhere`), it lights the way alone.
 */
export function WalkBar({ isElsewhere = false }: { readonly isElsewhere?: boolean }) {
  useWalkHighlight();
  const shown = useShownWalk();
  if (!shown || isElsewhere) return null;
  const { route, stop } = shown;
  return (
    <div className="canvas-bar" role="toolbar" aria-label="Walk">
      <span className="canvas-bar-words walk-bar-words">
        <Footprints size={15} aria-hidden />
        <span>
          {route.stops.length === 0
            ? "Nowhere to walk"
            : `${stop + 1} of ${route.stops.length} · ${route.stops[stop]?.label}`}
        </span>
      </span>
      <StepButtons shown={shown} />
      <IconButton icon={X} name="End the walk" onPress={endWalk} />
    </div>
  );
}
