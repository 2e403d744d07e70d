/** The second level of an overview: the head in a row, and a frame of tiles for each part that feeds places. */
import { HeadCard } from "./CardItem.tsx";
import type { FacadeLayout, PlacedFrame } from "./facadeLayout.ts";
import { GroupHeading } from "./GroupHeading.tsx";
import { at } from "./ItemButton.tsx";
import { Links } from "./Links.tsx";
import { PlaceTile } from "./PlaceItem.tsx";
import { HEADING_PX } from "./sizes.ts";
import type { Skeleton } from "./skeleton.ts";
import { NAMELESS, usePlaceNames } from "./usePlaceNames.ts";

export function Facade({ skeleton, layout }: { readonly skeleton: Skeleton; readonly layout: FacadeLayout }) {
  const { head, frames, trunks } = layout;
  return (
    <>
      {skeleton.heads > 0 && (
        <ul className="overview-list" aria-label="Head end">
          {skeleton.cards.slice(0, skeleton.heads).map((card) => {
            const box = head.cards.get(card.id);
            return box && <HeadCard key={card.id} card={card} box={box} row={head} />;
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
  const names = usePlaceNames(group.places);
  return (
    <>
      <section className="overview-spot group-frame" style={at(box)}>
        <div style={{ height: HEADING_PX }}>
          <GroupHeading group={group} widthPx={box.width} />
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
