import { type RefObject, useEffect, useState } from "react";
import styles from "./sections/Sections.module.css";

/** Shortcuts to the sections of a long card; worth their place only from a few sections on. */
const LEAST = 3;
/** Left above a heading that was jumped to [px]. */
const AIR_PX = 10;

export function Jumps({ card }: { readonly card: RefObject<HTMLElement | null> }) {
  const [titles, setTitles] = useState<readonly string[]>([]);
  // Which sections there are is known only once they are drawn: each decides for itself whether it has a say.
  // Not a layout effect: the card around this is attached only after those.
  useEffect(() => {
    const found = headings(card.current).map((h) => h.textContent ?? "");
    setTitles((before) => (before.join("|") === found.join("|") ? before : found));
  });
  if (titles.length < LEAST) return null;
  return (
    <nav className={styles.jumps} aria-label="Sections of this part">
      {titles.map((title) => (
        <button
          key={title}
          type="button"
          className="chip"
          onClick={() => {
            const heading = headings(card.current).find((h) => h.textContent === title);
            if (!heading) return;
            heading.tabIndex = -1;
            heading.focus({ preventScroll: true });
            scrollPaneTo(heading);
          }}
        >
          {title}
        </button>
      ))}
    </nav>
  );
}

function headings(card: HTMLElement | null): readonly HTMLElement[] {
  return card ? [...card.querySelectorAll<HTMLElement>(":scope > section > h3")] : [];
}

/** Scrolls only the pane: `scrollIntoView` would push the whole page about as well. */
function scrollPaneTo(heading: HTMLElement): void {
  const pane = scrollerOf(heading);
  if (!pane) return;
  pane.scrollTop += heading.getBoundingClientRect().top - pane.getBoundingClientRect().top - AIR_PX;
}

function scrollerOf(element: HTMLElement): HTMLElement | null {
  let at = element.parentElement;
  while (at && !(at.scrollHeight > at.clientHeight && /auto|scroll/.test(getComputedStyle(at).overflowY)))
    at = at.parentElement;
  return at;
}
