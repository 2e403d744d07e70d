/** The regions of the page, in the order in which F6 goes through them: each gets the focus back where it left it. */
import { afterLayout } from "../kit/afterLayout.ts";

/** As `data-region` of their elements; a layout shows some of them. */
export type Region = "bar" | "tray" | "drawing" | "side" | "below" | "sheet" | "panes";

const ORDER: readonly Region[] = ["bar", "tray", "drawing", "side", "sheet", "below", "panes"];

/** What had the focus last in a region. */
const left = new WeakMap<Element, HTMLElement>();

/** Remembers where the focus leaves a region; yields a function that stops it. */
export function watchRegions(): () => void {
  const onLeave = ({ target }: FocusEvent) => {
    const region = target instanceof Element ? target.closest("[data-region]") : null;
    if (region && target instanceof HTMLElement && target !== region) left.set(region, target);
  };
  document.addEventListener("focusout", onLeave);
  return () => document.removeEventListener("focusout", onLeave);
}

/** Puts the focus into a region; false where it is not on the page. */
export function focusRegion(region: Region): boolean {
  const element = elementOf(region);
  if (!element) return false;
  const before = left.get(element);
  if (before?.isConnected && element.contains(before) && isSeen(before)) before.focus();
  else element.focus();
  return true;
}

/** For what takes the pressed button away with it: the focus goes on in the first of these regions that then stands there. */
export function keepFocusIn(...regions: readonly Region[]): void {
  afterLayout(() => void regions.some(focusRegion));
}

/** From the region that has the focus to the next one, or the one before; from nowhere to the first. */
export function focusNextRegion(step: 1 | -1): void {
  const shown = ORDER.filter((region) => elementOf(region) !== null);
  const here = shown.findIndex((region) => elementOf(region)?.contains(document.activeElement));
  const next = here < 0 ? (step > 0 ? 0 : shown.length - 1) : (here + step + shown.length) % shown.length;
  const region = shown[next];
  if (region) focusRegion(region);
}

function elementOf(region: Region): HTMLElement | null {
  const element = document.querySelector<HTMLElement>(`[data-region="${region}"]`);
  return element && isSeen(element) ? element : null;
}

function isSeen(element: HTMLElement): boolean {
  return element.getClientRects().length > 0;
}
