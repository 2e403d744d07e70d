/** What feeds a group of places, and how many of them work. */
import { useContext } from "react";
import { useShallow } from "zustand/react/shallow";
import type { FeedingGroup } from "../../../design/feeding/feedingGroups.ts";
import { placeState } from "../../../findings/placeState.ts";
import { type PlaceNoun, placesWork } from "../../../sentences/placeWords.ts";
import { useApp } from "../../../store/app.ts";
import { useCulpritOf, useRecord, verdictOf } from "../../../store/hooks.ts";
import { fittingName, textWidth } from "../lettering.ts";
import { PartSymbol } from "../PartSymbol.tsx";
import { ItemButton } from "./ItemButton.tsx";
import { MannerContext } from "./manner.ts";
import { StateMark } from "./StateMark.tsx";
import { BESIDE_HEADING_PX, HEADING_SIZE_PX } from "./sizes.ts";

type Props = {
  readonly group: FeedingGroup;
  /** Room in one line [px]; where it is absent the name takes as many as it needs. */
  readonly widthPx?: number;
};

export function GroupHeading({ group, widthPx }: Props) {
  const { key, feeder } = group;
  const { pressPart } = useContext(MannerContext);
  const record = useRecord(feeder ?? "");
  const count = useCount(group);
  const isSelected = useApp((s) => feeder !== undefined && s.selection.parts.includes(feeder));
  const isCulprit = useCulpritOf(feeder ?? "") === "error";
  const name = useGroupName(group);
  const nameWidthPx = widthPx === undefined ? Infinity : nameRoomPx(count.words, widthPx);
  const saysCount = nameWidthPx >= LEAST_NAME_PX;
  const words = (
    <>
      {record && <PartSymbol name={record.kind.symbol(record.options)} />}
      <span className="group-name">
        {widthPx === undefined ? name : shortened(name, saysCount ? nameWidthPx : nameRoomPx("", widthPx))}
      </span>
      {count.words !== "" && (
        <span className="group-count" data-fine={count.isFine}>
          <span className={saysCount ? undefined : "unseen"}>{count.words}</span>
          <StateMark state={count.isFine ? "works" : "fails"} />
        </span>
      )}
    </>
  );
  if (feeder === undefined) return <h3 className="group-heading">{words}</h3>;
  const sentence = count.words === "" ? name : `${name}: ${count.words}`;
  return (
    <h3>
      <ItemButton
        id={key}
        look="group-heading"
        facts={{
          sentence: isCulprit ? `${sentence}, the cause of a fault` : sentence,
          isSelected,
          isCulprit,
        }}
        onPress={() => pressPart(feeder)}
      >
        {words}
      </ItemButton>
    </h3>
  );
}

/** The part that feeds a group, and its output where that matters. */
export function useGroupName({ feeder, riser }: FeedingGroup): string {
  const record = useRecord(feeder ?? "");
  const output = record?.ports.find((port) => port.id === riser)?.label;
  const name = record ? record.part.label || record.kind.name : "Not connected";
  return output ? `${name}, ${output}` : name;
}

/** Less room than this leaves nothing of a name: then the mark alone says whether its places work [px]. */
const LEAST_NAME_PX = 48;

function nameRoomPx(count: string, widthPx: number): number {
  return widthPx - BESIDE_HEADING_PX - textWidth(count, HEADING_SIZE_PX);
}

function shortened(name: string, widthPx: number): string {
  return fittingName(name, 1, { widthPx, sizePx: HEADING_SIZE_PX });
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
