/** Gives the focus to a card or a wire of the canvas, bringing it into view first where it is not. */
import { useApp } from "../../store/app.ts";
import { focusCanvas } from "../kit/focusKeeper.ts";
import { itemOfParts, skeletonOf } from "./overview/skeleton.ts";
import { useCanvas } from "./state.ts";

/** So long may the canvas take to draw what comes into view [frames]. */
const MOST_FRAMES = 40;

export type CanvasItem = { readonly part: string } | { readonly wire: string };

export function focusItem(item: CanvasItem): void {
  if (tryFocus(item)) return;
  useApp.getState().frame("part" in item ? { parts: [item.part] } : { wires: [item.wire] });
  waitFor(item, MOST_FRAMES);
}

function waitFor(item: CanvasItem, frames: number): void {
  if (frames === 0) {
    focusCanvas();
    return;
  }
  requestAnimationFrame(() => {
    if (!tryFocus(item)) waitFor(item, frames - 1);
  });
}

function tryFocus(item: CanvasItem): boolean {
  const element = elementOf(item);
  if (!element || !isInView(element)) return false;
  element.focus({ preventScroll: true });
  return document.activeElement === element;
}

function elementOf(item: CanvasItem): HTMLElement | SVGElement | null {
  if ("part" in item && useCanvas.getState().showing === "overview") return inOverview(item.part);
  const [kind, id] = "part" in item ? ["node", item.part] : ["edge", item.wire];
  return document.querySelector(`.canvas .react-flow__${kind}[data-id="${CSS.escape(id)}"]`);
}

/** What shows a part there, brought into view. */
function inOverview(part: string): HTMLElement | null {
  const item = itemOfParts(skeletonOf(useApp.getState().evaluation.design), [part]);
  const found = [item ?? part, part].flatMap((id) => {
    const shown = document.querySelector<HTMLElement>(`.overview [data-item="${CSS.escape(id)}"]`);
    return shown ? [shown] : [];
  });
  found[0]?.scrollIntoView({ block: "nearest" });
  return found[0] ?? null;
}

function isInView(element: Element): boolean {
  const pane = element.closest(".canvas")?.getBoundingClientRect();
  const box = element.getBoundingClientRect();
  if (!pane) return false;
  const x = box.left + box.width / 2;
  const y = box.top + box.height / 2;
  return x >= pane.left && x <= pane.right && y >= pane.top && y <= pane.bottom;
}

/** The card or wire of the canvas that has the focus. */
export function focusedItem(): CanvasItem | null {
  const card = document.activeElement?.closest<HTMLElement>(".canvas .react-flow__node");
  if (card?.dataset.id) return { part: card.dataset.id };
  const wire = document.activeElement?.closest<SVGElement>(".canvas .react-flow__edge");
  return wire?.dataset.id ? { wire: wire.dataset.id } : null;
}
