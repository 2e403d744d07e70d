import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import { judgedAt } from "../../../findings/placeState.ts";
import { useApp } from "../../../store/app.ts";
import { useShownDesign, verdictOf } from "../../../store/hooks.ts";
import { Cells } from "../../canvas/overview/Cells.tsx";
import { goByKey, useFirstStop } from "../../canvas/overview/items.ts";
import { MannerContext, type OverviewManner } from "../../canvas/overview/manner.ts";
import { skeletonOf } from "../../canvas/overview/skeleton.ts";
import { openPart } from "../../canvas/reveal.ts";
import { showChainOf } from "../../kit/panes.ts";
import { placeLook } from "../../kit/told/stateLook.ts";

/** The whole house at a glance: a cell for every place, under the part that feeds it. */
export function OverviewPane() {
  const skeleton = skeletonOf(useShownDesign());
  useFirstStop(skeleton);
  if (skeleton.cards.length === 0 && skeleton.groups.length === 0)
    return (
      <div className="empty">
        <h3>No flat or room yet</h3>
        <p>Flats and rooms are shown here, under the part that feeds them.</p>
      </div>
    );
  return (
    <MannerContext value={OPENING}>
      <Cells skeleton={skeleton} isPage onKeyDown={goByKey} />
    </MannerContext>
  );
}

/** Nothing is selected on a phone: a part opens its values, a place the chain of its worst receiver. */
const OPENING: OverviewManner = {
  selects: false,
  pressPart: openPart,
  pressPlace: (place: FedPlace) => {
    const { report } = useApp.getState();
    const [worst] = judgedAt(place, (id) => verdictOf(report, id));
    showChainOf(worst?.part ?? place.receivers[0] ?? place.key);
  },
  sentenceOf: ({ label, state }) => `${label}: ${placeLook(state).word}`,
};
