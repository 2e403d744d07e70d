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
  const here = middleOf(from);
  let best: HTMLElement | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const item of all) {
    const there = middleOf(item);
    const [dx, dy] = [there.x - here.x, there.y - here.y];
    const along = dx * way[0] + dy * way[1];
    const aside = Math.abs(dx * way[1]) + Math.abs(dy * way[0]);
    // What lies straight ahead comes before what is nearer but aside.
    const far = along + 3 * aside;
    if (item === from || along <= 1 || far >= least) continue;
    best = item;
    least = far;
  }
  return best;
}

function middleOf(item: HTMLElement): { readonly x: number; readonly y: number } {
  const box = item.getBoundingClientRect();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
