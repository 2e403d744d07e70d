import { ChevronLeft, ChevronRight, X } from "lucide-react";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { stepBy } from "./steps.ts";
import type { ShownWalk } from "./walk.ts";

/** Where one stands on the way, what happens there, and the steps to either side. */
export function StepBar({ shown }: { readonly shown: ShownWalk }) {
  const { route, stop } = shown;
  const here = route.stops[stop];
  const { trouble } = route;
  return (
    <div className="step-bar">
      <StepButtons shown={shown} />
      <p className="step-words" aria-live="polite">
        <strong>
          Step {stop + 1} of {route.stops.length}
        </strong>{" "}
        {here?.words}
        {trouble?.at === stop ? (
          <>
            {" "}
            <span className={`trouble-here ${trouble.kind}`}>
              <X size={14} aria-hidden /> {capital(trouble.mark)}
              {trouble.words === here?.words ? "" : `: ${trouble.words}`}
            </span>
          </>
        ) : null}
      </p>
    </div>
  );
}

/** One step to the left and one to the right, as on the canvas: the roof is at the left. */
export function StepButtons({ shown }: { readonly shown: ShownWalk }) {
  const { route, stop, view } = shown;
  const isDown = view === "signal";
  const last = route.stops.length - 1;
  const roofwards = isDown ? -1 : 1;
  return (
    <span className="step-buttons">
      <IconButton
        bordered
        icon={ChevronLeft}
        name="One step towards the roof"
        keys="←"
        disabled={isDown ? stop <= 0 : stop >= last}
        onPress={() => stepBy(roofwards)}
      />
      <IconButton
        bordered
        icon={ChevronRight}
        name="One step towards the receiver"
        keys="→"
        disabled={isDown ? stop >= last : stop <= 0}
        onPress={() => stepBy(-roofwards)}
      />
    </span>
  );
}
