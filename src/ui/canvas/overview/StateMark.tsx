/** How a place stands, by a mark as well as by its colour. */
import { Check, CircleDashed, type LucideIcon, TriangleAlert, X } from "lucide-react";
import type { PlaceState } from "../../../findings/placeState.ts";

const MARKS: Readonly<Record<PlaceState, LucideIcon>> = {
  works: Check,
  edge: TriangleAlert,
  fails: X,
  idle: CircleDashed,
};

export function StateMark({ state }: { readonly state: PlaceState }) {
  const Icon = MARKS[state];
  return (
    <span className="place-mark" data-state={state} aria-hidden="true">
      <Icon strokeWidth={3.2} />
    </span>
  );
}
