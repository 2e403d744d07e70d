import { Check, X } from "lucide-react";
import { Toolbar } from "radix-ui";
import { memo } from "react";
import { useShallow } from "zustand/react/shallow";
import { wireId } from "../../../design/design.ts";
import type { FeedingGroup } from "../../../design/feeding/feedingGroups.ts";
import { type PlaceState, placeState } from "../../../findings/placeState.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { placesWork } from "../../../sentences/placeWords.ts";
import { useApp } from "../../../store/app.ts";
import { useRecord, verdictOf } from "../../../store/hooks.ts";
import { tellingNames } from "../../../words/tellingNames.ts";
import { PartSymbol } from "../../canvas/PartSymbol.tsx";
import { openPart } from "../../canvas/reveal.ts";
import { WireStrip } from "../../canvas/WireStrip.tsx";
import { firstWireOf } from "./firstWire.ts";
import styles from "./Overview.module.css";
import { PlaceButton } from "./PlaceButton.tsx";

/** Frame and inset of the heading on either side of its strip [px]. */
const INSET_PX = 8;
const STRIP_HEIGHT_PX = 60;
/** Names up to this length stand in narrow cells. */
const SHORT_NAME = 4;

type Props = { readonly group: FeedingGroup; readonly width: number };

/** What feeds these places, its strip and how many work; below it a cell for each. */
export const GroupCells = memo(function GroupCells({ group, width }: Props) {
  const { feeder, riser, places } = group;
  const record = useRecord(feeder ?? "");
  const states = useApp(
    useShallow((s): readonly PlaceState[] =>
      places.map((place) => placeState(place, (id) => verdictOf(s.report, id))),
    ),
  );
  const labels = useApp(
    useShallow((s) =>
      places.map(({ dwelling, key }) => dwelling ?? (s.evaluation.record(key)?.part.label || key)),
    ),
  );
  const names = tellingNames(labels).map(capital);
  const riserName = record?.ports.find((p) => p.id === riser)?.label;
  const name = record ? record.part.label || record.kind.name : "Not connected";
  const heading = riserName ? `${name}, ${riserName}` : name;
  const wire = record && firstWireOf(record, riser);
  return (
    <section className={styles.placeGroup} aria-label={heading}>
      <div className={styles.groupHead}>
        {record ? (
          <button type="button" className={styles.groupPress} onClick={() => openPart(record.part.id)}>
            <PartSymbol name={record.kind.symbol(record.options)} />
            <strong>{heading}</strong>
            <Counted group={group} states={states} />
          </button>
        ) : (
          <h3 className={styles.groupPress}>
            {heading} <Counted group={group} states={states} />
          </h3>
        )}
        {wire ? (
          <WireStrip wire={wireId(wire)} detail="plate" width={width - INSET_PX} height={STRIP_HEIGHT_PX} />
        ) : null}
      </div>
      <Toolbar.Root
        className={styles.placeCells}
        aria-label={`Places of ${heading}`}
        data-narrow={names.every((n) => n.length <= SHORT_NAME)}
      >
        {places.map((place, n) => (
          <PlaceButton
            key={place.key}
            place={place}
            name={names[n] ?? ""}
            label={labels[n] ?? ""}
            state={states[n] ?? "idle"}
          />
        ))}
      </Toolbar.Root>
    </section>
  );
});

/** "19 of 20 flats work", of those that are judged at all. */
function Counted({
  group,
  states,
}: {
  readonly group: FeedingGroup;
  readonly states: readonly PlaceState[];
}) {
  const judged = states.filter((state) => state !== "idle");
  if (judged.length === 0) return null;
  const working = judged.filter((state) => state !== "fails").length;
  const isFine = working === judged.length;
  const noun = group.places.every((p) => p.dwelling !== undefined)
    ? "flat"
    : group.places.some((p) => p.outlets.length > 0)
      ? "outlet"
      : "receiver";
  return (
    <span className={styles.groupCount} data-fine={isFine}>
      {placesWork({ working, of: judged.length, noun })}
      {isFine ? <Check size={16} strokeWidth={3} aria-hidden /> : <X size={16} strokeWidth={3} aria-hidden />}
    </span>
  );
}
