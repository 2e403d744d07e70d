/** How a place stands, by a mark as well as by its colour. */
import type { PlaceState } from "../../../findings/placeState.ts";
import { placeLook } from "../../kit/told/stateLook.ts";

export function StateMark({ state }: { readonly state: PlaceState }) {
  const { Icon } = placeLook(state);
  return (
    <span className="place-mark" data-state={state} aria-hidden="true">
      <Icon strokeWidth={3.2} />
    </span>
  );
}
