/**
 * The last level of an overview, and the only one of a phone: a cell for each place below what feeds it, and the parts
 * of the head. It is as wide as it may be and scrolls.
 */
import { type KeyboardEventHandler, memo } from "react";
import { wireId } from "../../../design/design.ts";
import type { FeedingGroup } from "../../../design/feeding/feedingGroups.ts";
import { useRecord } from "../../../store/hooks.ts";
import { useSize } from "../../kit/useSize.ts";
import { useStepInView } from "../useStepInView.ts";
import { HeadCell } from "./CardItem.tsx";
import { firstWireOf } from "./firstWire.ts";
import { GroupHeading, useGroupName } from "./GroupHeading.tsx";
import { PlaceCell } from "./PlaceItem.tsx";
import { StopStrip } from "./StopStrip.tsx";
import {
  GROUP_INSET_PX,
  GROUP_STRIP,
  GROUPS_GAP_PX,
  MOST_HEADS_FIRST,
  MOST_SMALL_CELLS,
  SHORT_NAME,
  SMALL_GROUP_PX,
  WIDE_GROUP_PX,
} from "./sizes.ts";
import type { ShownCard, Skeleton } from "./skeleton.ts";
import { NAMELESS, usePlaceNames } from "./usePlaceNames.ts";
import "./overview.css";

type Props = {
  readonly skeleton: Skeleton;
  /** It is all that a phone shows, and no layer over a drawing. */
  readonly isPage?: boolean;
  readonly onKeyDown?: KeyboardEventHandler<HTMLElement>;
};

export function Cells({ skeleton, isPage = false, onKeyDown }: Props) {
  const [attach, size] = useSize();
  const scroll = useStepInView<HTMLDivElement>(skeleton);
  const heads = skeleton.cards.slice(0, skeleton.heads);
  const isHeadLast = heads.length > MOST_HEADS_FIRST;
  const width = size?.width ?? 0;
  const columns = Math.max(1, Math.floor((width + GROUPS_GAP_PX) / (SMALL_GROUP_PX + GROUPS_GAP_PX)));
  const smallWidth = Math.floor((width + GROUPS_GAP_PX) / columns) - GROUPS_GAP_PX;
  return (
    // Arrow keys of all that is in it; each thing is a button of its own.
    // biome-ignore lint/a11y/noStaticElementInteractions: it passes keys on and takes none itself.
    <div
      className="overview-cells"
      ref={scroll}
      onKeyDown={onKeyDown}
      {...(isPage ? { "data-page": "", "data-scrolls": "", "data-chooses-parts": "" } : {})}
    >
      <div
        className="cell-groups"
        ref={attach}
        style={{ gap: GROUPS_GAP_PX, gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))` }}
      >
        {isHeadLast ? null : <HeadCells heads={heads} />}
        {skeleton.groups.map((group) => (
          <CellGroup key={group.key} group={group} widthPx={isSmall(group) ? smallWidth : width} />
        ))}
        {isHeadLast ? <HeadCells heads={heads} /> : null}
      </div>
    </div>
  );
}

/** Small groups stand side by side where there is room. */
function isSmall({ places }: FeedingGroup): boolean {
  return places.length <= MOST_SMALL_CELLS;
}

function HeadCells({ heads }: { readonly heads: readonly ShownCard[] }) {
  if (heads.length === 0) return null;
  return (
    <ul className="head-cells" aria-label="Head end">
      {heads.map((card) => (
        <HeadCell key={card.id} card={card} />
      ))}
    </ul>
  );
}

type GroupProps = { readonly group: FeedingGroup; readonly widthPx: number };

const CellGroup = memo(function CellGroup({ group, widthPx }: GroupProps) {
  const names = usePlaceNames(group.places);
  const areShort = names.every(({ short }) => short.length <= SHORT_NAME);
  const name = useGroupName(group);
  const record = useRecord(group.feeder ?? "");
  const wire = record && firstWireOf(record, group.riser);
  const isWide = widthPx >= WIDE_GROUP_PX;
  const strip = isWide
    ? { width: GROUP_STRIP.besidePx, height: GROUP_STRIP.lowPx }
    : { width: widthPx - GROUP_INSET_PX, height: GROUP_STRIP.highPx };
  return (
    <section className="cell-group" aria-label={name} data-small={isSmall(group)}>
      <div className="cell-group-head" data-wide={isWide}>
        <GroupHeading group={group} />
        {/* Not before its width is known: it would be drawn twice. */}
        {wire && widthPx > 0 && <StopStrip id={group.key} wire={wireId(wire)} detail="plate" {...strip} />}
      </div>
      <div className="cell-list" role="toolbar" aria-label={`Places of ${name}`} data-short={areShort}>
        {group.places.map((place, n) => (
          <PlaceCell key={place.key} place={place} name={names[n] ?? NAMELESS} />
        ))}
      </div>
    </section>
  );
});
