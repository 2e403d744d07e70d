/** The first level of an overview: the cards of the drawing, and a box for each place. */
import type { BoxesLayout } from "./boxesLayout.ts";
import { FullCard } from "./CardItem.tsx";
import { Links } from "./Links.tsx";
import { PlaceBox } from "./PlaceItem.tsx";
import { placesIn, type Skeleton } from "./skeleton.ts";
import { NAMELESS, usePlaceNames } from "./usePlaceNames.ts";

export function Boxes({ skeleton, layout }: { readonly skeleton: Skeleton; readonly layout: BoxesLayout }) {
  const places = placesIn(skeleton);
  const names = usePlaceNames(places);
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
