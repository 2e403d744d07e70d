/** How much the plan of a case shows, by its zoom: the same levels as on the canvas of the editor. */
import { create } from "zustand";
import type { StripDetail } from "../../canvas/Strip.tsx";
import { detailAt } from "../../canvas/state.ts";

export const usePlanDetail = create<{ readonly detail: StripDetail }>(() => ({ detail: "near" }));

export function followPlanZoom(zoom: number): void {
  const detail = detailAt(zoom);
  if (usePlanDetail.getState().detail !== detail) usePlanDetail.setState({ detail });
}
