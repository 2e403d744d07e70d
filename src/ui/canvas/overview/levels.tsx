/** The three levels of an overview: boxes in a drawing, a façade of tiles, and cells. */
import { useShallow } from "zustand/react/shallow";
import type { FedPlace, FeedingGroup } from "../../../design/feeding/feedingGroups.ts";
import { useApp } from "../../../store/app.ts";
import type { BoxesLayout } from "./boxesLayout.ts";
import { FullCard, HeadCard } from "./CardItem.tsx";
import { type FacadeLayout, HEADING_PX, type PlacedFrame } from "./facadeLayout.ts";
import { GroupHeading } from "./GroupHeading.tsx";
import { at } from "./ItemButton.tsx";
import { Links } from "./Links.tsx";
import { type PlaceName, placeNames } from "./names.ts";
import { PlaceBox, PlaceCell, PlaceTile } from "./PlaceItem.tsx";
import { placesIn, type Skeleton } from "./skeleton.ts";

function useNames(places: readonly FedPlace[]): readonly PlaceName[] {
  const labels = useApp(
    useShallow((s) => places.map(({ key }) => s.evaluation.record(key)?.part.label ?? "")),
  );
  const byKey = new Map(places.map(({ key }, n) => [key, labels[n] ?? ""] as const));
  return placeNames(places, (id) => byKey.get(id) ?? "");
}

const NAMELESS: PlaceName = { label: "", name: "", short: "" };

export function Boxes({ skeleton, layout }: { readonly skeleton: Skeleton; readonly layout: BoxesLayout }) {
  const places = placesIn(skeleton);
  const names = useNames(places);
  return (
    <>
      <Links lines={layout.lines} width={layout.width} height={layout.height} />
      <ul className="overview-list" aria-label="Head end">
        {skeleton.cards.map((card) => {
          const box = layout.cards.get(card.id);
          return box && <FullCard key={card.id} card={card} box={box} />;
        })}
      </ul>
      <ul className="overview-list" aria-label="Places">
        {places.map((place, n) => {
          const box = layout.places.get(place.key);
          const name = names[n] ?? NAMELESS;
          return box && <PlaceBox key={place.key} place={place} name={name} box={box} style={layout.style} />;
        })}
      </ul>
    </>
  );
}

export function Facade({ skeleton, layout }: { readonly skeleton: Skeleton; readonly layout: FacadeLayout }) {
  const { head, frames, trunks } = layout;
  return (
    <>
      {skeleton.heads > 0 && (
        <ul className="overview-list" aria-label="Head end">
          {skeleton.cards.slice(0, skeleton.heads).map((card) => {
            const box = head.cards.get(card.id);
            return (
              box && (
                <HeadCard
                  key={card.id}
                  card={card}
                  box={box}
                  stripWidth={head.stripWidth}
                  strips={head.stripsOf(card)}
                />
              )
            );
          })}
        </ul>
      )}
      {frames.map((frame) => (
        <FacadeFrame key={frame.group.key} frame={frame} strip={layout.strip} />
      ))}
      <Links lines={trunks} width={layout.width} height={layout.height} />
    </>
  );
}

type FrameProps = { readonly frame: PlacedFrame; readonly strip: FacadeLayout["strip"] };

function FacadeFrame({ frame, strip }: FrameProps) {
  const { group, box, tiles } = frame;
  const names = useNames(group.places);
  return (
    <>
      <section className="overview-spot group-frame" style={at(box)}>
        <div style={{ height: HEADING_PX }}>
          <GroupHeading group={group} />
        </div>
      </section>
      <ul className="overview-list" aria-label="Places">
        {group.places.map((place, n) => {
          const tile = tiles.get(place.key);
          const name = names[n] ?? NAMELESS;
          return tile && <PlaceTile key={place.key} place={place} name={name} box={tile} strip={strip} />;
        })}
      </ul>
    </>
  );
}

export function Cells({ skeleton }: { readonly skeleton: Skeleton }) {
  return (
    <div className="overview-cells">
      {skeleton.groups.map((group) => (
        <CellGroup key={group.key} group={group} />
      ))}
    </div>
  );
}

/** Names up to this length stand in narrow cells. */
const SHORT_NAME = 4;

function CellGroup({ group }: { readonly group: FeedingGroup }) {
  const names = useNames(group.places);
  const areShort = names.every(({ short }) => short.length <= SHORT_NAME);
  return (
    <section className="cell-group">
      <GroupHeading group={group} />
      <ul className="cell-list" data-short={areShort}>
        {group.places.map((place, n) => (
          <PlaceCell key={place.key} place={place} name={names[n] ?? NAMELESS} />
        ))}
      </ul>
    </section>
  );
}
