/** How a place stands as a whole: a flat is as good as the worst of its receivers. */
import type { PartId } from "../design/design.ts";
import type { FedPlace } from "../design/feeding/feedingGroups.ts";
import type { Verdict, VerdictState } from "./finding.ts";

export type PlaceState = VerdictState | "idle";

const RANK: readonly VerdictState[] = ["fails", "edge", "works"];

/** Verdicts of a place that count, worst first: of its receivers, or of its outlets where none is judged. */
export function judgedAt(
  { receivers, outlets }: Pick<FedPlace, "receivers" | "outlets">,
  verdictOf: (id: PartId) => Verdict | undefined,
): readonly Verdict[] {
  const judged = (ids: readonly PartId[]) =>
    ids.flatMap((id) => {
      const verdict = verdictOf(id);
      return verdict && !verdict.idle ? [verdict] : [];
    });
  const own = judged(receivers);
  return [...(own.length > 0 ? own : judged(outlets))].sort(
    (a, b) => RANK.indexOf(a.state) - RANK.indexOf(b.state),
  );
}

/** "idle": nothing there is judged, since nothing is connected or switched on. */
export function placeState(
  place: Pick<FedPlace, "receivers" | "outlets">,
  verdictOf: (id: PartId) => Verdict | undefined,
): PlaceState {
  return judgedAt(place, verdictOf)[0]?.state ?? "idle";
}
