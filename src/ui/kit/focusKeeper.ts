/**
 * The focus never rests on the bare page: what had it may be deleted, folded away or pressed beside. Then the nearest
 * region around it takes it, so that the keys go on where one was.
 */

/**
 * Whatever is left to decide for itself where the focus goes has done so by then [ms]. A card or wire that goes leaves it
 * to the canvas at once: the next key, pressed right away, is meant for that.
 */
const PATIENCE_MS = 80;

const REGIONS =
  "[tabindex], main, header, nav, aside, section, [role=tabpanel], [role=toolbar], [role=dialog], [role=alertdialog]";

/** Begins to watch; returns how to end that. Until something has had the focus once, the page keeps its own beginning. */
export function keepFocus(): () => void {
  let path: readonly Element[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  // Between leaving one element and arriving at the next, the page has the focus for a moment.
  let isOnItsWay = false;
  const remember = (event: Event) => {
    isOnItsWay = false;
    if (event.target instanceof Element) path = pathOf(event.target);
  };
  const check = () => {
    clearTimeout(timer);
    if (path.length === 0 || isOnItsWay || !isLost()) return;
    if (path.some((element) => element.matches(CANVAS) && element.isConnected)) {
      focusCanvas();
      return;
    }
    timer = setTimeout(() => {
      if (isLost()) regionOf(path)?.focus({ preventScroll: true });
    }, PATIENCE_MS);
  };
  const leave = ({ relatedTarget }: FocusEvent) => {
    isOnItsWay = relatedTarget !== null;
    if (!isOnItsWay) queueMicrotask(check);
  };
  const observer = new MutationObserver(check);
  observer.observe(document.body, { childList: true, subtree: true });
  // A press beside everything that takes the focus is a word about where one is, too.
  const listening = { capture: true } as const;
  document.addEventListener("pointerdown", remember, listening);
  document.addEventListener("focusin", remember, listening);
  document.addEventListener("focusout", leave, listening);
  document.addEventListener("click", check, listening);
  return () => {
    clearTimeout(timer);
    observer.disconnect();
    document.removeEventListener("pointerdown", remember, listening);
    document.removeEventListener("focusin", remember, listening);
    document.removeEventListener("focusout", leave, listening);
    document.removeEventListener("click", check, listening);
  };
}

/** Gives the focus to the canvas, or to what stands in its place. */
export function focusCanvas(): void {
  canvas()?.focus({ preventScroll: true });
}

function isLost(): boolean {
  return document.activeElement === null || document.activeElement === document.body;
}

function pathOf(element: Element): readonly Element[] {
  const path: Element[] = [];
  for (let at: Element | null = element; at && at !== document.body; at = at.parentElement) path.push(at);
  return path;
}

function regionOf(path: readonly Element[]): HTMLElement | null {
  const near = path.find((element) => element.isConnected && element.matches(REGIONS));
  if (!(near instanceof HTMLElement) || near.querySelector(CANVAS)) return canvas();
  return focusable(near);
}

const CANVAS = ".canvas";

function canvas(): HTMLElement | null {
  const found = document.querySelector<HTMLElement>(CANVAS) ?? document.querySelector<HTMLElement>("main");
  return found && focusable(found);
}

/** A region is no stop of the Tab key, but it can take the focus. */
function focusable(region: HTMLElement): HTMLElement {
  if (!region.hasAttribute("tabindex")) region.tabIndex = -1;
  return region;
}
