/** The things of an overview as the keyboard meets them: which one Tab stops at, and where an arrow key leads. */
import { type KeyboardEvent, useEffect } from "react";
import { placeState } from "../../../findings/placeState.ts";
import { useApp } from "../../../store/app.ts";
import { verdictOf } from "../../../store/hooks.ts";
import { setCanvas, useCanvas } from "../state.ts";
import { partsOfItem, placesIn, type Skeleton, skeletonOf } from "./skeleton.ts";

export function itemOf(target: EventTarget): HTMLElement | null {
  return target instanceof Element ? target.closest<HTMLElement>("[data-item]") : null;
}

/** The parts of a thing on the screen, of the design that is shown. */
export function partsAt(item: HTMLElement): readonly string[] {
  return partsOfItem(skeletonOf(useApp.getState().evaluation.design), item.dataset.item ?? "");
}

/** Tab stops where one was last, or at the first place that fails. */
export function useFirstStop(skeleton: Skeleton): void {
  const isThere = useCanvas(({ item }) => item !== null && partsOfItem(skeleton, item).length > 0);
  useEffect(() => {
    if (isThere) return;
    const places = placesIn(skeleton);
    const { report } = useApp.getState();
    const failing = places.find((place) => placeState(place, (id) => verdictOf(report, id)) === "fails");
    setCanvas({ item: (failing ?? places[0])?.key ?? skeleton.cards[0]?.id ?? null });
  }, [isThere, skeleton]);
}

const WAYS: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Goes to the thing that a key leads to; false for any other key. */
export function goByKey(event: KeyboardEvent<HTMLElement>): boolean {
  const item = itemOf(event.target);
  if (!item || event.ctrlKey || event.metaKey || event.altKey) return false;
  const next = nextItem(event.currentTarget, item, event.key);
  if (next === undefined) return false;
  event.preventDefault();
  next?.focus();
  return true;
}

/** The thing that a key leads to; null where there is none that way, undefined for any other key. */
function nextItem(frame: HTMLElement, from: HTMLElement, key: string): HTMLElement | null | undefined {
  const all = [...frame.querySelectorAll<HTMLElement>("[data-item]")];
  if (key === "Home") return all[0] ?? null;
  if (key === "End") return all.at(-1) ?? null;
  const way = WAYS[key];
  if (!way) return undefined;
  const here = from.getBoundingClientRect();
  let best: HTMLElement | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const item of all) {
    const { along, aside, gap } = offset(here, item.getBoundingClientRect(), way);
    // What lies straight ahead comes before what is nearer but aside.
    const far = along + 3 * gap + 0.3 * aside;
    if (item === from || along <= 1 || far >= least) continue;
    best = item;
    least = far;
  }
  return best;
}

type Offset = {
  /** From middle to middle, in the direction gone and across it. */
  readonly along: number;
  readonly aside: number;
  /** Between the two across it; none where one goes on straight into the other. */
  readonly gap: number;
};

function offset(here: DOMRect, there: DOMRect, [x, y]: readonly [x: number, y: number]): Offset {
  const dx = there.x + there.width / 2 - here.x - here.width / 2;
  const dy = there.y + there.height / 2 - here.y - here.height / 2;
  const aside = Math.abs(x === 0 ? dx : dy);
  const half = (x === 0 ? here.width + there.width : here.height + there.height) / 2;
  return { along: dx * x + dy * y, aside, gap: Math.max(0, aside - half) };
}
