/** Where one stands on a walk comes into view with every step, and when what is looked at becomes another. */
import { type RefObject, useEffect, useRef } from "react";
import { afterLayout } from "../kit/afterLayout.ts";
import { useHighlightedHere } from "./highlight.ts";

/**
 * For what scrolls and has the present step in it as `aria-current`.
 *
 * @param shown what is looked at: the same object as long as that is the same
 */
export function useStepInView<E extends HTMLElement>(shown: unknown): RefObject<E | null> {
  const scroll = useRef<E>(null);
  const here = useHighlightedHere();
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is shown says when there is another to look in.
  useEffect(() => {
    if (here === undefined) return;
    return afterLayout(() => {
      const found = scroll.current?.querySelector('[aria-current="step"]');
      // Of a step in a list the card alone: what comes in beside it stands above and may fill a low pane.
      const card = found?.tagName === "LI" ? found.lastElementChild : found;
      card?.scrollIntoView({ block: "nearest" });
    });
  }, [here, shown]);
  return scroll;
}
