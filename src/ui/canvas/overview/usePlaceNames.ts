import { useShallow } from "zustand/react/shallow";
import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import { useApp } from "../../../store/app.ts";
import { type PlaceName, placeNames } from "./names.ts";

/** What places are called beside each other, in their order. */
export function usePlaceNames(places: readonly FedPlace[]): readonly PlaceName[] {
  const labels = useApp(
    useShallow((s) => places.map(({ key }) => s.evaluation.record(key)?.part.label ?? "")),
  );
  const byKey = new Map(places.map(({ key }, n) => [key, labels[n] ?? ""] as const));
  return placeNames(places, (id) => byKey.get(id) ?? "");
}

export const NAMELESS: PlaceName = { label: "", name: "", short: "" };
