import type { Point } from "./layout.ts";

/** Id of the wire under a place in the window, whatever lies over it; null where there is none. */
export function wireUnder({ x, y }: Point): string | null {
  for (const element of document.elementsFromPoint(x, y)) {
    const wire = element.closest(".react-flow__edge");
    if (wire instanceof SVGElement) return wire.dataset.id ?? null;
  }
  return null;
}
