/** What feeds a group of places, and how many of them work. */
import { useShallow } from "zustand/react/shallow";
import type { FeedingGroup } from "../../../design/feeding/feedingGroups.ts";
import { placeState } from "../../../findings/placeState.ts";
import { type PlaceNoun, placesWork } from "../../../sentences/placeWords.ts";
import { useApp } from "../../../store/app.ts";
import { useCulpritOf, useRecord, verdictOf } from "../../../store/hooks.ts";
import { PartSymbol } from "../PartSymbol.tsx";
import { ItemButton } from "./ItemButton.tsx";
import { StateMark } from "./StateMark.tsx";

export function GroupHeading({ group }: { readonly group: FeedingGroup }) {
  const { key, feeder } = group;
  const record = useRecord(feeder ?? "");
  const count = useCount(group);
  const isSelected = useApp((s) => feeder !== undefined && s.selection.parts.includes(feeder));
  const isCulprit = useCulpritOf(feeder ?? "") === "error";
  const riser = record?.ports.find((port) => port.id === group.riser)?.label;
  const label = record ? record.part.label || record.kind.name : "Not connected";
  const name = riser ? `${label}, ${riser}` : label;
  const words = (
    <>
      {record && <PartSymbol name={record.kind.symbol(record.options)} />}
      <span className="group-name">{name}</span>
      <span className="group-count" data-fine={count.isFine}>
        {count.words}
        {count.words !== "" && <StateMark state={count.isFine ? "works" : "fails"} />}
      </span>
    </>
  );
  if (feeder === undefined) return <h3 className="group-heading">{words}</h3>;
  const sentence = count.words === "" ? name : `${name}: ${count.words}`;
  return (
    <h3>
      <ItemButton
        id={key}
        parts={[feeder]}
        look="group-heading"
        facts={{
          sentence: isCulprit ? `${sentence}, the cause of a fault` : sentence,
          isSelected,
          isCulprit,
        }}
      >
        {words}
      </ItemButton>
    </h3>
  );
}

/** Of the places that are judged at all. */
function useCount(group: FeedingGroup): { readonly words: string; readonly isFine: boolean } {
  return useApp(
    useShallow((s) => {
      const states = group.places
        .map((place) => placeState(place, (id) => verdictOf(s.report, id)))
        .filter((state) => state !== "idle");
      const working = states.filter((state) => state !== "fails").length;
      const of = states.length;
      return {
        words: of === 0 ? "" : placesWork({ working, of, noun: nounOf(group) }),
        isFine: working === of,
      };
    }),
  );
}

function nounOf({ places }: FeedingGroup): PlaceNoun {
  if (places.every((place) => place.dwelling !== undefined)) return "flat";
  return places.some((place) => place.outlets.length > 0) ? "outlet" : "receiver";
}
