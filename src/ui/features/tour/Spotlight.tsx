/** A frame around what the tour points at, wherever that is moved or scrolled to. */
import { useEffect, useState } from "react";
import styles from "./Tour.module.css";

type Place = { readonly top: number; readonly left: number; readonly width: number; readonly height: number };

/** How often the frame looks where its target is [ms]. */
const LOOK_MS = 150;
const MARGIN_PX = 4;

export function Spotlight({ target }: { readonly target: string | null }) {
  const [place, setPlace] = useState<Place | null>(null);
  useEffect(() => {
    let isScrolled = false;
    const look = () => {
      const element = target === null ? null : document.querySelector(target);
      if (element && !isScrolled) {
        isScrolled = true;
        element.scrollIntoView({ block: "nearest" });
      }
      setPlace((before) => placeOf(element, before));
    };
    look();
    const timer = setInterval(look, LOOK_MS);
    return () => clearInterval(timer);
  }, [target]);
  return place ? <div className={styles.spotlight} style={place} aria-hidden /> : null;
}

/** The same object while nothing moves, so that nothing is drawn again. */
function placeOf(element: Element | null, before: Place | null): Place | null {
  const box = element?.getBoundingClientRect();
  if (!box || box.width === 0) return null;
  const place = {
    top: Math.round(box.top) - MARGIN_PX,
    left: Math.round(box.left) - MARGIN_PX,
    width: Math.round(box.width) + 2 * MARGIN_PX,
    height: Math.round(box.height) + 2 * MARGIN_PX,
  };
  const isSame =
    before?.top === place.top &&
    before.left === place.left &&
    before.width === place.width &&
    before.height === place.height;
  return isSame ? before : place;
}
